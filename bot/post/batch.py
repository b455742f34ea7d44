"""A batch of turns in one transaction: each row in a savepoint with its replies and its end."""

from __future__ import annotations

import logging
import traceback
from collections.abc import Sequence
from enum import Enum, auto
from typing import Protocol

from sqlalchemy import Connection

from bot.chat.private_words import is_private
from bot.chat.reply import Reply
from bot.chat.wording import wording
from bot.post.incoming import Incoming, IncomingKind
from bot.post.outgoing import NO_LIMITS, Limits, messages_of
from knowledge.dataclass import dataclass
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.passing import is_passing
from scouting_db.session import savepoint
from scouting_db.values import AccountId, ChatId, InboxId, InboxRow, Micros, OutboxRow, Role

log = logging.getLogger(__name__)

BATCH_ROWS = 25
"""Rows handled in one transaction; at a few milliseconds each the writer stays answerable."""


class Turn(Protocol):
    """One message handled: reads and writes through the connection, returns what to say."""

    def __call__(
        self, connection: Connection, row: InboxRow, /, *, now: Micros
    ) -> tuple[Reply, ...]: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """What a batch did: rows whose turn was taken, how many of them failed, and for how many of
    those it was the last attempt. `full` says that more may be open; `busy` that what is open is
    in the hands of other workers. `leased` are the replies that the sender is handed at once.
    """

    handled: int
    failed: int
    full: bool
    given_up: int = 0
    busy: bool = False
    leased: tuple[OutboxRow, ...] = ()


def run_batch(
    connection: Connection,
    account: AccountId,
    turn: Turn,
    *,
    now: Micros,
    limits: Limits = NO_LIMITS,
    rows: int = BATCH_ROWS,
    lease_until: Micros | None = None,
) -> Batch:
    """Handle open rows of the account; the caller's transaction commits their effects together.

    A turn that raises is undone alone and tried again in a later batch, before its chat's later
    rows; the last attempt gives up with an apology and keeps the words as an unread note. Where
    the database refuses (scouting_db.passing) that leaves here: no turn is to blame, and nothing
    of the batch stands.

    The account's one sender gives `lease_until`: replies that may go at once are leased to it as
    they are posted, so that nobody needs to look for them.
    """
    directory = Directory(connection)
    claimed = directory.claim(account, limit=rows)
    stuck: set[ChatId] = set()
    ended: list[_End] = []
    done: list[InboxId] = []
    leased: list[OutboxRow] = []
    posting = _Posting(now=now, limits=limits, lease_until=lease_until)
    for row in claimed:
        if row.chat in stuck:
            continue
        end = _handle(connection, directory, row, turn, posting, leased)
        ended.append(end)
        if end is _End.DONE:
            done.append(row.inbox)
        else:
            stuck.add(row.chat)
    directory.close_rows(done)
    some_only = directory.claims_some_chats
    return Batch(
        handled=len(ended),
        failed=len(ended) - ended.count(_End.DONE),
        full=len(claimed) == rows or bool(stuck) or (some_only and bool(claimed)),
        given_up=ended.count(_End.GIVEN_UP),
        busy=some_only and not claimed and directory.waiting_rows(account).count > 0,
        leased=tuple(leased),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Posting:
    """How the replies of a batch are put in the outbox."""

    now: Micros
    limits: Limits
    lease_until: Micros | None = None


class _End(Enum):
    DONE = auto()
    AGAIN = auto()
    GIVEN_UP = auto()


def _handle(
    connection: Connection,
    directory: Directory,
    row: InboxRow,
    turn: Turn,
    posting: _Posting,
    leased: list[OutboxRow],
) -> _End:
    """`leased` gets what the sender is to be handed."""
    try:
        with savepoint(connection):
            replies = turn(connection, row, now=posting.now)
            to_send = _post(directory, row, replies, posting)
    except Exception as error:
        if is_passing(error):
            # Nothing is wrong with the message: everything of this batch is tried again.
            raise
        gave_up = _fail(connection, directory, row, error, now=posting.now)
        return _End.GIVEN_UP if gave_up else _End.AGAIN
    leased += to_send
    return _End.DONE


def _post(
    directory: Directory, row: InboxRow, replies: Sequence[Reply], posting: _Posting
) -> tuple[OutboxRow, ...]:
    messages = [one for reply in replies for one in messages_of(reply, posting.limits)]
    posts = [one.to_post() for one in messages]
    if posting.lease_until is None:
        directory.post(row.chat, row.inbox, posts, now=posting.now)
        return ()
    return directory.post_leased(
        row.chat, row.inbox, posts, now=posting.now, until=posting.lease_until
    )


def _fail(
    connection: Connection, directory: Directory, row: InboxRow, error: Exception, *, now: Micros
) -> bool:
    """Count the attempt; True where it was the last.

    The log says where it failed; the error's own text may quote a user.
    """
    log.error("inbox row %d failed (attempt %d): %s", row.inbox, row.attempts + 1, _where(error))
    if not directory.fail_row(row.inbox, f"{type(error).__name__}: {error}"):
        return False
    with savepoint(connection):
        apology = Reply(text=wording("apology"))
        _post(directory, row, (apology,), _Posting(now=now, limits=NO_LIMITS))
    try:
        with savepoint(connection):
            _keep_words(connection, directory, row, now=now)
    except Exception as second:
        if is_passing(second):
            raise
        # The words still stand in the inbox row; the apology must go out all the same.
        log.error("words of inbox row %d stay in the inbox only: %s", row.inbox, _where(second))
    return True


def _where(error: Exception) -> str:
    frames = "".join(traceback.format_tb(error.__traceback__))
    return f"{type(error).__name__}\n{frames}"


def _keep_words(
    connection: Connection, directory: Directory, row: InboxRow, *, now: Micros
) -> None:
    """The words as an unread note of the chat's book, where the writer may write there.

    Not what no note may say.
    """
    incoming = Incoming.from_json(row.payload)
    if incoming.kind not in (IncomingKind.TEXT, IncomingKind.EDIT) or not incoming.text.strip():
        return
    chat = directory.chat_row(row.chat)
    if is_private(incoming.text) or (chat.is_group and chat.book is None):
        return
    person = directory.person(chat.account, incoming.user_id, incoming.user_name)
    book = directory.settle_book(chat, person, name=f"{incoming.user_name}'s book")
    if directory.role(book, person) is not Role.EDITOR:
        return
    Book(connection, book, person=person, now=now).add_note(
        incoming.text,
        chat=row.chat,
        external_message_id=row.external_message_id,
        unread=True,
    )
