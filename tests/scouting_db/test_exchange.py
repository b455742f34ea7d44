"""A book leaves as lines and comes back the same; wrong lines are told by number."""

from __future__ import annotations

import json

import pytest
from databases import NOON, Team, new_team
from sqlalchemy import Connection, text

from knowledge.given_plan import GivenLine
from knowledge.vocabulary import Seen, Trait, Value
from scouting_db.book import Book
from scouting_db.exchange import ExchangeError, export_book, faults, import_book
from scouting_db.session import Store
from scouting_db.values import BookId, EntryKind, Micros, NewObservation, Winner

HEAD = '{"seamwise":1,"name":"x","zone":"UTC","version":1}'


def fill(connection: Connection, team: Team) -> None:
    book = team.book(connection)
    okafor, hale = book.add_player("Okafor"), book.add_player("Hale")
    book.add_alias(okafor, "Big Ö")
    theirs = book.pair_of(okafor, hale)
    claim = NewObservation(
        player=okafor, trait=Trait.HAND, value=Value.LEFT, weight=1.5, seen=Seen.LIVE, span=(0, 5)
    )
    book.add_note("lefty\nwith a “quote”", [claim], chat=team.chat, external_message_id=5)
    match = book.announce(our_pair=None, their_pair=theirs, format={"target": 11})
    book.append(match, EntryKind.RALLY, won_by=Winner.US, detail={"lineup": [1, 2]})
    book.void(match, 1)
    book.store_plan(our_pair=None, their_pair=theirs, variant="full", lines=[GivenLine(do="Dink")])
    book.prefer("units", "feet")


def test_a_book_comes_back_as_it_left(store: Store) -> None:
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        fill(connection, mira)
        lines = list(export_book(connection, mira.book_id))
        copy = import_book(connection, lines, owner=tom.person)
        again = list(export_book(connection, copy))
        before, after = (
            Book(connection, each, person=None, now=Micros(NOON)) for each in (mira.book_id, copy)
        )
        assert after.players() == before.players()
        assert after.matches() == before.matches()
        assert [(row.text, row.author) for row in after.recent_notes()] == [
            ("lefty\nwith a “quote”", "Mira")
        ]
    assert _without_people(again) == _without_people(lines)


def _without_people(lines: list[str]) -> list[dict[str, object]]:
    """People get new numbers; everything else is the same."""
    rows = [json.loads(line) for line in lines]
    return [
        {key: value for key, value in row.items() if key not in ("person_id", "author")}
        for row in rows
    ]


def test_an_imported_book_goes_on_numbering_without_a_clash(store: Store) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        fill(connection, mira)
        lines = list(export_book(connection, mira.book_id))
        head = {**json.loads(lines[0]), "version": 0}
        copy = import_book(connection, [json.dumps(head), *lines[1:]], owner=mira.person)
        book = Book(connection, copy, person=mira.person, now=Micros(NOON))
        assert book.add_player("Brandt") > max(row.player for row in book.players()[:-1])
        assert faults(connection) == ()


def test_an_export_tells_nothing_of_chats_and_accounts(store: Store) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        fill(connection, mira)
        lines = "\n".join(export_book(connection, mira.book_id))
    assert "chat" not in lines
    assert "user Mira" not in lines


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ([], "line 1 is no head"),
        (["{"], "line 1 is not JSON"),
        (['{"seamwise":2}'], "line 1 is no head"),
        (['{"seamwise":1,"name":"x","zone":"Mars","version":1}'], "Mars"),
        (['{"seamwise":1,"name":"x","zone":"UTC","version":-1}'], "out of range"),
        ([HEAD, "[]"], "line 2 is not an object"),
        ([HEAD, '{"table":"chat"}'], "line 2: 'chat' is no table"),
        ([HEAD, '{"table":"player","book_id":1}'], "player has no book_id"),
        ([HEAD, '{"table":"player","player_id":"a"}'], "player_id must be a int"),
        ([HEAD, '{"table":"player","player_id":1}'], "line 2 does not fit"),
        (
            [HEAD, '{"table":"pair","pair_id":9,"player_a":1,"player_b":2}'],
            "line 2 does not fit",
        ),
    ],
)
def test_wrong_lines_are_told_by_number(store: Store, lines: list[str], said: str) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        savepoint = connection.begin_nested()
        with pytest.raises(ExchangeError, match=said):
            import_book(connection, lines, owner=mira.person)
        savepoint.rollback()
        assert connection.execute(text("SELECT count(*) FROM book")).scalar() == 1


def test_faults_are_found(store: Store) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        fill(connection, mira)
        assert faults(connection) == ()
        connection.execute(text("UPDATE entry SET voids = 7 WHERE kind = 'void'"))
        connection.execute(text("UPDATE book SET version = 0"))
        found = faults(connection)
    assert len(found) == 2
    assert "beyond version 0" in found[0]
    assert "entry 2 voids 7" in found[1]


def test_a_book_that_is_not_there_cannot_be_exported(store: Store) -> None:
    with store.reading() as connection, pytest.raises(LookupError):
        list(export_book(connection, BookId(99)))
