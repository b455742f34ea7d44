"""A score that is asked about, or that somebody else counts: it moves nothing by itself.

"Was that 2-2 or 3-2" wants the score we have; "Kath says it's 3-1-2" tells that two count
differently, and whoever keeps the score decides by a tap.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.message import Message
from bot.chat.numbers import Group, groups
from bot.chat.said import BookSaid, BookVerb
from bot.chat.view import ChatView
from knowledge.regex import regex

OF_DOUBT = "doubt"
"""Said with the score that is asked for: what we have, whatever another says; then their call."""

_LEADS = (
    r"(?:(?:hang on|hold on|wait|so|ok|okay|hey|um|uh|er|sorry|but|and|now|well|hm+|no|oh"
    r"|remind me|quick one|one sec) )*"
)
_IT = r"(?:it|that|this|the score|the call)"
_BE = r"(?:is|was|isnt|wasnt)"
_OR = rf"(?: (?:now|then|to (?:us|them|we|they)))?(?: or (?:(?:{_BE} )?{_IT} )?#)"
_TAIL = (
    r"(?: (?:now|then|or what|or not|again|to (?:us|them|we|they)|(?:our|their) (?:way|favou?r)"
    r"|please|pls))*"
)
_IS_IT = rf" (?:{_BE} {_IT}|innit|aint it|am i right|or am i wrong)"
_ASKED = regex(
    rf"{_LEADS}(?:{_BE} {_IT} (?:really |still |just |now |at )?#(?:{_OR})?"
    rf"|(?:(?:its|thats|it is|that is|that makes it|makes it|{_IT}) )?#(?:{_OR}|{_IS_IT})"
    rf"|did (?:we|i|you|they) (?:say|call|have|make it) #(?:{_OR})?){_TAIL}"
)
"""`was that 2-2 or 3-2`, `so that's 2 nil is it`: nothing else stands there, so that "is it 9-8
already, should we call a time-out" stays a question of its own."""

_WHO = r"(?:N|they|he|she|my partner|one of (?:us|them|they))"
_HELD = regex(
    rf"{_LEADS}(?:but )?{_WHO}(?: (?:is|are))? "
    r"(?:says?|said|saying|thinks?|thought|reckons?|reckoned|claims?|swears?|insists?|believes?"
    r"|makes it|has it (?:at|as)|counted|counts)"
    rf"(?: (?:that|{_IT}|its|thats|{_IT} {_BE}|we are at|were at|were|now))*"
    rf" #(?: not #)?{_TAIL}"
)
_CALLED = regex(
    rf"{_LEADS}(?:but )?{_WHO} (?:just |only )?(?:calls?|called|calling|announced?|says?|said"
    rf"|made it) (?:it |the score )?#(?: (?:but|and|though|when|while|which))*"
    rf"(?: (?:its|it is|it was|thats|that is|it should be|should be"
    rf"|(?:i|we) (?:have|had|got|make it)|the score is|my count is|really|actually|still"
    rf"|clearly|by my count|not))+ #"
    rf"(?:{_IS_IT}| right| yes| no| isnt it| correct)?{_TAIL}"
)
"""`they called 7-5-2 but its 6-5-2`: two calls, of which the log knows one."""

_HELD_OR_CALLED = (_HELD, _CALLED)
"""`kath says its 3 1 2`. The referee's call is no opinion, and counts as told."""


def score_doubted(message: Message, chat: ChatView) -> BookSaid | None:
    """The score asked for, with the call that somebody else holds where one is told."""
    found = groups(message.said)
    if not chat.match_on or chat.forwarded or not found:
        return None
    line = _line(message, found)
    if _ASKED.fullmatch(line) is not None:
        return BookSaid(text=message.text, verb=BookVerb.SCORE, words=OF_DOUBT)
    if "?" in message.text or not any(one.fullmatch(line) for one in _HELD_OR_CALLED):
        return None
    held = "-".join(map(str, found[0].numbers))
    return BookSaid(text=message.text, verb=BookVerb.SCORE, words=f"{OF_DOUBT} {held}")


def _line(message: Message, found: Sequence[Group]) -> str:
    """The folded words, with # for each score and N for each name."""
    names = [one.span for one in message.mentions if not one.pronoun]
    scores = {at: group for group in found for at in range(group.start, group.stop)}
    parts: list[str] = []
    for at, word in enumerate(message.said):
        if at in scores:
            part = "#" if at == scores[at].start else ""
        elif any(start <= word.span[0] < stop for start, stop in names):
            part = "" if parts[-1:] == ["N"] else "N"
        else:
            part = word.folded
        parts += [part] if part else []
    return " ".join(parts)
