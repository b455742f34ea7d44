"""The inbox and the outbox: once per update, in order per chat, nothing lost in between."""

from __future__ import annotations

import threading

import pytest
from databases import NOON, Team, new_team, watched
from sqlalchemy.exc import IntegrityError

from scouting_db.directory import Directory
from scouting_db.directory.inbox import MAX_ATTEMPTS
from scouting_db.session import Store
from scouting_db.values import (
    REMINDER,
    About,
    ChatId,
    InboxId,
    Micros,
    NewPost,
    OutboxId,
    OutboxRow,
    Sent,
)

SECOND = 1_000_000


def accept(directory: Directory, team: Team, update: int, chat: ChatId | None = None) -> InboxId:
    made = directory.accept(
        team.account,
        update_id=update,
        chat=chat or team.chat,
        kind="text",
        external_message_id=update,
        payload={"text": f"message {update}"},
        now=Micros(NOON),
    )
    assert made is not None
    return made


def lease(directory: Directory, team: Team, *, at: int = NOON) -> tuple[OutboxRow, ...]:
    return directory.lease(team.account, now=Micros(at), until=Micros(at + 30 * SECOND))


def texts(rows: tuple[OutboxRow, ...]) -> list[str]:
    return [row.payload["text"] for row in rows]


def post(directory: Directory, team: Team, *words: str, chat: ChatId | None = None) -> None:
    posts = [NewPost(payload={"text": each}) for each in words]
    directory.post(chat or team.chat, None, posts, now=Micros(NOON))


