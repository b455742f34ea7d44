"""How a note is dictated to us: "can you write down that glenda is slow", "remember walt lobs"."""

from __future__ import annotations

import re
from collections.abc import Callable

from bot.chat.message import Message, read_message
from bot.chat.said import Question, RallySaid, Understood
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex

Settled = Callable[[str, Message, ChatView], Understood | None]
"""What has one meaning by its form."""

_ASKED = (
    r"(?:(?:can|could|would|will) (?:you|u|ya) |i (?:want|need|would like)(?: you)? to "
    r"|i'?d like to |let me |let'?s |please |pls |just |also |and |ok(?:ay)? |hey |oh |so "
    r"|kindly )*"
)
_THAT = r"(?: (?:that|this|it))?"
_VERB = (
    rf"(?:(?:write|put|jot|mark|get){_THAT} down{_THAT}"
    rf"|(?:make|take|add)(?: (?:a|me a|another))? note{_THAT}"
    r"|(?:note|log|save|store|record|keep|add|write) (?:that|this)"
    rf"|(?:remember|memori[sz]e|(?:do not|don'?t|dont|never) forget|(?:keep|bear) in mind){_THAT}"
    r"|(?:add|put|write)(?: (?:that|this|it))? (?:to|in|into|for) (?:the|my|your|our) "
    rf"(?:book|notes|notebook){_THAT})"
)
_OPENING = regex(rf"^\s*{_ASKED}{_VERB}(?:\s*[:,–—-]+)?\s+(?=\S)", re.IGNORECASE)

_ASKS_OR_TELLS_US = frozenset(
    ["to", "what", "where", "when", "how", "who", "which", "why", "if", "about", "me", "we", "us"]
)
"""First words of what is no statement: "remember to lob walt", "remember what i said"."""

_FEWEST_WORDS = 2


def note_dictated(text: str, chat: ChatView, settled: Settled) -> Message | None:
    """What a message that asks us to keep something wants kept, read by itself.

    None for any other, and where that has a meaning of its own: "write down that we won".
    """
    rest = _dictated(text)
    if rest is None:
        return None
    message = read_message(rest, chat)
    meant = settled(rest, message, chat)
    if not message.mentions or not (meant is None or isinstance(meant, Question | RallySaid)):
        return None
    return message


def _dictated(text: str) -> str | None:
    opening = _OPENING.match(text.replace("’", "'"))
    if opening is None:
        return None
    rest = text[opening.end() :]
    if rest.count("?") == 1:
        # The mark belongs to "can you write down ...", not to what is noted.
        rest = rest.rstrip().removesuffix("?")
    said = words(rest)
    if len(said) < _FEWEST_WORDS or said[0].folded in _ASKS_OR_TELLS_US:
        return None
    return rest
