"""A break, one more of them, and the rally that comes, asked in a few words of a match."""

from __future__ import annotations

from bot.chat.message import Message
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_TAKE_ONE = regex(
    r"(?:(?:so|ok|and|then|but) )*(?:should|shall|do|can|must|could) (?:we|i) "
    r"(?:take|call|burn|spend) one(?: (?:now|here|yet|then|already|or wait|or not))*"
)
"""`shall we take one`: of what is taken or called in a match only a time-out is one of several."""

_IF_IT_GOES = regex(
    r"(?:(?:and|but|so|ok|then) )*(?:what |what happens |how is it )?if (?:we|they|i)"
    r" (?:lose|win|lost|won|drop|take) (?:(?:this|that|the|next) )+(?:one|rally|point|ball)"
)
"""`and if we lose this one?`: the chance then, whatever was asked before but a time-out, which is
weighed for the next rally itself."""

_BREAK_IN_LETTERS = regex(
    r"\s*(?:(?:ok|so|call|take|need|want|a|our|should|do|can|we|i) )*t/?o(?: (?:now|here|yet))*"
    r"\s*\?+\s*"
)
"""`to?`, `call a to now?`: letters that mean nothing else where they are all that is asked."""


def asks_for_a_break(message: Message) -> bool:
    """Whether it asks for a time-out by its letters alone."""
    return _BREAK_IN_LETTERS.fullmatch(message.text.lower()) is not None


def asks_to_take_one(message: Message) -> bool:
    """Whether it asks if one more time-out should be called."""
    return _TAKE_ONE.fullmatch(" ".join(word.folded for word in message.said)) is not None


def asks_if_it_goes(message: Message) -> bool:
    """Whether it asks of the chance after a rally won or lost."""
    if message.chat.last_topic is Topic.TIMEOUT_NOW:
        return False
    return _IF_IT_GOES.fullmatch(" ".join(word.folded for word in message.said)) is not None
