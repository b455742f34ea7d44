"""What every topic of a ball owes: what is not said is assumed, said, and offered as a button."""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.advice import Choice, MatchFact
from knowledge.situation import Asked, Situation
from knowledge.tactics import advise
from knowledge.tactics.ball_words import FIELDS, with_fact
from knowledge.vocabulary import BallKind, BallQuality, Topic

BALL_TOPICS = (
    Topic.COVER_MIDDLE,
    Topic.AIM_ATTACK,
    Topic.AIM_OVERHEAD,
    Topic.DROP_ON_DEEP_OPPONENTS,
    Topic.LOB,
    Topic.RESET_OR_COUNTER,
    Topic.TAKE_OR_LET_BOUNCE,
    Topic.LET_IT_GO,
    Topic.TRANSITION,
    Topic.ERNIE_OR_POST,
    Topic.AIM_DINK,
    Topic.AIM_SERVE,
    Topic.AIM_RETURN,
    Topic.THIRD_SHOT,
)


@pytest.mark.parametrize("topic", BALL_TOPICS)
def test_what_is_not_said_is_assumed_said_and_offered(topic: Topic) -> None:
    """Two branches at least, each of this topic, and a line of what was taken."""
    advice = advise(Situation(topic=topic))
    assert advice.assumed
    labels = [one.label for one in advice.choices]
    assert len(labels) >= 2
    assert len(set(labels)) == len(labels)
    assert [one for one in advice.choices if one.topic is topic and one.fact is not None]


def _pressed(choice: Choice, topic: Topic) -> Situation | None:
    """The question again with what the button says; None for a button of another kind."""
    fact, value = choice.fact, choice.value
    if choice.topic is not topic or fact is None or value is None:
        return None
    asked = Asked()
    if fact == MatchFact.BALL:
        asked = replace(asked, ball=BallQuality(value))
    elif fact == MatchFact.BALL_KIND:
        asked = replace(asked, ball_kind=BallKind(value))
    elif fact in FIELDS:
        asked = replace(asked, facts=with_fact(asked.facts, MatchFact(fact), value))
    else:
        return None
    return Situation(topic=topic, asked=asked)


@pytest.mark.parametrize("topic", BALL_TOPICS)
def test_a_button_that_was_pressed_is_not_offered_again(topic: Topic) -> None:
    """What it says is then told: another answer, or the same one without that doubt."""
    for choice in advise(Situation(topic=topic)).choices:
        situation = _pressed(choice, topic)
        if situation is None:
            continue
        again = [(one.fact, one.value) for one in advise(situation).choices]
        assert (choice.fact, choice.value) not in again, choice.label
