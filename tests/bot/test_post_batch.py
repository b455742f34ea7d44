"""The batch of turns: all of a turn or nothing of it, three tries, words never lost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import pytest
from sqlalchemy import Connection

from bot.chat.reply import Reply
from bot.post import Arrival, Incoming, IncomingKind, Outgoing, Turn, accept, answer, run_batch
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.session import Store, open_store
from scouting_db.values import AccountId, BookId, InboxRow, Micros

NOW = Micros(1_700_000_000_000_000)


@pytest.fixture
def store() -> Iterator[Store]:
    opened = open_store("sqlite://")
    yield opened
    opened.close()


@pytest.fixture
def account(store: Store) -> AccountId:
    with store.writing() as connection:
        return Directory(connection).account("console", "here")


def arrival(number: int, text: str = "hello", *, chat: str = "mira") -> Arrival:
    incoming = Incoming(
        kind=IncomingKind.TEXT, chat=chat, user_id=chat, user_name=chat, at=NOW, text=text
    )
    return Arrival(update_id=number, incoming=incoming)


def echo(_connection: Connection, row: InboxRow, *, now: Micros) -> tuple[Reply, ...]:  # noqa: ARG001
    return (Reply(text=f"echo {row.payload['text']}"),)


class FailingTurn:
    """Fails on texts that begin with "bad", after a write; counts how often it was asked."""

    def __init__(self, *, until: int | None = None) -> None:
        self._until = until
        self.asked: Counter[str] = Counter()

    def __call__(
        self, connection: Connection, row: InboxRow, /, *, now: Micros
    ) -> tuple[Reply, ...]:
        text = row.payload["text"]
        self.asked[text] += 1
        book_of(connection, row, now=now).add_note(f"written by {text}")
        if text.startswith("bad") and (self._until is None or self.asked[text] < self._until):
            raise RuntimeError(f"cannot do {text}")
        return (Reply(text=f"did {text}"),)


def book_of(connection: Connection, row: InboxRow, *, now: Micros) -> Book:
    directory = Directory(connection)
    chat = directory.chat_row(row.chat)
    person = directory.person(chat.account, row.payload["user_id"], row.payload["user_name"])
    book = directory.settle_book(chat, person, name="a book")
    return Book(connection, book, person=person, now=now)


def told(store: Store, account: AccountId, one: Arrival, turn: Turn) -> list[str]:
    return [reply.text for reply in answer(store, account, one, turn, now=NOW)]


def notes(store: Store, book: int = 1) -> list[tuple[str, bool]]:
    with store.reading() as connection:
        kept = Book(connection, BookId(book), person=None, now=NOW).recent_notes(limit=50)
    return [(note.text, note.unread) for note in kept]


def test_an_update_is_answered_once(store: Store, account: AccountId) -> None:
    assert told(store, account, arrival(1), echo) == ["echo hello"]
    assert told(store, account, arrival(1), echo) == []


def test_a_reply_can_be_found_by_its_number(store: Store, account: AccountId) -> None:
    def noted(_connection: Connection, _row: InboxRow, *, now: Micros) -> tuple[Reply, ...]:  # noqa: ARG001
        return (Reply(text="noted", about=("note", 64)), Reply(text="and more"))

    replies = answer(store, account, arrival(1), noted, now=NOW)
    assert [reply.about is not None for reply in replies] == [True, False]
    with store.reading() as connection:
        directory = Directory(connection)
        chat = directory.chat(account, "mira").chat
        about = directory.about_of(chat, 1)
    assert about == replies[0].about


def test_a_turn_that_fails_leaves_no_write_and_apologises_once(
    store: Store, account: AccountId
) -> None:
    turn = FailingTurn()
    told(store, account, arrival(1, "good"), turn)
    replies = told(store, account, arrival(2, "bad serve"), turn)
    assert turn.asked["bad serve"] == 3
    assert len(replies) == 1
    assert "did" not in replies[0]
    assert sorted(notes(store)) == [("bad serve", True), ("written by good", False)]


def test_a_turn_that_recovers_is_answered_without_apology(store: Store, account: AccountId) -> None:
    turn = FailingTurn(until=3)
    assert told(store, account, arrival(1, "bad luck"), turn) == ["did bad luck"]
    assert notes(store) == [("written by bad luck", False)]


def test_a_failing_row_holds_up_its_own_chat_only(store: Store, account: AccountId) -> None:
    turn = FailingTurn()
    said = [
        arrival(1, "bad", chat="mira"),
        arrival(2, "after", chat="mira"),
        arrival(3, "other", chat="tom"),
    ]
    with store.writing() as connection:
        accept(connection, account, said, now=NOW)
        done = run_batch(connection, account, turn, now=NOW)
    assert turn.asked == {"bad": 1, "other": 1}
    assert done.full, "more is open"
    with store.writing() as connection:
        run_batch(connection, account, turn, now=NOW)
        run_batch(connection, account, turn, now=NOW)
        run_batch(connection, account, turn, now=NOW)
    assert turn.asked == {"bad": 3, "after": 1, "other": 1}


def test_the_very_first_words_are_kept_too(store: Store, account: AccountId) -> None:
    told(store, account, arrival(1, "bad start"), FailingTurn())
    assert notes(store) == [("bad start", True)]


def test_words_of_a_failed_tap_are_not_made_a_note(store: Store, account: AccountId) -> None:
    turn = FailingTurn()
    told(store, account, arrival(1, "good"), turn)
    tap = Incoming(
        kind=IncomingKind.TAP, chat="mira", user_id="mira", user_name="mira", at=NOW, text="bad"
    )
    told(store, account, Arrival(update_id=2, incoming=tap), turn)
    assert notes(store) == [("written by good", False)]


def test_a_stranger_s_failed_words_stay_out_of_the_book(store: Store, account: AccountId) -> None:
    turn = FailingTurn()
    told(store, account, arrival(1, "good", chat="team"), turn)
    stranger = Incoming(
        kind=IncomingKind.TEXT, chat="team", user_id="x", user_name="X", at=NOW, text="bad idea"
    )
    replies = told(store, account, Arrival(update_id=2, incoming=stranger), turn)
    assert len(replies) == 1
    assert ("bad idea", True) not in notes(store)


def test_accepted_and_then_interrupted_is_answered_later(store: Store, account: AccountId) -> None:
    with store.writing() as connection:
        accept(connection, account, [arrival(1, "first")], now=NOW)
    assert told(store, account, arrival(2, "second"), echo) == ["echo first", "echo second"]


def test_the_log_says_where_it_failed_and_not_what_was_said(
    store: Store, account: AccountId, caplog: pytest.LogCaptureFixture
) -> None:
    told(store, account, arrival(1, "bad secret"), FailingTurn())
    assert "RuntimeError" in caplog.text
    assert "__call__" in caplog.text
    assert "secret" not in caplog.text


def test_messages_of_a_reply_are_stored_whole(store: Store, account: AccountId) -> None:
    said = Reply(text="line one\nline two")

    def turn(_connection: Connection, _row: InboxRow, *, now: Micros) -> tuple[Reply, ...]:  # noqa: ARG001
        return (said,)

    assert answer(store, account, arrival(1), turn, now=NOW) == (Outgoing(text=said.text),)
