"""What the two doors return: plain values, never rows of the database."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Any, NewType

from knowledge.dataclass import dataclass
from knowledge.evidence import Observation
from knowledge.given_plan import GivenLine
from knowledge.vocabulary import (
    AgreementKey,
    BallQuality,
    Ending,
    EvidenceId,
    PlayerId,
    Rate,
    Seen,
    Stroke,
    Tag,
    Topic,
    Trait,
    Value,
    Wing,
)

AccountId = NewType("AccountId", int)
PersonId = NewType("PersonId", int)
ChatId = NewType("ChatId", int)
BookId = NewType("BookId", int)
NoteId = NewType("NoteId", int)
PairId = NewType("PairId", int)
MatchId = NewType("MatchId", int)
EventId = NewType("EventId", int)
PlanId = NewType("PlanId", int)
ChangeId = NewType("ChangeId", int)
ReminderId = NewType("ReminderId", int)
InboxId = NewType("InboxId", int)
OutboxId = NewType("OutboxId", int)
Micros = NewType("Micros", int)
"""Microseconds since 1970, UTC."""


class Role(StrEnum):
    EDITOR = "editor"
    READER = "reader"


class Part(StrEnum):
    """A part of a book: the roster with its pairs, notes, matches, what happened in them, and what
    was settled (agreements, preferences, plans)."""

    PEOPLE = "people"
    NOTES = "notes"
    MATCHES = "matches"
    LOG = "log"
    SETTLED = "settled"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stamps:
    """The book's version that last wrote each part: what was read of a part holds while its stamp
    is the same."""

    people: int = 0
    notes: int = 0
    matches: int = 0
    log: int = 0
    settled: int = 0

    def of(self, *parts: Part) -> int:
        """One stamp for several parts: a write to any of them is a version not seen before."""
        return max(int(getattr(self, part.value)) for part in parts)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChatRow:
    """A chat: its book if it has one (with its version and zone), and its context as stored."""

    chat: ChatId
    account: AccountId
    external_chat_id: str
    is_group: bool
    book: BookId | None
    context: Mapping[str, Any]
    blocked: bool
    version: int | None = None
    zone: str | None = None
    stamps: Stamps | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CallerRow:
    """Who writes in which chat; `role` is theirs in the chat's book. None: nobody we know yet."""

    chat: ChatRow
    person: PersonId | None
    name: str | None
    role: Role | None


@dataclass(frozen=True, slots=True, kw_only=True)
class MemberRow:
    """Who may use a book, and how."""

    person: PersonId
    name: str
    role: Role


@dataclass(frozen=True, slots=True, kw_only=True)
class BookRow:
    """A book: its name, its time zone and the count of its changes."""

    book: BookId
    name: str
    zone: str
    version: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Membership:
    """A book somebody may use, and how. `is_group_s`: a group chat speaks of it."""

    book: BookId
    name: str
    role: Role
    is_group_s: bool = False


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


class MatchState(StrEnum):
    ANNOUNCED = "announced"
    RUNNING = "running"
    OVER = "over"


class EntryKind(StrEnum):
    """What a line of the match log says."""

    GAME = "game"
    RALLY = "rally"
    SCORE = "score"
    TIMEOUT = "timeout"
    SIDES = "sides"
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
class MeetingLog:
    """The log of one match between two pairs, with its format as stored and when it was made."""

    match: MatchId
    format: Mapping[str, Any]
    made_at: Micros
    entries: tuple[EntryRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteChanges:
    """The numbers of notes that were written, changed or taken back, and what they say now."""

    notes: frozenset[int] = frozenset()
    observations: tuple[Observation, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedMatch:
    """A match of ours with a log: against whom, its format as stored, and how long the log is.

    A log is only ever appended to, so its match, format and length say all that is in it.
    """

    match: MatchId
    their_pair: PairRow
    format: Mapping[str, Any]
    made_at: Micros
    lines: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AlreadyCounted:
    """A tap that expected to be entry `expected`, while the log already has `last` entries."""

    expected: int
    last: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RallyRow:
    """What is known of rally `n` of a match beyond who won it."""

    match: MatchId
    n: int
    ending: Ending | None = None
    by_player: PlayerId | None = None
    stroke: Stroke | None = None
    wing: Wing | None = None
    words: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RateRow:
    """One datum of a player's rate from rally `n` of a match."""

    match: MatchId
    n: int
    player: PlayerId
    rate: Rate
    made: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldNote:
    """One claim as it stands in its note: the words that carry it, who wrote them, for which day.

    `words` are those of the claim to the end of its clause, or the whole note where no part of it
    carries it.
    """

    evidence: EvidenceId
    player: PlayerId
    words: str
    author: str | None
    day: int
    heard: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldRally:
    """One logged rally as told: who won it, when (`day` is the book's own), and how it ended."""

    evidence: EvidenceId
    day: int
    clock: str
    won_by: Winner | None
    ending: Ending | None = None
    by_player: PlayerId | None = None
    stroke: Stroke | None = None
    words: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldMatch:
    """One match whose rallies count: against whom, and how many of them stand."""

    evidence: EvidenceId
    day: int
    theirs: tuple[PlayerId, ...]
    rallies: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceRow:
    """What we chose in rally `n` of a match; `tagged_before` its end is the better evidence."""

    match: MatchId
    n: int
    topic: Topic
    option: str
    ball: BallQuality | None = None
    against: PlayerId | None = None
    tagged_before: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class EventRow:
    event: EventId
    name: str
    starts_at: Micros | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchRow:
    match: MatchId
    our_pair: PairRow | None
    their_pair: PairRow | None
    format: Mapping[str, Any]
    state: MatchState
    made_at: Micros
    starts_at: Micros | None = None
    court: str | None = None
    event: EventId | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRow:
    plan: PlanId
    their_pair: PairId | None
    variant: str
    lines: tuple[GivenLine, ...]
    made_at: Micros


@dataclass(frozen=True, slots=True, kw_only=True)
class ReminderRow:
    """A reminder in a chat, `minutes_before` a match that begins at the wall time in the zone."""

    reminder: ReminderId
    match: MatchId
    chat: ChatId
    minutes_before: int
    starts_wall: str
    zone: str
    due: Micros


@dataclass(frozen=True, slots=True, kw_only=True)
class DueReminder:
    """A reminder just claimed: its book too, since a claim looks at every book."""

    book: BookId
    row: ReminderRow


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
class Waiting:
    """How many rows wait in the inbox or the outbox, and since when the oldest does."""

    count: int
    since: Micros | None


class PostKind(StrEnum):
    """What the channel does with a row of the outbox."""

    SEND = "send"
    PHOTO = "photo"
    EDIT = "edit"
    DOCUMENT = "document"


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """The stored thing a sent message speaks of, such as ("note", 64)."""

    kind: str
    id: int


REPLY = 0
REMINDER = 1
"""Priorities of the outbox: the smaller number goes first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPost:
    """A message to put in the outbox."""

    payload: Mapping[str, Any]
    kind: PostKind = PostKind.SEND
    about: About | None = None
    priority: int = REPLY


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """The channel took a message; `external_message_id` is its number there, if it told one."""

    chat: ChatId
    outbox: OutboxId
    external_message_id: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OutboxRow:
    """A reply to send: `payload` is its content as JSON, pictures as their specification."""

    chat: ChatId
    outbox: OutboxId
    external_chat_id: str
    kind: PostKind
    payload: Mapping[str, Any]
    priority: int
    attempts: int
    is_group: bool = False
