"""A match announced, and how well we know them: "semi vs bram and lotte 14:00 dont know them"."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.announced_names import PAIR
from bot.chat.forms import any_of
from bot.chat.match_announced import match_announced
from bot.chat.message import Message, read_message
from bot.chat.said import MatchSaid
from bot.chat.spoken_line import line_of
from bot.chat.view import ChatView

FEWEST_BEFORE = 3
"""Words of the announcement: two names and a word between them."""


def match_of_strangers(message: Message, chat: ChatView) -> MatchSaid | None:
    """The announcement before such words; None where it names no pair, or more is said.

    Read with them, "semi" had become one of the pair: they are no words of a schedule.
    """
    if chat.forwarded or "?" in message.text:
        return None
    line = line_of(message.said)
    found = any_of("announced.how_known", last=True).search(line.text)
    start = 0 if found is None else line.place_at[found.start()]
    if start < FEWEST_BEFORE:
        return None
    before = read_message(message.text[: message.said[start - 1].span[1]], chat)
    announced = None if before.asks else match_announced(before, chat)
    if announced is None or len(announced.mentions) != PAIR:
        return None
    return replace(announced, text=message.text)
