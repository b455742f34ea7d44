"""Two places or paces weighed in a few words, right after a shot was asked about: "short or deep".

Read alone such words may be of any shot; the one just spoken of is meant.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.vocabulary import Topic

_OF_A_SHOT = frozenset(
    {Topic.AIM_SERVE, Topic.AIM_RETURN, Topic.AIM_DINK, Topic.AIM_ATTACK, Topic.AIM_OVERHEAD}
)
_PLACES = words_in(
    "short deep body bh fh backhand forehand line middle wide t cross crosscourt high low soft hard"
    " fast slow left right corner hip hips chest feet shoulder jam angle inside outside flat slice"
    " topspin spin lob"
)
_AROUND = words_in(
    "and so ok then or the a to at in on into down his her their him them go it more better maybe"
    " just like rather ball one side is should i we do hit up n"
)
_FEWEST = 2


def places_weighed(message: Message, chat: ChatView) -> Question | None:
    """The last question again; None unless the message only weighs places of that shot."""
    if chat.last_topic not in _OF_A_SHOT or chat.forwarded or message.mentions:
        return None
    line = [word.folded for word in message.said]
    places = [word for word in line if word in _PLACES]
    if "or" not in line or len(places) < _FEWEST or not {*line} <= _PLACES | _AROUND:
        return None
    assert chat.last_topic is not None, "it is of a shot"
    return Question(text=message.text, topic=chat.last_topic, confidence=CERTAIN, changes=True)
