"""What the last answer would be without a note: "and without that note?", "what would you change if
i took away the jam note on okafor". Nothing is deleted by such a question.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.said import Retelling, RetellSaid
from bot.chat.view import ChatView
from knowledge.regex import regex

_LEAD = r"(?:(?:and|ok|so|but|hm|hey) )*"
_WHAT = (
    r"(?:what|how|where|who)(?: (?:would|d|do|does|should|could|will|else))*"
    r"(?: (?:you|u|we|i|that|it|the call|your (?:call|answer|advice)))?"
    r"(?: (?:change|changes|say|do|call|suggest|advise|pick|tell|look|be|go|answer|differently"
    r"|me|us|like|for|then|it))*"
)
_LEFT_OUT = (
    r"(?:without|minus|ignoring|leaving out|not counting"
    r"|if (?:i|we|you|u)(?: (?:would|were to|had))?"
    r" (?:took|take|taken|remove|removed|drop|dropped|delete|deleted|ignore|ignored|leave|left"
    r"|forget|forgot|didnt have|hadnt)(?: (?:away|out|back|noted|made|had))?)"
)
_NOTE = (
    r"(?: (?:that|this|the|my|those|these|any|all|of|one))*(?: (?!notes?\b)\w+){0,5}? notes?"
    rf"(?: (?:away|out))?(?: (?:on|about|of|for) {NAME})?"
)
_ASKED = regex(
    rf"{_LEAD}(?:{_WHAT} )?{_LEFT_OUT}{_NOTE}(?: {_WHAT})?(?: (?:then|instead|now|please|pls))*"
)


def without_note_asked(message: Message, chat: ChatView) -> RetellSaid | None:
    """The last answer, wanted without a note; None for any other message."""
    is_of_something = chat.last_topic is not None or bool(message.mentions)
    if chat.forwarded or not is_of_something:
        return None
    if _ASKED.fullmatch(named_line(message.said, message.mentions)) is None:
        return None
    return RetellSaid(text=message.text, how=Retelling.WITHOUT)
