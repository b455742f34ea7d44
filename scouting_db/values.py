"""What the two doors return: plain values, never rows of the database."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, NewType

from knowledge.vocabulary import AgreementKey, PlayerId, Seen, Tag, Trait, Value

AccountId = NewType("AccountId", int)
PersonId = NewType("PersonId", int)
ChatId = NewType("ChatId", int)
BookId = NewType("BookId", int)
NoteId = NewType("NoteId", int)
PairId = NewType("PairId", int)
MatchId = NewType("MatchId", int)
PlanId = NewType("PlanId", int)
ChangeId = NewType("ChangeId", int)
InboxId = NewType("InboxId", int)
OutboxId = NewType("OutboxId", int)
Micros = NewType("Micros", int)
"""Microseconds since 1970, UTC."""


class Role(StrEnum):
    EDITOR = "editor"
    READER = "reader"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChatRow:
    """A chat: its book if it has one, and its context as stored."""

    chat: ChatId
    account: AccountId
    external_chat_id: str
    is_group: bool
    book: BookId | None
    context: Mapping[str, Any]
    blocked: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayerRow:
    """A player with every further way to name them, as typed."""

    player: PlayerId
    name: str
    ours: bool
    aliases: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PairRow:
    pair: PairId
    players: tuple[PlayerId, PlayerId]


@dataclass(frozen=True, slots=True, kw_only=True)
class NewObservation:
    """A claim to store with a note; the book numbers it."""

    player: PlayerId
    trait: Trait
    value: Value
    weight: float
    seen: Seen
    denied: bool = False
    tag: Tag | None = None
    span: tuple[int, int] | None = None
    origin: str = "parsed"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteRow:
    """A note: the words whole, and what was understood of them."""

    note: NoteId
    text: str
    author: str | None
    at: Micros
    observations: tuple[NewObservation, ...]
    unread: bool = False
    deleted: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class AgreementRow:
    key: AgreementKey
    value: str
    words: str
    since: Micros


class EntryKind(StrEnum):
    """A line of the match log."""

    GAME = "game"
    RALLY = "rally"
    SCORE = "score"
    TIMEOUT = "timeout"
    SIDES = "sides"
    ENDS = "ends"
    RESULT = "result"
    VOID = "void"


class Winner(StrEnum):
    US = "us"
    THEM = "them"


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryRow:
    """One unerasable line of the match log; a `void` entry takes entry `voids` out."""

    n: int
    game_no: int
    kind: EntryKind
    at: Micros
    won_by: Winner | None = None
    ours: int | None = None
    theirs: int | None = None
    server: int | None = None
    we_serve: bool | None = None
    detail: Mapping[str, Any] | None = None
    voids: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchRow:
    match: MatchId
    our_pair: PairRow | None
    their_pair: PairRow | None
    format: Mapping[str, Any]
    state: str
    made_at: Micros
    starts_at: Micros | None = None
    court: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRow:
    plan: PlanId
    their_pair: PairId | None
    variant: str
    lines: tuple[str, ...]
    made_at: Micros


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeRow:
    """A change that can be undone: what was done to what, and what stood before."""

    change: ChangeId
    verb: str
    targets: Mapping[str, Any]
    before: Mapping[str, Any]
    undone: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class InboxRow:
    """An accepted update that waits for its turn (or waited, when handed back)."""

    inbox: InboxId
    chat: ChatId
    kind: str
    external_message_id: int | None
    payload: Mapping[str, Any]
    attempts: int


@dataclass(frozen=True, slots=True, kw_only=True)
class OutboxRow:
    """A reply to send: `payload` is its content as JSON, pictures as their specification."""

    chat: ChatId
    outbox: OutboxId
    external_chat_id: str
    kind: str
    payload: Mapping[str, Any]
    priority: int
    attempts: int
