"""The match said to be over, without who won it: "that was the whole match", "only one game"."""

from __future__ import annotations

from bot.chat.formats_told import format_told
from bot.chat.message import Message
from bot.chat.said import RemarkSaid, ScoreRemark
from bot.chat.view import ChatView
from bot.chat.words import folded_line
from knowledge.regex import regex

_LEAD = (
    r"(?:(?:ok|okay|so|and|no|yes|yeah|but|well|sorry|actually|oh|hey|it|its|is|was|that|thats|this"
    r"|the|there|theres|were|are|we|they|only|just|guys) )*"
)
_TAIL = (
    r"(?: (?:now|already|today|here|then|though|tho|for us|for today|only|too|thanks|lol|to|11|15"
    r"|21|eleven|fifteen|twenty ?one|each|long|per match|a match|in the pool|no more|sorry|yes))*"
)
_ENDED = (
    r"(?:(?:whole|entire|full|complete) (?:match|thing|game)|match (?:is |was )?(?:over|done"
    r"|finished|ended|closed|complete)|(?:end|close|finish) (?:of )?(?:the |that |this )?match"
    r"|all (?:we|they) play(?:ed)?|all (?:of|for) the match)"
)
_ONE = r"(?:one|1|a single|single|the only) games?"
_ONE_GAME = (
    rf"(?:(?:play|played|playing|had|have|matches are|all matches are) )?(?:only |just )*{_ONE}"
    r"|no (?:second|2nd|next|more|other) games?|isnt (?:a )?(?:second|2nd|next|another) game"
    r"|not (?:a )?best of (?:3|three)|wasnt (?:a )?best of (?:3|three)"
)
_OVER = regex(rf"{_LEAD}(?:{_ENDED}|(?P<one>{_ONE_GAME})){_TAIL}")


def match_over_said(message: Message, chat: ChatView) -> RemarkSaid | None:
    """The message, if that is all it tells; how the match ended is in its games.

    `number` is 1 where it is told as one game; a format told in full stays one.
    """
    if not chat.match_on or message.asks or "?" in message.text:
        return None
    if format_told(message) is not None:
        return None
    found = _OVER.fullmatch(folded_line(message.said))
    if found is None:
        return None
    one = 1 if found["one"] else None
    return RemarkSaid(text=message.text, remark=ScoreRemark.MATCH_OVER, number=one)
