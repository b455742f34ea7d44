"""The skill that a ball of ours meets at each option, from the true players, partner and all.

Weights, what a jam costs and how far a partner moves are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Final

import numpy as np
from numpy.typing import NDArray
from plan_choices import FIRST, OPTIONS, SECOND, Decision
from plan_players import TruePair, TruePlayer

from knowledge.tactics.dink_lanes import Spot, lane_to
from knowledge.tactics.serve_lanes import Lane as ServeLane
from knowledge.vocabulary import Side, Trait, Value, Wing

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

DINK_MISSES: Final[Mapping[str, float]] = MappingProxyType(
    {"centre": 0.03, "straight": 0.035, "wide": 0.045, "line": 0.06}
)
"""By lane: across the middle the net is lowest and the court longest (common practice)."""

LANE_RISK: Final[Mapping[str, float]] = MappingProxyType(
    {"centre": -0.2, "straight": 0.0, "wide": 0.3, "line": 0.5}
)
"""Log-odds of being attacked: the line is jumped, wide gives an angle back."""

POACHED: Final = 0.3
"""Log-odds of being attacked in the middle, for one who poaches a standard deviation more."""

JAMMED: Final = -0.5
OPEN: Final = 0.4
"""A ball that jams the paddle, and one that it waits for, in standard deviations."""

NOBODYS: Final = -0.2
"""Between the two: whose is it?"""

FEET_MISSES: Final = 0.05
"""How much more often a speed-up at the feet is missed: it has to dip."""

COVER_LOG_ODDS: Final = -0.6
"""How often a usual partner, ready for it, gets across to a ball at the other one: 35 in 100."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """Skills by decision, a row per simulated pair and a column per option.

    `lead` is by how much the partner would meet the same ball better: 0 for one who would not, or
    cannot get there. `poached` are log-odds that a dink adds to being attacked.
    """

    own: Mapping[Decision, Floats]
    lead: Mapping[Decision, Floats]
    covers: Floats
    return_depth: Floats
    poached: Floats
    dink_misses: Floats = field(default_factory=lambda: _by_lane(DINK_MISSES))
    dink_risk: Floats = field(default_factory=lambda: _by_lane(LANE_RISK))

    @property
    def columns(self) -> int:
        return len(self.covers)

    @property
    def attack_misses(self) -> Floats:
        return np.array(
            [FEET_MISSES if one.startswith("feet") else 0.0 for one in OPTIONS[Decision.ATTACK]]
        )

    def skill(self, decision: Decision, ready: Floats, rows: Ints) -> Floats:
        """What each option meets: the target's skill, or a better partner's who is on the way.

        How far the partner is on the way is how much likelier than even they hold that player.
        """
        own = self.own[decision][rows]
        if decision not in _COVERED:
            return own
        lead = self.lead[decision][rows]
        found = own.copy()
        for place, at in enumerate(_COVERED[decision]):
            expected = ready[:, at].sum(axis=1) - len(at) / ready.shape[1]
            moved = np.clip(2 * expected, 0, 1) * self.covers[rows, 1 - place]
            found[:, at] += moved[:, None] * lead[:, at]
        return found

    def repeated(self, times: int) -> Met:
        """Each pair so many times in a row."""
        return self._rows(np.repeat(np.arange(self.columns), times))

    def tiled(self, times: int) -> Met:
        """All of them so many times over."""
        return self._rows(np.tile(np.arange(self.columns), times))

    def _rows(self, rows: Ints) -> Met:
        return Met(
            own={one: table[rows] for one, table in self.own.items()},
            lead={one: table[rows] for one, table in self.lead.items()},
            covers=self.covers[rows],
            return_depth=self.return_depth[rows],
            poached=self.poached[rows],
        )


def met_of(pairs: Sequence[TruePair]) -> Met:
    """The tables of these pairs, a row each."""
    own = {one: _table(one, _own, pairs) for one in Decision}
    poaching = np.array([[one.skills[Trait.POACHING] for one in pair] for pair in pairs])
    return Met(
        own=own,
        lead={one: np.maximum(0, _table(one, _partner, pairs) - own[one]) for one in _COVERED},
        covers=1 / (1 + np.exp(-(COVER_LOG_ODDS + 0.5 * poaching))),
        return_depth=np.array([[one.skills[Trait.RETURN_DEPTH] for one in pair] for pair in pairs]),
        poached=np.array([[POACHED * _poach(option, pair) for option in _DINKS] for pair in pairs]),
    )


def _table(
    decision: Decision,
    skill: Callable[[Decision, str, TruePair], float],
    pairs: Sequence[TruePair],
) -> Floats:
    return np.array([[skill(decision, one, pair) for one in OPTIONS[decision]] for pair in pairs])


_DINKS = OPTIONS[Decision.DINK_RIGHT]


_COVERED = MappingProxyType(
    {
        decision: tuple(
            [n for n, option in enumerate(OPTIONS[decision]) if str(number) in option]
            for number in (FIRST, SECOND)
        )
        for decision in (
            Decision.RETURN,
            Decision.THIRD_SHORT,
            Decision.THIRD_DEEP,
            Decision.DINK_RIGHT,
            Decision.DINK_LEFT,
        )
    }
)
"""The balls that a partner may take, and which options are at either of them."""


def _by_lane(table: Mapping[str, float]) -> Floats:
    """From our right and our left court to each foot."""
    sides = {str(FIRST): Side.RIGHT, str(SECOND): Side.LEFT}
    return np.array(
        [
            [
                table[lane_to(Spot(spot), in_front=sides[who] is not ours)]
                for who, _, spot in (option.partition(":") for option in _DINKS)
            ]
            for ours in (Side.RIGHT, Side.LEFT)
        ]
    )


def _own(decision: Decision, option: str, pair: TruePair) -> float:
    """The skill of whoever the ball goes at."""
    match decision:
        case Decision.SERVE_RIGHT | Decision.SERVE_LEFT:
            return _of_return(pair[0 if decision is Decision.SERVE_RIGHT else 1], ServeLane(option))
        case Decision.RETURN:
            return _at(option, pair, _of_third, middle=NOBODYS)
        case Decision.THIRD_SHORT | Decision.THIRD_DEEP:
            of_shot = _of_volley if option.startswith("drop") else _of_pace
            return _at(option, pair, of_shot, middle=_in_the_way(pair))
        case Decision.DINK_RIGHT | Decision.DINK_LEFT:
            return _of_dink(_who(option, pair), Spot(option.partition(":")[2]))
        case Decision.ATTACK:
            return _of_hands(option, pair)


def _partner(decision: Decision, option: str, pair: TruePair) -> float:
    """That of the partner, had they moved over in time."""
    other = pair[1] if option.endswith(f":{FIRST}") or option.startswith(f"{FIRST}:") else pair[0]
    match decision:
        case Decision.RETURN if option != "middle":
            return _of_third(other)
        case Decision.THIRD_SHORT | Decision.THIRD_DEEP if not option.endswith("middle"):
            return _of_volley(other) if option.startswith("drop") else _of_pace(other)
        case Decision.DINK_RIGHT | Decision.DINK_LEFT if option.endswith(Spot.MIDDLE):
            return _of_dink(other, Spot.MIDDLE)
        case _:
            return -np.inf


def _who(option: str, pair: TruePair) -> TruePlayer:
    return pair[0] if str(FIRST) in option else pair[1]


def _at(
    option: str, pair: TruePair, skill: Callable[[TruePlayer], float], *, middle: float
) -> float:
    """At one of them; through the middle either takes it."""
    if option.endswith("middle"):
        return (skill(pair[0]) + skill(pair[1])) / 2 + middle
    return skill(_who(option, pair))


def _in_the_way(pair: TruePair) -> float:
    """A poacher waits for the third through the middle."""
    return NOBODYS + POACHED * max(0.0, *(one.skills[Trait.POACHING] for one in pair))


def _of_return(one: TruePlayer, lane: ServeLane) -> float:
    """The return off a serve in a lane: the shot and the wing that it meets, or the jam."""
    if lane is ServeLane.BODY:
        return 0.6 * one.skills[Trait.RETURN] + 0.5 * one.skills[Trait.BODY_JAM]
    wing = one.middle_wing if lane is ServeLane.T else one.middle_wing.other
    stroke = one.of_wing(wing, Trait.FOREHAND_DRIVE, Trait.BACKHAND_DRIVE)
    return 0.6 * one.skills[Trait.RETURN] + 0.5 * stroke


def _of_third(one: TruePlayer) -> float:
    return 0.85 * one.skills[Trait.THIRD_SHOT_DROP] + 0.3 * one.skills[Trait.FORWARD_SPEED]


def _of_volley(one: TruePlayer) -> float:
    return (one.skills[Trait.FOREHAND_VOLLEY] + one.skills[Trait.BACKHAND_VOLLEY]) / 2


def _of_counter(one: TruePlayer) -> float:
    return (one.skills[Trait.COUNTER_FOREHAND] + one.skills[Trait.COUNTER_BACKHAND]) / 2


def _of_pace(one: TruePlayer) -> float:
    return (one.skills[Trait.HANDLES_PACE] + _of_counter(one)) / 2


def _of_dink(one: TruePlayer, spot: Spot) -> float:
    wing = one.middle_wing if spot is Spot.MIDDLE else one.middle_wing.other
    return one.of_wing(wing, Trait.FOREHAND_DINK, Trait.BACKHAND_DINK)


def _poach(option: str, pair: TruePair) -> float:
    """How much the partner of a dink's target poaches, in the middle."""
    if not option.endswith(Spot.MIDDLE):
        return 0.0
    partner = pair[1] if _who(option, pair) is pair[0] else pair[0]
    return partner.skills[Trait.POACHING]


def _of_hands(option: str, pair: TruePair) -> float:
    """The hands that a speed-up meets, by the spot and where the paddle waits."""
    spot, _, _ = option.partition(":")
    if spot == "dink":
        return 0.0
    if spot == "seam":
        return sum(_in_the_middle(one) for one in pair) / 2 + NOBODYS
    one = _who(option, pair)
    if spot == "feet":
        return _of_counter(one) + 0.2
    jammed_hip = "other" if one.ready is Value.FOREHAND else "paddle"
    if spot == jammed_hip and one.ready is not Value.NEUTRAL:
        return one.skills[Trait.BODY_JAM] + JAMMED
    if spot == "paddle":
        return one.skills[Trait.COUNTER_FOREHAND] + (OPEN if one.ready is Value.FOREHAND else 0.0)
    return one.skills[Trait.COUNTER_BACKHAND] + (OPEN if one.ready is Value.BACKHAND else 0.0)


def _in_the_middle(one: TruePlayer) -> float:
    is_forehand = one.middle_wing is Wing.FOREHAND
    return one.skills[Trait.COUNTER_FOREHAND if is_forehand else Trait.COUNTER_BACKHAND]
