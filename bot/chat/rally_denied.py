"""Whose the last rally was not: "no, it was not our point", "we did not win that, they did".

And whose it was: "actually that last one was ours", which tells no other one than the last.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import RallySaid
from bot.chat.slip_words import CORRECTS, SLIP
from bot.chat.view import ChatView
from knowledge.regex import regex

_POINT = r"(?:point|pt|rally|one)"
_IT = rf"(?:it|this|that|(?:that|this|the)(?: last)? {_POINT})"
_OPENS = rf"(?:{SLIP}|but |and |well |hey )*"
_OF_US, _OF_THEM = rf"(?:our {_POINT}|ours)", rf"(?:their {_POINT}|theirs)"
"""Not "us" or "our ball": who is meant, and whose serve it is, are other questions."""

_NO = r"(?:not|wasnt|isnt|aint)"
_DID_NOT = r"(?:didnt|did not)"
_DENIED = r"(?:win|won|score)"
"""Not "get" or "take": "we did not get it" asks for an explanation, "take it" is a time-out."""

_WON = r"(?:win|won|get|got|take|took|have|had|score|scored|make|made)"


def belongs(whose: str, who: str) -> str:
    """ "It was theirs", "they took it", "they did"."""
    return (
        rf"(?:(?:{_IT} (?:was|is|s) |its |thats )?{whose}"
        rf"|{who} (?:just |have |ve )*(?:{_WON}(?: {_IT}| the {_POINT})?|did))"
    )


def _denial(whose: str, who: str, others: str) -> str:
    denied = (
        rf"(?:{_IT} )?(?:was |is |s )?{_NO} {whose}"
        rf"|{who} {_DID_NOT} {_DENIED} (?:{_IT}|the {_POINT})"
    )
    return rf"{_OPENS}(?:{denied})(?: (?:but |and |it |so )*{others})?(?: (?:sorry|actually|then))*"


_NOT_OURS = regex(_denial(_OF_US, "we", belongs(_OF_THEM, "they")))
_NOT_THEIRS = regex(_denial(_OF_THEM, "they", belongs(_OF_US, "we")))
_LOOKS_BACK = regex(
    rf"{_OPENS}(?:{_IT} (?:was|is|s|wasnt|isnt|aint)|wasnt|(?:we|they) {_DID_NOT}) "
)
"""It speaks of a rally told before; "not ours, they got it" may tell the one just played."""


def _last(whose: str, others: str) -> str:
    return (
        rf"{_OPENS}(?:(?:that|this|the) )?last {_POINT} (?:(?:actually|really) )?"
        rf"(?:was|is|should be|should have been|(?:goes|went|should go) to)"
        rf" (?:(?:actually|really) )?{whose}(?:(?: and| but)? not {others})?"
        r"(?: (?:sorry|actually|then|though))*"
    )


_US, _THEM = rf"(?:{_OF_US}|us)", rf"(?:{_OF_THEM}|them)"
_LAST_OURS, _LAST_THEIRS = regex(_last(_US, _THEM)), regex(_last(_THEM, _US))


def rally_denied(message: Message, chat: ChatView) -> RallySaid | None:
    """The rally that such a message tells, for the side that it leaves: nothing else is said, so
    that it can hold no question, and of no note, as nobody is named."""
    if not chat.match_on or message.asks or any(not one.pronoun for one in message.mentions):
        return None
    line = " ".join(word.folded for word in message.told.words)
    for form, is_ours in ((_LAST_OURS, True), (_LAST_THEIRS, False)):
        if form.fullmatch(line) is not None:
            return RallySaid(text=message.text, won_by_us=is_ours, corrects=True)
    ours, theirs = (form.fullmatch(line) is not None for form in (_NOT_THEIRS, _NOT_OURS))
    if ours is theirs:
        return None
    looks_back = bool(CORRECTS.match(line) or _LOOKS_BACK.match(line))
    return RallySaid(text=message.text, won_by_us=ours, corrects=looks_back)
