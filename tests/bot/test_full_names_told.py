"""First names of people the book knows by one name, and undo buttons that tell what they undo."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import BookSaid, BookVerb

UNDO_SECOND = "undo “keogh is ollie keogh”"


@pytest.fixture
def met(fresh: Talk) -> Talk:
    fresh.say("next: dorn and keogh")
    fresh.tap("add dorn and keogh")
    return fresh


@pytest.mark.parametrize(
    "said",
    [
        "marek dorn, ollie keogh",
        "marek dorn and ollie keogh",
        "theyre Marek Dorn & Ollie Keogh",
        "full names marek dorn / ollie keogh",
    ],
)
def test_both_get_their_first_names_in_one_message(met: Talk, said: str) -> None:
    assert met.say(said) == "Dorn is now Marek Dorn.\n\nKeogh is now Ollie Keogh."
    assert [one.label.lower() for one in met.buttons] == ["undo", UNDO_SECOND]
    assert met.say("ollie lobs a lot").startswith("Noted. Keogh: lob often.")


@pytest.mark.parametrize(
    "said",
    ["dorn is marek dorn", "dorn = marek dorn", "Marek Dorn", "dorns first name is marek",
     "marek is dorn's first name"],
)  # fmt: skip
def test_one_gets_his_first_name_and_keeps_it_till_undo(met: Talk, said: str) -> None:
    assert met.say(said) == "Dorn is now Marek Dorn."
    assert met.say("marek lobs a lot").startswith("Noted. Dorn: lob often.")
    met.say("undo")
    met.say("undo")
    assert "No marek" in met.say("marek lobs a lot")


@pytest.mark.parametrize(
    "said",
    ["slow dorn", "Lefty Dorn", "marek dorn lefty", "tired dorn", "is it marek dorn?", "dorn keogh",
     "dorn and keogh", "dorn is lefty", "poaching dorn", "dorn is called out", "target dorn",
     "stats dorn", "scout dorn", "forget dorn", "delete dorn", "notes dorn"],
)  # fmt: skip
def test_what_is_told_of_somebody_is_no_first_name(met: Talk, said: str) -> None:
    met.say(said)
    heard = met.heard and met.heard.understood
    assert not (isinstance(heard, BookSaid) and heard.verb is BookVerb.RENAME_PLAYER)


def test_somebody_with_a_full_name_is_not_renamed(demo: Talk) -> None:
    demo.say("marek okafor")
    heard = demo.heard and demo.heard.understood
    assert not (isinstance(heard, BookSaid) and heard.verb is BookVerb.RENAME_PLAYER)


def test_notes_that_waited_for_names_are_undone_by_buttons_that_tell_them_apart(
    fresh: Talk,
) -> None:
    fresh.say("dorn lobs a lot")
    fresh.say("keogh lefty")
    fresh.say("next: dorn and keogh")
    fresh.tap("add dorn and keogh")
    undo = [one.label for one in fresh.buttons if one.label.startswith("undo")]
    assert undo == ["undo", "undo “dorn lobs a lot”", "undo “keogh lefty”"]
    fresh.tap("undo “keogh lefty”")
    assert fresh.say("how sure is keogh lefty") == "Not noted of Keogh: lefty."


@pytest.mark.parametrize(
    "said",
    [
        "Dorn's full name is Marek Dorn, other one is Ollie Keogh",
        "Dorns first name is Marek, Keoghs is Ollie",
    ],
)
def test_a_name_told_in_a_clause_each_begins_no_match(met: Talk, said: str) -> None:
    assert met.say(said) == "Dorn is now Marek Dorn.\n\nKeogh is now Ollie Keogh."
    assert met.say("score") == "Who serves first?"


@pytest.mark.parametrize("said", ["it was keogh", "the other one is keogh"])
def test_who_somebody_was_is_no_rally(met: Talk, said: str) -> None:
    met.say(said)
    assert met.say("score") == "Who serves first?"
