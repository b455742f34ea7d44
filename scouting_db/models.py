"""The tables, as typed models. The turn's path reads and writes them through Core statements.

Keys: everything of a book is keyed `(book_id, n)` and every reference inside a book is a
composite foreign key, so the database itself refuses a row of one book about a player of
another. A row's number comes from its book's version (scouting_db.book.Numbers).

Truths and what follows from them: the words of a note are truth and its observations are
derived; the entries of a match are truth and its score is a fold over them.
"""

from __future__ import annotations

from typing import Annotated, Any

from sqlalchemy import (
    BigInteger,
    Boolean,
    CheckConstraint,
    Float,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    String,
    UniqueConstraint,
)
from sqlalchemy.orm import Mapped, mapped_column
from sqlalchemy.types import JSON

from knowledge.vocabulary import (
    AgreementKey,
    BallQuality,
    Ending,
    Rate,
    Seen,
    Stroke,
    Tag,
    Topic,
    Trait,
    Value,
    Wing,
)
from scouting_db.base import (
    Base,
    Changed,
    Id,
    Json,
    KeyId,
    Micros,
    RowId,
    Typed,
    Word,
    Words,
    index_where,
    one_of,
)

BookKey = Annotated[
    int, mapped_column(ForeignKey("book.book_id", ondelete="CASCADE"), primary_key=True)
]


def _of_book(*columns: str, table: str, remote: str | None = None) -> ForeignKeyConstraint:
    """A reference that stays inside one book."""
    local = ["book_id", *columns]
    far = [f"{table}.book_id", f"{table}.{remote or columns[0]}"]
    return ForeignKeyConstraint(local, far)


class Account(Base):
    """One channel's own identity: a bot of the messenger, or a console."""

    __tablename__ = "account"
    __table_args__ = (one_of("channel", "console", "telegram"),)

    account_id: Mapped[RowId]
    channel: Mapped[Word]
    bot_ref: Mapped[Word] = mapped_column(unique=True)
    name: Mapped[str | None] = mapped_column(String(64))


class Person(Base):
    """Somebody who writes to us, whatever the channel."""

    __tablename__ = "person"
    __table_args__ = {"sqlite_autoincrement": True}  # noqa: RUF012

    person_id: Mapped[RowId]
    name: Mapped[Words]


