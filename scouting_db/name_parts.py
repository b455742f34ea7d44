"""What was typed for a name, taken apart: titles, initials, beginnings, traces of consonants."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.regex import regex
from scouting_db.sounds import consonants, fold, sound

_TITLES = frozenset(
    ["the", "that", "this", "mr", "mrs", "ms", "miss", "dr", "guy", "girl", "lady", "man", "kid"]
)
_RELATIONS = frozenset(["aunt", "uncle", "coach"])
_DESCRIBED = frozenset(["tall", "short", "big", "little", "old", "young", "lefty", "mister"])
_SUFFIXES = frozenset(["jr", "sr", "junior", "senior", "lefty"])
_ASIDE = regex(r"[,;(]\s*(?:the|that|who|from|with|not|rest|or)\b.*$")
_DIGITS = str.maketrans("01345", "oleas")
_AMONG_LETTERS = regex(r"(?<=[a-z])[01345](?=[a-z])|\b[0135](?=[a-z]{2})")
_STRETCHED = regex(r"([a-z])\1\1+")
_SURNAME_LETTERS = frozenset("o")


def squeeze(folded: str) -> str:
    return folded.replace(" ", "")


def traces(skeleton: str) -> set[str]:
    """A skeleton and, from three consonants, what is left of it without any one of them."""
    if len(skeleton) < 3:
        return {skeleton}
    shorter = {skeleton[:each] + skeleton[each + 1 :] for each in range(len(skeleton))}
    return {skeleton, *shorter}


def initial_of(words: Sequence[str]) -> tuple[str, str] | None:
    """The letter and the word of `ana r`; not of `o dell`, which is one surname."""
    if len(words) != 2 or min(map(len, words)) > 1 or words[0] in _SURNAME_LETTERS:
        return None
    letter, word = sorted(words, key=len)
    return (letter, word) if len(word) > 1 else None


def without_titles(folded: str) -> str:
    words = folded.split()
    while len(words) > 1 and words[0] in _TITLES | _RELATIONS:
        words.pop(0)
    while len(words) > 1 and words[-1] in _TITLES:
        words.pop()
    return " ".join(words)


def unstretched(folded: str) -> str:
    """`dukeee` as `duke`: a letter held down is a letter; no name has three alike in a row."""
    return _STRETCHED.sub(r"\1", folded)


def undigited(folded: str) -> str:
    """`0kafor` and `ha1e` as they were meant: digits that look like letters, among letters."""
    return _AMONG_LETTERS.sub(lambda found: found[0].translate(_DIGITS), folded)


def without_aside(typed: str) -> str:
    """What was typed without what is only said of the person: `Wrona, the taller one`."""
    return _ASIDE.sub("", typed.casefold())


def pared(folded: str) -> str:
    """A name without what describes its bearer: `tall wrona`, `mulcahy jr`."""
    words = folded.split()
    while len(words) > 1 and words[0] in _DESCRIBED:
        words.pop(0)
    while len(words) > 1 and words[-1] in _SUFFIXES:
        words.pop()
    return " ".join(words)


def bare(typed: str) -> str:
    """A typed name folded, without titles, stretched letters and what describes its bearer."""
    return pared(unstretched(undigited(without_titles(fold(typed)))))


def all_begin(parts: Sequence[str], words: Sequence[str]) -> bool:
    return len(words) <= len(parts) and all(
        part.startswith(word) for part, word in zip(parts, words, strict=False)
    )


def begins_with(word: str, typed: str) -> bool:
    """Whether a word was cut short, by its letters or by its consonants."""
    heard = consonants(sound(typed))
    heard_too = len(heard) > 1 and consonants(sound(word)).startswith(heard)
    return word.startswith(typed) or heard_too
