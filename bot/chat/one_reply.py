"""Several answers as one message, so that the phone buzzes once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.payload import Tap, Verb
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording

LONGEST_LABEL = 24
"""Characters of what an undo takes back, on its button."""


def joined(replies: Sequence[Reply]) -> Reply:
    """Several answers as one message: texts one after the other, the buttons of all."""
    if len(replies) == 1:
        return replies[0]
    return Reply(
        text="\n\n".join(reply.text for reply in replies),
        buttons=tuple(row for reply in replies for row in reply.buttons),
        picture=next((reply.picture for reply in replies if reply.picture), None),
        about=next((reply.about for reply in replies if reply.about), None),
    )


_NEXT_TIME = frozenset({Verb.TIMEOUT, Verb.SERVER, Verb.SIDES, Verb.TAG})
"""Taps under a score that can wait for the next one, where an answer stands above it."""


def brief(stands: Reply) -> Reply:
    """How it stands, as it is said under an answer: without the taps that can wait."""
    buttons = [one for row in stands.buttons for one in row]
    kept = [one for one in buttons if Tap.parse(one.payload).verb not in _NEXT_TIME]
    return replace(stands, buttons=rows(kept))


def undoing_apart(reply: Reply, label: str) -> Reply:
    """The reply with its undo named, where another change's undo stands in the same message."""
    return replace(
        reply, buttons=tuple(tuple(_named(one, label) for one in row) for row in reply.buttons)
    )


def undoing_what(reply: Reply, words: str) -> Reply:
    """The reply with its undo named by the words it takes back: one of several in a message."""
    is_long = len(words) > LONGEST_LABEL
    short = f"{words[: LONGEST_LABEL - 1].rstrip()}…" if is_long else words
    return undoing_apart(reply, wording("undo_this").format(what=f"“{short}”"))


def _named(button: Button, label: str) -> Button:
    is_undo = Tap.parse(button.payload).verb is Verb.UNDO
    return replace(button, label=label) if is_undo else button