class Identity(Base):
    """A person's id in one channel: the only place where external user ids stand."""

    __tablename__ = "identity"

    account_id: Mapped[int] = mapped_column(ForeignKey("account.account_id"), primary_key=True)
    external_user_id: Mapped[Word] = mapped_column(primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.person_id"), index=True)


class Book(Base):
    """One team's scouting data. `version` counts its changes: cache key, lock and ids in one.

    Each part bears the version that last wrote it (scouting_db.parts). The number of a deleted
    book is never given to another one.
    """

    __tablename__ = "book"
    __table_args__ = {"sqlite_autoincrement": True}  # noqa: RUF012

    book_id: Mapped[RowId]
    name: Mapped[Words]
    zone: Mapped[Word]
    version: Mapped[int] = mapped_column(BigInteger, default=0)
    people_version: Mapped[Changed]
    notes_version: Mapped[Changed]
    matches_version: Mapped[Changed]
    log_version: Mapped[Changed]
    settled_version: Mapped[Changed]


class Chat(Base):
    """A conversation: the only place where external chat ids stand.

    `posted` numbers its outbox; `book_since` is the last number of when another book was in use.
    """

    __tablename__ = "chat"
    __table_args__ = (UniqueConstraint("account_id", "external_chat_id"),)

    chat_id: Mapped[RowId]
    account_id: Mapped[int] = mapped_column(ForeignKey("account.account_id"))
    external_chat_id: Mapped[Word]
    is_group: Mapped[bool] = mapped_column(Boolean, default=False)
    book_id: Mapped[int | None] = mapped_column(ForeignKey("book.book_id"), index=True)
    context: Mapped[Json]
    blocked_at: Mapped[int | None] = mapped_column(BigInteger)
    posted: Mapped[int] = mapped_column(BigInteger, default=0)
    book_since: Mapped[int] = mapped_column(BigInteger, default=0, server_default="0")


class Preference(Base):
    """A book's own setting."""

    __tablename__ = "preference"

    book_id: Mapped[BookKey]
    key: Mapped[Word] = mapped_column(primary_key=True)
    value: Mapped[Words]


class Member(Base):
    """Who may read or edit a book."""

    __tablename__ = "member"
    __table_args__ = (one_of("role", "editor", "reader"),)

    book_id: Mapped[BookKey]
    person_id: Mapped[int] = mapped_column(
        ForeignKey("person.person_id"), primary_key=True, index=True
    )
    role: Mapped[Word]


class Invitation(Base):
    """A one-time key to a book: a handle to find it by, and a secret kept as a hash only.

    `attempts` counts wrong secrets. `made_by` must still be an editor when it is used.
    """

    __tablename__ = "invitation"
    __table_args__ = (one_of("role", "editor", "reader"),)

    handle: Mapped[Word] = mapped_column(primary_key=True)
    secret_hash: Mapped[bytes] = mapped_column(LargeBinary(32))
    book_id: Mapped[int] = mapped_column(ForeignKey("book.book_id", ondelete="CASCADE"), index=True)
    role: Mapped[Word]
    made_by: Mapped[int] = mapped_column(
        ForeignKey("person.person_id", ondelete="CASCADE"), index=True
    )
    expires_at: Mapped[Micros]
    used_at: Mapped[int | None] = mapped_column(BigInteger)
    attempts: Mapped[int] = mapped_column(Integer, default=0)


class WrongCode(Base):
    """How many wrong invitation codes a person sent since a moment."""

    __tablename__ = "wrong_code"

    person_id: Mapped[int] = mapped_column(
        ForeignKey("person.person_id", ondelete="CASCADE"), primary_key=True
    )
    since: Mapped[Micros]
    count: Mapped[int] = mapped_column(Integer)


class Player(Base):
    """Somebody on court, ours or theirs."""

    __tablename__ = "player"

    book_id: Mapped[BookKey]
    player_id: Mapped[KeyId]
    name: Mapped[Words]
    ours: Mapped[bool] = mapped_column(Boolean, default=False)
    merged_into: Mapped[int | None] = mapped_column(BigInteger)
    forgotten_at: Mapped[int | None] = mapped_column(BigInteger)


class Alias(Base):
    """A further way to name a player, folded; two players may share one: ambiguity is data."""

    __tablename__ = "alias"
    __table_args__ = (_of_book("player_id", table="player"),)

    book_id: Mapped[BookKey]
    folded: Mapped[str] = mapped_column(String(200), primary_key=True)
    player_id: Mapped[KeyId]
    words: Mapped[Words]


class Pair(Base):
    """Two players together, the smaller number first."""

    __tablename__ = "pair"
    __table_args__ = (
        _of_book("player_a", table="player", remote="player_id"),
        _of_book("player_b", table="player", remote="player_id"),
        UniqueConstraint("book_id", "player_a", "player_b"),
        CheckConstraint("player_a < player_b", name="ordered"),
    )

    book_id: Mapped[BookKey]
    pair_id: Mapped[KeyId]
    player_a: Mapped[Id]
    player_b: Mapped[Id]


class Agreement(Base):
    """What a pair of ours settled, and since when; the newest of a key counts."""

    __tablename__ = "agreement"
    __table_args__ = (_of_book("pair_id", table="pair"), one_of("key", *AgreementKey))

    book_id: Mapped[BookKey]
    pair_id: Mapped[KeyId]
    key: Mapped[Word] = mapped_column(primary_key=True)
    since: Mapped[int] = mapped_column(BigInteger, primary_key=True)
    value: Mapped[Words]
    words: Mapped[Words]


class Note(Base):
    """The words as typed, whole; deleting only marks them."""

    __tablename__ = "note"
    __table_args__ = (
        Index("ix_note_message", "chat_id", "external_message_id"),
        Index("ix_note_changed", "book_id", "changed"),
    )

    book_id: Mapped[BookKey]
    note_id: Mapped[KeyId]
    author: Mapped[int | None] = mapped_column(ForeignKey("person.person_id"))
    at: Mapped[Micros]
    text: Mapped[Words]
    chat_id: Mapped[int | None] = mapped_column(ForeignKey("chat.chat_id"))
    external_message_id: Mapped[int | None] = mapped_column(BigInteger)
    unread: Mapped[bool] = mapped_column(Boolean, default=False)
    deleted_at: Mapped[int | None] = mapped_column(BigInteger)
    changed: Mapped[Changed]


class Observation(Base):
    """A claim about one trait, derived from a note's words by `parser`, or corrected or tapped."""

    __tablename__ = "observation"
    __table_args__ = (
        _of_book("note_id", table="note"),
        _of_book("player_id", table="player"),
        one_of("trait", *Trait),
        one_of("value", *Value),
        one_of("seen", *Seen),
        one_of("tag", *Tag),
        one_of("origin", "parsed", "corrected", "tapped"),
        Index("ix_observation_player", "book_id", "player_id", "trait"),
    )

    book_id: Mapped[BookKey]
    note_id: Mapped[KeyId]
    n: Mapped[KeyId]
    player_id: Mapped[Id]
    trait: Mapped[Word]
    value: Mapped[Word]
    denied: Mapped[bool] = mapped_column(Boolean, default=False)
    weight: Mapped[float] = mapped_column(Float)
    seen: Mapped[Word]
    tag: Mapped[str | None] = mapped_column(String(64))
    span_from: Mapped[int | None] = mapped_column(Integer)
    span_to: Mapped[int | None] = mapped_column(Integer)
    origin: Mapped[Word]
    parser: Mapped[int] = mapped_column(Integer)


class Event(Base):
    """A tournament or a day of play."""

    __tablename__ = "event"

    book_id: Mapped[BookKey]
    event_id: Mapped[KeyId]
    name: Mapped[Words]
    starts_at: Mapped[int | None] = mapped_column(BigInteger)


class Match(Base):
    """Our pair against theirs; its score is a fold over its entries."""

    __tablename__ = "match"
    __table_args__ = (
        _of_book("event_id", table="event"),
        _of_book("our_pair", table="pair", remote="pair_id"),
        _of_book("their_pair", table="pair", remote="pair_id"),
        one_of("state", "announced", "running", "over"),
        Index("ix_match_their_pair", "book_id", "their_pair"),
        Index("ix_match_changed", "book_id", "changed"),
    )

    book_id: Mapped[BookKey]
    match_id: Mapped[KeyId]
    event_id: Mapped[int | None] = mapped_column(BigInteger)
    our_pair: Mapped[int | None] = mapped_column(BigInteger)
    their_pair: Mapped[int | None] = mapped_column(BigInteger)
    format: Mapped[Json]
    state: Mapped[Word]
    made_at: Mapped[Micros]
    starts_at: Mapped[int | None] = mapped_column(BigInteger)
    court: Mapped[str | None] = mapped_column(String(64))
    changed: Mapped[Changed]


class Entry(Base):
    """One line of a match's log, only ever appended: a rally, a score, a time-out, a void."""

    __tablename__ = "entry"
    __table_args__ = (
        _of_book("match_id", table="match"),
        one_of("kind", "game", "rally", "score", "timeout", "sides", "ends", "result", "void"),
        one_of("won_by", "us", "them"),
    )

    book_id: Mapped[BookKey]
    match_id: Mapped[KeyId]
    n: Mapped[KeyId]
    game_no: Mapped[int] = mapped_column(Integer)
    kind: Mapped[Word]
    at: Mapped[Micros]
    person_id: Mapped[int | None] = mapped_column(ForeignKey("person.person_id"))
    inbox_id: Mapped[int | None] = mapped_column(BigInteger)
    won_by: Mapped[str | None] = mapped_column(String(8))
    ours: Mapped[int | None] = mapped_column(Integer)
    theirs: Mapped[int | None] = mapped_column(Integer)
    server: Mapped[int | None] = mapped_column(Integer)
    we_serve: Mapped[bool | None] = mapped_column(Boolean)
    detail: Mapped[dict[str, Any] | None] = mapped_column(JSON(none_as_null=True))
    voids: Mapped[int | None] = mapped_column(BigInteger)


class Rally(Base):
    """What is known of a rally beyond who won it."""

    __tablename__ = "rally"
    __table_args__ = (
        ForeignKeyConstraint(
            ["book_id", "match_id", "n"], ["entry.book_id", "entry.match_id", "entry.n"]
        ),
        _of_book("by_player", table="player", remote="player_id"),
        one_of("ending", *Ending),
        one_of("stroke", *Stroke),
        one_of("wing", *Wing),
    )

    book_id: Mapped[BookKey]
    match_id: Mapped[KeyId]
    n: Mapped[KeyId]
    ending: Mapped[str | None] = mapped_column(String(64))
    by_player: Mapped[int | None] = mapped_column(BigInteger)
    stroke: Mapped[str | None] = mapped_column(String(64))
    wing: Mapped[str | None] = mapped_column(String(64))
    words: Mapped[str | None] = mapped_column(Typed)


class RallyRate(Base):
    """What a player did or did not do in a rally: one datum of one of their rates."""

    __tablename__ = "rally_rate"
    __table_args__ = (
        ForeignKeyConstraint(
            ["book_id", "match_id", "n"], ["entry.book_id", "entry.match_id", "entry.n"]
        ),
        _of_book("player_id", table="player"),
        one_of("rate", *Rate),
        Index("ix_rally_rate_player", "book_id", "player_id", "rate"),
    )

    book_id: Mapped[BookKey]
    match_id: Mapped[KeyId]
    n: Mapped[KeyId]
    player_id: Mapped[KeyId]
    rate: Mapped[Word] = mapped_column(primary_key=True)
    made: Mapped[bool] = mapped_column(Boolean)


class Choice(Base):
    """What we chose in a rally, recorded before or regardless of its end: what evidence counts."""

    __tablename__ = "choice"
    __table_args__ = (
        ForeignKeyConstraint(
            ["book_id", "match_id", "n"], ["entry.book_id", "entry.match_id", "entry.n"]
        ),
        _of_book("against_player", table="player", remote="player_id"),
        one_of("topic", *Topic),
        one_of("ball", *BallQuality),
        one_of("tagged", "before", "after"),
    )

    book_id: Mapped[BookKey]
    match_id: Mapped[KeyId]
    n: Mapped[KeyId]
    topic: Mapped[Word] = mapped_column(primary_key=True)
    option: Mapped[Word]
    ball: Mapped[str | None] = mapped_column(String(64))
    against_player: Mapped[int | None] = mapped_column(BigInteger)
    tagged: Mapped[Word]


class Plan(Base):
    """A game plan as it was given, so that it can be recalled and compared."""

    __tablename__ = "plan"
    __table_args__ = (
        _of_book("our_pair", table="pair", remote="pair_id"),
        _of_book("their_pair", table="pair", remote="pair_id"),
        Index("ix_plan_pairs", "book_id", "their_pair", "made_at"),
    )

    book_id: Mapped[BookKey]
    plan_id: Mapped[KeyId]
    our_pair: Mapped[int | None] = mapped_column(BigInteger)
    their_pair: Mapped[int | None] = mapped_column(BigInteger)
    variant: Mapped[Word]
    lines: Mapped[list[Any]] = mapped_column(JSON)
    made_at: Mapped[Micros]
    book_version: Mapped[int] = mapped_column(BigInteger)


class Change(Base):
    """What a turn changed, with what stood before: undo of anything."""

    __tablename__ = "change"
    __table_args__ = (Index("ix_change_chat", "chat_id", "book_id", "change_id"),)

    book_id: Mapped[BookKey]
    change_id: Mapped[KeyId]
    chat_id: Mapped[int | None] = mapped_column(ForeignKey("chat.chat_id"))
    inbox_id: Mapped[int | None] = mapped_column(BigInteger)
    verb: Mapped[Word]
    targets: Mapped[Json]
    before: Mapped[Json]
    undone_at: Mapped[int | None] = mapped_column(BigInteger)


class Reminder(Base):
    """A nudge in one chat before a match, claimed once.

    `starts_wall` and `zone` say when the match begins as its people said it; `due_utc` follows
    from them and from how long before.
    """

    __tablename__ = "reminder"
    __table_args__ = (
        _of_book("match_id", table="match"),
        UniqueConstraint("book_id", "match_id", "chat_id"),
        index_where("ix_reminder_due", "chat_id", "due_utc", where="claimed_at IS NULL"),
    )

    book_id: Mapped[BookKey]
    reminder_id: Mapped[KeyId]
    match_id: Mapped[Id]
    chat_id: Mapped[int] = mapped_column(ForeignKey("chat.chat_id"))
    minutes_before: Mapped[int] = mapped_column(Integer)
    starts_wall: Mapped[Word]
    zone: Mapped[Word]
    due_utc: Mapped[Micros]
    claimed_at: Mapped[int | None] = mapped_column(BigInteger)


class Inbox(Base):
    """What came in, stored before it is confirmed to the channel, once per update id."""

    __tablename__ = "inbox"
    __table_args__ = (
        UniqueConstraint("account_id", "update_id"),
        one_of("state", "open", "done", "failed"),
        index_where("ix_inbox_open", "chat_id", "inbox_id", where="state = 'open'"),
    )

    inbox_id: Mapped[RowId]
    account_id: Mapped[int] = mapped_column(ForeignKey("account.account_id"))
    update_id: Mapped[int] = mapped_column(BigInteger)
    chat_id: Mapped[int] = mapped_column(ForeignKey("chat.chat_id"))
    kind: Mapped[Word]
    external_message_id: Mapped[int | None] = mapped_column(BigInteger)
    payload: Mapped[Json]
    received_at: Mapped[Micros]
    state: Mapped[Word]
    attempts: Mapped[int] = mapped_column(Integer, default=0)
    error: Mapped[str | None] = mapped_column(Typed)


class Outbox(Base):
    """What goes out, written in the turn's own transaction; `about` says what it speaks of."""

    __tablename__ = "outbox"
    __table_args__ = (
        UniqueConstraint("inbox_id", "n"),
        one_of("kind", "send", "photo", "edit", "document"),
        one_of("state", "waiting", "sending", "sent", "dropped"),
        Index("ix_outbox_message", "chat_id", "external_message_id"),
        index_where(
            "ix_outbox_unsent", "chat_id", "outbox_id", where="state IN ('waiting', 'sending')"
        ),
    )

    chat_id: Mapped[int] = mapped_column(ForeignKey("chat.chat_id"), primary_key=True)
    outbox_id: Mapped[KeyId]
    inbox_id: Mapped[int | None] = mapped_column(ForeignKey("inbox.inbox_id"))
    n: Mapped[int] = mapped_column(Integer)
    kind: Mapped[Word]
    payload: Mapped[Json]
    about_kind: Mapped[str | None] = mapped_column(String(64))
    about_id: Mapped[int | None] = mapped_column(BigInteger)
    priority: Mapped[int] = mapped_column(Integer, default=0)
    state: Mapped[Word]
    attempts: Mapped[int] = mapped_column(Integer, default=0)
    next_try_at: Mapped[Micros]
    lease_until: Mapped[int | None] = mapped_column(BigInteger)
    external_message_id: Mapped[int | None] = mapped_column(BigInteger)
    dropped_because: Mapped[str | None] = mapped_column(Typed)
