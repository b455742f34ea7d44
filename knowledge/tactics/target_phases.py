"""What each part of the rally says for playing at one opponent, from that shot's own page."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from enum import StrEnum
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.engine import (
    Decision,
    Effect,
    EffectId,
    Mechanism,
    Points,
    Ranking,
    TraitScale,
    rank,
)
from knowledge.evidence import Profile
from knowledge.planning import sizes
from knowledge.planning.hands import hands_aim
from knowledge.planning.lobbing import NO_LOB, lob_decision, over
from knowledge.planning.thirds import thirds_of
from knowledge.planning.weighing import from_trait, is_open, is_weak, said_of
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics.conditions import marked_wing
from knowledge.tactics.dink_aims import Aim
from knowledge.tactics.dink_answer import DINK_SHARE, DinkAnswer, ranked_dinks
from knowledge.tactics.dink_chances import LANE_SOURCE
from knowledge.tactics.dink_words import names_wing
from knowledge.tactics.return_answer import question_of
from knowledge.tactics.return_effects import target_effects
from knowledge.tactics.return_question import at as target_at
from knowledge.tactics.target_sizes import LATE_SHARE, LOSES_PATIENCE, TIGHT, TIRES
from knowledge.vocabulary import LOGIT_PER_POINT, Topic, Trait


class TargetPhase(StrEnum):
    """A part of the rally in which we choose at whom to play, in its order."""

    RETURN = "return"
    THIRD = "third"
    DINKS = "dinks"
    HANDS = "hands"
    LOBS = "lobs"
    LATE = "late"


@dataclass(frozen=True, slots=True, kw_only=True)
class AtOne:
    """What speaks for and against the balls of one phase at one opponent, and where they go.

    `toll` is what the shot itself loses by going there, whoever stands there.
    """

    effects: tuple[Effect, ...] = ()
    toll: Effect | None = None
    place: str = ""
    spot: str = ""


Ways = tuple[AtOne, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseRow:
    """A phase: how often it arises, the ways to play at either opponent, and the shot it needs.

    `at` lists the ways at each of two, that of the shot's own page first; none where there is no
    such ball.
    `priced` tells that its page already counts a partner who squeezes or poaches, or that he
    cannot reach that ball. `called` is whoever that shot's own page names: here it names the same
    one or nobody.
    """

    share: float
    at: Callable[[Situation, Sequence[OnCourt]], list[Ways]]
    needs: Trait | None
    priced: bool
    called: Callable[[Situation], OnCourt | None] | None = None


def _return(situation: Situation, one: OnCourt) -> Ways:
    """The return's own page: what it says of this opponent, each note once."""
    acting = target_effects(question_of(replace(situation, asked=Asked(), game=None)))
    about = tuple(
        effect
        for effect in acting
        if target_at(one) in effect.on and effect.scale and effect.scale.player == one.player
    )
    return (AtOne(effects=about),)


def _third(situation: Situation, one: OnCourt) -> Ways:
    """The third's own page, for whichever of us makes most of this opponent."""
    thirds = thirds_of(situation)
    if not thirds:
        return ()
    rankings = [third.weighed.ranking for third in thirds]
    best = max(
        (_from_ranking(ranking, f":{one.player}") for ranking in rankings),
        key=lambda at: sum(effect.points.mean for effect in at.effects),
    )
    return (best,)


def _dinks(situation: Situation, pair: Sequence[OnCourt]) -> list[Ways]:
    """The dink's own page: each foot of either opponent, its best first."""
    asked = replace(situation, topic=Topic.AIM_DINK, asked=Asked())
    answer = ranked_dinks(asked)
    unnoted = ranked_dinks(replace(asked, theirs=_unnoted(asked.theirs))).ranking
    return [_feet_of(one, answer, unnoted) for one in pair]


def _feet_of(one: OnCourt, answer: DinkAnswer, unnoted: Ranking) -> Ways:
    aims = [answer.aim(ranked.option.id) for ranked in answer.ranking.ranked]
    feet = [aim for aim in aims if aim is not None and aim.target.player == one.player]
    usual = max(feet, key=lambda aim: unnoted.of(aim.id).logit, default=None)
    return tuple(
        AtOne(
            effects=_acting(answer.ranking.decision, aim.id),
            toll=None if usual is None else _toll(answer, aim, usual, unnoted),
            place=_wing_named(aim),
            spot=str(aim.spot),
        )
        for aim in feet
    )


def _wing_named(aim: Aim) -> str:
    wing = aim.wing if names_wing(aim, None) else marked_wing(aim.target)
    return str(wing or "") if aim.wing is not None or aim.lane is None else ""


