"""Two full names, a clause each: "hale's full name is Ben Hale, the other one is Ana Ruiz".

A clause tells somebody's name and nothing else, so that neither a note nor a rally is one: the
first of them is asked for before rallies are, since "other one is" counted as one.
"""

from __future__ import annotations

import re
from dataclasses import replace

from bot.chat.full_names_told import full_name_told
from bot.chat.message import Message, read_message
from bot.chat.real_name_told import real_name_told
from bot.chat.said import BookSaid
from bot.chat.view import ChatView
from knowledge.regex import regex

_APART = regex(r"(?i)\s*(?:[,;.]\s*(?:and\s+)?|\s+and\s+)")
_OTHER = regex(
    r"(?i)^(?:(?:and|the|her|his|their|my) )*(?:(?:other|second|2nd)(?: one| player| woman| girl"
    r"| guy| man)?|partner)(?:'s| is| was)(?: called| named)? "
)
"""What leads to the other one's name."""

_BEHIND = regex(
    r"(?i)^(?P<name>\S+ \S+) (?:is|are) (?P<whose>.+?)(?:['\u2019]s|s)?"
    r" (?:full|whole|real) names?\W*$"
)
"""`ana ruiz is ruiz's full name`: the name first."""

PAIR = 2


def full_names_told_each(message: Message, chat: ChatView) -> BookSaid | None:
    """The first renaming, the other still to be read; None where a clause says anything else."""
    if chat.forwarded or message.asks or "?" in message.text:
        return None
    parts = [part for part in _APART.split(message.text) if part.strip(" .!")]
    if len(parts) > PAIR:
        return None
    if len(parts) == 1 and (_OTHER.match(parts[0]) or _BEHIND.match(parts[0])) is None:
        return None
    named: list[BookSaid] = []
    for part in parts:
        one = _renamed(part, chat)
        if one is None:
            return None
        named.append(one)
    if len({one.mentions[0].players for one in named}) < len(parts):
        return None
    named = _with_last_names(named) if len(named) == PAIR else named
    if not named:
        return None
    first, *more = named
    return replace(first, text=message.text, then=" ".join(map(_said_plainly, more)))


def _renamed(part: str, chat: ChatView) -> BookSaid | None:
    """Whom the clause gives a full name; a name alone only behind what leads to it."""
    behind = _BEHIND.match(part)
    if behind is not None:
        part = f"{behind['whose']} is {behind['name']}"
    led = _OTHER.match(part.strip())
    if led is not None:
        first, *last = part.strip()[led.end() :].split()
        part = " ".join([*last, "is", first, *last] if len(last) == 1 else [first, *last])
    told = read_message(part, chat)
    if not told.said:
        return None
    return full_name_told(told, chat) or real_name_told(told, chat)


def _with_last_names(told: list[BookSaid]) -> list[BookSaid]:
    """Both in full where one is: behind "hales first name is ben" so is "ruiz is ana".

    Nothing where neither is: who is told by looks may have no other name, "redcap is nigel".
    """
    names = [one.words.split(" to ", 1) for one in told]
    if not any(new.endswith(f" {old}") for old, new in names):
        return []
    return [
        one if " " in new else replace(one, words=f"{old} to {new} {old}")
        for one, (old, new) in zip(told, names, strict=True)
    ]


def _said_plainly(told: BookSaid) -> str:
    """ "Ruiz to Ana Ruiz" as it is told: "Ruiz is Ana Ruiz"."""
    return re.sub(r" to ", " is ", told.words, count=1)
