"""Whom to play at, phase by phase: the ranking of each, what carries it, and what it is worth."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import isclose

from knowledge.advice import Confidence
from knowledge.dataclass import dataclass
from knowledge.engine import CLEAR_CHANCE, LEAN_CHANCE, Part, Ranking, rank
from knowledge.evidence import Profile
from knowledge.normal import chances_of_being_best
from knowledge.planning.weighing import driver_of
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.target_effects import EVEN, at, cover_of, target_decision
from knowledge.tactics.target_phases import PHASES, AtOne, TargetPhase, Ways, able
from knowledge.tactics.target_share import best_share, kept
from knowledge.vocabulary import PlayerId, Trait

SLIGHT_CHANCE = 0.55
"""Where one of two begins to be a shade the better target. Common practice, no source."""

THE_OTHER = PlayerId(-1)
"""The partner of an opponent of whom nobody said who it is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """The answer for one phase. `one` is None where an even split is as good.

    `p_better` is the chance that the better of the two is the better target. `only` is the one
    of ours who owns the shot, where the other does not.
    """

    phase: TargetPhase
    pair: tuple[OnCourt, OnCourt]
    ranking: Ranking
    one: OnCourt | None
    place: AtOne
    driver: Part | None
    p_better: float
    points: float
    cover: float
    only: OnCourt | None = None

    @property
    def other(self) -> OnCourt | None:
        """The partner of the target."""
        if self.one is None:
            return None
        return self.pair[1] if self.one.player == self.pair[0].player else self.pair[0]

    @property
    def share(self) -> float:
        """Share of the balls for the target."""
        return best_share(self.cover)

    @property
    def per_100(self) -> float:
        """Rallies in 100 that it is worth after they have seen it: kept points times share."""
        if self.one is None:
            return 0.0
        return kept(self.points, self.share, self.cover) * self.ranking.share / 100

    @property
    def confidence(self) -> Confidence:
        if self.one is None:
            return Confidence.TOSS_UP
        return Confidence.CLEAR if self.p_better >= CLEAR_CHANCE else Confidence.LEAN


def pair_of(situation: Situation) -> tuple[OnCourt, OnCourt] | None:
    """Both opponents, an unknown partner included; None without any."""
    if not situation.theirs:
        return None
    if len(situation.theirs) == 1:
        only = situation.theirs[0]
        side = None if only.side is None else only.side.other
        return only, OnCourt(profile=Profile(player=THE_OTHER, name="the other"), side=side)
    return situation.theirs[0], situation.theirs[1]


def targets(situation: Situation, *, mixed: bool) -> tuple[Target, ...]:
    """Every phase in which we own the shot, in the order of a rally."""
    pair = pair_of(situation)
    if pair is None:
        return ()
    found = [target_in(situation, phase, pair, mixed=mixed) for phase in PHASES]
    return tuple(one for one in found if one is not None)


def target_in(
    situation: Situation, phase: TargetPhase, pair: tuple[OnCourt, OnCourt], *, mixed: bool
) -> Target | None:
    """One phase; None where we have no shot for it."""
    hitters = able(situation, phase)
    if situation.ours and not hitters:
        return None
    facing = _facing(situation, pair)
    found = _played(facing, phase, pair, mixed=mixed)
    if found is None:
        return None
    first, second, ranking = found
    one, p_better = _better(ranking, pair)
    place = first if one.player == pair[0].player else second
    driver = driver_of(ranking.of(at(one)).parts, pair)
    other = pair[1] if one.player == pair[0].player else pair[0]
    is_settled = driver is not None and p_better >= LEAN_CHANCE and bool(place.effects)
    is_settled = is_settled and ranking.best.option.id != EVEN
    is_settled = is_settled and _is_called(situation, phase, pair, one)
    return Target(
        phase=phase,
        pair=pair,
        ranking=ranking,
        one=one if is_settled else None,
        place=place,
        driver=driver,
        p_better=p_better,
        points=100 * (ranking.of(at(one)).chance - ranking.of(EVEN).chance),
        cover=cover_of(other),
        only=hitters[0] if 0 < len(hitters) < len(situation.ours) else None,
    )


