"""Whether a message asks or tells: question marks, asking forms, and words of wanting."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache

from bot.chat.forms import any_of, patterns
from bot.chat.numbers import number
from bot.chat.words import Word
from knowledge.regex import regex

_EITHER_OR = regex(
    r"(?<!more)(?<!not)(?<!one)(?<!two) or (?!less|so\b|no\b|rather\b|two\b|three\b|seven\b|\d)\w+"
)
"""`drop or drive`: who tells us something hardly offers a choice."""


_SENTENCE_ENDS = frozenset(".!\n")
_PAUSES = _SENTENCE_ENDS | set(",;:")

_RHETORICAL = regex(
    r"\b(?:dont|do not) ask(?: (?:me|how|why|what|where))*\b|\bidk (?:which server|who serves)\b"
    r"|\b(?:why|how|who|what|where) (?:i|we) (?:dont|do not) know\b"
    r"|\bidk (?:how|why)$|\bwhat can (?:you|ya|u) do$|\bnow or never\b|\bok then$"
    r"|\bbest of (?:\d|one|three|five)\b"
    r"|\bwhat did i (?:say|tell you)$"
    r"|\bwhen (?:i|we) (?:(?:just|last|first) )*(?:watched|saw|was watching|were watching)\b"
    r"|\b(?:do|please|pls) (?:write|note|put|jot) (?:that|this|it|them) down$"
    r"|\bwas (?=\d+ \d)"
    r"|\bwhat an? (?:\w+ )?(?:game|match|comeback|finish|win|start|battle|fight|ride|mess|nightmare"
    r"|choke|shame|day|relief|joke|disaster|turnaround|run|thriller|nail ?biter)\b"
)
"""`up 9-8, dont ask how`: words of asking that ask nothing."""

_EXCLAIMED = regex(
    r"\bwhat(?:s| is| the heck is| on earth is) (?:happening|going on)\b"
    r"|\bwhat did i (?:say|tell)\b|\bwhich is (?:of course )?(?:where|why|how|when|what)\b"
    r"|\bhow is (?:this|that) happening\b"
)
"""Beside a score such words only sigh: "down 2-9, like what is happening"."""


_SLIPS = {
    "who": ["hwo"],
    "what": ["waht", "hwat", "wath", "whta", "whst"],
    "where": ["wehre", "wher", "hwere", "whrer", "wheer"],
    "when": ["wehn", "hwen", "whne", "wen"],
    "which": ["wich", "whcih", "wihch", "whihc", "hwich", "whch"],
    "should": ["shoud", "shoudl", "sholud", "shuold", "shuld"],
    "would": ["woudl", "wuld"],
    "could": ["coudl", "culd"],
}
"""Asking words as thumbs type them: letters that change places, or one that is left out."""

_MEANT = {slip: right for right, slips in _SLIPS.items() for slip in slips}


def as_meant(said: Sequence[Word]) -> tuple[Word, ...]:
    """The words with those that ask as they were meant."""
    return tuple(
        replace(word, folded=_MEANT[word.folded]) if word.folded in _MEANT else word
        for word in said
    )


def opens_asking(said: Sequence[Word]) -> bool:
    """Whether a question opens the message in a form that nothing but one has."""
    return _opening("surely_asking_first").search(_line(said)) is not None


def _line(said: Sequence[Word]) -> str:
    return " ".join(_MEANT.get(word.folded, word.folded) for word in said)


def asks(text: str, said: Sequence[Word]) -> bool:
    """Whether the message asks for something."""
    line = _RHETORICAL.sub("", _line(said))
    if any(number(word) is not None for word in said):
        line = _EXCLAIMED.sub("", line)
    if "?" in text or any(form.search(line) for form in _forms()) or _asks_behind_a_pause(said):
        return True
    return any(
        form.match(_RHETORICAL.sub("", later))
        for later in _behind(said, _SENTENCE_ENDS)
        for form in _opening_forms()
    )


def _asks_behind_a_pause(said: Sequence[Word]) -> bool:
    """ "Thirds, what's okafor's drop": what it is about stands before what is asked of it."""
    form = any_of("asking_behind_a_pause", first=True)
    said = [replace(one, folded=f"{one.folded}s") if _is_short(one) else one for one in said]
    return any(form.match(later) for later in _behind(said, _PAUSES))


def _is_short(word: Word) -> bool:
    """The "what's" of "what's okafor's drop", whose 's reads as a possessive."""
    return word.is_possessive and word.folded in ("what", "how")


def _behind(said: Sequence[Word], stops: frozenset[str]) -> list[str]:
    """ "Side out to us. Who starts on the right": a question may open behind such a sign."""
    starts = [at for at in range(1, len(said)) if stops & set(said[at].gap)]
    return [_line(said[at:]) for at in starts]


@cache
def _opening_forms() -> tuple[re.Pattern[str], ...]:
    return (_opening("surely_asking_first"), any_of("asking_opens", first=True))


def surely_asks(text: str, said: Sequence[Word]) -> bool:
    """Whether only a question is put so: it ends in a question mark, inverts, or says "do i".

    "Okafor? lefty" and "no idea why hale lobs" only sound like one.
    """
    line = _line(said)
    if text.rstrip().endswith("?") or any(form.search(line) for form in _sure_forms()):
        return True
    return _asks_behind_a_pause(said)


@cache
def _sure_forms() -> tuple[re.Pattern[str], ...]:
    return (_opening("surely_asking_first"), any_of("surely_asking_inside"))


@cache
def _forms() -> tuple[re.Pattern[str], ...]:
    inside, last = any_of("asking_inside"), any_of("asking_last", last=True)
    return (_opening("asking_first"), inside, last, _EITHER_OR)


def _opening(key: str) -> re.Pattern[str]:
    """The forms at the start, whatever polite words come before."""
    polite, first = "|".join(patterns("polite")), "|".join(patterns(key))
    return re.compile(rf"^(?:(?:{polite}) )*(?:{first})\b")
