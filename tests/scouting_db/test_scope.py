"""No leak between books: every statement of a book names it, and no read finds another's rows."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from databases import NOON, Team, new_team, watched
from sqlalchemy import Connection

from knowledge.given_plan import GivenLine
from knowledge.vocabulary import AgreementKey, EvidenceId, Rate, Seen, Topic, Trait, Value
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.tables import book as book_table
from scouting_db.values import (
    ChoiceRow,
    EntryKind,
    EventRow,
    InboxId,
    MatchState,
    Micros,
    NewObservation,
    Part,
    RallyRow,
    RateRow,
    Winner,
)

FORMAT = {"target": 11}


TOLD = "okafor netted a dink"
"""The words of a told rally."""

RALLY_MESSAGE = 7
"""The channel's number of the message that told the rally."""


def told_in(connection: Connection, team: Team) -> InboxId | None:
    """The message that tells a team's rally, as the channel brought it."""
    return Directory(connection).accept(
        team.account,
        update_id=team.chat,
        chat=team.chat,
        kind="text",
        external_message_id=RALLY_MESSAGE,
        payload={},
        now=Micros(NOON),
    )


class Filled:
    """A book in which every kind of row stands, and the numbers of those rows."""

    def __init__(self, book: Book, team: Team, extra: int, told: InboxId | None) -> None:
        # Two books number alike; `extra` makes the second one's numbers strange to the first.
        for n in range(extra):
            book.add_player(f"Filler {n}")
        self.mira = book.add_player("Mira", ours=True)
        self.tom = book.add_player("Tom", ours=True)
        self.okafor = book.add_player("Okafor")
        self.hale = book.add_player("Hale")
        self.ours = book.pair_of(self.mira, self.tom)
        self.theirs = book.pair_of(self.okafor, self.hale)
        self.note = book.add_note(
            "lefty", [lefty(self.okafor)], chat=team.chat, external_message_id=5, unread=True
        )
        self.event = book.add_event("Lantern Bay Open")
        self.match = book.announce(
            our_pair=self.ours, their_pair=self.theirs, format=FORMAT, event=self.event
        )
        self.coming = book.announce(
            our_pair=None, their_pair=None, format=FORMAT, starts_at=Micros(1)
        )
        coming = book.match(self.coming)
        assert coming is not None
        book.remove_match(self.coming)
        book.put_back_match(coming)
        other = book.add_event("Rained off")
        book.remove_event(other)
        book.put_back_event(EventRow(event=other, name="Rained off"))
        book.remind(self.coming, team.chat, **REMINDER)
        book.agree(self.ours, AgreementKey.MIDDLE, "forehand", "forehand")
        book.append(self.match, EntryKind.RALLY, won_by=Winner.US, inbox=told)
        book.tell_rally(RallyRow(match=self.match, n=1, by_player=self.okafor, words=TOLD))
        made = RateRow(match=self.match, n=1, player=self.okafor, rate=Rate.SERVE_IN, made=True)
        drafts = [replace(row, n=0) for row in book.entries(self.match)]
        more = book.append_all(self.match, drafts, inbox=told)
        book.tell_new(self.match, [RallyRow(match=self.match, n=one.n) for one in more], [], [])
        book.count_rates(self.match, 1, [made])
        book.choose(ChoiceRow(match=self.match, n=1, topic=Topic.LOB, option="lob"))
        book.add_alias(self.okafor, "Big O")
        book.prefer("units", "feet")
        self.plan = book.store_plan(
            our_pair=self.ours, their_pair=self.theirs, variant="full", lines=[GivenLine(do="Dink")]
        )
        self.change = book.record_change("note", targets={}, before={}, chat=team.chat)
        self.undone = book.record_change("note", targets={}, before={}, chat=team.chat)
        book.mark_undone(self.undone)
        self.chat = team.chat


def lefty(player: Any) -> NewObservation:
    return NewObservation(
        player=player, trait=Trait.HAND, value=Value.LEFT, weight=1.0, seen=Seen.LIVE
    )


REMINDER: dict[str, Any] = {
    "minutes_before": 20,
    "starts_wall": "2025-06-21T10:40",
    "zone": "UTC",
    "due": Micros(1),
}