def _played(
    facing: Situation, phase: TargetPhase, pair: tuple[OnCourt, OnCourt], *, mixed: bool
) -> tuple[AtOne, AtOne, Ranking] | None:
    """The way to play at either of them and the ranking that comes of it; None without a ball.

    Of several ways each gets the one that makes most of them: the largest lead of the first that
    the ways at the second leave, or the largest of the second that those at the first leave,
    whichever is further from even. So a player who becomes weaker never becomes the lesser target,
    since every lead grows with it; and nothing hangs on who of them is named first.
    """
    firsts, seconds = PHASES[phase].at(facing, pair)
    if not firsts or not seconds:
        return None
    rankings = {
        (here, there): rank(
            target_decision(phase, pair, (firsts[here], seconds[there]), mixed=mixed), facing
        )
        for here in range(len(firsts))
        for there in range(len(seconds))
    }
    leads = {ways: _lead(ranking, pair) for ways, ranking in rankings.items()}
    here, there = _settled_ways(leads, len(firsts), len(seconds), pair)
    return _way(firsts, here), _way(seconds, there), rankings[here, there]


def _settled_ways(
    leads: Mapping[tuple[int, int], float],
    firsts: int,
    seconds: int,
    pair: tuple[OnCourt, OnCourt],
) -> tuple[int, int]:
    """Which ways are compared; of two as far from even, the one for the lower player number."""
    for_first = max(
        (
            min(((here, there) for there in range(seconds)), key=leads.__getitem__)
            for here in range(firsts)
        ),
        key=leads.__getitem__,
    )
    for_second = min(
        (
            max(((here, there) for here in range(firsts)), key=leads.__getitem__)
            for there in range(seconds)
        ),
        key=leads.__getitem__,
    )
    low, high = leads[for_first], leads[for_second]
    if isclose(abs(low), abs(high), rel_tol=1e-9):
        return for_second if pair[0].player < pair[1].player else for_first
    return for_first if abs(low) > abs(high) else for_second


def _way(ways: Ways, number: int) -> AtOne:
    """That way; without its place where the shot's own page would play to another one."""
    return ways[number] if number == 0 else replace(ways[number], place="")


def _lead(ranking: Ranking, pair: tuple[OnCourt, OnCourt]) -> float:
    first, second = (ranking.of(at(one)).logit for one in pair)
    return first - second


def _is_called(
    situation: Situation, phase: TargetPhase, pair: tuple[OnCourt, OnCourt], one: OnCourt
) -> bool:
    """Whether the shot's own page names the same one: two answers must not disagree."""
    called = PHASES[phase].called
    if called is None:
        return True
    named = called(_facing(situation, tuple(each for each in pair if each.player != THE_OTHER)))
    return named is None or named.player == one.player


def _facing(situation: Situation, pair: tuple[OnCourt, ...]) -> Situation:
    return replace(situation, theirs=pair)


def _better(ranking: Ranking, pair: tuple[OnCourt, OnCourt]) -> tuple[OnCourt, float]:
    """The better target of the two, and how sure that is. Equal ones: the first, at one half."""
    ones = [ranking.of(at(one)) for one in pair]
    chances = chances_of_being_best(
        [one.logit for one in ones], [one.logit_variance for one in ones]
    )
    place = 0 if chances[0] >= chances[1] else 1
    return pair[place], chances[place]


def open_notes(target: Target) -> tuple[OnCourt, Trait] | None:
    """A trait of this phase on which the notes contradict each other."""
    for one in target.pair:
        for part in target.ranking.of(at(one)).parts:
            scale = part.effect.scale
            if scale is None or scale.trait is None or scale.player != one.player:
                continue
            if scale.estimate.is_open:
                return one, scale.trait
    return None


def slightly_at(found: Sequence[Target]) -> tuple[OnCourt, Part] | None:
    """Where no phase is settled: whom some note makes the better target all the same, and it."""
    leaning = max(found, key=lambda one: one.p_better, default=None)
    part = None if leaning is None else leaning.driver
    if leaning is None or part is None or part.points <= 0 or leaning.p_better <= SLIGHT_CHANCE:
        return None
    scale = part.effect.scale
    one = (
        None
        if scale is None
        else next((each for each in leaning.pair if each.player == scale.player), None)
    )
    is_aimed = one is not None and at(one) in part.effect.on
    is_open = scale is None or scale.estimate.is_open or one is None
    return None if is_open or not is_aimed or one is None else (one, part)
