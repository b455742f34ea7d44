"""How each third goes from where we meet the ball, and what that is worth: flight, scatter, hands.

A third that wins w, errs e and otherwise leaves a rally worth v is worth w + (1 - w - e) v. How
often it is in play and does what it is meant to comes from the flight's tables, by height, place,
wind and our own scatter; how often a drive finds a paddle that is not there yet, from its time in
the air against a reaction and a move of the arm. Points count from a plain drop of the same level,
which the decision takes as its neutral chance.

These effects take the place of the rules of thumb that state the same: "a deep low drive sits up"
(row 7 of the trade's table), "short or high: you can hit down on it" (row 8), a drive at one who
still moves, off balance, our better shot, and what a wind along the court does to drops and lobs.

Sizes against the rows, which have 4 each: a drop over a drive off a deep return 3, off a low one 5;
a drive over a drop off a short one 4, off a high one that is not short 1.5. What the rows do not
say: a short ball below the knee is none to drive; a plain return is no better to drive than a deep
one, as the longer way leaves a drive more room; into the wind a drop that is aimed for it loses
nothing, where common practice takes 1.5 off, and a lob from the baseline falls short; with 10 mph
behind, a drive loses far more than a drop, partly since the tables' drives are never slower than
40 mph.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import Final

from knowledge.dataclass import dataclass
from knowledge.effects import Effect, EffectId, Mechanism, OptionId, Points
from knowledge.flight import Aim, FlatFire, Shot
from knowledge.normal import normal_cdf
from knowledge.reach import SPREAD_S
from knowledge.reach.reacting import NO_SPLIT_STEP_S
from knowledge.situation import OnCourt
from knowledge.sources import computed
from knowledge.tactics.shot_success import (
    Ball,
    Leaves,
    OurScatter,
    of_ten,
    points_over,
    success_effect,
    success_points,
)
from knowledge.tactics.third_contact import Contact, Met, contact_of, height_words, met_words

HANDS = computed("time of flight against their hands")

SHOTS: Final = {"drop": Shot.DROP, "drive": Shot.DRIVE, "lob": Shot.LOB}

LEAVES: Final = {
    Shot.DROP: Leaves(meant=0.50, loose=0.28),
    Shot.DRIVE: Leaves(meant=0.46, loose=0.32),
    Shot.LOB: Leaves(meant=0.53, loose=0.25),
}
"""Our chance to win the rally after it, against two at the line. A drop below the net's height at
their line is hit up, and we are in: even. A drive no higher than the chest is blocked, and the
fifth is an easier drop. A lob over their reach turns them round and lets us in. What
comes up higher, or a short lob, is hit down on. Common practice, no source; a plain drop then
leaves about the 44 in 100 of a serving rally, as it should."""

BOTH_BACK: Final = Leaves(meant=0.47, loose=0.47)
"""With nobody at the line only the miss counts: nothing is hit down from the back."""

LATE_LEAVES: Final = 0.65
"""After a drive that meets a paddle on its way: a stab, short or high. Common practice."""

STAND_M: Final = 2.4
"""From the net, where a pair at the line meets it."""

PADDLE_THERE_S: Final = 0.36
"""To a paddle on a ball 0.7 m aside, by `knowledge.reach`: reaction 0.20, arm 0.16."""

PADDLE_SET_S: Final = 0.07
"""And held still and square. Our guess."""

HANDS_DOUBT_S: Final = 0.03
"""How far both together may be off."""

ON_THE_MOVE: Final = "On the move they can't set the paddle"

OFF_BALANCE: Final = {Shot.DROP: 1.1, Shot.DRIVE: 1.3, Shot.LOB: 1.1}
"""Times the scatter: a drive needs the legs, a push does not. Common practice, no source; about
the -4 and -1 points that coaches give for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ThirdBall:
    """The ball that a third is hit from: where, in what wind, our balance, and whom it meets."""

    contact: Contact
    wind_mps: float = 0.0
    off_balance: bool = False
    both_back: bool = False

    def ball(self, shot: Shot) -> Ball:
        return Ball(
            shot=shot,
            height_m=self.contact.height_m,
            from_net_m=self.contact.from_net_m,
            wind_mps=self.wind_mps,
        )

    def aimed(self, shot: Shot, scatter: OurScatter) -> Aim:
        """The best aim from here and how it goes, for our scatter and balance."""
        return _aimed(self.ball(shot), self._times(shot) * scatter.factor)

    def chance(self, shot: Shot, factor: float, *, late: float = 0.0) -> float:
        """Our chance to win the rally; `late` of those who meet a drive in play are too late."""
        leaves = BOTH_BACK if self.both_back and shot is not Shot.LOB else LEAVES[shot]
        rushed = Leaves(
            meant=leaves.meant + late * (LATE_LEAVES - leaves.meant),
            loose=leaves.loose + late * (LATE_LEAVES - leaves.loose),
        )
        return rushed.after(_aimed(self.ball(shot), self._times(shot) * factor))

    def _times(self, shot: Shot) -> float:
        return OFF_BALANCE[shot] if self.off_balance else 1.0


