"""A match that starts, and who serves told behind it. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("start, we serve first", "0-0-2. Mira serves from the right."),
        ("ok lets start, they serve", "0-0-2. They serve from the right to Mira."),
        ("starting now we serve", "0-0-2. Mira serves from the right."),
        ("match starts, their serve", "0-0-2. They serve from the right to Mira."),
        ("we start, okafor serves", "0-0-2. Okafor serves from the right to Mira."),
    ],
)
def test_who_serves_behind_the_start_starts_the_match(demo: Talk, said: str, stands: str) -> None:
    assert demo.say(said) == stands


@pytest.mark.parametrize("said", ["start", "start now", "lets start the match"])
def test_a_bare_start_asks_who_serves(fresh: Talk, said: str) -> None:
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    assert fresh.say(said) == "Who serves first?"
    assert fresh.tap("they serve").startswith("0-0-2. They serve")


@pytest.mark.parametrize(
    "said",
    ["who should start, we serve first or they", "start with the serve or the end", "we start"],
)
def test_who_ought_to_start_is_a_question(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith("Take the worse end first")
    assert not demo.context.asks_serve_of


def test_a_start_changes_no_match_that_runs(demo: Talk) -> None:
    demo.say("we serve first")
    demo.say("our point")
    demo.say("start")
    assert demo.say("score").startswith("1-0-2")


@pytest.fixture
def between_games(demo: Talk) -> Talk:
    demo.say("next okafor lindqvist 10:40")
    demo.say("we serve")
    demo.say("10-5-1 we serve")
    assert "They serve first next." in demo.say("11-5 w")
    return demo


@pytest.mark.parametrize("said", ["me", "we do", "mine"])
@pytest.mark.parametrize("before", ["should i lob okafor", "to?"])
def test_once_something_else_is_spoken_of_a_pronoun_starts_no_game(
    between_games: Talk, before: str, said: str
) -> None:
    between_games.say(before)
    stored = between_games.stored()
    between_games.say(said)
    assert between_games.stored()["entry"] == stored["entry"]
    assert "They serve first next." in between_games.say("score")


@pytest.mark.parametrize("said", ["us", "we do"])
def test_right_behind_a_game_a_pronoun_tells_who_serves(between_games: Talk, said: str) -> None:
    assert between_games.say(said) == "Game 2. 0-0-2. Mira serves from the right."


@pytest.mark.parametrize(
    "said",
    [
        "nah we serve 1st",
        "nah we serve",
        "actually we serve first",
        "no we serve 1st",
        "wait, we serve first",
    ],
)
def test_who_serves_first_is_put_right_and_the_toss_left_alone(
    between_games: Talk, said: str
) -> None:
    assert between_games.say(said) == "Game 2. 0-0-2. Mira serves from the right."
    assert between_games.say("nope they serve 1st").startswith("Game 2. 0-0-2. They serve")


def test_should_we_serve_first_is_still_asked(between_games: Talk) -> None:
    assert "Game 2" not in between_games.say("should we serve first?")


@pytest.mark.parametrize(
    ("said", "serves"),
    [
        ("3-0-1 us, tom srv", "3-0-1. Tom serves from the right."),
        ("3-0-1 us, mira srving", "3-0-1. Mira serves from the left."),
        ("3-0-1 us tom serves", "3-0-1. Tom serves from the right."),
    ],
)
def test_who_serves_by_name_may_be_typed_short(demo: Talk, said: str, serves: str) -> None:
    demo.say("next: okafor and lindqvist")
    assert demo.say(said) == serves


@pytest.mark.parametrize("said", ["gm 2", "game 2", "ok game two"])
def test_the_next_game_named_tells_how_it_stands(between_games: Talk, said: str) -> None:
    assert "They serve first next." in between_games.say(said)


@pytest.mark.parametrize("said", ["what ct", "which court", "what court again"])
def test_what_court_is_read_from_what_was_announced(demo: Talk, said: str) -> None:
    demo.say("next okafor lindqvist 10:40, court 9")
    assert "court 9" in demo.say(said)


@pytest.mark.parametrize("said", ["erm put it back", "um bring it back", "nah put it back"])
def test_a_hesitation_before_putting_back_is_none_of_it(demo: Talk, said: str) -> None:
    demo.say("okafor is slow")
    demo.say("undo")
    assert demo.say(said).startswith("Put back:")


@pytest.fixture
def match(fresh: Talk) -> Talk:
    fresh.say("we are ana and bo")
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    return fresh


@pytest.mark.parametrize(
    ("told", "stands"),
    [
        # Behind a side-out at 0 the second server is the partner of who started right: on the left.
        (("0-0-2 they serve", "our rally", "bo serving 0-0-2"), "0-0-2. Bo serves from the left."),
        (("bo serving 0-1-2",), "0-1-2. Bo serves from the left."),
        (("bo serving 0-1-2", "ana serving 0-1-2"), "0-1-2. Ana serves from the left."),
        (("0-1-2 us", "bo started right", "bo serves now"), "0-1-2. Bo serves from the left."),
        # The log knows it too where the call does not.
        (
            ("0-0-2 they serve", "our rally", "our rally", "their rally", "bo serving"),
            "1-0-2. Bo serves from the right.",
        ),
        (("bo serving 0-1-1",), "0-1-1. Bo serves from the right."),
        (("bo serving 2-3-1",), "2-3-1. Bo serves from the right."),
    ],
)
def test_who_serves_stands_where_the_call_lets_them(
    match: Talk, told: tuple[str, ...], stands: str
) -> None:
    for text in told[:-1]:
        match.say(text)
    assert match.say(told[-1]) == stands
    assert match.say("whats our win chance").startswith("Game: about")


def test_a_format_that_the_score_has_outgrown_is_asked_back(match: Talk) -> None:
    match.say("we play to 21")
    match.say("15-3-1 us")
    assert "15-3 can't happen in a game to 11." in match.say("win chance in a game to 11")


@pytest.mark.parametrize(
    ("told", "stands"),
    [
        ("we serve first 0-0-2 bo starting", "0-0-2. Bo serves from the right."),
        ("0-0-2 us bo starts", "0-0-2. Bo serves from the right."),
        ("0-0-2 us", "0-0-2. We serve from the right."),
    ],
)
def test_who_starts_beside_the_first_call_serves(match: Talk, told: str, stands: str) -> None:
    assert match.say(told) == stands


@pytest.mark.parametrize(
    "asked", ["whos serving now and who do they serve to", "who is serving and to whom"]
)
def test_who_serves_to_whom_is_in_the_score(match: Talk, asked: str) -> None:
    match.say("0-0-2 they serve")
    match.say("bo started right")
    assert match.say(asked) == "0-0-2. They serve from the right to Bo."
