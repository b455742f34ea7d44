"""The pairs in a listed pool: pieces of the message, and the two names in each."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.names import find_mentions
from bot.chat.said import Certainty, Mention
from bot.chat.view import ChatView
from bot.chat.words import Word, words
from knowledge.regex import regex

PAIR = 2
LONGEST_NAME_WORDS = 3
SHORTEST_NAME = 2
"""Letters of a name that the book does not know."""

_LINES = regex(r"[\n;•|]+")
_NUMBERS_INSIDE = regex(r"(?<=[a-z])[ ,]+#?\d{1,2}[.)] (?=[^\W\d])", re.IGNORECASE)
_AGAINST = regex(
    r"\b(?:vs?|versus|verse|against|facing|then|after that|followed by|next)\b\.?", re.IGNORECASE
)
_JOINS = regex(r"\s*(?:[/&+]|\band\b|(?<=\w) n (?=\w)|\bw/|\bwith\b|\bplus\b)\s*", re.IGNORECASE)
_SLASHED = regex(r"\s*[/&+]\s*")
_AND = regex(r"\s+(?:and|then|,)\s+", re.IGNORECASE)
_TIMES = regex(
    r"(?<![\d:])\d{1,2}[:.h]\d{2}\s*(?:am|pm|a\.m\.|p\.m\.)?(?!\d)|\b\d{1,2}\s*(?:am|pm)\b"
    r"|(?:\bat |@ ?)\d{3,4}\b|\b(?:0?[7-9]|1\d)[0-5][05]\b|\b(?:at )?(?:noon|midday)\b",
    re.IGNORECASE,
)
_COURTS = regex(
    r"\b(?:on )?(?:court|courts|ct|crt|cort|c(?=\s?\d))\.?\s*#?\s*"
    r"(?:\d{1,2}\b|[a-z]\b|center|centre|stadium|show|main|grandstand)",
    re.IGNORECASE,
)
_NUMBERED = regex(
    r"^\W*(?:(?:match|game|round|rd|rnd|r|m|g|team|no|nr)\.?\s*#?\d{1,2}\b|#?\d{1,2}\s*[.):]"
    r"(?!\d)|\d{1,2}\s+(?=[^\W\d])|(?:first|second|third|fourth|fifth|last|1st|2nd|3rd|4th|5th)\b)"
    r"\s*[:.)\-–]*\s*",
    re.IGNORECASE,
)

_PLAYED_TO = regex(
    r"[\s.:–—-]+(?:(?:all|best|each|one|single|1|2|3|two|three|of|games?|match(?:es)?|play(?:ed|ing)?"
    r"|rally|scoring) )*(?:to|till|until) (?:7|9|11|15|21|25|seven|nine|eleven|fifteen)\b.*$"
    r"|[\s.:–—-]+(?:all )?(?:best (?:of )?|bo ?)(?:1|3|5|one|three|five)\b.*$",
    re.IGNORECASE,
)
"""How the matches are played, typed behind the last pair: "ruiz/hale one game to 15"."""


def fragments_of(body: str) -> list[str]:
    """The pieces that may each hold a pair, in the order told."""
    found: list[str] = []
    lines = [line for line in _LINES.split(_NUMBERS_INSIDE.sub("\n", body)) if line.strip()]
    for line in lines:
        for part in _AGAINST.split(line):
            found += _cut(part, is_a_line=len(lines) > 1)
    return [one.strip(" \t.,:-–—") for one in found if one.strip(" \t.,:-–—")]


def _cut(part: str, *, is_a_line: bool) -> list[str]:
    """By commas, unless a comma stands between the two names of a line."""
    if _JOINS.search(part) is None and is_a_line and part.count(",") == 1:
        bare = drop_schedule(part)
        if all(_is_name(one) for one in bare.split(",")) and bare.count(",") == 1:
            return [part.replace(",", "/")]
    return [piece for one in part.split(",") for piece in _apart(one)]


def _apart(part: str) -> list[str]:
    """ "A/B and C/D", "A/B C/D" and "A and B and C and D" are two pairs each."""
    joins = len(_SLASHED.findall(part))
    if joins > 1:
        halves = _AND.split(part)
        if len(halves) == joins:
            return halves
        packed = _SLASHED.sub("/", part).split()
        return packed if all("/" in one for one in packed) else [part]
    names = re.split(r"\s+and\s+", part, flags=re.IGNORECASE)
    if not joins and len(names) > PAIR and len(names) % PAIR == 0:
        return [" and ".join(names[at : at + PAIR]) for at in range(0, len(names), PAIR)]
    return [part]


def drop_schedule(fragment: str) -> str:
    """What is left without its number, time and court."""
    left = _COURTS.sub(" ", _TIMES.sub(" ", _NUMBERED.sub("", fragment)))
    left = re.sub(r"\b(?:at|on|@)\s*$|^\s*(?:at|on)\b", " ", left.strip(), flags=re.IGNORECASE)
    return " ".join(left.split()).strip(" .,:-–—()@")


def drop_format(fragment: str) -> str:
    """What is left without how the games are played, which a pool says behind its last pair."""
    return _PLAYED_TO.sub("", fragment)


def is_chatter(fragment: str) -> bool:
    """Nothing but small words that say nothing of anybody ("ok", "thats it")."""
    return all(word.folded in word_set("pool_filling") for word in words(fragment))


def names_in(fragment: str, chat: ChatView) -> tuple[Mention, ...]:
    """The two of a pair, or one whose usual partner is known; empty for anything else."""
    bare = drop_schedule(fragment)
    if not bare or len(bare) > 120:
        return ()
    parts = [one for one in _JOINS.split(bare) if one.strip()]
    if len(parts) == PAIR:
        found = [named(one, chat) for one in parts]
        return tuple(one for one in found if one is not None) if all(found) else ()
    return _side_by_side(bare, chat) if len(parts) == 1 else ()


def named(part: str, chat: ChatView) -> Mention | None:
    """A name of the book, or one that it does not know yet."""
    said = _of_a_name(part)
    known = [one for one in find_mentions(said, chat) if not one.pronoun]
    sure = [one for one in known if one.certainty is not Certainty.NOBODY]
    if sure:
        return sure[0]
    typed = _typed(said)
    if not _is_name(typed):
        return None
    near = known[0].players if known else ()
    return Mention(typed=typed, span=(0, len(typed)), certainty=Certainty.NOBODY, players=near)


def _typed(said: Sequence[Word]) -> str:
    """The words with a blank between, or the hyphen of "Ferreira-Lund"."""
    return "".join(f"{'-' if word.gap == '-' else ' '}{word.typed}" for word in said).strip(" -")


def _of_a_name(part: str) -> tuple[Word, ...]:
    """The words of the part, small ones before and after a name left out."""
    said = words(part)
    small = word_set("pool_filling")
    while said and said[0].folded in small:
        said = said[1:]
    while said and said[-1].folded in small:
        said = said[:-1]
    return said


def _is_name(typed: str) -> bool:
    """One to three words, one of them at least no everyday word or written as a name."""
    said = words(typed)
    if not 0 < len(said) <= LONGEST_NAME_WORDS or any(char.isdigit() for char in typed):
        return False
    return len(said[0].folded) >= SHORTEST_NAME and any(
        one.is_capitalised or not is_common(one.folded) for one in said
    )


def _side_by_side(bare: str, chat: ChatView) -> tuple[Mention, ...]:
    """ "okafor lindqvist": two names without a word between, or one with a known partner."""
    said = _of_a_name(bare)
    known = [one for one in find_mentions(said, chat) if not one.pronoun]
    sure = [one for one in known if one.certainty is not Certainty.NOBODY]
    covered = {at for one in sure for at, word in enumerate(said) if _within(word, one)}
    rest = [word for at, word in enumerate(said) if at not in covered]
    if len(sure) == PAIR and not rest:
        return tuple(sure)
    if len(sure) == 1 and not rest:
        return tuple(sure)
    odd = [word for word in rest if _is_odd(word)]
    if len(sure) + len(odd) == PAIR and len(odd) == len(rest):
        strangers = [
            Mention(typed=word.typed, span=word.span, certainty=Certainty.NOBODY) for word in odd
        ]
        return tuple(sorted([*sure, *strangers], key=lambda one: one.span))
    return ()


def _within(word: Word, one: Mention) -> bool:
    return one.span[0] <= word.span[0] < one.span[1]


def _is_odd(word: Word) -> bool:
    return word.folded.isalpha() and len(word.folded) > SHORTEST_NAME and not is_common(word.folded)