def _toll(answer: DinkAnswer, aim: Aim, usual: Aim, unnoted: Ranking) -> Effect | None:
    """What the dink itself loses at the foot that nobody would choose without notes.

    So a weak wing down the line counts for less. What drives us there stands behind it.
    """
    if aim.id == usual.id:
        return None
    lost = (unnoted.of(aim.id).logit - unnoted.of(usual.id).logit) / LOGIT_PER_POINT
    parts = answer.ranking.of(usual.id).parts
    driver = next(
        (part for part in parts if part.points < 0 and part.evidence and not is_open(part)), None
    )
    return Effect(
        id=EffectId(f"foot:{aim.id}"),
        on=frozenset({aim.id}),
        points=Points(mean=lost, sd=abs(lost) / 2),
        mechanism=Mechanism.OUR_ERROR,
        because="a harder dink" if driver is None else said_of(driver.effect),
        source=LANE_SOURCE,
        scale=None if driver is None else _full(driver.effect.scale),
    )


def _full(scale: TraitScale | None) -> TraitScale | None:
    """The notes without their level: it is in the size already."""
    if scale is None:
        return None
    way = 1 if scale.estimate.level > 0 else -1
    sure = replace(scale.estimate, level=float(way), variance=0.0)
    return TraitScale(estimate=sure, towards=way, player=scale.player)


def _unnoted(pair: tuple[OnCourt, ...]) -> tuple[OnCourt, ...]:
    """The same players, of whom we only know what they are: hand, two-handed backhand."""
    return tuple(
        replace(
            one,
            profile=Profile(player=one.player, name=one.name, facts=one.profile.facts),
        )
        for one in pair
    )


def _hands(situation: Situation, one: OnCourt) -> Ways:
    """The speed-up's own page: the better hip of this opponent. How they wait says which hip."""
    found = hands_aim(replace(situation, theirs=(one,)))
    if found.spot is None:
        return (_from_ranking(found.weighed.ranking, f":{one.player}"),)
    acting = _acting(found.weighed.ranking.decision, found.spot.id)
    about_hands = tuple(one for one in acting if one.scale is not None and one.scale.trait)
    return (AtOne(effects=about_hands, place=found.spot.label),)


def _called_in_hands(situation: Situation) -> OnCourt | None:
    found = hands_aim(situation)
    return None if found.spot is None else found.spot.target


def _lobs(situation: Situation, one: OnCourt) -> Ways:
    """The lob's own page, where a lob over this opponent beats none."""
    ranking = rank(lob_decision(replace(situation, theirs=(one,))), situation)
    if ranking.best.option.id == NO_LOB:
        return (AtOne(),)
    return (AtOne(effects=_acting(ranking.decision, over(one))),)


def _late(_situation: Situation, one: OnCourt) -> Ways:
    """Who gets tight, tired or impatient: whatever the shot."""
    on, error = (f"at:{one.player}",), Mechanism.THEIR_ERROR
    rows = ((Trait.NERVES, TIGHT), (Trait.FITNESS, TIRES), (Trait.PATIENCE, LOSES_PATIENCE))
    acting = tuple(
        from_trait(one, trait, points if not up else -points, error, on=on, up=up)
        for trait, points in rows
        for up in (False, True)
    )
    return (AtOne(effects=acting),)


def _from_ranking(ranking: Ranking, ending: str) -> AtOne:
    best = next(one for one in ranking.ranked if one.option.id.endswith(ending))
    return AtOne(effects=_acting(ranking.decision, best.option.id))


def _acting(decision: Decision, option: str) -> tuple[Effect, ...]:
    return tuple(effect for effect in decision.effects if option in effect.on)


def _each(
    at_one: Callable[[Situation, OnCourt], Ways],
) -> Callable[[Situation, Sequence[OnCourt]], list[Ways]]:
    """The ways at either of them, found one by one."""
    return lambda situation, pair: [at_one(situation, one) for one in pair]


PHASES: Mapping[TargetPhase, PhaseRow] = MappingProxyType(
    {
        TargetPhase.RETURN: PhaseRow(
            share=sizes.RETURN_SHARE, at=_each(_return), needs=Trait.RETURN, priced=True
        ),
        TargetPhase.THIRD: PhaseRow(
            share=sizes.THIRD_SHARE, at=_each(_third), needs=None, priced=True
        ),
        TargetPhase.DINKS: PhaseRow(share=DINK_SHARE, at=_dinks, needs=None, priced=True),
        TargetPhase.HANDS: PhaseRow(
            share=sizes.HANDS_SHARE,
            at=_each(_hands),
            needs=Trait.SPEED_UP,
            priced=False,
            called=_called_in_hands,
        ),
        TargetPhase.LOBS: PhaseRow(
            share=sizes.LOB_SHARE, at=_each(_lobs), needs=Trait.LOB, priced=True
        ),
        TargetPhase.LATE: PhaseRow(share=LATE_SHARE, at=_each(_late), needs=None, priced=False),
    }
)


def able(situation: Situation, phase: TargetPhase) -> tuple[OnCourt, ...]:
    """Those of ours who own the shot that the phase needs."""
    needs = PHASES[phase].needs
    return tuple(one for one in situation.ours if needs is None or not is_weak(one, needs))
