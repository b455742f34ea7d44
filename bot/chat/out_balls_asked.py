"""What to tell a partner who plays balls that fly out: "its going out but tom hits everything"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Question, Unclear, Understood
from bot.chat.topic_question import CERTAIN
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_GOES_OUT = r"(?:out|long|wide)"
_PLAYS_ALL = (
    r"(?:hits?|plays?|takes?|swings? at|volleys?|touches|returns?|goes for)"
    r" (?:everything|it all|them all|all of (?:them|it)|every(?: single)? (?:ball|one)|each one)"
)
_OUT_AND_PLAYED = regex(rf"\b{_GOES_OUT}\b.*\b{_PLAYS_ALL}\b|\b{_PLAYS_ALL}\b.*\b{_GOES_OUT}\b")


def out_balls_meant(said: Understood, message: Message) -> Question | None:
    """That topic where none was read; None where the words tell of no such ball."""
    line = " ".join(word.folded for word in message.said)
    if not isinstance(said, Unclear) or _OUT_AND_PLAYED.search(line) is None:
        return None
    return Question(text=message.text, topic=Topic.LET_IT_GO, confidence=CERTAIN, slots=said.slots)
