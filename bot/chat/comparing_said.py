"""Comparisons: "compare X and Y with Z and W", "which pair is most dangerous", "who is a lefty"."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.ranking_said import among_said, ranking_asked
from bot.chat.said import Certainty, CompareAsked, Compared, Mention
from bot.chat.trait_holders_said import holder_asked
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex

_NAMED = f"{NAME}(?: (?:(?:and|n|plus) )?{NAME})*"
_APART = "(?:than|from|to|against|with|vs|versus|compared (?:to|with))"
_HELD_AGAINST = regex(
    rf"\b(?:compare[ds]?|comparing|comparison|differences? between)(?: \w+){{0,3}}? {NAME}\b"
    rf"|{_NAMED} (?:compared?|differs?|different)(?: {_APART})? {NAME}\b"
)
_DIFFERS = regex(
    rf"\bdiffer(?:ent|ently)?(?: \w+){{0,2}}? {_NAMED} {_APART}(?: \w+){{0,2}}? {NAME}\b"
)
_RANKED = r"(?:tougher|stronger|weaker|better|worse|easier|harder|scarier|more dangerous)"
_RIVALS = regex(
    rf"(?:(?:so|ok|and) )*{NAME} (?:vs|v|versus) {NAME} (?:who|whos|which(?: one)?)(?: is| are)?"
    rf"(?: the)? {_RANKED}(?: (?:one|player|opponent))?"
)
"""`brandt vs okoye who's tougher`: whole, since with "who drives better" a shot is weighed."""

_JOINS = frozenset(["and", "n", "plus", "&"])
PAIR = 2
MOST_SIDES = 3


def comparison_asked(message: Message, chat: ChatView) -> CompareAsked | None:
    """What is compared; None for a message that compares nothing across people."""
    line = " ".join(word.folded for word in message.said)
    named = named_line(message.said, message.mentions)
    differs = _DIFFERS.search(named)
    if differs or _RIVALS.fullmatch(named) or _HELD_AGAINST.search(named):
        sides = _sides(message.said, message.mentions)
        if PAIR <= len(sides) <= MOST_SIDES:
            acts = differs is not None
            return CompareAsked(text=message.text, what=Compared.SIDES, sides=sides, acts=acts)
    if any(not one.pronoun for one in message.mentions):
        return None
    return ranking_asked(message.text, line) or holder_asked(message, chat, among_said(line))


def _sides(said: Sequence[Word], mentions: Sequence[Mention]) -> tuple[tuple[Mention, ...], ...]:
    """The names as sides: "A and B with C and D"; two or four joined alike are halves."""
    named = [one for one in mentions if one.players or one.certainty is Certainty.NOBODY]
    if len(named) < PAIR:
        return ()
    groups: list[list[Mention]] = [[named[0]]]
    for before, one in pairwise(named):
        if before.span == one.span or _is_joined(said, before, one):
            groups[-1].append(one)
        else:
            groups.append([one])
    if len(groups) == 1 and len(named) in (PAIR, 2 * PAIR):
        half = len(named) // 2
        groups = [named[:half], named[half:]]
    is_whole = all(len(group) <= PAIR for group in groups)
    return tuple(map(tuple, groups)) if is_whole and len(groups) > 1 else ()


def _is_joined(said: Sequence[Word], before: Mention, one: Mention) -> bool:
    between = [word.folded for word in said if before.span[1] <= word.span[0] < one.span[0]]
    return not between or (len(between) == 1 and between[0] in _JOINS)
