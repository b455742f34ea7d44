"""A player to be forgotten, in other words than "forget okafor": "delete everything on okafor".

A whole message of such words and one name. It is asked once more before anything goes, so the words
may be wide; a single note, or what somebody plays ("delete okafor's backhand"), is none of it.
"""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.named_line import NAME, named_line
from bot.chat.said import BookSaid, BookVerb
from bot.chat.view import ChatView
from knowledge.regex import regex

_POLITE = (
    r"(?:(?:please|pls|ok|so|and|can|could|would|will|you|u|i|we|want|need|like|id|to|now|hey|just)"
    r" )*"
)
_ERASE = r"(?:delete|erase|wipe|remove|scrub|purge|clear|get rid of|forget)"
_ALL = (
    r"(?:(?:everything|anything|all|all of it|whatever|(?:all )?(?:the |your |our |my )?"
    r"(?:data|info|information|stuff|records?|profile|entry)) )"
)
_KEPT = (
    r"(?:(?:that |which )?(?:(?:you|u|we|i|they)(?:ve)? )?(?:have |has |had |got )?"
    r"(?:know|knows|have|got|hold|keep|kept|stored?|saved?|noted|noted down|collected|there is) )?"
)
_AFTER = (
    r"(?: (?:(?:out of|from|in|off) (?:the|my|our|this|your) (?:book|notebook|notes|list|memory"
    r"|database|system|app|bot)|for good|for ever|forever|completely|entirely|altogether|please|pls"
    r"|now|again|and all|data|info|records?|profile|entry))*"
)
_FORGET = regex(
    rf"{_POLITE}{_ERASE} (?:{_ALL}{_KEPT}(?:(?:about|on|of|for|regarding) )?)?{NAME}{_AFTER}"
)
_FROM_THE_BOOK = regex(r"\b(?:from|out of|off) (?:the|my|our|this) (?:book|notebook|notes)\b")
_WISHES = regex(r"(?:please |pls |ok |so |hey )*(?:can|could|would|will) (?:you|u)\b")


def forget_asked(message: Message, chat: ChatView) -> BookSaid | None:
    """The wish to forget a player; None for all else, and for one of us out of a shared book."""
    named = [one for one in message.mentions if not one.pronoun]
    if chat.forwarded or len(named) != 1 or len(message.mentions) != 1:
        return None
    line = named_line(message.said, message.mentions)
    if _FORGET.fullmatch(line) is None:
        return None
    if is_ours(named[0], chat.ours) and _FROM_THE_BOOK.search(line):
        return None  # who shares the book leaves it as a member
    if "?" in message.text and _WISHES.match(line) is None:
        return None
    return BookSaid(
        text=message.text, verb=BookVerb.FORGET, words=named[0].typed, mentions=message.mentions
    )
