"""What is kept of a book between turns never differs from what is read with nothing kept."""

from __future__ import annotations

import random
from collections.abc import Callable
from typing import Any
from unittest.mock import patch

import pytest
from databases import watched
from evidence_afresh import evidence_of
from scouted_pair import scout
from sqlalchemy import select
from talk import Talk, demo_talk

from bot.chat.answers.desk import Desk
from bot.chat.book_evidence import BookEvidence
from bot.chat.profiles import CACHED_PROFILES, Memories
from bot.chat.turn import _VIEWS
from knowledge.vocabulary import TRAITS, PlayerId, Rate, Seen, Topic, Trait, Value
from scouting_db.book import Book
from scouting_db.exchange import export_book, import_book
from scouting_db.tables import player
from scouting_db.values import (
    ChoiceRow,
    EntryKind,
    MatchState,
    Micros,
    NewObservation,
    RateRow,
    Winner,
)

SEEDS, EDITS_A_SEED = 3, 30

SAID = (
    "okafor pops up backhand dinks",
    "lindqvist is a lefty",
    "okafor is not a lefty",
    "hale: slow feet, ruiz crashes the net",
    "tom's lob is strong",
    "undo",
    "undo",
    "redo",
    "our point",
    "their rally",
    "our point, okafor missed the return",
    "lost it, my dink popped up",
    "won it, speed-up at okafor's hip",
    "our point, lindqvist popped up the third",
    "no, it was hale",
    "10-9-1",
    "we won 11-9",
    "next: okafor and lindqvist",
    "next: ruiz and hale, to 11",
    "we serve",
    "timeout",
    "mira and tom: forehand takes the middle",
    "where do i dink okafor",
    "where do i attack okafor",
    "what are our chances",
    "okafor is weak off the bounce, where do i serve to him",
)
"""What somebody may write between two questions; some of it means nothing where it stands."""


def add_note(talk: Talk, rng: random.Random) -> None:
    trait = rng.choice([*TRAITS])
    with talk.book() as book:
        who = rng.choice(book.players()).player
        claim = NewObservation(
            player=who,
            trait=trait,
            value=rng.choice(TRAITS[trait].values),
            weight=rng.choice([0.5, 1.0]),
            seen=rng.choice([*Seen]),
        )
        book.add_note(
            "so it is", [claim] * rng.randint(1, 2), at=Micros(talk.now - rng.choice([0, 10**14]))
        )


def change_note(talk: Talk, rng: random.Random) -> None:
    """Deleted, put back, or said to mean something else, about somebody else even."""
    with talk.book() as book:
        note = rng.choice(book.recent_notes(limit=50))
        change = rng.randrange(3)
        if change == 0:
            book.delete_note(note.note)
        elif change == 1:
            book.delete_note(note.note)
            book.restore_note(note.note)
        else:
            claim = NewObservation(
                player=rng.choice(book.players()).player,
                trait=Trait.FOOT_SPEED,
                value=rng.choice(TRAITS[Trait.FOOT_SPEED].values),
                weight=1.0,
                seen=Seen.LIVE,
            )
            book.replace_observations(note.note, [claim] * rng.randrange(2))


def change_rally(talk: Talk, rng: random.Random) -> None:
    """A rally of any match, old ones too, tagged anew, taken back, or put back."""
    with talk.book() as book:
        match = rng.choice([one.match for one in book.matches() if book.entries(one.match)])
        entry = rng.choice(book.entries(match))
        if rng.random() < 0.3:
            book.void(match, entry.n)
        elif entry.kind is EntryKind.RALLY:
            rate, made = rng.choice([*Rate]), rng.random() < 0.5
            players = rng.sample(book.players(), rng.randrange(3))
            rows = [
                RateRow(match=match, n=entry.n, player=one.player, rate=rate, made=made)
                for one in players
            ]
            book.count_rates(match, entry.n, rows)
            chosen = rng.random()
            if chosen < 0.3:
                option = rng.choice(["chest", "paddle:1"])
                book.choose(
                    ChoiceRow(match=match, n=entry.n, topic=Topic.AIM_ATTACK, option=option)
                )
            elif chosen < 0.6:
                book.drop_choices(match, entry.n)


def play_on(talk: Talk, rng: random.Random) -> None:
    """A rally of the next game of a match that was over or runs, and the match's state."""
    with talk.book() as book:
        match = rng.choice(book.matches())
        book.append(
            match.match,
            EntryKind.RALLY,
            game_no=rng.randint(1, 3),
            won_by=rng.choice([*Winner]),
            we_serve=rng.choice([None, True, False]),
        )
        book.set_state(match.match, rng.choice([*MatchState]))


def change_people(talk: Talk, rng: random.Random) -> None:
    with talk.book() as book:
        who = rng.choice([row.player for row in book.players()])
        change = rng.randrange(4)
        if change == 0:
            book.rename(who, rng.choice(["Al Okafor", "Bo Quist", "Cy Hale"]))
        elif change == 1 and len(book.players()) > 5:
            book.remove_player(who)
        elif change == 2:
            book.add_alias(who, "big one")
        else:
            book.set_ours(who, ours=rng.random() < 0.2)


def restore_somebody(talk: Talk, rng: random.Random) -> None:
    with talk.book() as book:
        numbers = select(player.c.player_id).where(player.c.book_id == book._book)
        book.restore_player(rng.choice([*book._connection.execute(numbers).scalars()]))


def set_zone(talk: Talk, rng: random.Random) -> None:
    with talk.book() as book:
        book.set_about(name="Book", zone=rng.choice(["UTC", "Pacific/Auckland"]))


def sleep(talk: Talk, rng: random.Random) -> None:
    talk.later(days=rng.choice([1, 90]))


def say(talk: Talk, rng: random.Random) -> None:
    talk.say(rng.choice(SAID))


EDITS: tuple[tuple[int, Callable[[Talk, random.Random], None]], ...] = (
    (10, say),
    (3, add_note),
    (3, change_note),
    (4, change_rally),
    (2, play_on),
    (2, change_people),
    (1, restore_somebody),
    (1, set_zone),
    (1, sleep),
)


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
    weights, edits = zip(*EDITS, strict=True)
    for step in range(EDITS_A_SEED):
        edit = rng.choices(edits, weights)[0]
        edit(noted, rng)
        if rng.random() < 0.7:
            kept, read = evidence_of(noted, afresh=False), evidence_of(noted, afresh=True)
            for part, value in read.items():
                assert kept[part] == value, (step, edit.__name__, part)


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
    real = Desk._evidence

    def counting(desk: Desk, *args: Any, **more: Any) -> BookEvidence:
        nonlocal rows
        known = desk.views.evidence(desk.book_id)
        assert known is not None
        rows += len(desk.book.note_changes(known.version).observations)
        rows += len(desk.book.match_rates(known.version))
        return real(desk, *args, **more)

    with patch.object(Desk, "_evidence", counting):
        talk.say("where do i dink okafor")
    return rows


def test_a_book_that_told_no_hand_yet_tells_the_first(fresh: Talk) -> None:
    """Who stands how is asked before anybody's notes are: of nobody a hand is known at first."""
    fresh.say("/add Chidi Okafor")
    with fresh.book() as book:
        kept = BookEvidence(version=book.about().version).knowing_stances(book)
    assert kept.stances == ()
    fresh.say("okafor is a lefty")
    with fresh.book() as book:
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
