"""Notes asked for: "read me my notes on okafor", "what did i note today", "how many notes"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.said import BookSaid, BookVerb
from bot.chat.view import ChatView
from knowledge.regex import regex

COUNT, TODAY, YESTERDAY, UNSURE, BARE = "count", "today", "yesterday", "unsure", "bare"
"""What such a message says beside the names."""

_POLITE = r"(?:(?:please|pls|ok|so|and|hey|now|can you|could you|can i|let me) )*"
_SHOW = (
    r"(?:show|list|read|see|give|get|pull up|bring up|open|find|view)(?: (?:me|us|out|back|up))*"
)
_WHOM = rf"(?: (?:on|about|for|of|re|with))?(?: (?:the|both))? {NAME}(?: (?:(?:and|n|or) )?{NAME})*"
_WHEN = (
    r"(?: (?:from|of|for|so far|today|this(?: (?:morning|afternoon|evening))?|todays|yesterday"
    r"|please|pls|again))*"
)
_MADE = r"(?: (?:that )?(?:i|we)(?: have| ve)?(?: (?:made|took|taken|have|wrote|noted|kept))?)?"
_OWN = r"(?:(?:all|the|my|our|of|these|last|newest|latest|recent|todays|yesterdays) )*"

_FORMS = (
    regex(rf"{_POLITE}{_SHOW} {_OWN}notes?{_MADE}(?:{_WHOM})?{_WHEN}"),
    regex(
        rf"{_POLITE}(?:(?:all|the|my|our|last|newest|latest|recent) )+notes{_MADE}"
        rf"(?:{_WHOM})?{_WHEN}"
    ),
    regex(rf"{_POLITE}notes (?:on|about|for|of) (?:the )?{NAME}(?: (?:(?:and|n) )?{NAME})*{_WHEN}"),
    regex(
        rf"{_POLITE}what (?:all )?(?:did|have|had) (?:i|we) (?:noted?|wrote|written|write"
        rf"|jot(?:ted)?|said?|say|told you|tell you)(?: down)?{_WHEN}(?:{_WHOM})?{_WHEN}"
    ),
    regex(
        rf"{_POLITE}(?:what|which)(?: all)? notes(?: (?:do|did|have|has|are))*"
        rf"(?: (?:i|we|you|there))?(?: (?:have|got|make|made|take|taken|took|kept?|stored?))*"
        rf"(?:{_WHOM})?{_WHEN}"
    ),
    regex(
        rf"{_POLITE}(?:(?:which|what)(?: of)?|{_SHOW})(?: (?:all|the|my|our))* (?P<bare>notes"
        r"(?: (?:do|did|have|are|that|which|you|u|i|we|there))* (?:only|just)"
        r"(?: (?:have|has|had|got|kept?|keep|stored?|are|is|as|in|my|own|the))* words"
        r"|notes(?: (?:have|has|had|got|with|without|that|you|read|are|were|no|any))* "
        r"(?:traits?|unread))"
    ),
    regex(
        rf"{_POLITE}(?P<count>how many) notes(?: (?:do|did|have|has|are) (?:i|we|you|there))?"
        rf"(?: (?:have|got|make|made|take|taken|took|kept?|there|stored?|in all|in total))*"
        rf"(?: in (?:the|my|our) book)?(?:{_WHOM})?{_WHEN}"
    ),
)
_UNSURE = regex(
    r" (?:that|which|where|and)(?: (?:is|are|was|were|im|am|i|we|it|you|not|so|too|very|really"
    r"|quite|all|that|only|a|bit))*"
    r" (?:sure|unsure|certain|uncertain|doubtful|guess|maybe)(?: of| about)?$"
)
"""Behind what is asked for, only what was told with a "maybe" of it."""

_DAY_WORD = regex(
    r"\b(?P<today>todays?|this (?:morning|afternoon|evening))\b|\b(?P<yesterday>yesterdays?)\b"
)


_OF_ANOTHER = regex(
    rf"(?:(?:and|ok|so|now|also|what about|how about) )*(?:(?:on|about|of|for) )?{NAME}"
    r"(?: (?:too|then|as well|now|please|pls))*"
)
"""`and hale`, right after the notes on somebody."""


def notes_asked(message: Message, chat: ChatView) -> BookSaid | None:
    """Whose notes, of when, or how many; None unless it is all that is said."""
    named = tuple(one for one in message.mentions if not one.pronoun)
    whole = named_line(message.said, message.mentions)
    line = _UNSURE.sub("", whole)
    found = next((at for form in _FORMS if (at := form.fullmatch(line)) is not None), None)
    if found is None and chat.notes_listed and not message.note.claims:
        found = _OF_ANOTHER.fullmatch(line)
    if found is None:
        return None
    parts = found.groupdict()
    day = _DAY_WORD.search(line)
    parts |= {} if day is None else {key: said for key, said in day.groupdict().items() if said}
    parts |= {UNSURE: whole[len(line) :]}
    words = [key for key in (COUNT, TODAY, YESTERDAY, UNSURE, BARE) if parts.get(key)]
    verb = BookVerb.SHOW_NOTES
    mentions = named or message.mentions
    return BookSaid(text=message.text, verb=verb, words=" ".join(words), mentions=mentions)
