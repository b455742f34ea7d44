"""What is kept of a book between turns never differs from what is read with nothing kept."""

from __future__ import annotations

import random
from collections.abc import Callable
from typing import Any, cast
from unittest.mock import patch

import pytest
from book_edits import edit_at_random
from databases import watched
from evidence_afresh import evidence_of
from scouted_pair import scout
from talk import SATURDAY, Talk, demo_talk

from bot.chat import book_views
from bot.chat.answers import evidence_read
from bot.chat.answers.desk import Desk
from bot.chat.book_evidence import BookEvidence
from bot.chat.profiles import CACHED_PROFILES, Memories
from bot.chat.views_kept import _VIEWS
from knowledge.evidence import Observation
from knowledge.vocabulary import TRAITS, PlayerId, Rate, Seen, Trait, Value
from scouting_db.book import Book
from scouting_db.exchange import export_book, import_book
from scouting_db.values import Micros, NewObservation, RateRow

SEEDS, EDITS_A_SEED = 2, 30


def test_of_all_books_together_so_much_is_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    """The book asked about last is kept whatever its size; those asked about longest ago leave."""
    monkeypatch.setattr(book_views, "KEPT_CLAIMS", 10)
    views = book_views.BookViews()
    held = [
        BookEvidence(version=1, stances=(cast(Observation, None),) * size) for size in range(20)
    ]
    for book, size in ((1, 4), (2, 5), (3, 3)):
        views.keep_evidence(book, held[size])
    assert [views.evidence(book) is not None for book in (1, 2, 3)] == [False, True, True]
    views.keep_evidence(2, held[7])
    assert [views.evidence(book) is not None for book in (2, 3)] == [True, True]
    views.keep_evidence(4, held[19])
    assert [views.evidence(book) for book in (2, 3, 4)] == [None, None, held[19]]
    views.keep_evidence(4, held[1])
    views.keep_evidence(5, held[9])
    assert [views.evidence(book) for book in (4, 5)] == [held[1], held[9]]


@pytest.fixture
def noted(demo: Talk) -> Talk:
    scout(demo, ("Okafor", "Lindqvist"), observations=40, rallies=200)
    demo.say("next: okafor and lindqvist")
    return demo


@pytest.mark.parametrize("seed", range(SEEDS))
def test_after_any_change_the_evidence_is_that_read_afresh(noted: Talk, seed: int) -> None:
    """Second method: everything read and estimated anew, with nothing kept."""
    rng = random.Random(seed)
    assert evidence_of(noted, afresh=False) == evidence_of(noted, afresh=True)
    for step in range(EDITS_A_SEED):
        edited = edit_at_random(noted, rng)
        if rng.random() < 0.7:
            kept, read = evidence_of(noted, afresh=False), evidence_of(noted, afresh=True)
            for part, value in read.items():
                assert kept[part] == value, (step, edited, part)


@pytest.mark.parametrize(
    "said",
    [
        ("okafor pops up backhand dinks",),
        ("okafor pops up backhand dinks", "undo"),
        ("our point, okafor missed the return",),
        ("our point, okafor missed the return", "undo", "redo"),
        ("our point, okafor missed the return", "no, lindqvist missed it"),
        ("10-2-1", "our point, okafor missed the return"),
        ("we won 11-2",),
        ("next: ruiz and hale",),
    ],
)
def test_each_change_of_a_days_play_is_seen(noted: Talk, said: tuple[str, ...]) -> None:
    noted.say("we serve")
    for text in said:
        before = evidence_of(noted, afresh=False)
        noted.say(text)
        after = evidence_of(noted, afresh=False)
        assert after == evidence_of(noted, afresh=True)
    assert after != before, "the last of it tells something"


