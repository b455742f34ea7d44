"""A result said again as it should be counts instead of the one told, and wins no other match."""

from __future__ import annotations

import pytest
from talk import Talk

POOL = "pool okafor and lindqvist then ruiz and hale one game to fifteen"


def pool_lines(talk: Talk) -> list[str]:
    return talk.say("pool").splitlines()[1:3]


@pytest.mark.parametrize(
    ("told", "then", "first"),
    [
        ("won fifteen eleven", "no fifteen twelve", "won 15-12"),
        ("won fifteen eleven", "correct the result fifteen twelve", "won 15-12"),
        ("won 15-11", "sorry it was 15-12 not 15-11", "won 15-12"),
        ("won 15-11", "change 15-11 to 15-12", "won 15-12"),
        ("won 15-11", "15-12 sorry", "won 15-12"),
        ("won 15-11", "make that 15-12", "won 15-12"),
        ("won 15-11", "the result was 15-12", "won 15-12"),
        ("won 15-11", "no we lost", "lost 11-15"),
        ("won 15-11", "no they won that one", "lost 11-15"),
        ("won 15-11", "wait no they won 15-12", "lost 12-15"),
        ("won 15-11", "no okafor won 15-12", "lost 12-15"),
        ("won 15-11", "no sorry fourteen sixteen", "lost 14-16"),
        ("lost fourteen sixteen", "no sorry sixteen fourteen us", "won 16-14"),
        ("lost 17-15", "no 18-16", "lost 16-18"),
        ("lost 17-15", "no we won 18-16", "won 18-16"),
        ("won 15-11", "correct lindqvist 15-8", "won 15-8"),
    ],
)
def test_the_match_that_was_told_is_put_right(demo: Talk, told: str, then: str, first: str) -> None:
    demo.say(POOL)
    demo.say(told)
    assert demo.say(then).startswith(f"Put right: {first}")
    assert pool_lines(demo) == [f"1 Okafor/Lindqvist: {first}", "2 Ana Ruiz/Hale"]


def test_a_correction_of_the_pools_last_match_counts_too(demo: Talk) -> None:
    demo.say(POOL)
    demo.say("won 15-11")
    demo.say("lost fourteen sixteen")
    demo.say("no sorry sixteen fourteen us")
    assert pool_lines(demo) == ["1 Okafor/Lindqvist: won 15-11", "2 Ana Ruiz/Hale: won 16-14"]


def test_an_earlier_match_is_put_right_by_who_played_it(demo: Talk) -> None:
    demo.say(POOL)
    demo.say("won 15-11")
    demo.say("won 15-3")
    assert demo.say("no okafor and lindqvist was 15-9").startswith("Put right: won 15-9")
    assert pool_lines(demo) == ["1 Okafor/Lindqvist: won 15-9", "2 Ana Ruiz/Hale: won 15-3"]


def test_undo_of_a_correction_leaves_the_result_as_first_told(demo: Talk) -> None:
    demo.say(POOL)
    demo.say("won 15-11")
    before = demo.context
    demo.say("no 15-12")
    demo.say("undo")
    assert pool_lines(demo) == ["1 Okafor/Lindqvist: won 15-11", "2 Ana Ruiz/Hale"]
    assert demo.context.match == before.match


def test_what_is_no_finished_game_is_questioned_and_nothing_stored(demo: Talk) -> None:
    demo.say(POOL)
    demo.say("won 15-11")
    before = demo.stored()["entry"]
    demo.say("no 15-14")
    assert demo.stored()["entry"] == before


def test_once_the_next_match_has_begun_a_correction_is_of_its_score(demo: Talk) -> None:
    demo.say(POOL)
    demo.say("won 15-11")
    demo.say("next")
    demo.say("they serve")
    demo.say("5-3-1")
    demo.say("no 6-3-1")
    assert pool_lines(demo)[0] == "1 Okafor/Lindqvist: won 15-11"
    assert demo.say("score").startswith("6-3-1")


def test_the_next_matchs_own_result_is_no_correction(demo: Talk) -> None:
    demo.say(POOL)
    demo.say("won 15-11")
    demo.say("won 15-12")
    assert pool_lines(demo) == ["1 Okafor/Lindqvist: won 15-11", "2 Ana Ruiz/Hale: won 15-12"]


@pytest.mark.parametrize(
    ("then", "stands"),
    [
        ("no 11-9", "Game 1 ours, 11-9."),
        ("sorry it was 12-10", "Game 1 ours, 12-10."),
        ("no they won it", "Game 1 theirs, 8-11."),
        ("no we lost 11-8", "Game 1 theirs, 8-11."),
    ],
)
def test_a_game_put_right_is_no_second_game(demo: Talk, then: str, stands: str) -> None:
    demo.say("next: ruiz and hale best of three to 11")
    demo.say("won 11-8")
    assert demo.say(then).startswith(stands)
    assert demo.say("score").startswith(stands)
    demo.say("undo")
    assert demo.say("score").startswith("Game 1 ours, 11-8.")


def test_a_game_that_a_rally_ended_is_put_right_too(demo: Talk) -> None:
    demo.say("next: ruiz and hale best of three to 11")
    demo.say("we serve")
    demo.say("10-9-1")
    demo.say("ours")
    assert demo.say("no 12-10").startswith("Game 1 ours, 12-10.")


@pytest.mark.parametrize(
    ("first", "then", "told"),
    [
        ("we won the match", "no they won", "Put right: lost, not won."),
        ("they won the match", "no we won", "Put right: won, not lost."),
    ],
)
def test_a_result_without_games_is_put_right_in_words(
    demo: Talk, first: str, then: str, told: str
) -> None:
    demo.say("next: ruiz and hale")
    demo.say(first)
    assert demo.say(then) == told


@pytest.mark.parametrize(
    "then",
    [
        "no hang on we won it 11-9 sorry i typed it backwards",
        "sorry mira says we won it 11-9",
        "oops wrong way round, we won 11-9 lol",
    ],
)
def test_a_game_told_the_wrong_way_round_is_turned_whatever_is_said_of_it(
    demo: Talk, then: str
) -> None:
    demo.say("next: ruiz and hale best of three to 11")
    demo.say("we lost 9-11")
    assert demo.say(then).startswith("Game 1 ours, 11-9.")
    assert demo.say("score").startswith("Game 1 ours, 11-9.")


@pytest.mark.parametrize("then", ["won the second 11-9 sorry for the delay", "won again 11-9"])
def test_the_same_numbers_of_a_next_game_are_no_correction(demo: Talk, then: str) -> None:
    demo.say("next: ruiz and hale best of three to 11")
    demo.say("we lost 9-11")
    assert demo.say(then).startswith("Game 2 ours, 11-9.")


@pytest.mark.parametrize(
    ("told", "reply"),
    [
        ("we won 11-9 in a tb... i mean 11-9 11-6", "Won 11-9 11-6."),
        ("won 11-9 in a close one no wait 11-8 11-6", "Won 11-8 11-6."),
        ("won 11-9 tight one then 11-6", "Won 11-9 11-6."),
        ("we won 11-9 11-9 11-6", "11-9 11-9 wins a best of 3. Not stored; what's the score?"),
        ("lost 11-9 11-9 11-6", "9-11 9-11 wins a best of 3. Not stored; what's the score?"),
        ("won 11-9 9-11 11-6", "Won 11-9 9-11 11-6."),
    ],
)
def test_a_match_has_no_games_behind_its_end(demo: Talk, told: str, reply: str) -> None:
    demo.say("next: ruiz and hale best of three to 11")
    assert demo.say(told).startswith(reply)
