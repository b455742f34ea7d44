"""Words about the rally just counted that are no rally themselves: "it was my dink"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.message import Message, read_message
from bot.chat.numbers import number_of
from bot.chat.rally_details import read_rally
from bot.chat.rally_told import is_owned
from bot.chat.said import DetailSaid, RallyDetails
from bot.chat.view import ChatView
from knowledge.regex import regex

LONGEST_REMARK = 8
"""Words of such a remark; what is longer is a note, or a story."""

_OPENS = regex(
    r"^(?:(?:no|nope|actually|wait|sorry|oh|ok|and|well|correction) )*"
    r"(?:(?:it|that|this|twas) ?(?:was|s|is)?|was|its|thats|twas|no|nope|actually|wait) \w"
    r"|^(?:un)?forced(?: error)?$|^(?:clean )?winner$"
)
_HOLDS = regex(
    r"\b(?:always|every|often|never|weak|strong|good|better|best|should|would|could|can|dont"
    r"|why|how|what|when|where|who|which|right|true|score|serve is|serving|now|enough)\b"
)
"""Words of what holds at other times, or asks."""


_SOMEBODY_ELSE = regex(
    r"(?:(?=.*\b(?:no|nope|mean|meant|said|not|was|its|thats)\b))"
    r"(?:(?:no|nope|wait|actually|sorry|oops|oh|i mean|i meant|i said|it was|that was|its|thats"
    r"|that is"
    r"|it is|was|make that|but|and) )*"
    r"(?:(?:not (?:me|i|mine|him|her)|him|her|he|she|his|hers)\b"
    r"(?: (?:did|was|it|who|and|but|hit|made|instead|that|there))* ?)+"
)
"""Somebody else is meant, by a word that may mean three: who it was is asked, never made up."""
_NOT_ASKER = regex(r"\bnot (?:me|i|mine)\b")


_SETS_RIGHT = frozenset(["no", "nope", "actually", "wait", "sorry"])
_IT_WAS = frozenset(["it", "was", "that", "its", "thats", *_SETS_RIGHT])
_OTHER_ONE = frozenset(["the", "other", "one", "is", "was"])


_DOES_ANEW = regex(
    r"(?=.*\b(?:was|is|its|thats|last|one|rally|point|pt|entry)\b)"
    r"(?:(?:no|oops|wait|sorry|ok|please|pls) )*(?:redo|change|fix|correct|edit)"
    r"(?: (?:it|that|the|this|my))?(?: last)?(?: (?:one|rally|point|pt|entry))?"
    r"(?: (?:to|(?:(?:it|that|this) )?(?:was|is)|its|thats))?"
)
"""Before a name at the end: `redo that last one, was stannard`."""


def _named_anew(message: Message) -> str:
    """The name, as typed, that the last rally is to have instead; empty for anything else."""
    named = [one for one in message.mentions if not one.pronoun]
    if len(named) != 1 or message.said[-1].is_possessive:
        return ""
    begins, ends = named[0].span
    line = " ".join(word.folded for word in message.said if word.span[0] < begins)
    is_last = message.said[-1].span[0] < ends
    return message.text[begins:ends] if is_last and _DOES_ANEW.fullmatch(line) else ""


def _is_it_was(rest: Sequence[str]) -> bool:
    """ "It was", "no its": of the past, or put right; "its dov" is who comes next."""
    return set(rest) <= _IT_WAS and (rest[0] in _SETS_RIGHT or "was" in rest)


def names_who(message: Message) -> bool:
    """ "It was lindqvist": a player in somebody's place, and not whose rally it was."""
    if _named_anew(message):
        return True
    named = [one for one in message.mentions if not one.pronoun]
    rest = [
        word.folded
        for word in message.said
        if not any(one.span[0] <= word.span[0] < one.span[1] for one in named)
    ]
    is_whose = any(word.is_possessive for word in message.said)
    return (
        len(named) == 1
        and not is_whose
        and rest[:1] != []
        and (_is_it_was(rest) or _OTHER_ONE.issuperset(rest))
        and message.said[0].folded == rest[0]
    )


def rally_remark(message: Message, chat: ChatView) -> DetailSaid | None:
    """The remark, if every word of it can be about how one rally ended."""
    if not (chat.match_on and chat.tells_of_rally) or "?" in message.text:
        return None
    anew = _named_anew(message)
    if anew:
        message = read_message(f"no, it was {anew}", chat)
    if message.asks:
        return None
    line = " ".join(word.folded for word in message.said)
    if _SOMEBODY_ELSE.fullmatch(line) is not None:
        is_other = _NOT_ASKER.search(line) is not None
        return DetailSaid(
            text=message.text, details=RallyDetails(), leaves_who=True, not_asker=is_other
        )
    if any(number_of(word.folded) is not None for word in message.told.words):
        return None  # a score, or points said
    if len(message.said) > LONGEST_REMARK or not _OPENS.search(line) or _HOLDS.search(line):
        return None
    if not names_who(message) and is_owned((" ".join(word.folded for word in message.told.words),)):
        return None
    found = read_rally(message, chat, is_remark=True)
    if found.unknown or replace(found.details, by_us=None) == RallyDetails():
        return None
    named = tuple(one for one in message.mentions if not one.pronoun)
    return DetailSaid(text=message.text, details=found.details, mentions=named)
