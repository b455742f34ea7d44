"""The first door without the post: accounts, chats, people, books and roles."""

from __future__ import annotations

import pytest
from databases import NOON, new_team

from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.values import ChatId, Micros, NewPost, Role


def test_the_same_ids_give_the_same_rows(store: Store) -> None:
    first = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        assert directory.account("console", "console:test") == first.account
        assert directory.chat(first.account, "chat of Mira").chat == first.chat
        assert directory.person(first.account, "user Mira", "Mira") == first.person


def test_an_account_never_changes_its_channel(store: Store) -> None:
    new_team(store, "Mira")
    with store.writing() as connection, pytest.raises(ValueError, match="account of console"):
        Directory(connection).account("telegram", "console:test")


def test_a_person_keeps_one_number_under_a_new_name(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        assert directory.person(team.account, "user Mira", "Mira B") == team.person
        assert [each.name for each in directory.members(team.book_id)] == ["Mira B"]


def test_everyone_starts_with_a_book_of_their_own(store: Store) -> None:
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    assert mira.book_id != tom.book_id
    with store.reading() as connection:
        directory = Directory(connection)
        assert directory.role(mira.book_id, mira.person) is Role.EDITOR
        assert directory.role(mira.book_id, tom.person) is None
        assert [each.book for each in directory.books_of(tom.person)] == [tom.book_id]


def test_a_second_private_chat_opens_the_same_book(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        second = directory.chat(team.account, "another chat")
        assert directory.settle_book(second, team.person, name="x") == team.book_id
        assert directory.chat_row(second.chat).book == team.book_id


def test_a_group_gets_a_book_of_its_own(store: Store) -> None:
    """A private book must not show in a group, nor a group's book in a private chat."""
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        group = directory.chat(mira.account, "group", is_group=True)
        shared = directory.settle_book(group, mira.person, name="Club")
        newcomer = directory.person(mira.account, "user Tom", "Tom")
        directory.add_member(shared, newcomer, Role.EDITOR)
        private = directory.chat(mira.account, "chat of Tom")
        own = directory.settle_book(private, newcomer, name="Tom's")
    assert len({shared, own, mira.book_id}) == 3


def test_roles_are_given_changed_and_taken(store: Store) -> None:
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        directory = Directory(connection)
        seen = []
        for role in (Role.READER, Role.EDITOR):
            directory.add_member(mira.book_id, tom.person, role)
            seen.append(directory.role(mira.book_id, tom.person))
        directory.remove_member(mira.book_id, tom.person)
        seen.append(directory.role(mira.book_id, tom.person))
    assert seen == [Role.READER, Role.EDITOR, None]


def test_a_context_comes_back_as_it_was_saved(store: Store) -> None:
    team = new_team(store, "Mira")
    context = {"version": 1, "focus": [64, 65], "mode": "open", "nested": {"é": None}}
    with store.writing() as connection:
        Directory(connection).save_context(team.chat, context)
    with store.reading() as connection:
        assert Directory(connection).chat_row(team.chat).context == context


def test_a_chat_tells_its_books_version_and_zone(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        team.book(connection).set_about(name="Book", zone="Europe/Vienna")
        row = Directory(connection).chat_row(team.chat)
    assert (row.version, row.zone) == (1, "Europe/Vienna")


def test_a_zone_nobody_knows_is_refused(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection, pytest.raises(ValueError, match="no time zone"):
        team.book(connection).set_about(name="Book", zone="Mars/Base")


def test_a_chat_that_is_not_there(store: Store) -> None:
    with store.reading() as connection, pytest.raises(LookupError):
        Directory(connection).chat_row(ChatId(99))


def test_an_upgraded_group_keeps_its_row(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        assert directory.move_chat(team.chat, "-100777") == team.chat
        moved = directory.chat(team.account, "-100777")
    assert (moved.chat, moved.book, moved.is_group) == (team.chat, team.book_id, True)


def test_a_group_that_already_wrote_under_its_new_id_takes_over(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        directory.save_context(team.chat, {"focus": [64]})
        newer = directory.chat(team.account, "-100777", is_group=True)
        directory.post(newer.chat, None, [NewPost(payload={"text": "new"})], now=Micros(NOON))
        directory.post(team.chat, None, [NewPost(payload={"text": "old"})], now=Micros(NOON))
        assert directory.move_chat(team.chat, "-100777") == newer.chat
        after = directory.chat_row(newer.chat)
        due = directory.lease(team.account, now=Micros(NOON), until=Micros(NOON + 1))
        more = directory.post(newer.chat, None, [NewPost(payload={})], now=Micros(NOON))
    assert (after.book, after.context) == (team.book_id, {"focus": [64]})
    assert [(row.external_chat_id, row.payload["text"]) for row in due] == [
        ("-100777", "new"),
        ("-100777", "old"),
    ]
    assert more[0] > due[-1].outbox


def test_a_blocked_chat_says_so_until_it_writes_again(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        directory.block(team.chat, now=Micros(NOON))
        blocked = directory.chat_row(team.chat).blocked
        directory.unblock(team.chat)
        assert (blocked, directory.chat_row(team.chat).blocked) == (True, False)