def test_an_update_is_accepted_once(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        accept(Directory(connection), team, 7)
    with store.writing() as connection:
        again = Directory(connection).accept(
            team.account,
            update_id=7,
            chat=team.chat,
            kind="text",
            external_message_id=7,
            payload={},
            now=Micros(NOON),
        )
        rows = Directory(connection).claim(team.account)
    assert again is None
    assert [row.payload for row in rows] == [{"text": "message 7"}]


def test_two_accounts_may_use_the_same_update_id(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        accept(directory, team, 7)
        other = directory.account("telegram", "telegram:42")
        chat = directory.chat(other, "1")
        made = directory.accept(
            other,
            update_id=7,
            chat=chat.chat,
            kind="text",
            external_message_id=None,
            payload={},
            now=Micros(NOON),
        )
        assert made is not None


def test_rows_of_a_chat_come_in_the_order_they_were_accepted(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        made = [accept(Directory(connection), team, update) for update in (5, 3, 9)]
    with store.writing() as connection:
        assert [row.inbox for row in Directory(connection).claim(team.account)] == made


def test_a_savepoint_rolled_back_leaves_the_row_open(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        row = accept(Directory(connection), team, 1)
    with store.writing() as connection:
        directory = Directory(connection)
        savepoint = connection.begin_nested()
        team.book(connection).add_note("lost with the savepoint")
        directory.post(team.chat, row, [NewPost(payload={})], now=Micros(NOON))
        directory.close_rows([row])
        savepoint.rollback()
        directory.fail_row(row, "half way")
    with store.writing() as connection:
        directory = Directory(connection)
        assert [(each.inbox, each.attempts) for each in directory.claim(team.account)] == [(row, 1)]
        assert team.book(connection).recent_notes() == ()
        assert lease(directory, team) == ()


def test_a_closed_row_does_not_come_back(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        directory.close_rows([accept(directory, team, 1)])
        assert directory.claim(team.account) == ()


def test_a_row_is_given_up_after_its_last_attempt(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        row = accept(directory, team, 1)
        given_up = [directory.fail_row(row, "no") for _ in range(MAX_ATTEMPTS)]
        assert given_up == [False] * (MAX_ATTEMPTS - 1) + [True]
        assert directory.claim(team.account) == ()


@pytest.mark.postgres
def test_workers_on_postgresql_take_whole_chats_and_keep_their_order(store: Store) -> None:
    if store.engine.dialect.name != "postgresql":
        pytest.skip("on SQLite one process handles an account")
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        chats = [directory.chat(team.account, f"chat {n}").chat for n in range(6)]
        for update in range(60):
            accept(directory, team, update, chats[update % 6])
    handled: dict[ChatId, list[int]] = {chat: [] for chat in chats}

    def work() -> None:
        while True:
            with store.writing() as connection:
                directory = Directory(connection)
                rows = directory.claim(team.account, limit=3)
                for row in rows:
                    handled[row.chat].append(row.inbox)
                    directory.close_rows([row.inbox])
            if not rows:
                return

    threads = [threading.Thread(target=work) for _ in range(4)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert all(rows == sorted(set(rows)) and len(rows) == 10 for rows in handled.values())


@pytest.mark.postgres
def test_a_chat_held_by_one_worker_is_passed_over_by_another(store: Store) -> None:
    if store.engine.dialect.name != "postgresql":
        pytest.skip("on SQLite one process handles an account")
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        other = directory.chat(team.account, "other").chat
        first, second = accept(directory, team, 1), accept(directory, team, 2, other)
    with store.writing() as one, store.writing() as two, store.writing() as three:
        claims = [Directory(each).claim(team.account, chats=1) for each in (one, two, three)]
    assert [[row.inbox for row in each] for each in claims] == [[first], [second], []]


def test_replies_are_numbered_per_chat_and_sent_in_order(store: Store) -> None:
    team, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        directory = Directory(connection)
        post(directory, team, "a", "b")
        post(directory, tom, "c")
        post(directory, team, "d")
        rows = lease(directory, team)
    assert [row.outbox for row in rows if row.chat == team.chat] == [1, 2, 3]
    assert texts(tuple(row for row in rows if row.chat == team.chat)) == ["a", "b", "d"]
    assert all(row.attempts == 1 for row in rows)


def test_a_turn_cannot_answer_a_message_twice(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        row = accept(directory, team, 1)
        directory.post(team.chat, row, [NewPost(payload={})], now=Micros(NOON))
        with pytest.raises(IntegrityError):
            directory.post(team.chat, row, [NewPost(payload={})], now=Micros(NOON))


def test_a_leased_row_is_due_again_only_when_its_lease_ran_out(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        post(directory, team, "a")
        lease(directory, team)
        early = lease(directory, team, at=NOON + 29 * SECOND)
        late = lease(directory, team, at=NOON + 30 * SECOND)
    assert early == ()
    assert [(row.payload["text"], row.attempts) for row in late] == [("a", 2)]


def test_nothing_overtakes_a_reply_that_waits(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        post(directory, team, "a", "b")
        first, second = lease(directory, team)
        directory.retry_at(first.chat, first.outbox, at=Micros(NOON + 5 * SECOND))
        directory.retry_at(second.chat, second.outbox, at=Micros(NOON))
        assert lease(directory, team, at=NOON + SECOND) == ()
        assert texts(lease(directory, team, at=NOON + 5 * SECOND)) == ["a", "b"]


def test_a_reply_is_handed_out_behind_one_that_is_being_sent_and_a_reminder_is_not(
    store: Store,
) -> None:
    """Whoever sends keeps the order; but a reply that comes later must still go first."""
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        post(directory, team, "a")
        assert texts(lease(directory, team)) == ["a"]
        reminder = NewPost(payload={"text": "reminder"}, priority=REMINDER)
        directory.post(team.chat, None, [reminder], now=Micros(NOON))
        post(directory, team, "b")
        (reply,) = lease(directory, team)
        assert reply.payload["text"] == "b"
        assert directory.any_held_up(team.account, now=Micros(NOON))
        sent = [Sent(chat=team.chat, outbox=OutboxId(n), external_message_id=n) for n in (1, 3)]
        directory.mark_sent(sent)
        assert texts(lease(directory, team)) == ["reminder"]


def test_one_chat_that_waits_holds_up_no_other(store: Store) -> None:
    team, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        directory = Directory(connection)
        post(directory, team, "a")
        (row,) = lease(directory, team)
        directory.retry_at(row.chat, row.outbox, at=Micros(NOON + 5 * SECOND))
        post(directory, tom, "b")
        assert directory.next_due(team.account) == NOON
        assert texts(lease(directory, team)) == ["b"]


def test_replies_go_before_reminders(store: Store) -> None:
    team, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        directory = Directory(connection)
        reminder = NewPost(payload={"text": "reminder"}, priority=REMINDER)
        directory.post(team.chat, None, [reminder], now=Micros(NOON))
        post(directory, tom, "reply")
        assert texts(lease(directory, team)) == ["reply", "reminder"]


def test_sent_and_dropped_rows_are_done(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        post(directory, team, "a", "b")
        first, second = lease(directory, team)
        directory.mark_sent([Sent(chat=first.chat, outbox=first.outbox, external_message_id=70)])
        directory.drop(second.chat, second.outbox, because="too long")
        directory.retry_at(first.chat, first.outbox, at=Micros(NOON))
        assert directory.next_due(team.account) is None
        assert lease(directory, team, at=NOON + 99 * SECOND) == ()


def test_nothing_is_sent_to_a_blocked_chat(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        post(directory, team, "a")
        directory.block(team.chat, now=Micros(NOON))
        assert (lease(directory, team), directory.next_due(team.account)) == ((), None)
        directory.unblock(team.chat)
        assert texts(lease(directory, team)) == ["a"]


def test_a_reply_to_our_message_finds_what_it_spoke_of(store: Store) -> None:
    team, tom = new_team(store, "Mira"), new_team(store, "Tom")
    about = About(kind="note", id=64)
    with store.writing() as connection:
        directory = Directory(connection)
        directory.post(
            team.chat,
            None,
            [NewPost(payload={}, about=about), NewPost(payload={})],
            now=Micros(NOON),
        )
        first, second = lease(directory, team)
        directory.mark_sent(
            [
                Sent(chat=first.chat, outbox=first.outbox, external_message_id=70),
                Sent(chat=second.chat, outbox=second.outbox, external_message_id=71),
            ]
        )
        assert directory.about_of(team.chat, 70) == about
        assert directory.about_of(team.chat, 71) is None
        assert directory.about_of(tom.chat, 70) is None


def test_sqlite_looks_only_at_open_and_unsent_rows(store: Store) -> None:
    """A table of all messages ever must not make a turn slower: the partial indexes are used."""
    if store.engine.dialect.name != "sqlite":
        pytest.skip("PostgreSQL chooses by the number of rows")
    team = new_team(store, "Mira")
    with store.writing() as connection, watched(store) as seen:
        Directory(connection).claim(team.account)
        lease(Directory(connection), team)
        Directory(connection).next_due(team.account)
    with store.reading() as connection:
        plans = [
            str(connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {each}", values).fetchall())
            for each, values in list(seen)
        ]
    wanted = ("ix_inbox_open", "ix_outbox_unsent", "ix_outbox_unsent")
    for plan, index in zip(plans, wanted, strict=True):
        assert f"USING INDEX {index}" in plan, plan
        assert "autoindex" not in plan, plan
