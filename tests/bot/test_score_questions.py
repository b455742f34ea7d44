"""What a question about the score reaches the engine with, and what cannot be is told kindly."""

from __future__ import annotations

import re
from typing import Any

import pytest
from talk import Talk

from bot.chat.payload import Tap, Verb
from bot.chat.wording import wording
from knowledge.advice import MatchFact
from knowledge.game import Discipline, GameFormat, Scoring
from knowledge.situation import Situation, TossChoice, Wind
from knowledge.vocabulary import Topic

CHECK = wording("standing.check")


def situation(talk: Talk) -> Situation:
    """What the engine was told for the last question."""
    assert talk.heard is not None
    told = talk.heard.trace["situation"]
    assert isinstance(told, Situation)
    return told


@pytest.mark.parametrize(
    ("text", "state"),
    [
        ("how big is this rally at 9-8-2", (9, 8, 2, True)),
        ("we're up 10-8-2 receiving, how big is this rally?", (10, 8, 2, False)),
        ("they're serving 10-7-2, what are our chances?", (7, 10, 2, False)),
        ("chances from 6-4-1", (6, 4, 1, True)),
        ("10 all second server what are our chances", (10, 10, 2, True)),
        ("what are our chances at 8-9, their serve", (8, 9, 1, False)),
        ("up a game and 5-3 in the second, what are our chances", (5, 3, 1, True)),
        ("what are our chances at 0-0", (0, 0, 2, True)),
        ("singles to 11, 7-4, what are our odds?", (7, 4, None, True)),
        ("10 8 1 chance", (10, 8, 1, True)),
        ("first to 9 cap 11 at 8-8 chances", (8, 8, 1, True)),
        ("to 7, 6-6-2 chance", (6, 6, 2, True)),
        ("risk at 0-0-2", (0, 0, 2, True)),
        ("we need 3 more, they need 1, we serve second, odds?", (8, 10, 2, True)),
        ("they need 2, we're 1 away, their serve, to 15: odds?", (14, 13, 1, False)),
        ("win chance at five to nothing", (5, 0, 1, True)),
    ],
)
def test_the_score_asked_about(demo: Talk, text: str, state: tuple[Any, ...]) -> None:
    demo.say(text)
    told = situation(demo)
    assert told.asked.score_said
    assert told.game is not None
    assert (told.game.ours, told.game.theirs, told.game.server, told.game.we_serve) == state
    assert told.match is not None
    assert told.match.game == told.game


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        ("what are our chances at 12-3-1 to 11", ["12-3 can't happen in a game to 11."]),
        ("what are our chances at 9-8-3", ["The server is 1 or 2, not 3."]),
        (
            "how big is this rally at 12-3-3",
            ["12-3 can't happen in a game to 11.", "The server is 1 or 2, not 3."],
        ),
        ("what are our chances at 5-3 to 0", ["A game is played to at least 1, not 0."]),
        ("what are our chances in a game to 0", ["A game is played to at least 1, not 0."]),
        ("what are our chances at 5-3 in a game to -5", ["at least 1, not -5."]),
        ("chances at 5-3, to 15 cap 11?", ["A cap of 11 lies below the target 15."]),
        ("singles to 11, 7-4-2, odds?", ["Singles has no server number, but 2 was called."]),
        ("best of 1, one game all, what are our chances?", ["A best of 1 has no game 3."]),
    ],
)
def test_every_fault_is_named(demo: Talk, text: str, faults: list[str]) -> None:
    before = demo.stored()
    reply = demo.say(text)
    assert reply.startswith(CHECK)
    for fault in faults:
        assert fault in reply
    assert demo.stored() == before


def test_a_score_too_high_for_its_game_offers_the_longer_games(demo: Talk) -> None:
    demo.say("what are our chances at 12-3-1")
    demo.tap("game to 15")
    told = situation(demo)
    assert told.format == GameFormat(target=15)
    assert told.game is not None
    assert (told.game.ours, told.game.theirs, told.game.format.target) == (12, 3, 15)


@pytest.mark.parametrize(
    ("text", "format"),
    [
        ("what are our chances at 5-5, one game to 15", GameFormat(target=15, best_of=1)),
        (
            "single game to 21 rally scoring, won the toss, serve first?",
            GameFormat(target=21, best_of=1, scoring=Scoring.RALLY),
        ),
        (
            "singles to 11, won the toss, end or serve?",
            GameFormat(discipline=Discipline.SINGLES),
        ),
    ],
)
def test_the_question_s_own_format_wins(demo: Talk, text: str, format: GameFormat) -> None:
    demo.say(text)
    assert situation(demo).format == format


