"""A match told of with names that nobody bears: play and notes wait for them, nothing is lost."""

from __future__ import annotations

import pytest
from talk import Talk

WAITS = "First add gwen and tobiah, then the match is on."


@pytest.fixture
def told(fresh: Talk) -> Talk:
    fresh.say("we are petronella and bronagh")
    fresh.say("next: gwen/tobiah 10am crt 3")
    return fresh


@pytest.mark.parametrize(
    "words", ["add gwen and tobiah", "add gwen/tobiah", "yes", "add them", "new", "add both"]
)
def test_words_add_the_names_whatever_was_said_between(told: Talk, words: str) -> None:
    told.say("what do we do against bangers")
    assert "Next: Gwen and Tobiah, 10:00, court 3" in told.say(words)
    assert told.context.match is not None
    assert told.say("4-5-1").startswith("4-5-1")


@pytest.mark.parametrize("score", ["3-5", "0-0-2 they start", "lost that one", "we won g1 11-3"])
def test_play_waits_for_the_names_and_offers_the_tap_again(told: Talk, score: str) -> None:
    assert told.say(score).startswith(WAITS)
    assert told.button("add gwen and tobiah")


def test_what_was_held_counts_once_the_names_are_in(told: Talk) -> None:
    told.say("0-0-2 they start")
    told.say("lost that one")
    told.say("3-5-1")
    added = told.tap("add gwen and tobiah")
    assert added.startswith("Next: Gwen and Tobiah")
    assert added.endswith("\n\n3-5-1. They serve.")
    assert "Who serves first" not in added


def test_a_note_that_waited_is_read_and_the_match_is_on(told: Talk) -> None:
    told.say("gwens serve is a bomb and tobiah cant hit an overhead")
    told.tap("add gwen and tobiah")
    assert {trait for trait, *_ in told.claims("Tobiah")} == {"overhead"}
    assert told.context.match is not None


def test_whoever_is_added_of_a_note_brings_the_other(told: Talk) -> None:
    told.say("gwen cant hit an overhead")
    assert "Next: Gwen and Tobiah" in told.tap("add gwen and tobiah")
    assert told.claims("Gwen") == {("overhead", "weakness", False)}


def test_a_part_of_a_name_that_waits_is_nobody_else(fresh: Talk) -> None:
    fresh.say("next: Maren Holt and Sieglinde, 18:15")
    fresh.say("Maren is lefty and slices everything")
    assert fresh.say("Sieglinde her volley is weak").startswith(
        "First add Maren Holt and Sieglinde"
    )
    assert "Next: Maren Holt and Sieglinde, 18:15" in fresh.say("yes")
    assert ("hand", "left", False) in fresh.claims("Maren Holt")
    assert "volley" in " ".join(trait for trait, *_ in fresh.claims("Sieglinde"))


def test_the_number_of_a_button_says_what_waits(told: Talk) -> None:
    told.say("what do we do against bangers")
    assert told.say("1") == WAITS


def test_a_result_of_another_pair_is_theirs(fresh: Talk) -> None:
    fresh.say("we are petronella and bronagh")
    fresh.say("pool: oduya/halvorsen, tamsin/yuki")
    fresh.say("next: gwen/tobiah")
    assert fresh.say("won 11-3").startswith(WAITS)
    assert fresh.say("beat tamsin/yuki 11-7").startswith("Won 11-7")
    assert "Tamsin/Yuki: won 11-7" in fresh.say("pool")


def test_play_of_the_match_that_is_on_does_not_wait(fresh: Talk) -> None:
    fresh.say("we are petronella and bronagh")
    fresh.say("pool: oduya/halvorsen, tamsin/yuki")
    fresh.say("we serve")
    fresh.say("next: gwen/tobiah")
    assert fresh.say("3-2, we serve").startswith("3-2")


def test_the_pools_next_match_lets_the_other_go(fresh: Talk) -> None:
    fresh.say("we are petronella and bronagh")
    fresh.say("pool: oduya/halvorsen, tamsin/yuki")
    fresh.say("next: gwen/tobiah")
    fresh.say("next")
    assert fresh.say("won 11-3").startswith("Won 11-3")


def test_one_of_the_names_typed_adds_that_one(told: Talk) -> None:
    assert told.say("add gwen") == "Added Gwen."
    assert told.say("3-5-1").startswith("First add tobiah, then the match is on.")
    assert told.tap("add tobiah").startswith("Next: Gwen and Tobiah")
    with told.book() as book:
        assert sorted(row.name for row in book.players() if not row.ours) == ["Gwen", "Tobiah"]


def test_full_names_added_are_those_that_waited(told: Talk) -> None:
    assert "Next: Gwen Ortiz and Tobiah Frank" in told.say("add tobiah frank and gwen ortiz")


def test_undo_takes_back_what_was_kept_then_the_match(told: Talk) -> None:
    told.say("3-5-1")
    assert told.say("undo") == "Taken back: “3-5-1”."
    told.say("next: gwen/tobiah")
    assert told.say("undo") == "Taken back: the match."


def test_the_pair_told_last_is_the_one_that_waits(told: Talk) -> None:
    told.say("next: gwyn/tobias")
    assert told.say("3-5-1").startswith("First add gwyn and tobias")


@pytest.mark.parametrize(
    ("moved", "stands"),
    [
        ("moved to 10:40 court 6", "Gwen/Tobiah: now 10:40, court 6."),
        ("now its 10.40", "Gwen/Tobiah: now 10:40, court 3."),
        ("pushed back 20 min", "Gwen/Tobiah: now 10:20, court 3."),
        ("court 6 now", "Gwen/Tobiah: now 10:00, court 6."),
    ],
)
def test_a_match_whose_names_wait_is_moved_once_it_is_on(
    told: Talk, moved: str, stands: str
) -> None:
    """It moved a closed match, or made one against nobody."""
    assert told.say(moved).startswith(WAITS)
    assert stands in told.tap("add gwen and tobiah")


def test_another_match_named_moves_though_one_waits(demo: Talk) -> None:
    demo.say("next we have Bauer and Zorn at 3.20")
    assert demo.say("okafor match moved to 4 pm").startswith("Okafor/Lindqvist: now 16:00")


def test_play_goes_on_where_the_next_match_waits_and_moves(demo: Talk) -> None:
    demo.say("we serve")
    demo.say("next we have Bauer and Zorn at 3.20")
    assert demo.say("moved to court 4").startswith("First add Bauer and Zorn")
    assert demo.say("our point").startswith("1-0-2")


def test_what_is_told_of_somebody_announced_waits_and_a_yes_adds_all(demo: Talk) -> None:
    demo.say("next: Maren Bauer and Zorn at 3.20")
    for note in ("Maren is lefty and slices everything", "Zorn doesn't lob"):
        told = demo.say(note)
        assert told.startswith("First add Maren Bauer and Zorn"), told
        assert told.endswith("Your words are kept.")
    read = demo.say("yes")
    assert "Next: Maren Bauer and Zorn" in read
    assert "Bauer: left-handed" in read
    assert "Zorn: lob rarely" in read
