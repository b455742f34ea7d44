"""The messenger's form of a message: HTML with the call in bold, and buttons under it."""

from __future__ import annotations

from html import escape
from typing import Any

from telegram.constants import MessageLimit

from bot.channels.telegram_bot.plain_text import unlinked
from bot.chat.commands import COMMAND_WORDS
from bot.post import Limits, Outgoing
from bot.post.outgoing import units

LIMITS = Limits(text=int(MessageLimit.MAX_TEXT_LENGTH), caption=int(MessageLimit.CAPTION_LENGTH))


OURS_ALONE = frozenset({"invitation"})
"""What a message may be about that holds no word of a user's, so that its links are ours."""


def shown_text(message: Outgoing) -> str:
    """The text as it is shown: no word of a user's becomes a link."""
    if message.about is not None and message.about.kind in OURS_ALONE:
        return message.text
    return unlinked(message.text, commands=COMMAND_WORDS)


def html_of(message: Outgoing) -> str:
    """The text as HTML, everything the user or we wrote escaped; the first line, the call, bold."""
    first, newline, rest = shown_text(message).partition("\n")
    shown = escape(first, quote=False)
    if not message.continues and first.strip():
        shown = f"<b>{shown}</b>"
    return shown + newline + escape(rest, quote=False) + _alt_of(message)


def _alt_of(message: Outgoing) -> str:
    """The picture in words, folded away; left out where the caption has no room for it."""
    if message.picture is None:
        return ""
    alt = f"Picture: {message.picture.alt}"
    if units(message.text) + units(alt) + 1 > LIMITS.caption:
        return ""
    tamed = escape(unlinked(alt, commands=COMMAND_WORDS), quote=False)
    return f"\n<blockquote expandable>{tamed}</blockquote>"


def keyboard_of(message: Outgoing) -> dict[str, Any] | None:
    """The buttons in their rows (Bot API: InlineKeyboardMarkup); None without any."""
    if not message.buttons:
        return None
    rows = [
        [{"text": one.label, "callback_data": one.payload} for one in row]
        for row in message.buttons
    ]
    return {"inline_keyboard": rows}
