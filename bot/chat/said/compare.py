"""What is asked across people: two sides held against each other, who of many is most so, and
whether one of them is.
"""

from __future__ import annotations

from enum import StrEnum

from bot.chat.said.mention import Mention
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Trait, Value


class Compared(StrEnum):
    """What is held against what."""

    SIDES = "sides"
    PAIRS = "pairs"
    PLAYERS = "players"
    WHO = "who"
    ONE = "one"


class Among(StrEnum):
    """Among whom somebody is looked for."""

    BOOK = "book"
    POOL = "pool"
    THEM = "them"


@dataclass(frozen=True, slots=True, kw_only=True)
class CompareAsked:
    """Two sides named; who is most dangerous, weakest, or has a trait most; whether one has it.

    `weakest` asks from the other end; `most` says that one is wanted and not everybody of that
    kind; `acts` that it is asked what to do, and not what they are.
    """

    text: str
    what: Compared
    sides: tuple[tuple[Mention, ...], ...] = ()
    among: Among = Among.BOOK
    weakest: bool = False
    most: bool = True
    acts: bool = False
    trait: Trait | None = None
    value: Value | None = None
