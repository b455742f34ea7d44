"""What one game of a match is played to: "third to 15, they serve", "1-1. third to 11?"."""

from __future__ import annotations

from bot.chat.format_said import SaidFormat
from bot.chat.message import Message
from bot.chat.said import FormatTold
from bot.chat.serving_said import serves_at_first
from bot.chat.view import ChatView
from knowledge.regex import regex

_GAME = (
    r"(?:(?:first|second|third|fourth|fifth|1st|2nd|3rd|4th|5th|last|next|deciding|final|this)"
    r"(?: (?:game|set|one))?|(?:game|set) (?:[1-5]|one|two|three|four|five|number [1-5])|g[1-5]"
    r"|(?:the )?decider|tie ?breaker?)"
)
_TO = r"(?:1[15]|21|eleven|fifteen|twenty one)(?: points?)?"
_FORM = regex(
    rf"(?:(?:ok|so|and|now|its|well|then) )*(?:the )?{_GAME} (?:(?:is|goes|plays|played|up) )*"
    rf"to {_TO}(?: now)?(?P<serve> .+)?"
)

_GAMES_STAND = (
    r"(?:(?:its|it is|so|ok|games?|at|we are|were) )*(?:\d \d|(?:one|two|1|2) (?:all|each))"
)
_ASKED = regex(
    rf"(?:{_GAMES_STAND}(?: in games| games)? )?"
    r"(?:(?:ok|so|and|now|is|are|will|we|playing|do|play) )*"
    rf"(?:the )?{_GAME} (?:(?:is|just|only|still|goes|played|up) )*to {_TO}"
    rf"(?: (?:or|not) {_TO})?(?: (?:right|yeah|yes|too|again|now))*"
)
"""Two numbers in front of it are games: of a third game nobody asks in the first."""


def game_target_asked(message: Message, chat: ChatView) -> FormatTold | None:
    """The message, if it asks what one game of the running match is played to; nothing is set."""
    if not chat.match_on or not (message.asks or "?" in message.text):
        return None
    if _ASKED.fullmatch(" ".join(word.folded for word in message.said)) is None:
        return None
    return FormatTold(text=message.text, format=SaidFormat(), asks=True)


def game_target_said(message: Message, chat: ChatView) -> FormatTold | None:
    """The message, if it tells what one game is played to, and at most who serves it first."""
    format = message.told.format
    if not chat.match_on or format is None or message.asks or "?" in message.text:
        return None
    found = _FORM.fullmatch(" ".join(word.folded for word in message.said))
    if found is None:
        return None
    we_serve = serves_at_first(message.said) if found["serve"] else None
    if found["serve"] and we_serve is None:
        return None
    return FormatTold(text=message.text, format=format, of_game=True, we_serve=we_serve)
