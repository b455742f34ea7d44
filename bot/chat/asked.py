"""A question as a chat remembers it, so that a button can put it again with one thing settled."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from bot.chat.format_said import SaidFormat
from bot.chat.rally_supposed import SupposedRally
from knowledge.ball_facts import BallFacts, Depth, Footing, Spin
from knowledge.dataclass import dataclass
from knowledge.situation import TossChoice, Wind
from knowledge.trait_asked import TraitAsked
from knowledge.vocabulary import (
    BallKind,
    BallQuality,
    Hand,
    PlayerId,
    Side,
    Topic,
    Trait,
    Value,
    Wing,
)


class SaidState(NamedTuple):
    """A score said inside a question: for this question only, never the match's."""

    ours: int
    theirs: int
    server: int | None
    we_serve: bool


SaidCount = tuple[int, int] | None
"""Rallies won and played of one half, serving or receiving, where they were counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """The last question: its topic, its words and all it settles; None is not said.

    `rates` and `counts` (serving, receiving) are supposed for this question only, and so is
    the hand of each player in `hands`; `asker` is who of ours says of themselves to be asking.
    `officiated` and `rule` a button settles; `before` are the words that a rules question goes on
    from. `facts` are of the one ball, None where nothing is said of it. `rally` is how the
    next one is supposed to end; `trait` is what a question about somebody asks after.
    """

    topic: Topic
    text: str
    about: tuple[PlayerId, ...] = ()
    wing: Wing | None = None
    ball: BallQuality | None = None
    ball_kind: BallKind | None = None
    hitter_side: Side | None = None
    striker_side: Side | None = None
    pulled_wide: PlayerId | None = None
    plays_left: PlayerId | None = None
    we_serve: bool | None = None
    score: SaidState | None = None
    games: tuple[int, int] | None = None
    format: SaidFormat | None = None
    lost_in_a_row: int | None = None
    timeouts_left: int | None = None
    tired: bool | None = None
    hot: bool | None = None
    has_change: bool | None = None
    toss_won: bool | None = None
    they_chose: TossChoice | None = None
    wind: Wind | None = None
    sun: bool | None = None
    background: bool | None = None
    rates: tuple[float | None, float | None] | None = None
    counts: tuple[SaidCount, SaidCount] | None = None
    asker: PlayerId | None = None
    hands: tuple[tuple[PlayerId, Hand], ...] = ()
    officiated: bool | None = None
    rule: str | None = None
    before: str | None = None
    facts: BallFacts | None = None
    rally: SupposedRally | None = None
    trait: TraitAsked | None = None

    def to_json(self) -> dict[str, Any]:
        """Plain JSON, absent things left out."""
        plain = {name: _plain(getattr(self, name)) for name in self.__dataclass_fields__}
        plain["counts"] = counts_to_json(self.counts)
        plain["hands"] = [[player, hand.value] for player, hand in self.hands]
        return {key: value for key, value in plain.items() if value is not None and value != []}

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> Asked:
        read = {key: READ[key](value) for key, value in stored.items() if key in READ}
        return cls(**read)


def _plain(value: Any) -> Any:
    if isinstance(value, SaidFormat):
        return value.to_json()
    if isinstance(value, BallFacts):
        return facts_to_json(value)
    if isinstance(value, TraitAsked):
        return [value.trait, value.value, value.is_open]
    return list(value) if isinstance(value, tuple) else value


def facts_to_json(facts: BallFacts) -> dict[str, Any]:
    """Plain JSON, what is not said left out."""
    plain = {name: getattr(facts, name) for name in facts.__dataclass_fields__}
    return {name: value for name, value in plain.items() if value is not None}


def facts_from_json(stored: Mapping[str, Any]) -> BallFacts:
    kinds: Mapping[str, Any] = {"footing": Footing, "theirs": Depth, "ours": Depth, "spin": Spin}
    known = {name: value for name, value in stored.items() if name in _FACTS}
    return BallFacts(**{name: kinds.get(name, _same)(value) for name, value in known.items()})


def counts_to_json(counts: tuple[SaidCount, SaidCount] | None) -> list[Any] | None:
    return None if counts is None else [None if one is None else list(one) for one in counts]


def counts_from_json(stored: Any) -> tuple[SaidCount, SaidCount]:
    serving, receiving = (None if one is None else (one[0], one[1]) for one in stored)
    return serving, receiving


def maybe(kind: Any, value: Any) -> Any:
    """The value as that kind, None where it is absent."""
    return None if value is None else kind(value)


def _same(value: Any) -> Any:
    return value


_FACTS = frozenset(BallFacts.__dataclass_fields__)


READ: Mapping[str, Callable[[Any], Any]] = {
    "topic": Topic,
    "text": str,
    "about": tuple,
    "wing": Wing,
    "ball": BallQuality,
    "ball_kind": BallKind,
    "hitter_side": Side,
    "striker_side": Side,
    "pulled_wide": _same,
    "plays_left": _same,
    "we_serve": bool,
    "score": lambda value: SaidState(*value),
    "games": tuple,
    "format": SaidFormat.from_json,
    "lost_in_a_row": int,
    "timeouts_left": int,
    "tired": bool,
    "hot": bool,
    "has_change": bool,
    "toss_won": bool,
    "they_chose": TossChoice,
    "wind": Wind,
    "sun": bool,
    "background": bool,
    "rates": tuple,
    "counts": counts_from_json,
    "asker": _same,
    "hands": lambda value: tuple((player, Hand(hand)) for player, hand in value),
    "officiated": bool,
    "rule": str,
    "before": str,
    "facts": facts_from_json,
    "rally": SupposedRally,
    "trait": lambda value: TraitAsked(
        trait=Trait(value[0]), value=maybe(Value, value[1]), is_open=value[2:] == [True]
    ),
}
"""How each field is read back; a test holds it to the fields of Asked."""