def test_an_old_rally_tagged_anew_is_seen(noted: Talk) -> None:
    """Nothing else is written: no line, no choice."""
    before = evidence_of(noted, afresh=False)
    who = PlayerId(noted.player("Okafor"))
    with noted.book() as book:
        match = next(one.match for one in reversed(book.matches()) if book.entries(one.match))
        rate = RateRow(match=match, n=1, player=who, rate=Rate.RETURN_DEEP, made=False)
        book.count_rates(match, 1, [rate])
    after = evidence_of(noted, afresh=False)
    assert after == evidence_of(noted, afresh=True)
    assert after["profiles"][who].rates != before["profiles"][who].rates


def test_a_rally_tapped_is_seen_and_taken_back(noted: Talk) -> None:
    noted.say("we serve")
    before = evidence_of(noted, afresh=False)
    noted.tap("our rally")
    assert evidence_of(noted, afresh=False) == evidence_of(noted, afresh=True) != before
    noted.say("undo")
    after = evidence_of(noted, afresh=False)
    assert (after["profiles"], after["meetings"]) == (before["profiles"], before["meetings"])


def test_somebody_forgotten_and_put_back_is_who_they_were(noted: Talk) -> None:
    before = evidence_of(noted, afresh=False)
    okafor = PlayerId(noted.player("Okafor"))
    with noted.book() as book:
        book.remove_player(okafor)
    gone = evidence_of(noted, afresh=False)
    assert okafor not in gone["profiles"]
    assert gone == evidence_of(noted, afresh=True)
    with noted.book() as book:
        book.restore_player(okafor)
    assert evidence_of(noted, afresh=False) == before


def test_an_imported_book_starts_with_what_it_brings(noted: Talk) -> None:
    """Its notes and matches bear no version yet; a change in it is seen as in any other."""
    here = evidence_of(noted, afresh=False)
    with noted.book() as book:
        assert book._person is not None
        document = export_book(book._connection, book._book)
        copy = import_book(book._connection, document, owner=book._person)
    there = evidence_of(noted, afresh=False, book=copy)
    assert there == evidence_of(noted, afresh=True, book=copy)
    skills = {who: {*one.skills} for who, one in here["profiles"].items()}
    assert {who: {*one.skills} for who, one in there["profiles"].items()} == skills
    lefty = NewObservation(
        player=PlayerId(noted.player("Okafor")),
        trait=Trait.HAND,
        value=Value.LEFT,
        weight=1.0,
        seen=Seen.LIVE,
    )
    with noted.store.writing() as connection:
        Book(connection, copy, person=None, now=noted.now).add_note("lefty", [lefty])
    changed = evidence_of(noted, afresh=False, book=copy)
    assert changed == evidence_of(noted, afresh=True, book=copy) != there
    assert evidence_of(noted, afresh=False) == here, "the first book is as it was"


def test_a_turn_that_fails_leaves_nothing_of_it_behind(noted: Talk) -> None:
    """Its version is given back, and the next turn takes the same one for something else."""
    before = evidence_of(noted, afresh=False)
    okafor = PlayerId(noted.player("Okafor"))
    claim = NewObservation(
        player=okafor,
        trait=Trait.FOOT_SPEED,
        value=TRAITS[Trait.FOOT_SPEED].values[0],
        weight=1.0,
        seen=Seen.LIVE,
    )

    with pytest.raises(ZeroDivisionError):
        _fail_after_writing(noted, claim)
    assert evidence_of(noted, afresh=False) == before
    with noted.book() as book:
        book.add_note("said", [claim])
    after = evidence_of(noted, afresh=False)
    assert after == evidence_of(noted, afresh=True) != before


def _fail_after_writing(talk: Talk, claim: NewObservation) -> None:
    with talk.book() as book:
        book.add_note("never said", [claim])
        raise ZeroDivisionError


def _reads_after(talk: Talk, change: str) -> list[str]:
    talk.say("where do i dink okafor")
    talk.say(change)
    with watched(talk.store) as seen:
        talk.say("where do i dink okafor")
    return [one for one, _ in seen if "observation" in one or "rally_rate" in one]


