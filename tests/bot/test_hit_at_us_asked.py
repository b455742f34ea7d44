"""What we complain of ourselves is answered, and never turned into an aim of ours."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


def topics(text: str) -> list[Topic]:
    return [one.topic for one in understand(text, chat=EVENING) if isinstance(one, Question)]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("their ball is hitting my right hip all day and i cant get out the way", "answer_pattern"),
        ("i keep getting hit in the hip", "answer_pattern"),
        ("they keep getting me in the right hip", "answer_pattern"),
        ("i keep popping it up what do i do", "adjust"),
        ("they keep hitting it out but tom hits everything, what do i tell him", "let_it_go"),
        ("should i go on the left or the right", "pair_up"),
        ("how do i jam his hip", "aim_attack"),
        ("should i hit his right hip", "aim_attack"),
        ("is it legal to hit me in the hip every time", "rules_question"),
        ("i hurt my hip what do i do", "weather_or_body"),
    ],
)
def test_what_it_asks(text: str, topic: str) -> None:
    assert topics(text) == [Topic(topic)]


def test_a_told_rally_with_such_words_stays_a_rally() -> None:
    assert topics("lost it, he hit me in the hip again") == []


@pytest.mark.parametrize("text", ["i keep getting hit in the hip", "they keep hitting my left hip"])
def test_the_answer_is_how_to_meet_it(demo: Talk, text: str) -> None:
    assert demo.say(text).startswith("Wait with the backhand in front")


def test_what_comes_at_us_is_no_aim_of_ours_and_what_one_of_us_does_no_fault() -> None:
    asked = {
        "i got hit 3 times in the chest by okafor's speedups": Topic.RESET_OR_COUNTER,
        "they change to me again, with soft balls": Topic.BEING_TARGETED,
        "how do i hide myself": Topic.BEING_TARGETED,
        "what is my position when he poaches": Topic.BEING_TARGETED,
        "should tom poach less": Topic.BEING_TARGETED,
        "was that his fault or mine": Topic.RESET_HEAD,
        "he gives me the fault for everything": Topic.RESET_HEAD,
        "tom has taken my ball again and i stood there like a tree": Topic.RESET_HEAD,
        "what shall i tell tom about the middle": Topic.COVER_MIDDLE,
        "shall we take one": Topic.TIMEOUT_NOW,
        "and if we lose this one?": Topic.WIN_CHANCE,
        "it began to blow, from left to right, strong": Topic.WEATHER_OR_BODY,
        "i fell going for the lob": Topic.WEATHER_OR_BODY,
        "what do i do when lindqvist poaches": Topic.ANSWER_PATTERN,
        "is it a fault if mine touched the net": Topic.RULES_QUESTION,
    }
    assert {text: topics(text) for text in asked} == {text: [one] for text, one in asked.items()}


def test_what_was_told_is_gone_on_from(demo: Talk) -> None:
    demo.say("okafor hammers every third shot on my body, left hip")
    assert demo.say("how do i answer on that").startswith("Stand half a step back")
    demo.say("okafor lobs often")
    assert demo.say("does okafor lob").startswith("Yes. Okafor: lobs a lot")
    demo.say("3-4-1 they serve")
    assert demo.say("i have forgotten the score").startswith("3-4-1. They serve.")
    demo.say("it began to blow, from left to right, strong")
    assert "lob" in demo.say("and for the lob?").splitlines()[0]
