"""A note in free text: whose traits it speaks of, and which of its words no trait covers."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.question import Mention, NoteSaid
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import Seen


def read_note(
    text: str, said: Sequence[Word], mentions: Sequence[Mention], view: ChatView
) -> NoteSaid:
    """The note with every claim found; words that no claim covers are kept."""
    seen = Seen.HEARSAY if view.forwarded else Seen.LIVE
    return NoteSaid(text=text, mentions=tuple(mentions), kept=(text,), seen=seen)