@lru_cache(maxsize=512)
def _aimed(ball: Ball, factor: float) -> Aim:
    """The same few aims are asked for by every place that a shot may go to."""
    return ball.aimed(factor)


PLAIN: Final = ThirdBall(contact=contact_of(Met()))


@lru_cache(maxsize=64)
def plain_chance(level_factor: float) -> float:
    """What a drop off a plain return is worth to a player of that level without notes."""
    return PLAIN.chance(Shot.DROP, level_factor)


def they_have_s(ball: ThirdBall, speed_mps: float) -> float:
    """From our paddle to a pair at the line, of a drive of this pace."""
    fired = FlatFire(height_m=ball.contact.height_m, speed_mps=speed_mps, wind_mps=ball.wind_mps)
    return fired.time_s(ball.contact.from_net_m + STAND_M)


def late_share(has_s: float, *, moving: float, more_s: float = 0.0) -> float:
    """How many are late for it; `moving` of them did not get to split before it was hit."""
    need_s = PADDLE_THERE_S + PADDLE_SET_S + more_s
    set_late = normal_cdf((need_s - has_s) / SPREAD_S)
    moving_late = normal_cdf((need_s + NO_SPLIT_STEP_S - has_s) / SPREAD_S)
    return set_late + moving * (moving_late - set_late)


def success(
    on: OptionId,
    shot: Shot,
    ball: ThirdBall,
    scatter: OurScatter,
    *,
    level: float,
    met: Met,
    one: OnCourt | None,
) -> Effect:
    """In play and as meant, against a plain drop of that level; our notes go with it."""
    points = success_points(
        lambda factor: ball.chance(shot, factor), scatter, level=plain_chance(level)
    )
    because = success_words(shot, ball, scatter, met)
    effect = success_effect(on, points, scatter, because=because, one=one)
    return replace(effect, id=EffectId(f"{effect.id}:{effect.when.name}"))


def success_words(shot: Shot, ball: ThirdBall, scatter: OurScatter, met: Met) -> str:
    """ "Knee high at the baseline: 8 of 10 drops work"."""
    works = of_ten(ball.aimed(shot, scatter).meant)
    return f"{met_words(met)}: {works} of 10 {shot}s work"


def hands_effect(on: OptionId, ball: ThirdBall, scatter: OurScatter, *, moving: float) -> Effect:
    """What a drive gains by the hands that are late for it: w + (1 - w - e) v again."""
    has_s = they_have_s(ball, ball.aimed(Shot.DRIVE, scatter).speed_mps)
    without = ball.chance(Shot.DRIVE, scatter.factor)

    def gain(more_s: float) -> float:
        late = late_share(has_s, moving=moving, more_s=more_s)
        return points_over(ball.chance(Shot.DRIVE, scatter.factor, late=late), without)

    quick, slow = gain(-HANDS_DOUBT_S), gain(HANDS_DOUBT_S)
    return Effect(
        id=EffectId(f"{'moving' if moving else 'hands'}:{on}"),
        on=frozenset({on}),
        points=Points(mean=gain(0.0), sd=abs(slow - quick) / 2),
        mechanism=Mechanism.TIME,
        because=ON_THE_MOVE if moving else f"They have {has_s:.2f} s: hands come late",
        source=HANDS,
    )


def drive_words(ball: ThirdBall, scatter: OurScatter) -> str:
    """How a drive gets to a pair at the line: "A drive gets there waist high after 0.6 s"."""
    aim = ball.aimed(Shot.DRIVE, scatter)
    height, has_s = height_words(aim.at_line_m), they_have_s(ball, aim.speed_mps)
    return f"A drive gets there {height} after {has_s:.1f} s"
