"""Which pair "we" are asked: "who are we", "who am i playing with", "who are my partners"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.occasions import OCCASION
from bot.chat.said import BookSaid, BookVerb
from bot.chat.words import folded_line
from knowledge.regex import regex

_LEAD = r"(?:(?:ok|okay|so|and|hey|um|wait|sorry|remind me) )*"
_MY = r"(?:my|our) (?:(?:current|regular|mixed|doubles|womens|mens) )*partners?"
_END = r"(?: (?:then|again|now|exactly|anyway|though|tho|lol|please|pls))*"
_ASKED = regex(
    rf"(?:{_LEAD}(?:who|whom|whos|which pair|what pair|which team|what team) (?:are we|am i)"
    r"(?: (?:playing|partnering|paired|partnered)(?: up)? with)?"
    rf"(?:{OCCASION})*"
    rf"|{_LEAD}(?:who is|who are|whos|who do you (?:have|think|know) (?:as|is|are)) {_MY}"
    rf"(?:{OCCASION})*"
    rf"|{_LEAD}(?:who do i|who i) (?:play|partner|team up) with(?:{OCCASION})*"
    rf"|{_LEAD}(?:do you know )?who (?:we are|i am|im playing with|my partner is)){_END}"
)


def our_pair_asked(message: Message) -> BookSaid | None:
    """The question; None unless it is all that is said: against whom is asked of the day."""
    if _ASKED.fullmatch(folded_line(message.said)) is None:
        return None
    return BookSaid(text=message.text, verb=BookVerb.OUR_PAIRS)
