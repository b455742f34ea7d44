"""A few spoken words that ask for one page, and lines like them that ask for another."""

from __future__ import annotations

from dataclasses import replace

from topic_examples import VIEW
from voices import EVENING

from bot.chat.games_asked import asks_of_games
from bot.chat.message import read_message
from bot.chat.rally_clauses import told_rally
from bot.chat.runs_said import several_rallies
from bot.chat.said import SaidScore, ScoreSaid
from bot.chat.topic_by_form import topic_by_form
from bot.chat.understand import understand
from knowledge.vocabulary import Topic

ASKED = {
    "gimme the plan": Topic.GAME_PLAN,
    "lemme see our game plan vs okafor": Topic.GAME_PLAN,
    "what if its windy": Topic.WEATHER_OR_BODY,
    "bounce it or volley it when its floating at my chest": Topic.TAKE_OR_LET_BOUNCE,
    "high ball in the middle who smashes": Topic.COVER_MIDDLE,
    "her dad is yelling at us what do we do": Topic.RESET_HEAD,
    "they volleyed our serve is that a fault": Topic.RULES_QUESTION,
}
NOT = [
    "gimme a cue",
    "what if the wind is behind us",
    "hard drive at my chest, volley it or let it go",
    "who smashes more, okafor or lindqvist",
    "okafor keeps yelling at lindqvist",
    "do i volley the short return",
]


MATCH = replace(EVENING, match_on=True)


def test_a_form_asks_for_its_page_and_for_no_other() -> None:
    found = {said: topic_by_form(read_message(said, VIEW)) for said in [*ASKED, *NOT]}
    assert found == {**ASKED, **dict.fromkeys(NOT)}


def test_the_match_is_told_and_asked_for_in_other_words() -> None:
    """Who served out of order hit nothing out; "twice" counts; a game's score is of the games."""
    wrong, twice = "we served out of order n already won the pt", "they scored twice"
    assert told_rally(read_message(wrong, MATCH), MATCH) is None
    run = several_rallies(read_message(twice, MATCH), MATCH)
    assert run is not None
    assert (run.number, run.ours) == (2, False)
    served = understand("we serve first im on the right", chat=MATCH)
    assert [one.score for one in served if isinstance(one, ScoreSaid)] == [SaidScore(we_serve=True)]
    assert asks_of_games("what was the score of game 1")
    assert not asks_of_games("what is the score")
