"""The door to every page: each topic is answered, about itself, even when nothing is known."""

from __future__ import annotations

import pytest

from knowledge.advice import CALL_LIMIT
from knowledge.situation import Situation
from knowledge.tactics import advise
from knowledge.vocabulary import Topic


@pytest.mark.parametrize("topic", list(Topic))
def test_every_topic_is_answered_with_nothing_known(topic: Topic) -> None:
    advice = advise(Situation(topic=topic))
    assert advice.topic is topic
    assert 0 < len(advice.call) <= CALL_LIMIT
