"""Notes: the words stay whole, and what they say becomes evidence."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from databases import NOON, new_team, opened
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy.exc import IntegrityError

from knowledge.vocabulary import PlayerId, Seen, Tag, Trait, Value
from scouting_db.session import Store
from scouting_db.values import Micros, NewObservation
from scouting_db.zones import local_day, local_time

WORDS = "okafor: lefty, slow coming forward"
DAY = 86_400_000_000


def lefty(player: PlayerId) -> NewObservation:
    return NewObservation(
        player=player,
        trait=Trait.HAND,
        value=Value.LEFT,
        weight=1.0,
        seen=Seen.LIVE,
        span=(8, 13),
    )


def slow(player: PlayerId) -> NewObservation:
    return NewObservation(
        player=player,
        trait=Trait.FORWARD_SPEED,
        value=Value.WEAKNESS,
        weight=0.45,
        seen=Seen.HEARSAY,
        denied=True,
        tag=Tag.MOVING_FORWARD,
    )


def test_a_note_reads_back_whole(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        okafor = book.add_player("Okafor")
        claims = (lefty(okafor), slow(okafor))
        number = book.add_note(WORDS, claims, chat=team.chat, external_message_id=5)
        row = book.note(number)
        assert row is not None
        assert (row.text, row.author, row.at, row.observations) == (WORDS, "Mira", NOON, claims)
        assert book.note_of_message(team.chat, 5) == row
        assert book.note_of_message(team.chat, 6) is None


def test_claims_become_evidence(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        okafor, hale = book.add_player("Okafor"), book.add_player("Hale")
        number = book.add_note(WORDS, [lefty(okafor), slow(okafor)])
        hand, speed = book.observations([okafor])
        assert book.observations([hale]) == ()
        assert book.observations() == (hand, speed)
    assert (hand.evidence, hand.words, hand.author) == (
        f"note:{number}:1",
        "lefty",
        str(team.person),
    )
    assert (speed.words, speed.seen, speed.denied, speed.tag, speed.weight) == (
        WORDS,
        Seen.HEARSAY,
        True,
        Tag.MOVING_FORWARD,
        0.45,
    )


def test_the_day_of_evidence_is_the_books_own(store: Store) -> None:
    """22:30 UTC on 14 June 2025 is half past midnight of the 15th in Vienna (summer time)."""
    team = new_team(store, "Mira")
    late = Micros(int(datetime(2025, 6, 14, 22, 30, tzinfo=UTC).timestamp()) * 1_000_000)
    with store.writing() as connection:
        book = team.book(connection)
        book.add_note(WORDS, [lefty(book.add_player("Okafor"))], at=late)
        (in_utc,) = book.observations()
        book.set_about(name="Book", zone="Europe/Vienna")
        (in_vienna,) = book.observations()
    assert in_utc.day == datetime(2025, 6, 14).toordinal()
    assert in_vienna.day == datetime(2025, 6, 15).toordinal()


def test_a_deleted_note_says_nothing_until_it_is_restored(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        okafor = book.add_player("Okafor")
        number = book.add_note(WORDS, [lefty(okafor)])
        book.delete_note(number)
        row = book.note(number)
        assert row is not None
        assert (row.deleted, row.text) == (True, WORDS)
        assert (book.observations(), book.notes_of(okafor), book.recent_notes()) == ((), (), ())
        book.restore_note(number)
        assert (len(book.observations()), len(book.notes_of(okafor))) == (1, 1)


def test_a_removed_player_gives_no_evidence(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        okafor = book.add_player("Okafor")
        book.add_note(WORDS, [lefty(okafor)])
        book.remove_player(okafor)
        assert book.observations() == ()


def test_a_correction_replaces_what_was_understood_and_can_be_undone(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        okafor, hale = book.add_player("Okafor"), book.add_player("Hale")
        number = book.add_note(WORDS, [lefty(okafor)], unread=True)
        before = book.note(number)
        book.replace_observations(number, [lefty(hale)])
        after = book.note(number)
        assert before is not None
        assert after is not None
        assert after.observations == (replace(lefty(hale), origin="corrected"),)
        assert (before.unread, after.unread, after.text) == (True, False, WORDS)
        book.replace_observations(number, before.observations, origin=None)
        undone = book.note(number)
        assert undone is not None
        assert undone.observations == before.observations


def test_notes_come_newest_first_and_unread_ones_oldest_first(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        okafor = book.add_player("Okafor")
        for day in (2, 0, 1):
            at = Micros(NOON + day * DAY)
            book.add_note(f"day {day}", [lefty(okafor)], at=at, unread=True)
        assert [row.text for row in book.notes_of(okafor)] == ["day 2", "day 1", "day 0"]
        assert [row.text for row in book.recent_notes(limit=2)] == ["day 2", "day 1"]


def test_a_note_about_a_player_of_another_book_is_refused(store: Store) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection, pytest.raises(IntegrityError):
        mira.book(connection).add_note(WORDS, [lefty(PlayerId(64))])


def test_what_no_database_keeps_is_replaced_one_for_one(store: Store) -> None:
    """NUL (PostgreSQL refuses it) and half an emoji, as a cut message may carry."""
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        row = book.note(book.add_note("a\0b\ud83dc 🏓"))
        okafor = book.add_player("Oka\0for")
        book.add_alias(okafor, "x\0" * 400)
        player = book.player(okafor)
    assert row is not None
    assert player is not None
    assert (row.text, player.name) == ("a\ufffdb\ufffdc 🏓", "Oka\ufffdfor")


@pytest.fixture(scope="module")
def in_memory() -> Iterator[Store]:
    with opened("sqlite://") as store:
        yield store


@given(text=st.text(st.characters(exclude_characters="\0", exclude_categories=["Cs"])))
def test_any_words_are_kept_to_the_letter(in_memory: Store, text: str) -> None:
    team = new_team(in_memory, "Mira")
    with in_memory.writing() as connection:
        number = team.book(connection).add_note(text)
    with in_memory.reading() as connection:
        row = team.book(connection).note(number)
    assert row is not None
    assert row.text == text


@given(st.integers(-(10**15), 4 * 10**15))
def test_local_times_keep_the_moment(at: int) -> None:
    there = local_time(Micros(at), "America/New_York")
    assert round(there.timestamp() * 1_000_000) == pytest.approx(at, abs=1)
    assert local_day(Micros(at), "America/New_York") == there.toordinal()
