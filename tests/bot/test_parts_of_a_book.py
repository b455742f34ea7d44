"""What is kept of a part of a book holds while its stamp does: no write leaves its stamp alone."""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping
from typing import Any

import pytest
from book_edits import SAID, edit_at_random
from scouted_pair import scout
from talk import Talk

from knowledge.vocabulary import AgreementKey, Topic
from scouting_db.base import Base
from scouting_db.book import Book
from scouting_db.parts import PART_OF
from scouting_db.values import Part, Stamps

SEEDS, EDITS_A_SEED = 2, 40

NOT_THE_BOOK_S_OWN = {"member"}
"""Tables with a book's number in their key that its door does not write: who may use it."""


def people(book: Book) -> object:
    return book.players(), book.pairs()


def notes(book: Book) -> object:
    return book.observations()


def matches(book: Book) -> object:
    return book.matches(limit=500), book.events()


def log(book: Book) -> object:
    """Of every match its lines and what is told of its rallies."""
    every = [one.match for one in book.matches(limit=500)]
    readers = (book.entries, book.rallies, book.rates, book.choices_in)
    return [[read(match) for read in readers] for match in every]


def settled(book: Book) -> object:
    pairs = [one.pair for one in book.pairs()]
    plans = [book.latest_plan(pair) for pair in pairs]
    return book.preferences(), [book.agreements_of(pair) for pair in pairs], plans


def rates(book: Book) -> object:
    return book.match_rates()


def meetings(book: Book) -> object:
    """What is read of both matches and their logs."""
    pairs = [one.pair for one in book.pairs()]
    return [
        (
            book.logged_matches(ours),
            [book.choices_against(Topic.AIM_ATTACK, ours=ours, theirs=pair) for pair in pairs],
        )
        for ours in pairs
    ]


KEPT: Mapping[Callable[[Book], object], tuple[Part, ...]] = {
    people: (Part.PEOPLE,),
    notes: (Part.NOTES,),
    matches: (Part.MATCHES,),
    log: (Part.LOG, Part.MATCHES),
    settled: (Part.SETTLED, Part.PEOPLE),
    rates: (Part.MATCHES, Part.LOG),
    meetings: (Part.MATCHES, Part.LOG, Part.PEOPLE),
}
"""What turns keep, and of which parts it is read; all matches' logs are of so many matches."""


def read(talk: Talk) -> tuple[Stamps, dict[Callable[[Book], object], Any]]:
    with talk.book() as book:
        return book.stamps(), {each: each(book) for each in KEPT}


@pytest.fixture
def noted(demo: Talk) -> Talk:
    scout(demo, ("Okafor", "Lindqvist"), observations=40, rallies=100)
    demo.say("next: okafor and lindqvist")
    return demo


@pytest.mark.parametrize("seed", range(SEEDS))
def test_whatever_changes_bears_another_stamp(noted: Talk, seed: int) -> None:
    rng = random.Random(seed)
    stamps, known = read(noted)
    changed = set()
    for step in range(EDITS_A_SEED):
        edited = edit_at_random(noted, rng)
        stamps_now, now = read(noted)
        for each, parts in KEPT.items():
            if now[each] != known[each]:
                changed.add(each)
                assert stamps_now.of(*parts) > stamps.of(*parts), (step, edited, each.__name__)
        stamps, known = stamps_now, now
    assert len(changed) >= 4, "else little was tried"


def test_what_people_say_bears_another_stamp(noted: Talk) -> None:
    stamps, known = read(noted)
    for said in SAID:
        noted.say(said)
        stamps_now, now = read(noted)
        for each, parts in KEPT.items():
            if now[each] != known[each]:
                assert stamps_now.of(*parts) > stamps.of(*parts), (said, each.__name__)
        stamps, known = stamps_now, now


WRITTEN: Mapping[str, tuple[Callable[[Talk], object], set[Part]]] = {
    "a note": (lambda talk: talk.say("okafor pops up backhand dinks"), {Part.NOTES}),
    "a rally": (lambda talk: talk.say("our rally"), {Part.LOG}),
    "an agreement": (lambda talk: agree(talk), {Part.SETTLED}),
    "a player": (lambda talk: talk.say("/add Quorra Zelt"), {Part.PEOPLE}),
    "a question": (lambda talk: talk.say("where do i dink okafor"), set()),
}


def agree(talk: Talk) -> None:
    with talk.book() as book:
        book.agree(book.pairs()[0].pair, AgreementKey.MIDDLE, "forehand", "forehand")


@pytest.mark.parametrize("what", WRITTEN)
def test_a_write_marks_its_own_part_only(noted: Talk, what: str) -> None:
    noted.say("we serve")
    noted.say("our rally")
    write, parts = WRITTEN[what]
    before, _ = read(noted)
    write(noted)
    after, _ = read(noted)
    assert {part for part in Part if after.of(part) != before.of(part)} == parts


def test_every_table_of_a_book_is_of_a_part_or_not_kept() -> None:
    """A new table must be given its part, or be said to be read anew each time."""
    own = {table.name for table in Base.metadata.tables.values() if "book_id" in table.primary_key}
    assert own - NOT_THE_BOOK_S_OWN == {table.name for table in PART_OF}
