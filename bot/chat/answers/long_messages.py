"""A message longer than what is read of it: the answer says so, for nobody to rely on its end."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from bot.chat.wording import wording
from bot.chat.words import READ_AT_MOST, WORDS_READ_AT_MOST, words

if TYPE_CHECKING:
    from bot.chat.reply import Reply

LONGEST_KEPT = 4_096
"""Characters of a message that are kept: the messenger's own limit (Bot API, sendMessage), for
channels that have none."""


def is_read_whole(text: str) -> bool:
    """Whether every word of the text was read."""
    if len(text) > READ_AT_MOST:
        return False
    read = words(text)
    return len(read) < WORDS_READ_AT_MOST or not text[read[-1].span[1] :].strip(" .!?\n\t")


def with_notice(replies: tuple[Reply, ...], text: str) -> tuple[Reply, ...]:
    """The replies, with a last line that says so where the text was not read to its end."""
    if not replies or is_read_whole(text):
        return replies
    last = replies[-1]
    told = replace(last, text=f"{last.text}\n{wording('long.notice')}")
    return (*replies[:-1], told)