READS: dict[str, Callable[[Book, Filled], Any]] = {
    "players": lambda book, _: [row.name for row in book.players()],
    "player": lambda book, has: book.player(has.okafor),
    "pair": lambda book, has: book.pair(has.theirs),
    "pairs": lambda book, _: book.pairs(),
    "agreements_of": lambda book, has: book.agreements_of(has.ours),
    "note": lambda book, has: book.note(has.note),
    "note_of_message": lambda book, has: book.note_of_message(has.chat, 5),
    "notes_of": lambda book, has: book.notes_of(has.okafor),
    "recent_notes": lambda book, _: book.recent_notes(),
    "newest_with_claims": lambda book, _: book.newest_with_claims(limit=20),
    "words_of_notes": lambda book, _: book.words_of_notes(),
    "notes_in": lambda book, has: book.notes_in([has.note]),
    "all_words": lambda book, _: book.all_words(),
    "all_rally_words": lambda book, _: book.all_rally_words(),
    "observations": lambda book, has: book.observations([has.okafor]) or book.observations(),
    "note_changes": lambda book, _: book.note_changes(-1).observations,
    "match_rates": lambda book, _: book.match_rates(),
    "told_notes": lambda book, has: book.told_notes([EvidenceId(f"note:{has.note}:1")]),
    "told_rallies": lambda book, has: book.told_rallies([EvidenceId(f"rally:{has.match}:1")]),
    "told_matches": lambda book, has: book.told_matches([EvidenceId(f"match:{has.match}")]),
    "observations_of": lambda book, _: book.observations_of(Trait.HAND),
    "logged_matches": lambda book, has: book.logged_matches(has.ours),
    "logs": lambda book, has: book.logs([has.match]),
    "events": lambda book, _: book.events(),
    "match": lambda book, has: book.match(has.match),
    "matches": lambda book, _: book.matches(),
    "matches_to_come": lambda book, _: book.matches_to_come(since=Micros(0)),
    "reminders": lambda book, has: book.reminders() or book.reminders(match=has.coming),
    "matches_against": lambda book, has: book.matches_against(has.theirs),
    "entries": lambda book, has: book.entries(has.match),
    "newest_event": lambda book, has: book.newest_event(has.ours, begins="Lantern"),
    "matches_in": lambda book, has: book.matches_in(has.event),
    "open_match": lambda book, has: book.open_match(has.ours),
    "newest_told": lambda book, has: book.newest_told(has.ours),
    "rallies": lambda book, has: book.rallies(has.match),
    "rates": lambda book, has: book.rates(has.match),
    "choices_against": lambda book, has: book.choices_against(
        Topic.LOB, ours=has.ours, theirs=has.theirs
    ),
    "choices_in": lambda book, has: book.choices_in(has.match),
    "rally_of_message": lambda book, has: book.rally_of_message(has.chat, RALLY_MESSAGE),
    "latest_plan": lambda book, has: (
        book.latest_plan(has.theirs) or book.latest_plan(has.theirs, variant="full")
    ),
    "preferences": lambda book, _: book.preferences(),
    "change": lambda book, has: book.change(has.change),
    "last_change": lambda book, has: book.last_change(has.chat),
    "last_undone": lambda book, has: book.last_undone(has.chat),
}
"""Every read of a book, asked with the numbers of another one."""

WRITES: dict[str, Callable[[Book, Filled], object]] = {
    "rename": lambda book, has: book.rename(has.okafor, "X"),
    "set_ours": lambda book, has: book.set_ours(has.okafor, ours=True),
    "remove_player": lambda book, has: book.remove_player(has.okafor),
    "restore_player": lambda book, has: book.restore_player(has.okafor),
    "remove_alias": lambda book, has: book.remove_alias(has.okafor, "Big O"),
    "withdraw": lambda book, has: book.withdraw(has.ours, AgreementKey.MIDDLE),
    "unmake_pair": lambda book, has: book.unmake_pair(has.theirs),
    "replace_observations": lambda book, has: book.replace_observations(has.note, []),
    "delete_note": lambda book, has: book.delete_note(has.note),
    "restore_note": lambda book, has: book.restore_note(has.note),
    "set_state": lambda book, has: book.set_state(has.match, MatchState.OVER),
    "remove_match": lambda book, has: book.remove_match(has.match),
    "remove_event": lambda book, has: book.remove_event(has.event),
    "cancel_reminders": lambda book, has: book.cancel_reminders(has.coming),
    "put_back_reminders": lambda book, has: book.put_back_reminders(has.coming, []),
    "drop_choices": lambda book, has: book.drop_choices(has.match, 1),
    "mark_undone": lambda book, has: book.mark_undone(has.change),
    "mark_redone": lambda book, has: book.mark_redone(has.undone),
    "set_about": lambda book, _: book.set_about(name="Y", zone="UTC"),
    "reword_note": lambda book, has: book.reword_note(has.note, "right-handed"),
    "erase_rally_words": lambda book, has: book.erase_rally_words(has.match, 1),
    "erase_note": lambda book, has: book.erase_note(has.note),
    "forget_player": lambda book, has: book.forget_player(has.okafor),
}
"""Every write that names an existing row, tried on the rows of another book."""

FILLING = {
    "add_player",
    "pair_of",
    "add_note",
    "add_event",
    "announce",
    "put_back_event",
    "put_back_match",
    "agree",
    "append",
    "append_all",
    "tell_rally",
    "tell_new",
    "count_rates",
    "choose",
    "add_alias",
    "prefer",
    "store_plan",
    "remind",
    "record_change",
}
"""Writes that `Filled` runs."""

