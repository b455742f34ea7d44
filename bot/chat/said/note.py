"""Notes: the words as typed, and the claims found in them."""

from __future__ import annotations

from bot.chat.said.mention import Mention
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId, Seen, Tag, Topic, Trait, Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """One claim of a note about one player's trait, with the words that carry it."""

    player: PlayerId
    trait: Trait
    value: Value
    weight: float
    span: tuple[int, int]
    denied: bool = False
    tag: Tag | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteSaid:
    """A note: the whole text, the claims found, and the words that no claim covers.

    `offered` are claims only half understood: nothing is made of them unless they are asked for.
    `may_ask` are topics to offer where the words may ask for advice as well. `corrects`: they are
    said instead of what the last note says ("no, she is right-handed"). `is_of_others`: its
    points and games are of another match than the one that is on, or of another day. `by_writer`:
    it tells of whoever writes, and nobody knows yet who that is.
    """

    text: str
    mentions: tuple[Mention, ...]
    claims: tuple[Claim, ...] = ()
    kept: tuple[str, ...] = ()
    seen: Seen = Seen.LIVE
    about_body: bool = False
    offered: tuple[Claim, ...] = ()
    may_ask: tuple[Topic, ...] = ()
    corrects: bool = False
    is_of_others: bool = False
    by_writer: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class WriteDownSaid:
    """What was answered or asked about just now is to be kept as a note: "write it down"."""

    text: str