def test_after_a_change_a_large_book_reads_no_more_rows_than_a_small_one(
    noted: Talk,
) -> None:
    """No clock: the rows that come back are counted, of a book ten times as large as well."""
    big = demo_talk()
    scout(big, ("Okafor", "Lindqvist"), observations=600, rallies=3000)
    big.say("next: okafor and lindqvist")
    for change in ("our point, okafor missed the return", "okafor pops up backhand dinks"):
        small_rows, big_rows = (_rows_after(talk, change) for talk in (noted, big))
        assert small_rows == big_rows <= 12, change
        assert len(_reads_after(noted, change)) == len(_reads_after(big, change)) <= 3
    big.store.close()


def _rows_after(talk: Talk, change: str) -> int:
    """Claims and matches that the question after a change reads again."""
    talk.say("where do i dink okafor")
    talk.say(change)
    rows = 0
    real = evidence_read.evidence_of

    def counting(desk: Desk, *args: Any, **more: Any) -> BookEvidence:
        nonlocal rows
        known = desk.views.evidence(desk.book_id)
        assert known is not None
        rows += len(desk.book.note_changes(known.version).observations)
        rows += len(desk.book.match_rates(known.version))
        return real(desk, *args, **more)

    with patch.object(evidence_read, "evidence_of", counting):
        talk.say("where do i dink okafor")
    return rows


def test_a_book_that_told_no_hand_yet_tells_the_first(fresh_anywhere: Talk) -> None:
    """Who stands how is asked before anybody's notes are: of nobody a hand is known at first."""
    fresh_anywhere.say("/add Chidi Okafor")
    with fresh_anywhere.book() as book:
        kept = BookEvidence(version=book.about().version).knowing_stances(book)
    assert kept.stances == ()
    fresh_anywhere.say("okafor is a lefty")
    with fresh_anywhere.book() as book:
        found = kept.brought_to(book.about().version, book).stances
    assert [(one.trait, one.value) for one in found or ()] == [(Trait.HAND, Value.LEFT)]


def test_memories_are_bounded_and_answer_only_what_was_asked_before() -> None:
    memories = Memories()
    asked: list[int] = []

    def double(n: int) -> Callable[[], int]:
        def find() -> int:
            asked.append(n)
            return 2 * n

        return find

    memory = memories.of(1, PlayerId(1))
    assert [memory.recall("x", (n,), double(n)) for n in (3, 3, 4, 3)] == [6, 6, 8, 6]
    assert asked == [3, 4, 3], "only the last inputs are remembered"
    assert memories.of(2, PlayerId(1)).recall("x", (3,), double(3)) == 6
    assert asked == [3, 4, 3, 3], "another book's player 1"
    for number in range(CACHED_PROFILES + 10):
        memories.of(3, PlayerId(number))
    assert len(memories) == CACHED_PROFILES


def test_kept_evidence_belongs_to_its_store(noted: Talk) -> None:
    """Two stores number their books alike."""
    other = demo_talk()
    assert evidence_of(noted, afresh=False) != evidence_of(other, afresh=False)
    assert evidence_of(other, afresh=False) == evidence_of(other, afresh=True)
    assert len({id(views) for views in _VIEWS.values()}) == len(_VIEWS)
    other.store.close()


@pytest.mark.parametrize(
    "said", [("hale is slow", "we're in Denver"), ("we're in Denver", "hale is slow")]
)
def test_a_note_of_a_minute_ago_is_todays_wherever_the_clock_is_set(
    fresh: Talk, said: tuple[str, ...]
) -> None:
    """At 06:40 UTC it is still the evening before in Denver."""
    fresh.now = Micros(SATURDAY - 12_000_000_000)
    for text in ("new opponent ben hale", *said):
        fresh.say(text)
    assert "1 note, today)" in fresh.say("report on hale")
    assert "“slow”, Mira, today" in fresh.say("why")
    fresh.say("we're in Auckland")
    assert "1 note, today)" in fresh.say("report on hale")
