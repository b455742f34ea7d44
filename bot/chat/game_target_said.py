"""What one game of a match is played to: "third to 15, they serve", "decider to 15"."""

from __future__ import annotations

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
