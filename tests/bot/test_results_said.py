"""Results in words: whose game each was, when a match is decided, and what goes on."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from talk import Talk

from bot.chat.results_said import result_said
from bot.chat.said import ResultSaid
from bot.chat.words import words
from knowledge.game import GameFormat
from scouting_db.values import Micros

BEST_OF_THREE = GameFormat(best_of=3)
NEXT = "next: ruiz and hale, best of 3 to 11"
TO_ELEVEN = st.one_of(
    st.tuples(st.just(11), st.integers(0, 9)),
    st.integers(10, 20).map(lambda losing: (losing + 2, losing)),
)
"""A won game to 11 by two, the winner's points first."""


def said(text: str) -> ResultSaid | None:
    found = words(text)
    return result_said(text, found, of_score=found, format=BEST_OF_THREE)


def games_of(text: str) -> tuple[tuple[int, int], ...]:
    found = said(text)
    assert found is not None, text
    return found.games


@pytest.mark.parametrize(
    ("text", "games"),
    [
        ("won the first 11-9 lost the second 4-11", ((11, 9), (4, 11))),
        ("we won the first 11-7, lost the second 9-11", ((11, 7), (9, 11))),
        ("we lost 11-9, won 11-6", ((9, 11), (11, 6))),
        ("they won the first 11-9, we won the second 11-4", ((9, 11), (11, 4))),
        ("they lost the first 11-9 we lost the second 11-4", ((11, 9), (4, 11))),
        ("game 1 11-7, game 2 8-11", ((11, 7), (8, 11))),
        ("won 11-8 9-11 11-6", ((11, 8), (9, 11), (11, 6))),
        ("lost 11-9 11-7", ((9, 11), (7, 11))),
        ("we ended up losing eleven seven first game", ((7, 11),)),
        ("so we wound up losing the first one eleven nine", ((9, 11),)),
        ("we ended up dropping the first game 11-9", ((9, 11),)),
        ("they ended up winning 11-7", ((7, 11),)),
        ("they ended up losing 11-7", ((11, 7),)),
        ("we ended up winning 7-11", ((11, 7),)),
        ("ended up losing 11-9, 11-6", ((9, 11), (6, 11))),
    ],
)
def test_whose_game_each_was(text: str, games: tuple[tuple[int, int], ...]) -> None:
    assert games_of(text) == games


@given(games=st.lists(st.tuples(st.booleans(), TO_ELEVEN), min_size=2, max_size=3))
def test_each_game_goes_by_its_own_word(games: list[tuple[bool, tuple[int, int]]]) -> None:
    """The winner's points said first, as players do: the word tells whose they are."""
    text = ", ".join(f"{'won' if won else 'lost'} {a}-{b}" for won, (a, b) in games)
    assert games_of(text) == tuple((a, b) if won else (b, a) for won, (a, b) in games)


def test_shared_games_are_nobodys_match() -> None:
    found = said("won 11-8 9-11")
    assert found is not None
    assert found.won is None


@pytest.mark.parametrize(
    ("text", "tally"),
    [("we lost the match 2-1", (1, 2)), ("won 2-1", (2, 1)), ("they won 2-0", (0, 2))],
)
def test_a_match_told_in_games(text: str, tally: tuple[int, int]) -> None:
    found = said(text)
    assert found is not None
    assert found.tally == tally


@pytest.mark.parametrize(
    "text",
    [
        "won the first 11-9 lost the second 4-11",
        "we won the first 11-7, lost the second 9-11",
        "we lost 11-9, won 11-6",
        "game 1 11-7, game 2 8-11",
    ],
)
def test_one_game_all_goes_on(demo: Talk, text: str) -> None:
    demo.say(NEXT)
    assert demo.say(text).startswith("Game 2 ")
    assert demo.context.match is not None
    demo.tap("undo")
    assert demo.say("score") == "Who serves first?", "both games are one step to undo"
    demo.say("put it back")
    assert demo.say("we won the third 11-4").startswith("Won ")
    assert demo.context.match is None


@pytest.mark.parametrize(
    ("text", "call"),
    [
        ("game 1 11-7, game 2 8-11, we are 6-4-1 in game 3", "Game 3. 6-4-1. We serve"),
        ("won the first 11-7, they lead 4-2 in the second, they serve", "Game 2. 4-2-1. They"),
        ("lost 11-9, won 11-6, 4-4-2 in the third", "Game 3. 4-4-2"),
    ],
)
def test_the_score_of_the_next_game_may_be_told_too(demo: Talk, text: str, call: str) -> None:
    demo.say(NEXT)
    assert demo.say(text).startswith(call)


