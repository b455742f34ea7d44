"""What follows from something new of an opponent: it is noted, and the plan with it is told."""

from __future__ import annotations

from dataclasses import replace

import pytest
from voices import EVENING

from bot.chat.said import NoteSaid, Question
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId, Topic, Trait

OKAFOR, LINDQVIST = PlayerId(3), PlayerId(4)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)


@pytest.mark.parametrize(
    ("text", "trait"),
    [
        (
            "lindqvist and okafor changed sides, now okafor is on the left. what does that do"
            " for us",
            Trait.SIDE_PLAYED,
        ),
        ("okafor is a lefty. so what does that mean for us?", Trait.HAND),
        ("okafor plays left now, what changes for us", Trait.SIDE_PLAYED),
        ("okafor is on the left now - how does it change our plan", Trait.SIDE_PLAYED),
    ],
)
@pytest.mark.parametrize("last", [None, Topic.WIN_CHANCE])
def test_it_is_noted_and_the_plan_told(text: str, trait: Trait, last: Topic | None) -> None:
    note, question = understand(text, chat=replace(MATCH, last_topic=last))
    assert isinstance(note, NoteSaid)
    assert (OKAFOR, trait) in {(one.player, one.trait) for one in note.claims}
    assert isinstance(question, Question)
    assert question.topic is Topic.GAME_PLAN


@pytest.mark.parametrize(
    "text",
    [
        "what does that do for us",
        "mira is tired. what does that do for us",
        "okafor hurt his knee. what does that mean for us",
        "he called it out. what does that mean",
        "where do i serve okafor? what does it change",
    ],
)
def test_nothing_new_of_an_opponent_brings_no_plan(text: str) -> None:
    said = understand(text, chat=MATCH)
    assert not any(isinstance(one, Question) and one.topic is Topic.GAME_PLAN for one in said)
