"""A format told alone sets the announced match; a score of another game is only looked at."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Kind
from bot.chat.wording import wording
from knowledge.game import Discipline, GameFormat, Scoring
from knowledge.situation import Situation


@pytest.fixture
def announced(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist")
    return demo


def stands(talk: Talk) -> GameFormat:
    """The format that a question about the running match is told of."""
    talk.say("what are our chances")
    assert talk.heard is not None
    told = talk.heard.trace["situation"]
    assert isinstance(told, Situation)
    assert told.format is not None
    return told.format


@pytest.mark.parametrize(
    ("text", "format"),
    [
        ("one game to 15", GameFormat(best_of=1, target=15)),
        ("rally scoring to 21", GameFormat(scoring=Scoring.RALLY, target=21)),
        ("singles", GameFormat(discipline=Discipline.SINGLES)),
        (
            "it's rally scoring, to 21, win by 1",
            GameFormat(scoring=Scoring.RALLY, target=21, win_by=1),
        ),
    ],
)
def test_an_announced_match_is_played_so(announced: Talk, text: str, format: GameFormat) -> None:
    assert announced.say(text).startswith("This match: ")
    announced.tap("undo")
    assert stands(announced) == GameFormat()
    announced.say("redo")
    assert stands(announced) == format


def test_who_serves_first_may_be_known_before(announced: Talk) -> None:
    announced.say("we serve first")
    assert announced.say("rally scoring to 21").startswith("This match: ")
    assert announced.say("we won that one").startswith("1-0.")


def test_a_match_under_way_stays_as_it_is(announced: Talk) -> None:
    announced.say("we serve first")
    announced.say("we won that one")
    before = announced.stored()
    reply = announced.say("rally scoring to 21")
    assert "This match runs as best of 3 to 11." in reply
    assert "next: ..., rally scoring to 21" in reply
    assert announced.stored() == before


def test_what_is_so_already_and_what_cannot_be_is_said(announced: Talk) -> None:
    before = announced.stored()
    assert announced.say("best of 3 to 11").startswith("That's what I have")
    assert "cap of 9" in announced.say("to 11 cap 9")
    assert announced.stored() == before


def test_without_a_match_it_is_told_how_to_announce_one(fresh: Talk) -> None:
    told = wording("format.no_match").format(format="best of 3 to 21, rally scoring")
    assert fresh.say("rally scoring to 21") == told


@pytest.mark.parametrize("text", ["singles?", "is it one game to 15", "what about rally scoring"])
def test_asking_sets_nothing(announced: Talk, text: str) -> None:
    before = announced.stored()
    announced.say(text)
    assert announced.stored() == before


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("rally scoring to 21, 15-18", "Game: "),
        ("to 21 win by 3 at 20-20", wording("standing.check")),
        ("singles to 15, 12-9", "Game: "),
    ],
)
def test_a_score_of_another_game_is_looked_at_and_not_stored(
    announced: Talk, text: str, start: str
) -> None:
    announced.say("we serve first")
    announced.say("we won that one")
    before = announced.stored()
    assert announced.say(text).startswith(start)
    assert announced.heard is not None
    assert announced.heard.kind is Kind.QUESTION
    assert announced.stored() == before
    assert announced.say("score").startswith("1-0-2")


def test_a_score_in_the_match_s_own_words_is_stored(announced: Talk) -> None:
    announced.say("we serve first")
    assert announced.say("we're up 5-3 to 11").startswith("5-3")


@pytest.mark.parametrize(
    ("text", "each"),
    [
        ("one timeout each", 1),
        ("we get 2 time outs a game", 2),
        ("no timeouts per game", 0),
        ("best of 3 to 15, one time-out per side", 1),
    ],
)
def test_the_event_may_have_another_number_of_timeouts(
    announced: Talk, text: str, each: int
) -> None:
    announced.say(text)
    assert stands(announced).timeouts_each == each
    assert announced.say("time-outs left") == f"Time-outs left: you {each}, they {each}."


def test_a_timeout_taken_of_the_events_own_is_gone(announced: Talk) -> None:
    announced.say("one timeout each")
    announced.say("called a timeout")
    assert announced.say("time-outs left") == "Time-outs left: you 0, they 1."


def test_an_announcement_tells_the_timeouts_too(demo: Talk) -> None:
    assert "1 time-out each" in demo.say("next: okafor and lindqvist, 1 timeout per game")


@pytest.mark.parametrize("text", ["we have one timeout left", "no timeouts left", "one timeout"])
def test_timeouts_left_are_not_of_the_format(announced: Talk, text: str) -> None:
    announced.say(text)
    assert stands(announced).timeouts_each is None


@pytest.mark.parametrize(
    ("told", "format"),
    [
        ("were in a pool of four, four short matches one game to 11 then a playoff", "to 11"),
        ("round robin first, its all one game to 15", "to 15"),
    ],
)
def test_how_a_pool_is_played_asks_whom_it_is_against(fresh: Talk, told: str, format: str) -> None:
    assert fresh.say(told) == wording("format.no_pool").format(format=f"one game {format}")


@pytest.mark.parametrize(
    "said",
    [
        "were in a pool, how do we get through, one game to 11",
        "we lost in the pool 11-6, one game to 11",
        "pool: gell/rudd, sten/vik; one game to 11",
        "pool of four, gell is slow, one game to 11",
    ],
)
def test_what_else_is_said_of_a_pool_is_read_as_before(fresh: Talk, said: str) -> None:
    assert not fresh.say(said).startswith("I keep that with the opponents.")
