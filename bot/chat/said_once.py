"""Two replies to one message that begin alike: what both say is said once, the fuller one first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.payload import Tap, Verb
from bot.chat.reply import Button, Reply

BOTH = 2


def said_once(replies: Sequence[Reply]) -> list[Reply]:
    """The replies; of two with the same first line the second, then what only the first says.

    Where it says nothing more, its taps stay all the same: the undo of what it did. A tap that adds
    somebody stands once: what the first keeps is taken up by itself when they are known.
    """
    if len(replies) != BOTH:
        return [*replies]
    first, second = replies
    said = second.text.splitlines()
    own = [line for line in first.text.splitlines() if line not in said]
    if not said or first.text.splitlines()[:1] != said[:1]:
        return [*replies]
    taps = {one.payload for row in second.buttons for one in row}
    added = {one.label for row in second.buttons for one in row if _adds(one)} if own else set()
    rows = [
        tuple(
            one
            for one in row
            if one.payload not in taps and not (_adds(one) and one.label in added)
        )
        for row in first.buttons
    ]
    rest = replace(first, text="\n".join(own), buttons=tuple(row for row in rows if row))
    if own:
        return [second, rest]
    return [replace(second, buttons=(*second.buttons, *rest.buttons))]


def _adds(button: Button) -> bool:
    return Tap.parse(button.payload).verb is Verb.ADD
