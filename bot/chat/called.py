"""Who was spoken of as he and who as she: the other word means the other of that pair."""

from __future__ import annotations

from bot.chat.names import find_mentions
from bot.chat.pronouns import CALLS, calls_in
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.vocabulary import PlayerId

KEPT_CALLS = 24
"""Players, the last ones spoken of: more than a day's pool has."""


def called_now(text: str, view: ChatView) -> tuple[tuple[PlayerId, str], ...]:
    """The chat's memory of it after this message, the last ones last."""
    said = words(text)
    if not any(word.folded in CALLS for word in said):
        return view.called
    new = calls_in(find_mentions(said, view))
    kept = [each for each in view.called if each[0] not in new]
    return tuple([*kept, *new.items()][-KEPT_CALLS:])
