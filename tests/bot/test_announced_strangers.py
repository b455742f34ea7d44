"""A match announced with how little we know them: both names are asked about, and no other word."""

from __future__ import annotations

import pytest
from coach_talks import new_coach
from talk import Talk


@pytest.mark.parametrize(
    "said",
    [
        "semi vs bram and lotte 14:00 dont know them",
        "semi vs bram and lotte 14:00, we don't know them at all",
        "quarter against bram and lotte at 2pm no idea who they are",
        "bronze match vs bram and lotte 16:00 played them once",
        "semi final v bram+lotte court 2 never played them",
        "r2 vs bram and lotte court 4 havent seen them",
        "last 16 vs bram and lotte 9:30 strangers to us",
        "playoff vs bram and lotte 9:30 new to us",
        "first match bram and lotte 9:30 dont know them",
        "next bram and lotte, never met them",
        "semi vs bram and lotte 14:00 lovely weather for it",
    ],
)
def test_both_of_the_pair_are_added(said: str) -> None:
    talk = new_coach()
    assert talk.say(said).splitlines()[-1] == "No bram and lotte in your book yet."
    assert talk.tap("add bram and lotte").startswith("Next: Bram and Lotte")
    talk.store.close()


def test_who_serves_first_in_it_asks_for_no_choice_of_ends(fresh: Talk) -> None:
    fresh.say("we are colm and marguerite")
    told = fresh.say(
        "next up stan whitlock and odette marlow eleven forty court two we receive first"
    )
    assert told == "No stan whitlock and odette marlow in your book yet."


def test_what_is_played_waits_for_both_and_then_counts() -> None:
    talk = new_coach()
    talk.say("semi vs bram and lotte 14:00 dont know them")
    assert talk.say("lost 12-10").startswith("First add bram and lotte, then the match is on.")
    assert "Game 1 theirs, 10-12." in talk.tap("add bram and lotte")
    talk.store.close()


def test_a_pair_of_the_book_is_announced_at_once(demo: Talk) -> None:
    said = "next ruiz and hale 14:00 we havent played them"
    assert demo.say(said).startswith("Next: Ana Ruiz and Ben Hale, 14:00")


def test_what_to_do_with_strangers_is_still_a_question() -> None:
    talk = new_coach()
    told = talk.say("what do i do against bram and lotte if i dont know them")
    assert not told.startswith(("Next:", "No bram and lotte"))
    talk.store.close()
