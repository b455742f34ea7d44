"""Replies leased as they are posted: to the one sender, in order, and never past an earlier one."""

from __future__ import annotations

from databases import NOON, Team, new_team

from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.values import REMINDER, Micros, NewPost, OutboxRow, Sent

SECOND = 1_000_000
LEASE = 30 * SECOND


def post_leased(
    directory: Directory, team: Team, *words: str, at: int = NOON
) -> tuple[OutboxRow, ...]:
    replies = [NewPost(payload={"text": each}) for each in words]
    return directory.post_leased(team.chat, None, replies, now=Micros(at), until=Micros(at + LEASE))


def lease(directory: Directory, team: Team, *, at: int) -> tuple[OutboxRow, ...]:
    return directory.lease(team.account, now=Micros(at), until=Micros(at + LEASE))


def texts(rows: tuple[OutboxRow, ...]) -> list[str]:
    return [row.payload["text"] for row in rows]


def test_what_is_handed_over_is_what_a_lease_would_have_given(store: Store) -> None:
    """Both ways of one reply, to a chat each: the rows are the same but for the chat."""
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        directory = Directory(connection)
        (at_once,) = post_leased(directory, mira, "a")
        assert not directory.any_due(mira.account, now=Micros(NOON))
        directory.post(tom.chat, None, [NewPost(payload={"text": "a"})], now=Micros(NOON))
        assert directory.any_due(mira.account, now=Micros(NOON))
        (found,) = lease(directory, tom, at=NOON)
        for field in ("outbox", "kind", "payload", "priority", "attempts", "is_group"):
            assert getattr(at_once, field) == getattr(found, field)
        assert (at_once.chat, at_once.external_chat_id) == (mira.chat, "chat of Mira")


def test_a_lease_finds_none_of_them_until_it_runs_out(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        assert texts(post_leased(directory, team, "a", "b")) == ["a", "b"]
        assert lease(directory, team, at=NOON + SECOND) == ()
        assert directory.next_due(team.account) == NOON + LEASE
        again = lease(directory, team, at=NOON + LEASE)
        assert [(row.payload["text"], row.attempts) for row in again] == [("a", 2), ("b", 2)]


def test_a_sender_that_was_killed_finds_them_again_at_its_start(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        post_leased(Directory(connection), team, "a")
    with store.writing() as connection:
        Directory(connection).release(team.account)
        assert texts(lease(Directory(connection), team, at=NOON)) == ["a"]


def test_none_overtakes_a_reply_that_waits(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        (first,) = post_leased(directory, team, "a")
        directory.retry_at(first.chat, first.outbox, at=Micros(NOON + 5 * SECOND))
        assert post_leased(directory, team, "b") == ()
        assert lease(directory, team, at=NOON + SECOND) == ()
        assert texts(lease(directory, team, at=NOON + 5 * SECOND)) == ["a", "b"]


def test_none_overtakes_a_reply_whose_lease_ran_out(store: Store) -> None:
    """Whoever had it in hand may be dead: it is due before those that come now."""
    team = new_team(store, "Mira")
    later = NOON + LEASE
    with store.writing() as connection:
        directory = Directory(connection)
        post_leased(directory, team, "a")
        assert post_leased(directory, team, "b", at=later) == ()
        assert texts(lease(directory, team, at=later)) == ["a", "b"]


def test_one_follows_a_reply_that_is_being_sent_and_goes_before_a_reminder(store: Store) -> None:
    team = new_team(store, "Mira")
    reminder = NewPost(payload={"text": "reminder"}, priority=REMINDER)
    with store.writing() as connection:
        directory = Directory(connection)
        (first,) = post_leased(directory, team, "a")
        directory.post(team.chat, None, [reminder], now=Micros(NOON))
        (second,) = post_leased(directory, team, "b")
        assert second.payload["text"] == "b"
        assert lease(directory, team, at=NOON) == ()
        sent = [
            Sent(chat=one.chat, outbox=one.outbox, external_message_id=7) for one in (first, second)
        ]
        directory.mark_sent(sent)
        assert texts(lease(directory, team, at=NOON)) == ["reminder"]


def test_nothing_is_handed_over_to_a_chat_that_shut_us_out(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        directory.block(team.chat, now=Micros(NOON))
        assert post_leased(directory, team, "a") == ()
        assert lease(directory, team, at=NOON) == ()
        directory.unblock(team.chat)
        assert texts(lease(directory, team, at=NOON)) == ["a"]


def test_another_chats_waiting_reply_holds_up_nobody(store: Store) -> None:
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        directory = Directory(connection)
        directory.post(tom.chat, None, [NewPost(payload={"text": "b"})], now=Micros(NOON))
        assert texts(post_leased(directory, mira, "a")) == ["a"]
