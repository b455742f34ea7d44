"""A few spoken words that ask for one page, and lines like them that ask for another."""

from __future__ import annotations

from topic_examples import VIEW

from bot.chat.message import read_message
from bot.chat.topic_by_form import topic_by_form
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


def test_a_form_asks_for_its_page_and_for_no_other() -> None:
    found = {said: topic_by_form(read_message(said, VIEW)) for said in [*ASKED, *NOT]}
    assert found == {**ASKED, **dict.fromkeys(NOT)}
