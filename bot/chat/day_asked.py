"""How the day went asked for: "summary of the day", "todays results", "did we win today"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import BookSaid, BookVerb
from bot.chat.words import folded_line
from knowledge.regex import regex

_LEAD = (
    r"(?:(?:ok|okay|so|and|hey|please|pls|give|show|send|tell|list|me|us|a|the|all|our|my|quick"
    r"|short|full|can i (?:get|have|see)|whats|what (?:is|was|are|were))(?: |$))*"
)
_WHAT = (
    r"(?:summary|recap|review|overview|results?|scores?|matches|games|record|tally|wins(?: and"
    r" losses)?|losses|wrap ?up|debrief)"
)
_DAY = r"(?:(?:the |our |this |whole |entire )*(?:day|tournament day)|today)"
_WE = r"(?:we|they|i|it|us|the (?:two )?pairs?|my (?:two )?pairs?|everyone|everybody|both pairs)"
_ASKS = regex(
    rf"{_LEAD}(?:{_WHAT}(?: (?:of|for|from|in))?(?: all)? {_DAY}(?: so far)?"
    rf"|todays {_WHAT}(?: so far)?|(?:day|days) (?:summary|recap|review|results)"
    rf"|how (?:did|have) {_WE} (?:do|go|done|fare|get on|play|been doing) {_DAY}(?: so far)?"
    rf"|how (?:was|is|did|has) (?:our|the|my|todays) day(?: (?:go|been|going|gone))?(?: so far)?"
    rf"|(?:did|have) we (?:win|won|lose|lost)(?: (?:any|anything|a match|all|both))? {_DAY}"
    rf"|(?:what|which(?: matches| ones)?|who) (?:did|have) we (?:win|won|lose|lost|beat|beaten|play"
    rf"|played)(?: (?:to|against))? {_DAY}"
    rf"|who (?:won|lost|beat us|did we beat) {_DAY})"
)


def day_asked(message: Message) -> BookSaid | None:
    """The request; None unless it is all that is said."""
    if not _ASKS.fullmatch(folded_line(message.said)):
        return None
    return BookSaid(text=message.text, verb=BookVerb.DAY_RECORD)