SPECIAL = {"about", "stamps", "version", "writes_to", "replace_match", "void"}
"""Tested by hand below or used by every test."""


def test_every_method_of_the_door_is_tried_here() -> None:
    """A new method of Book must be added to one of the lists above."""
    public = {
        name for name, _ in inspect.getmembers(Book, inspect.isfunction) if not name.startswith("_")
    }
    assert public == READS.keys() | WRITES.keys() | FILLING | SPECIAL


def two_books(store: Store) -> tuple[Team, Filled, Team, Filled]:
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        first = Filled(mira.book(connection), mira, extra=0, told=told_in(connection, mira))
        second = Filled(tom.book(connection), tom, extra=25, told=told_in(connection, tom))
    return mira, first, tom, second


def everything_of(connection: Connection, team: Team, has: Filled) -> dict[str, Any]:
    book = team.book(connection)
    return {name: read(book, has) for name, read in READS.items()}


def test_a_book_finds_its_own_rows(store: Store) -> None:
    mira, first, _, _ = two_books(store)
    with store.reading() as connection:
        found = everything_of(connection, mira, first)
    assert [name for name, value in found.items() if not value] == []


def test_no_read_finds_a_row_of_another_book(store: Store) -> None:
    """An empty book, asked with another book's numbers, chats and message ids."""
    _, first, _, _ = two_books(store)
    empty = new_team(store, "Sid")
    with store.reading() as connection:
        found = everything_of(connection, empty, first)
    assert {name: value for name, value in found.items() if value} == {}


def test_no_write_changes_a_row_of_another_book(store: Store) -> None:
    mira, first, _, _ = two_books(store)
    empty = new_team(store, "Sid")
    with store.reading() as connection:
        before = everything_of(connection, mira, first)
        own_match = mira.book(connection).match(first.match)
    assert own_match is not None
    for write in WRITES.values():
        with store.writing() as connection:
            write(empty.book(connection), first)
    with store.writing() as connection:
        empty.book(connection).replace_match(own_match)
        with pytest.raises(LookupError):
            empty.book(connection).void(first.match, 1)
    with store.reading() as connection:
        assert everything_of(connection, mira, first) == before
        assert mira.book(connection).about().name == "Book of Mira"


def test_every_statement_of_a_book_names_the_book(store: Store) -> None:
    """Each statement compares or sets book_id, and this book's number is among its values."""
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        told = told_in(connection, tom)
    with store.writing() as connection, watched(store) as seen:
        book = tom.book(connection)
        has = Filled(book, tom, extra=2, told=told)
        for read in READS.values():
            read(book, has)
        match = book.match(has.match)
        assert match is not None
        book.replace_match(match)
        book.void(has.match, 1)
        spare = book.announce(our_pair=None, their_pair=None, format=FORMAT)
        for name, write in WRITES.items():
            if name == "remove_match":
                book.remove_match(spare)
            else:
                write(book, has)
    assert len(seen) > len(READS) + len(WRITES)
    for statement, values in seen:
        assert _names_a_book(statement), statement
        assert tom.book_id in _flat(values), (statement, values)
        assert tom.book_id != mira.book_id


def _names_a_book(statement: str) -> bool:
    """`book_id = ?` in a condition, or the first column of an insert."""
    compared = re.search(r"book_id = (\?|%\(\w+\)s)", statement)
    inserted = re.match(r'INSERT INTO "?\w+"? \(book_id', statement)
    return bool(compared or inserted)


def _flat(values: Any) -> list[Any]:
    if isinstance(values, dict):
        return _flat(list(values.values()))
    if isinstance(values, list | tuple):
        return [each for value in values for each in _flat(value)]
    return [values]


def test_every_table_of_a_book_is_keyed_by_book_first() -> None:
    """engineering 2.1: composite keys, so that the database itself keeps books apart."""
    loose = [
        table.name
        for table in book_table.metadata.sorted_tables
        if "book_id" in table.c
        and table.name not in ("book", "chat", "invitation")
        and next(iter(table.primary_key)).name != "book_id"
    ]
    assert loose == []


def test_a_turn_stays_within_its_statements(store: Store) -> None:
    """design 7: a warm text turn at most 8 statements; a note is the dearest of the usual ones."""
    team = new_team(store, "Mira")
    with store.writing() as connection:
        okafor = team.book(connection).add_player("Okafor")
    with store.writing() as connection, watched(store) as seen:
        team.book(connection, now=NOON).add_note("lefty", [lefty(okafor)])
    assert len(seen) == 3


def test_what_was_written_is_counted_part_by_part(store: Store) -> None:
    """What a turn has read of a part stands until it writes to that part."""
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        assert book.writes_to(Part.PEOPLE, Part.NOTES) == 0
        book.add_player("Ruiz")
        people = book.writes_to(Part.PEOPLE)
        assert people > 0
        assert book.writes_to(Part.NOTES) == 0
        book.add_player("Brandt")
        assert book.writes_to(Part.PEOPLE, Part.NOTES) > people
