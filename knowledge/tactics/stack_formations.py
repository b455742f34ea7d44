"""Every formation of our pair: who plays which court, and who has to cross for it."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from knowledge.dataclass import dataclass
from knowledge.situation import Formation, OnCourt
from knowledge.vocabulary import Hand, PlayerId, Side, Trait, Value


class Keep(StrEnum):
    """What a pair does with the courts that the score gives, in one half of the rallies.

    There are four ways to answer the two cases (right as the score has it, or the other way):
    never cross, cross so that one or the other is always left (HOME), always cross.
    """

    SCORE = "score"
    HOME = "home"
    SIGNAL = "signal"  # HOME, where a sign before the rally says so
    SWAP = "swap"


KEEPS: Final[Mapping[Formation, tuple[Keep, Keep]]] = MappingProxyType(
    {
        Formation.STRAIGHT: (Keep.SCORE, Keep.SCORE),
        Formation.STACK_ON_SERVE: (Keep.HOME, Keep.SCORE),
        Formation.STACK_ON_RETURN: (Keep.SCORE, Keep.HOME),
        Formation.STACK_ALWAYS: (Keep.HOME, Keep.HOME),
        Formation.ON_SIGNAL: (Keep.HOME, Keep.SIGNAL),
        Formation.SIDE_SWAP: (Keep.SWAP, Keep.SWAP),
    }
)
"""Of each formation: while we serve, and while we receive."""

SCORE_SHARE: Final = 0.5
"""How often the score has one of us on the left: their own points are odd as often as even."""

SIGNALLED: Final = 0.5
"""How often the sign says to cross, of the returns on which it would help. Our guess."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A formation, and who of us is always left where it has such a one."""

    formation: Formation
    left: OnCourt | None = None
    right: OnCourt | None = None

    @property
    def id(self) -> str:
        return self.formation if self.left is None else f"{self.formation}@{self.left.player}"

    def keep(self, *, we_serve: bool) -> Keep:
        serving, receiving = KEEPS[self.formation]
        return serving if we_serve else receiving

    def crosses(self, score_left: PlayerId, *, we_serve: bool) -> bool | None:
        """Whether they leave the score's courts, which have this one left; None: by the sign."""
        keep = self.keep(we_serve=we_serve)
        if keep in (Keep.SCORE, Keep.SWAP):
            return keep is Keep.SWAP
        is_home = self.left is not None and self.left.player == score_left
        if is_home:
            return False
        return None if keep is Keep.SIGNAL else True

    def crossing_share(self, *, we_serve: bool) -> float:
        """How often they cross, of the rallies of that half."""
        return {
            Keep.SCORE: 0.0,
            Keep.HOME: 1 - SCORE_SHARE,
            Keep.SIGNAL: SIGNALLED * (1 - SCORE_SHARE),
            Keep.SWAP: 1.0,
        }[self.keep(we_serve=we_serve)]

    def left_share(self, one: OnCourt, *, we_serve: bool) -> float:
        """How often this one of us plays on the left, of the rallies of that half."""
        if self.left is None or self.keep(we_serve=we_serve) is Keep.SCORE:
            return SCORE_SHARE
        at_home = SCORE_SHARE + self.crossing_share(we_serve=we_serve)
        return at_home if one.player == self.left.player else 1 - at_home

    def left_of_all(self, one: OnCourt) -> float:
        """The same of all rallies: each half is about half of them."""
        return sum(self.left_share(one, we_serve=serving) for serving in (True, False)) / 2


def plans(pair: tuple[OnCourt, OnCourt]) -> tuple[Plan, ...]:
    """Every formation, those with a home side once with either of us on the left."""
    one, other = pair
    found: list[Plan] = []
    for formation, keeps in KEEPS.items():
        if {Keep.HOME, Keep.SIGNAL} & set(keeps):
            found += [
                Plan(formation=formation, left=one, right=other),
                Plan(formation=formation, left=other, right=one),
            ]
        else:
            found.append(Plan(formation=formation))
    return tuple(found)


def hand_of(one: OnCourt) -> Hand:
    """Their hand; right where nobody noted it, as nine in ten are. The page says so."""
    return one.hand or Hand.RIGHT


def backhands_meet(pair: tuple[OnCourt, OnCourt]) -> bool:
    """Whether the sides that our two play, as said or noted, put both backhands in the middle.

    Where the side of one only is known, the other plays the other.
    """
    one, other = (each.side or each.profile.fact(Trait.SIDE_PLAYED) for each in pair)
    if one == other or not {one, other} & {Value.LEFT.value, Value.RIGHT.value}:
        return False
    left = pair[0] if one == Value.LEFT.value or other == Value.RIGHT.value else pair[1]
    right = pair[1] if left is pair[0] else pair[0]
    return hand_of(left) is Hand.LEFT and hand_of(right) is Hand.RIGHT


def inside_share(plan: Plan, one: OnCourt) -> float:
    """How often their forehand is in the middle: left for a right-hander, right for a left-hander.

    Whoever plays forehands with both hands always has one there.
    """
    hand = hand_of(one)
    if hand is Hand.AMBIDEXTROUS:
        return 1.0
    left = plan.left_of_all(one)
    return left if hand is Hand.RIGHT else 1 - left


def court_of(plan: Plan, player: PlayerId) -> Side | None:
    """The court that is theirs for good; None where nobody has one."""
    if plan.left is None:
        return None
    return Side.LEFT if player == plan.left.player else Side.RIGHT
