"""How a game opens, told at once: "they serve, tom starts right", "start, we serve first"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from bot.chat.follow_ups import follow_up
from bot.chat.message import Message, read_message
from bot.chat.opening_places import opened_with_places
from bot.chat.said import ScoreSaid, ServerSaid, StarterSaid
from bot.chat.serving_said import serving_said
from bot.chat.starts_said import starter_said
from bot.chat.view import ChatView
from knowledge.regex import regex

LONGEST = 16
"""Words of both pairs' starters and who serves, with the links between them."""

MOST_PARTS = 3
"""Who serves, and who of either pair starts where."""

_SIDES = frozenset(["we", "they", "our", "their"])
_LINKS = frozenset(["and", "with", "then", "so", "but"])
_MARKS = frozenset(",;.:!\n–—")

_BEGINS = regex(
    r"(?:(?:ok|okay|so|and|now|right|alright|lets|we|were|are|the|match|game|play) )*"
    r"(?:start|starts|started|starting|begin|begins|beginning)\b"
    r"(?: (?:now|playing|the|match|game)\b)*"
)
_GOES_RIGHT_ON = "now"
""" "Starting now we serve": as good as a mark."""


def game_opening(
    message: Message, chat: ChatView
) -> tuple[ScoreSaid | ServerSaid | StarterSaid, ...]:
    """Who serves and who starts where, in the order told; nothing unless it says only that."""
    opened = _told_behind_the_start(message, chat) or opened_with_places(message, chat)
    if opened:
        return opened
    said, named = message.said, [one for one in message.mentions if not one.pronoun]
    is_short = len(said) <= LONGEST and 0 < len(named) < MOST_PARTS
    if not chat.match_on or chat.forwarded or "?" in message.text or not is_short:
        return ()
    if not any(word.folded.startswith(("start", "began", "begin")) for word in said):
        return ()
    begins = {one.span[0] for one in named}
    cuts = [
        at
        for at, word in enumerate(said)
        if at and (word.span[0] in begins or word.folded in _SIDES or word.folded in _LINKS)
    ]
    ends = [0, *cuts, len(said)]
    parts = [(start, stop) for start, stop in pairwise(ends) if not _is_link(message, start, stop)]
    told = [_part(message, chat, start, stop) for start, stop in parts]
    found = tuple(one for one in told if one is not None)
    return found if len(found) == len(told) <= MOST_PARTS and len(found) > 1 else ()


def _told_behind_the_start(
    message: Message, chat: ChatView
) -> tuple[ScoreSaid | ServerSaid | StarterSaid, ...]:
    """Who serves, told behind "start"; nothing where anything else is."""
    said = message.said
    found = _BEGINS.match(" ".join(word.folded for word in said))
    at = 0 if found is None else len(found[0].split())
    if not chat.match_on or chat.forwarded or "?" in message.text or not 0 < at < len(said):
        return ()
    if not (set(said[at].gap) & _MARKS or said[at - 1].folded == _GOES_RIGHT_ON):
        return ()
    rest = read_message(message.text[said[at].span[0] :], chat)
    told = None if rest.asks else follow_up(rest.text, rest.said, chat) or serving_said(rest, chat)
    if isinstance(told, ScoreSaid | ServerSaid):
        return (replace(told, text=message.text),)
    return game_opening(rest, chat)


def _is_link(message: Message, start: int, stop: int) -> bool:
    return all(word.folded in _LINKS for word in message.said[start:stop])


def _part(
    message: Message, chat: ChatView, start: int, stop: int
) -> ScoreSaid | StarterSaid | None:
    said = message.said
    while start < stop and said[start].folded in _LINKS:
        start += 1
    part = read_message(message.text[said[start].span[0] : said[stop - 1].span[1]], chat)
    told = starter_said(part, chat) or follow_up(part.text, part.said, chat)
    told = told or serving_said(part, chat)
    return told if isinstance(told, ScoreSaid | StarterSaid) else None
