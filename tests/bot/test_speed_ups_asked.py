"""Speed-ups asked of without a verb, and what became of ours. Wordings: our own, no source."""

from __future__ import annotations

from voices import IN_TALK

from bot.chat.said import NoteSaid, Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


def test_what_became_of_our_balls_is_kept_and_their_speed_ups_are_their_own() -> None:
    (note,) = understand("4 of 9 balls i sped at okafor came back as winners", chat=IN_TALK)
    assert isinstance(note, NoteSaid)
    topics = {
        "who gets the speed-ups": Topic.AIM_ATTACK,
        "whats ur call on spd-ups now": Topic.AIM_ATTACK,
        "where will okafor speed up": Topic.OPPONENT_REPORT,
        "whats tom bad at": Topic.OPPONENT_REPORT,
    }
    for text, topic in topics.items():
        (asked,) = understand(text, chat=IN_TALK)
        assert isinstance(asked, Question), text
        assert asked.topic is topic, text
