"""The wrong shot asked about, put right: "not lob i mean dink", "the serve not the return"."""

from __future__ import annotations

import re

from bot.chat.another_topic import shot_named
from bot.chat.message import Message
from bot.chat.said import Question
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_LEAD = r"(?:(?:no|nope|sorry|oops|wait|actually|i|mean|meant|ok|so|and|but|was|its|my bad) )*"
_TO = r"(?: (?:no|sorry|but|rather|i|mean|meant|said|make that|wait|actually|its))*"
_WHAT = r"(?:(?:the|my|our) )?"
_ONE_BALL = regex(r"\ban? ")
"""`not a dink, a lob` tells of a ball that was played."""

_FORMS = (
    regex(rf"{_LEAD}not {_WHAT}(?P<wrong>\w+(?: \w+)??){_TO} (?P<right>{_WHAT}\w+(?: \w+)?)"),
    regex(rf"{_LEAD}(?P<right>{_WHAT}\w+(?: \w+)?) (?:and )?not {_WHAT}(?P<wrong>\w+(?: \w+)?)"),
)


def topic_put_right(message: Message, chat: ChatView) -> Question | None:
    """The question before about the other shot, of the same people; None for anything else.

    Two shots and the words that set one off are all that is said: neither a rally nor a note is.
    """
    if chat.last_topic is None or message.mentions or chat.forwarded:
        return None
    line = " ".join(word.folded for word in message.said)
    if _ONE_BALL.search(line):
        return None
    right = next((each for form in _FORMS if (each := _put_right(form, line))), None)
    if right is None:
        return None
    return Question(text=message.text, topic=right, confidence=CERTAIN, changes=True)


def _put_right(form: re.Pattern[str], line: str) -> Topic | None:
    """The shot that is meant, where both are shots and not the same one."""
    found = form.fullmatch(line)
    if found is None:
        return None
    wrong, right = shot_named(found["wrong"]), shot_named(found["right"])
    return right if wrong is not None and right is not wrong else None
