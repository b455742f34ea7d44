"""Who writes where is read at once, and is what the separate reads say."""

from __future__ import annotations

import pytest
from databases import new_team

from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.values import ChatId, Role


def test_a_caller_is_who_the_separate_reads_say(store: Store) -> None:
    team, other = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        directory = Directory(connection)
        directory.add_member(team.book_id, other.person, Role.READER)
        for user, person in (("user Mira", team.person), ("user Tom", other.person)):
            found = directory.caller(team.chat, user)
            assert found.chat == directory.chat_row(team.chat)
            assert found.person == person == directory.person(team.account, user, found.name or "")
            assert found.role is directory.role(team.book_id, person)
        assert directory.caller(other.chat, "user Mira").role is None, "of another book"


def test_of_somebody_new_and_of_a_chat_without_a_book_little_is_known(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        stranger = directory.caller(team.chat, "user Nobody")
        assert (stranger.person, stranger.name, stranger.role) == (None, None, None)
        bare = directory.chat(team.account, "a chat that nobody settled")
        known = directory.caller(bare.chat, "user Mira")
        assert (known.person, known.role, known.chat.book) == (team.person, None, None)
        with pytest.raises(LookupError, match="no chat"):
            directory.caller(ChatId(10**6), "user Mira")