def test_a_question_s_format_is_for_that_question_only(demo: Talk) -> None:
    demo.say("next: ruiz and hale, one game to 15")
    demo.tap("we serve")
    demo.tap("our rally")
    demo.say("what are our chances if it was to 21")
    assert situation(demo).format == GameFormat(target=21, best_of=1)
    demo.say("what are our chances")
    told = situation(demo)
    assert told.format == GameFormat(target=15, best_of=1)
    assert told.game is not None
    assert (told.game.ours, told.game.theirs) == (1, 0)


def test_the_running_match_is_told_with_its_rallies(demo: Talk) -> None:
    demo.say("next: ruiz and hale, to 11")
    demo.tap("we serve")
    demo.tap("our rally")
    demo.tap("their rally")
    demo.tap("time-out")
    demo.say("what are our chances")
    told = situation(demo)
    assert told.match is not None
    assert told.match.timeouts_used_ours == 1
    assert [one.won_by_us for one in told.played] == [True, False]
    assert not told.asked.score_said


def test_another_score_in_a_running_match_is_no_part_of_its_log(demo: Talk) -> None:
    demo.say("we serve first")
    demo.say("our point")
    stored = demo.stored()
    demo.say("what are our chances at 9-8-2")
    told = situation(demo)
    assert told.asked.score_said
    assert told.played == ()
    assert demo.stored() == stored
    demo.say("what are our chances at 1-0-2")
    assert not situation(demo).asked.score_said


def test_games_and_time_outs_said_make_the_match(demo: Talk) -> None:
    demo.say("one game all, 7-4-1, one time-out left, what are our chances?")
    match = situation(demo).match
    assert match is not None
    assert (match.games_ours, match.games_theirs, match.timeouts_left[0]) == (1, 1, 1)


def test_games_said_without_a_score_stand_at_the_next_game(demo: Talk) -> None:
    demo.say("lost the first 4-11. percent to still take the match?")
    match = situation(demo).match
    assert match is not None
    assert (match.games_ours, match.games_theirs) == (0, 1)
    assert (match.game.ours, match.game.theirs) == (0, 0)


def test_more_games_than_the_format_has_make_it_longer(demo: Talk) -> None:
    demo.say("two games all, what are our chances?")
    match = situation(demo).match
    assert match is not None
    assert match.format.best_of == 5


def test_what_is_said_of_a_time_out_reaches_the_engine(demo: Talk) -> None:
    demo.say("lost 4 in a row, we're gassed, it's hot, one time-out left, no idea what to change?")
    asked = situation(demo).asked
    assert (asked.lost_in_a_row, asked.timeouts_left) == (4, 1)
    assert (asked.tired, asked.hot, asked.has_change) == (True, True, False)


def test_what_is_said_of_the_toss_reaches_the_engine(demo: Talk) -> None:
    demo.say("they won the toss and took the serve, sun and people behind one end, windy: which?")
    told = situation(demo)
    assert (told.asked.toss_won, told.asked.they_chose) == (False, TossChoice.SERVE)
    assert (told.asked.sun, told.asked.background, told.wind) == (True, True, Wind.SOME)


@pytest.mark.parametrize(
    ("fact", "value", "field", "wanted"),
    [
        (MatchFact.HAS_CHANGE, "yes", "has_change", True),
        (MatchFact.HAS_CHANGE, "no", "has_change", False),
        (MatchFact.TIRED, "yes", "tired", True),
        (MatchFact.SUN, "no", "sun", False),
        (MatchFact.TIMEOUTS_LEFT, "1", "timeouts_left", 1),
        (MatchFact.LOST_IN_A_ROW, "4", "lost_in_a_row", 4),
    ],
)
def test_a_button_settles_it(
    demo: Talk, fact: MatchFact, value: str, field: str, wanted: object
) -> None:
    demo.say("should we take a time-out?")
    demo.press(str(Tap(verb=Verb.SETTLE, args=(Topic.TIMEOUT_NOW, fact, value))))
    assert getattr(situation(demo).asked, field) == wanted


def test_a_button_settles_wind_and_format(demo: Talk) -> None:
    demo.say("won the toss, end or serve?")
    topic = Topic.CHOOSE_END_OR_SERVE
    demo.press(str(Tap(verb=Verb.SETTLE, args=(topic, MatchFact.WIND, "across"))))
    demo.press(str(Tap(verb=Verb.SETTLE, args=(topic, MatchFact.FORMAT, "sr21"))))
    told = situation(demo)
    assert told.wind is Wind.ACROSS
    assert told.format == GameFormat(
        target=21, scoring=Scoring.RALLY, discipline=Discipline.SINGLES
    )