@pytest.mark.parametrize(
    "text", ["first game gone, 8-11, two more", "lost the first 8-11 two games left"]
)
def test_what_is_still_to_play_is_no_server(demo: Talk, text: str) -> None:
    demo.say(NEXT)
    assert demo.say(text).startswith("Game 1 theirs, 8-11.")


@pytest.mark.parametrize(
    "text",
    [
        "we won game one",
        "lost the second",
        "they took the first game",
        "first game gone",
        "game 2 is ours",
        "ok so we lost the opener",
    ],
)
def test_a_game_without_its_points_is_asked_for_them(demo: Talk, text: str) -> None:
    demo.say(NEXT)
    demo.say("11-8")
    assert demo.say(text).splitlines() == [
        "Games so far: 11-8.",
        "To keep a game I need its score. Say it like 11-8.",
    ]
    assert demo.say("8-11").startswith("Game 2 theirs, 8-11.")


@pytest.mark.parametrize(
    "text", ["we won the first rally", "lost the first server", "won the second point"]
)
def test_a_rally_is_no_game(demo: Talk, text: str) -> None:
    demo.say(NEXT)
    demo.say("we serve")
    assert "Say it like 11-8" not in demo.say(text)


@pytest.mark.parametrize(
    "text",
    [
        "who won",
        "who won the second game?",
        "who won game 1",
        "which games did we win",
        "did we win g2",
    ],
)
def test_who_won_a_game_is_told_by_the_games(demo: Talk, text: str) -> None:
    demo.say(NEXT)
    demo.say("we serve")
    assert demo.say(text).splitlines()[0] == "No game of this match is over by my log."
    demo.say("11-8")
    assert demo.say(text).splitlines()[0] == "Game 1 ours, 11-8. Ends change."
    demo.say("8-11")
    assert demo.say(text).splitlines()[:2] == [
        "Games so far: 11-8 8-11.",
        "Game 2 theirs, 8-11. Ends change.",
    ]


def test_a_question_beside_games_is_answered_and_the_match_goes_on(demo: Talk) -> None:
    demo.say(NEXT)
    reply = demo.say("lost 11-9, won 11-6, 4-4-2 in the third, chance of the match")
    assert "4-4-2" in reply.splitlines()[-1]
    assert "Match: about" in reply
    assert demo.context.match is not None


@pytest.mark.parametrize(
    ("text", "reply"),
    [
        ("we lost the match 2-1", "Lost 1-2."),
        ("won 2-1", "Won 2-1."),
        ("won 11-8 9-11 11-6", "Won 11-8 9-11 11-6."),
        ("lost the first 11-7 and the second 11-2", "Lost 7-11 2-11."),
    ],
)
def test_a_decided_match_is_closed(demo: Talk, text: str, reply: str) -> None:
    demo.say(NEXT)
    assert demo.say(text).startswith(reply)
    assert demo.context.match is None


def test_games_the_log_has_are_not_counted_twice(demo: Talk) -> None:
    demo.say(NEXT)
    demo.say("won 11-7")
    assert demo.say("won the first 11-7, lost the second 9-11").startswith("Game 2 theirs")
    demo.say("undo")
    assert demo.say("score").startswith("Game 1 ours, 11-7")


def test_a_game_told_again_at_once_is_the_same_game(demo: Talk) -> None:
    demo.say("they won it 11-9")
    assert demo.say("lost 11-9").startswith("I have that game")
    assert demo.tap("game 2 too").startswith("Lost 9-11 9-11.")


@pytest.mark.parametrize("text", ["won the second 11-6", "11-6 again, won", "game 2 ours, 11-6"])
def test_a_next_game_may_end_the_same(demo: Talk, text: str) -> None:
    demo.say("won 11-6")
    assert demo.say(text).startswith("Won 11-6 11-6.")


def test_a_game_told_later_is_the_next(demo: Talk) -> None:
    demo.say("won 11-6")
    demo.now = Micros(demo.now + 10 * 60 * 1_000_000)
    assert demo.say("won 11-6").startswith("Won 11-6 11-6.")


def test_games_that_contradict_the_log_are_asked_about(demo: Talk) -> None:
    demo.say(NEXT)
    demo.say("won 11-7")
    before = demo.stored()
    assert "I have 11-7" in demo.say("lost the first 11-7, won the second 11-9")
    assert demo.stored() == before


