"""Forgetting for good: a player everywhere in a book, and a person everywhere."""

from __future__ import annotations

import pytest
from databases import store
from sqlalchemy import select
from walled import Chatter, chatter

from bot.chat.wording import wording
from scouting_db.base import Base
from scouting_db.session import Store

__all__ = ["store"]


def everything_in(talk: Chatter) -> str:
    """All that the database holds."""
    with talk.store.reading() as connection:
        rows = [
            repr(row)
            for table in Base.metadata.sorted_tables
            for row in connection.execute(select(table))
        ]
    return "\n".join(rows).lower()


@pytest.fixture
def mira(store: Store) -> Chatter:
    mira = chatter(store, "mira")
    for words in (
        "we are Mira and Tom",
        "/add Chidi Okafor",
        "/add Sven Lindqvist",
        "/nickname okafor bones",
        "okafor: lefty, pops up backhand dinks",
        "okafor lobs, lindqvist is quick",
        "note okafor brings his own music",
        "next: okafor and lindqvist, to 11",
        "/plan",
        "we serve",
        "our point, okafor missed a dink",
        "where do i dink okafor",
    ):
        mira.say(words)
    return mira


def test_nothing_goes_before_the_tap(mira: Chatter) -> None:
    before = mira.stored()
    text = mira.say("forget okafor")
    assert text.startswith("Forget Chidi Okafor and 3 notes for good?")
    assert mira.stored() == before


@pytest.mark.parametrize(
    "words", ["forget okafor", "/forget okafor", "forget everything about okafor"]
)
def test_a_forgotten_player_is_nowhere(mira: Chatter, words: str) -> None:
    mira.say(words)
    assert mira.tap("yes, forget for good") == "Chidi Okafor is forgotten, with 3 notes."
    left = everything_in(mira)
    # The last reply says whom it forgot; the next one empties it.
    mira.say("/players")
    with mira.store.reading() as connection:
        rows = [
            repr(row)
            for table in Base.metadata.sorted_tables
            if table.name not in ("inbox", "outbox")
            for row in connection.execute(select(table))
        ]
    assert "okafor" not in "\n".join(rows).lower()
    assert "bones" not in left
    assert "music" not in left


def test_what_is_said_of_others_stays(mira: Chatter) -> None:
    mira.say("forget okafor")
    mira.tap("yes, forget for good")
    assert ("foot_speed", "strength", False) in mira.claims("Lindqvist")
    assert [row.text for row in mira.notes()] == ["Lindqvist: foot speed strength"]
    for words in ("/players", "what's the score", "undo", "put it back", "/plan", "review", "why"):
        assert "okafor" not in mira.say(words).lower()


def test_the_score_stays(mira: Chatter) -> None:
    before = mira.stored()["entry"]
    mira.say("forget okafor")
    mira.tap("yes, forget for good")
    assert mira.stored()["entry"] == before


def test_the_name_may_be_added_anew(mira: Chatter) -> None:
    mira.say("forget okafor")
    mira.tap("yes, forget for good")
    assert mira.say("/add Okafor") == "Added Okafor."
    assert mira.say("okafor is tall").startswith("Noted.")


@pytest.mark.parametrize(
    "words", ["forget dinking okafor, he eats it", "forget the lob against okafor"]
)
def test_advice_is_no_request(mira: Chatter, words: str) -> None:
    assert "for good" not in mira.say(words)


def test_who_only_reads_forgets_nobody(mira: Chatter) -> None:
    tom = chatter(mira.store, "tom")
    tom.say(mira.say("/invite").splitlines()[1])
    mira.say("forget okafor")
    before = mira.stored()
    assert tom.press(mira.button("yes, forget for good").payload) == wording("share.editors_only")
    assert tom.say("forget okafor") == wording("unclear.readers_ask")
    assert mira.stored() == before


@pytest.mark.parametrize(
    "words", ["forget me", "delete all my data", "/forget me", "forget everything about me"]
)
def test_forgetting_oneself_is_asked_once_more(mira: Chatter, words: str) -> None:
    before = mira.stored()
    assert mira.say(words).splitlines() == [
        wording("forget.me_sure"),
        "· Mira's book: erased",
        wording("forget.no_undo"),
    ]
    assert mira.stored() == before


def test_everything_of_mine_is_gone(mira: Chatter) -> None:
    mira.say("forget me")
    assert mira.tap("yes, forget me") == wording("forget.me_done").strip()
    left = everything_in(mira)
    for word in ("okafor", "lindqvist", "bones", "music"):
        assert word not in left, word
    assert mira.say("/players") == wording("book.no_players")


def test_shared_books_stay_with_their_members_unsigned(mira: Chatter) -> None:
    tom = chatter(mira.store, "tom")
    tom.say(mira.say("/invite editor").splitlines()[1])
    tom.say("lindqvist is tall")
    assert "· Mira's book: stays with its members, unsigned" in tom.say("forget me")
    tom.tap("yes, forget me")
    with mira.book() as book:
        signed = {row.text: row.author for row in book.recent_notes()}
    assert signed["lindqvist is tall"] is None
    assert "Okafor" in mira.say("/players")
    assert "Okafor" not in tom.say("/players")


def test_a_book_never_stays_without_an_editor(mira: Chatter) -> None:
    tom = chatter(mira.store, "tom")
    tom.say(mira.say("/invite").splitlines()[1])
    assert "  Tom becomes its editor" in mira.say("forget me")
    mira.tap("yes, forget me")
    assert tom.say("lindqvist is tall").startswith("Noted.")


def test_a_group_of_an_erased_book_has_none(mira: Chatter) -> None:
    here = chatter(mira.store, "mira", group=True)
    here.say("/bind")
    here.tap("the book I use")
    mira.say("forget me")
    mira.tap("yes, forget me")
    assert here.say("/players") == wording("group.no_book")


def test_the_button_pressed_again_finds_nothing_left_to_forget(mira: Chatter) -> None:
    mira.say("forget me")
    payload = mira.button("yes, forget me").payload
    mira.press(payload)
    mira.say("/add Hale")
    assert mira.press(payload) == wording("unclear.other_book")
    assert "Hale" in mira.say("/players")