@pytest.mark.parametrize(
    ("fact", "value"),
    [
        (MatchFact.HAS_CHANGE, "maybe"),
        (MatchFact.TIRED, "very"),
        (MatchFact.WIND, "gale"),
        (MatchFact.SUN, "1"),
        (MatchFact.FORMAT, "0"),
        (MatchFact.FORMAT, "x11"),
        (MatchFact.FORMAT, "999"),
        (MatchFact.TIMEOUTS_LEFT, "-1"),
        (MatchFact.TIMEOUTS_LEFT, "٣"),
        (MatchFact.LOST_IN_A_ROW, "31"),
    ],
)
def test_a_forged_value_changes_nothing(demo: Talk, fact: MatchFact, value: str) -> None:
    demo.say("should we take a time-out?")
    context = demo.context
    payload = f"1:set:timeout_now:{fact}:{value}"
    assert demo.press(payload) == wording("unclear.too_old")
    assert demo.context == context


SHORT = [
    "win chance 8-6-2",
    "how big is this rally at 8-6-2",
    "chances if they serve",
    "chances at one game all",
    "chances in a game to 15",
    "time-out at 8-6-2?",
    "where do we stand at 8-6-2",
]


@pytest.mark.parametrize("text", SHORT)
def test_a_short_answer_still_says_which_score_it_took(demo: Talk, text: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve first")
    demo.say("3-2-1, we serve")
    reply = demo.say(text)
    assert re.search(r"At (?:8-6-2|6-8-2|3-2-1|2-3-1), (?:we|they) serve", reply), reply
    assert len(reply.splitlines()) <= 4


def test_this_rally_asks_for_its_size(demo: Talk) -> None:
    demo.say("what are our chances at 9-8-2")
    assert demo.tap("this rally").startswith("This rally swings the game by ")
    assert "At 9-8-2, we serve" in demo.sent[-1]


def test_a_run_of_ours_needs_no_time_out(demo: Talk) -> None:
    demo.say("we're on a run, should we call a timeout")
    assert situation(demo).asked.lost_in_a_row == 0


@pytest.mark.parametrize(
    ("told", "asked", "games"),
    [
        (("won 11-9", "lost the second 7-11"), "at 8-8 should we take a time out", "1-1"),
        (("won 11-9", "lost 7-11"), "win chance at 10-10", "1-1"),
        (("lost 7-11",), "what are our chances at 5-2, they serve", "0-1"),
        (("won 11-9",), "at 8-8 timeout?", "1-0"),
    ],
)
def test_another_score_behind_a_finished_game_is_of_the_next(
    demo: Talk, told: tuple[str, ...], asked: str, games: str
) -> None:
    for result in told:
        demo.say(result)
    assert f"games {games}." in demo.say(asked)


def _after(talk: Talk, *said: str) -> GameFormat | None:
    for text in said:
        talk.say(text)
    return situation(talk).format


def test_a_frozen_game_point_is_reckoned_and_told(demo: Talk) -> None:
    base = "rally scoring to 21, 20-19 they serve, odds"
    plain, frozen = demo.say(base), demo.say("with freeze?")
    assert situation(demo).format == GameFormat(
        target=21, scoring=Scoring.RALLY, freeze_on_serve=True
    )
    assert "we 20, they 19, the last point on serve only." in frozen
    assert plain.splitlines()[0] != frozen.splitlines()[0]


def test_side_out_scoring_has_no_point_to_freeze(demo: Talk) -> None:
    said = demo.say("side out scoring to 11 with freeze, 10-9-1, win chance")
    assert "every point is won on serve already" in said


@pytest.mark.parametrize(
    ("then", "format"),
    [
        ("what if win by 1", GameFormat(target=15, win_by=1, scoring=Scoring.RALLY)),
        ("what about to 21", GameFormat(target=21, scoring=Scoring.RALLY)),
        (
            "what if with freeze",
            GameFormat(target=15, scoring=Scoring.RALLY, freeze_on_serve=True),
        ),
    ],
)
def test_what_changes_in_a_format_leaves_the_rest_of_it(
    demo: Talk, then: str, format: GameFormat
) -> None:
    assert _after(demo, "rally scoring to 15 win by 2, 14-14 we receive, odds", then) == format


@pytest.mark.parametrize(
    ("asked", "starts"),
    [
        ("how likely do we win the next rally", "This rally: about "),
        ("odds of winning the game if we win this rally", "Game: "),
    ],
)
def test_a_rallys_chance_is_not_the_games(demo: Talk, asked: str, starts: str) -> None:
    demo.say("next: okafor and lindqvist, to 15")
    demo.say("13-13-1 they serve")
    assert demo.say(asked).startswith(starts)


def test_an_exact_chance_is_told_with_what_it_rests_on(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("9-8-2 us")
    told = demo.say("whats our exact win chance, two decimals")
    assert "in 100 at just these rates" in told
    assert "at just these rates" not in demo.say("whats our win chance")


@pytest.mark.parametrize("asked", ["plan and whats the score"])
def test_the_score_asked_for_beside_something_else_is_told_too(demo: Talk, asked: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("9-8-2 us")
    assert "\n\n9-8-2. We serve" in demo.say(asked)