def test_a_bare_end_of_a_game_is_told_ours_first(demo: Talk) -> None:
    demo.say(NEXT)
    assert demo.say("first game 11-8").startswith("Game 1 ours, 11-8.")
    assert demo.say("second 9-11").startswith("Game 2 theirs, 9-11.")
    assert demo.context.match is not None


@pytest.mark.parametrize("format", ["best of 3 to 11", "one game to 11"])
def test_a_game_that_is_not_over_is_no_result(demo: Talk, format: str) -> None:
    demo.say(f"next: ruiz and hale, {format}")
    before = demo.stored()
    assert demo.say("we won 7-5").startswith("7-5 doesn't end a game to 11.")
    assert demo.stored() == before


@pytest.mark.parametrize("asked", ["score", "what was the score", "final", "result"])
def test_the_last_match_can_be_asked_for(demo: Talk, asked: str) -> None:
    demo.say(NEXT)
    demo.say("won 11-9 11-4")
    assert demo.say(asked) == "Last match: won 11-9 11-4."


def test_a_match_tapped_to_its_end_can_be_asked_for(demo: Talk) -> None:
    demo.say("next: ruiz and hale, one game to 11")
    demo.say("we serve at 10-3")
    demo.say("our rally")
    assert demo.say("what was the score?") == "Last match: won 11-3."


def test_no_match_at_all_says_so(fresh_anywhere: Talk) -> None:
    assert fresh_anywhere.say("score").startswith("No match is on")


def test_a_score_without_a_match_is_not_called(fresh_anywhere: Talk) -> None:
    assert fresh_anywhere.say("third: 5-2-1 we serve").startswith("No match is on")


def test_the_new_game_is_named(demo: Talk) -> None:
    demo.say(NEXT)
    assert demo.say("won 11-9").startswith("Game 1 ours, 11-9.")
    assert demo.say("we serve").startswith("Game 2. 0-0-2. We serve")
    assert demo.say("our rally").startswith("1-0-2.")
    assert demo.say("score").startswith("Game 2. 1-0-2.")


@pytest.mark.parametrize(
    ("text", "won", "tally"),
    [
        ("we won in 3 games", True, (2, 1)),
        ("swept them", True, (2, 0)),
        ("gone in 3", False, (1, 2)),
        ("they swept us", False, (0, 2)),
        ("they were a no-show", True, None),
        ("we had to quit", False, None),
    ],
)
def test_a_match_without_points_is_told(
    text: str, won: bool, tally: tuple[int, int] | None
) -> None:
    found = said(text)
    assert found is not None
    assert (found.games, found.won, found.tally) == ((), won, tally)


@pytest.mark.parametrize(
    ("text", "games"),
    [
        ("they crushed us 11 1 and then 11 3", ((1, 11), (3, 11))),
        ("they won but only 15-13 wait no 16-14", ((14, 16),)),
        ("eleven five the first to them, we took the second twelve ten", ((5, 11), (12, 10))),
        ("rip. 21-18 them", ((18, 21),)),
        ("game over. us 11 them 9", ((11, 9),)),
    ],
)
def test_games_are_turned_by_who_won_them(text: str, games: tuple[tuple[int, int], ...]) -> None:
    assert games_of(text) == games


@pytest.mark.parametrize("text", ["11-10 us, win by 2 so still going", "pickled so far 0-6"])
def test_what_goes_on_is_no_result(text: str) -> None:
    assert said(text) is None


def test_a_no_show_closes_the_match_against_them_only(demo: Talk) -> None:
    demo.say("next: ruiz and hale, best of 3 to 11")
    demo.say("brandt was a no-show")
    assert demo.context.match is not None
    reply = demo.say("hale no show, we win")
    assert reply == "Won. The match is closed."
    assert demo.say("last match?") == "Last match: won."
    demo.say("undo")
    assert demo.context.match is not None


@pytest.mark.parametrize(
    "told", ["we ended up losing eleven seven", "so we wound up losing the first one eleven seven"]
)
def test_how_a_game_ended_asks_nothing(demo: Talk, told: str) -> None:
    demo.say(NEXT)
    assert demo.say(told).startswith("Game 1 theirs, 7-11.")
    assert demo.say("we won the second game eleven nine yay").startswith("Game 2 ours, 11-9.")


def test_what_is_asked_beside_a_lost_game_is_answered(demo: Talk) -> None:
    demo.say(NEXT)
    told = demo.say("we ended up losing eleven seven what should we change")
    assert "Game 1 theirs, 7-11." in told
    assert not told.startswith("Game 1")
