"""Everybody everywhere tries everything on both books: nothing crosses over.

Each actor sends every command and kind of message and presses every kind of payload: forged ones
with the numbers of either book, stamped with either or with none, and every real button of
Mira's. No reply may show a word of a book that the actor may not see there, and no row of a book
may change that they may not write. The walk itself is tried on faults put in on purpose.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import Any

import pytest
import walled
from sqlalchemy import select
from walled import ACTORS, PLAYERS, Actor, World, breaches, offered_by, payloads, world

from bot.chat.commands import BOOK_COMMANDS, TOPIC_COMMANDS
from bot.chat.payload import Tap, Verb
from bot.chat.place import Place
from scouting_db import tables
from scouting_db.values import Role

pytestmark = [pytest.mark.minutes, pytest.mark.timeout(900)]


@cache
def made() -> World:
    return world()


@cache
def pressed() -> tuple[str, ...]:
    return tuple(payloads(made(), offered_by(made(), "mira")))


def test_the_walk_knows_every_verb_and_every_command() -> None:
    sent = {Tap.parse(one).verb for one in walled.taps(made())}
    assert sent == {*Verb}
    typed = {text.split()[0] for text in walled.SAYINGS if text.startswith("/")}
    left_out = {"leave"}  # it ends a membership, which the walk must not: test_sharing.py
    commands = {f"/{word}" for word in {*BOOK_COMMANDS, *TOPIC_COMMANDS} - left_out}
    assert commands <= typed


def test_every_table_of_a_book_is_watched() -> None:
    assert {table.name for table in walled.TABLES} >= {
        "player",
        "alias",
        "pair",
        "agreement",
        "note",
        "observation",
        "event",
        "match",
        "entry",
        "rally",
        "rally_rate",
        "choice",
        "plan",
        "change",
        "reminder",
        "preference",
        "member",
        "invitation",
    }
    for owner in PLAYERS:
        rows = made().rows_of(owner)
        for table in ("player", "alias", "note", "observation", "match", "entry", "change", "plan"):
            assert rows[table], f"{owner}'s book has no {table} that could leak"


@pytest.mark.parametrize("actor", ACTORS, ids=str)
def test_nothing_crosses_over(actor: Actor) -> None:
    assert breaches(made(), actor, pressed()) == []


@pytest.mark.parametrize("owner", PLAYERS)
def test_its_own_editor_is_shown_every_marker(owner: str) -> None:
    """Else no reply could leak one, and the walk would find nothing whatever was wrong."""
    who = walled.chatter(made().copied().store, owner)
    shown = ""
    for text in (*walled.SAYINGS[:60], "show notes on quill", "show notes on pell", "my books"):
        who.say(text)
        shown += who.said()
    seen = {word for word in walled.MARKERS[owner] if word in shown}
    assert len(seen) >= len(walled.MARKERS[owner]) - 2, seen


def editor_everywhere(patch: pytest.MonkeyPatch) -> None:
    patch.setattr("scouting_db.directory.Directory.role", lambda *_: Role.EDITOR)


def any_tap(patch: pytest.MonkeyPatch) -> None:
    patch.setattr("bot.chat.turn.may_press", lambda *_, **__: True)


def anything_said(patch: pytest.MonkeyPatch) -> None:
    patch.setattr("bot.chat.turn.may_say", lambda *_, **__: True)


def removed_members_stay(patch: pytest.MonkeyPatch) -> None:
    from bot.chat.place import place_of

    def careless(directory: object, chat: object, person: object, **known: Any) -> Place:
        book = chat.book  # type: ignore[attr-defined]
        if book is not None:
            return Place(book=book)
        return place_of(directory, chat, person, **known)  # type: ignore[arg-type]

    patch.setattr("bot.chat.turn.place_of", careless)


def a_roster_of_all_books(patch: pytest.MonkeyPatch) -> None:
    from scouting_db.book import players

    everyone = players._NAMES.with_only_columns(*players._NAMES.selected_columns)
    everyone._where_criteria = ()
    patch.setattr(players, "_ROSTER", everyone)
    patch.setattr("bot.chat.book_views.BookViews.get", lambda _s, _b, _stamp, read: read())


def any_book_may_be_used(patch: pytest.MonkeyPatch) -> None:
    from scouting_db.values import Membership

    def all_of_them(directory: object, _person: object) -> tuple[Membership, ...]:
        rows = directory._connection.execute(tables.book.select())  # type: ignore[attr-defined]
        return tuple(Membership(book=row.book_id, name=row.name, role=Role.READER) for row in rows)

    patch.setattr("scouting_db.directory.Directory.memberships", all_of_them)


def a_file_of_any_chat(patch: pytest.MonkeyPatch) -> None:
    def careless(directory: object, inbox: int, _chat: object) -> object:
        payload = select(tables.inbox.c.payload).where(tables.inbox.c.inbox_id == inbox)
        return directory._connection.execute(payload).scalar()  # type: ignore[attr-defined]

    patch.setattr("scouting_db.directory.Directory.payload_of", careless)


FAULTS: dict[str, tuple[Callable[[pytest.MonkeyPatch], None], Actor]] = {
    "everybody is an editor": (editor_everywhere, ACTORS[2]),
    "any tap is taken": (any_tap, ACTORS[0]),
    "anything said is done": (anything_said, ACTORS[2]),
    "a removed member stays": (removed_members_stay, ACTORS[4]),
    "a roster without its book": (a_roster_of_all_books, ACTORS[3]),
    "any file may be imported": (a_file_of_any_chat, ACTORS[3]),
    "any book may be switched to": (any_book_may_be_used, ACTORS[3]),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_the_walk_finds_a_fault_put_in(fault: str, monkeypatch: pytest.MonkeyPatch) -> None:
    put_in, actor = FAULTS[fault]
    offered = pressed()
    put_in(monkeypatch)
    assert breaches(made(), actor, offered, stop=True) != []
