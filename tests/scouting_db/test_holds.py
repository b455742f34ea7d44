"""Which worker may send to a chat: one at a time, free when it ends, lost when its connection is.

Beside the checks: PostgreSQL 15 documentation, "Explicit Locking", "Advisory Locks": a session's
locks are held until released or until the session ends; a shared lock excludes only the exclusive
one; locks of a transaction go with it.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from databases import NOON, new_team
from sqlalchemy import text

from scouting_db.directory import Directory
from scouting_db.holds import ChatHolds, HoldsLostError
from scouting_db.lock_keys import KIND_SHIFT, LockKind, lock_key
from scouting_db.session import Store
from scouting_db.sole import AlreadyRunningError, sole_worker
from scouting_db.values import AccountId, ChatId, Micros

NAME = "telegram-1"
HERE, THERE = ChatId(1), ChatId(2)


@pytest.fixture
def shared(store: Store) -> Store:
    if store.engine.dialect.name != "postgresql":
        pytest.skip("on SQLite one process works alone")
    return store


@pytest.fixture
def workers(shared: Store) -> Iterator[tuple[ChatHolds, ChatHolds]]:
    one, other = ChatHolds(shared, NAME), ChatHolds(shared, NAME)
    one.open(patience_s=0)
    other.open(patience_s=0)
    yield one, other
    one.close()
    other.close()


def end_connection(store: Store, holds: ChatHolds) -> None:
    """As a database that restarts would."""
    number = holds._connected.execute(text("SELECT pg_backend_pid()")).scalar_one()
    with store.engine.connect() as connection:
        connection.execute(text("SELECT pg_terminate_backend(:n, 5000)"), {"n": number})


@pytest.mark.postgres
def test_a_chat_is_held_by_one_until_it_lets_go(workers: tuple[ChatHolds, ChatHolds]) -> None:
    one, other = workers
    assert one.take([HERE, THERE]) == {HERE, THERE}
    assert one.take([HERE]) == set(), "ours before"
    assert other.take([HERE, ChatId(3)]) == {ChatId(3)}
    one.release([HERE])
    assert one.held == {THERE}
    assert other.take([HERE, THERE]) == {HERE}
    assert one.workers() == other.workers() == 2


@pytest.mark.postgres
def test_what_a_dead_worker_held_is_free(
    shared: Store, workers: tuple[ChatHolds, ChatHolds]
) -> None:
    one, other = workers
    one.take([HERE])
    end_connection(shared, one)
    assert other.take([HERE]) == {HERE}
    assert other.workers() == 1


@pytest.mark.postgres
def test_a_lost_connection_is_told_until_all_sending_has_stopped(
    shared: Store, workers: tuple[ChatHolds, ChatHolds]
) -> None:
    one, other = workers
    one.take([HERE])
    end_connection(shared, one)
    for _ in range(2):
        with pytest.raises(HoldsLostError):
            one.check()
    assert one.held == set()
    assert other.take([HERE]) == {HERE}
    one.recover()
    one.check()
    assert one.take([HERE, THERE]) == {THERE}


@pytest.mark.postgres
def test_workers_and_a_process_by_itself_exclude_each_other(shared: Store) -> None:
    holds = ChatHolds(shared, NAME)
    with sole_worker(shared, NAME), pytest.raises(AlreadyRunningError):
        holds.open(patience_s=0)
    holds.open(patience_s=0)
    with pytest.raises(AlreadyRunningError), sole_worker(shared, NAME, patience_s=0):
        pass
    with sole_worker(shared, "telegram-2", patience_s=0):
        pass
    holds.close()
    with sole_worker(shared, NAME, patience_s=0):
        pass


@pytest.mark.postgres
def test_a_message_comes_in_while_a_turn_of_its_chat_runs(shared: Store) -> None:
    """PostgreSQL, "Row-Level Locks": FOR NO KEY UPDATE lets FOR KEY SHARE through, which the
    reference from a new row takes."""
    team = new_team(shared, "Mira")
    with shared.writing() as turn:
        accept(Directory(turn), team.account, team.chat, 1)
    with shared.writing() as turn:
        assert len(Directory(turn).claim(team.account)) == 1
        with shared.writing() as other:
            other.execute(text("SET LOCAL lock_timeout = '3s'"))
            accept(Directory(other), team.account, team.chat, 2)


@pytest.mark.postgres
def test_chats_of_one_book_are_one_worker_s_at_a_time(shared: Store) -> None:
    """So that what a turn read of the book still holds when it writes."""
    team, tom = new_team(shared, "Mira"), new_team(shared, "Tom")
    with shared.writing() as connection:
        directory = Directory(connection)
        second = directory.chat(team.account, "second").chat
        connection.execute(
            text("UPDATE chat SET book_id = :b WHERE chat_id = :c"),
            {"b": team.book_id, "c": second},
        )
        for n, chat in enumerate((team.chat, second, tom.chat)):
            accept(directory, team.account, chat, n)
    with shared.writing() as one, shared.writing() as two, shared.writing() as three:
        first = Directory(one).claim(team.account, chats=1)
        others = [Directory(each).claim(team.account) for each in (two, three)]
        claims = [first, *others]
    assert [[row.chat for row in each] for each in claims] == [[team.chat], [tom.chat], []]


@pytest.mark.postgres
def test_rows_are_committed_in_the_order_of_their_numbers(shared: Store) -> None:
    """Else a worker could handle a chat's second message before it can see the first."""
    team = new_team(shared, "Mira")
    began, second = threading.Event(), threading.Thread(target=lambda: accept_later())
    seen: list[list[int]] = []

    def accept_later() -> None:
        began.set()
        with shared.writing() as connection:
            directory = Directory(connection)
            directory.take_turns_accepting(team.account)
            accept(directory, team.account, team.chat, 2)
        with shared.reading() as connection:
            found = connection.execute(text("SELECT update_id FROM inbox ORDER BY inbox_id"))
            seen.append(list(found.scalars()))

    with shared.writing() as connection:
        directory = Directory(connection)
        directory.take_turns_accepting(team.account)
        accept(directory, team.account, team.chat, 1)
        second.start()
        began.wait()
        second.join(timeout=0.3)
        assert seen == [], "waits for us"
    second.join()
    assert seen == [[1, 2]]


def accept(directory: Directory, account: AccountId, chat: ChatId, update: int) -> None:
    directory.accept(
        account,
        update_id=update,
        chat=chat,
        kind="text",
        external_message_id=update,
        payload={"text": str(update)},
        now=Micros(NOON),
    )


@pytest.mark.parametrize("kind", LockKind)
def test_keys_of_different_locks_differ(kind: LockKind) -> None:
    largest = (1 << KIND_SHIFT) - 1
    assert lock_key(kind, 0) != lock_key(kind, largest)
    assert all(lock_key(kind, largest) != lock_key(each, 0) for each in LockKind)
    assert lock_key(kind, largest) < 2**63, "a bigint"
    for number in (-1, largest + 1):
        with pytest.raises(ValueError, match="no lock"):
            lock_key(kind, number)
