"""How a name is heard: other languages' spellings put into English ones, everyday words likewise.

A phone that takes dictation writes down what it heard as words it knows: `walking via senior` for
Joaquín Villaseñor, `oh cough or` for Okafor. So a name gets the forms in which English ears would
spell it, and words broken off a name are spelled as plainly as they sound. Common knowledge of
spelling, from memory, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from knowledge.dataclass import dataclass
from knowledge.regex import regex


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spelling:
    """A language's letters: by what its names show themselves, and how each is said."""

    mark: re.Pattern[str]
    said: tuple[tuple[re.Pattern[str], str], ...]


def _spelling(mark: str, *said: tuple[str, str]) -> _Spelling:
    rules = tuple((regex(letters), sound) for letters, sound in said)
    return _Spelling(mark=regex(mark), said=rules)


_SPELLINGS = (
    _spelling(  # Spanish
        r"ñ|\bll|v[ií]ll|ll(?:[oa]s?|ano|ermo)\b|güe|\bhua"
        r"|\bxav|\bj(?:os[eé]\b|avier|orge|aime|es[uú]s|uli[oá]|im[eé]n|uan|oaqu|u[aá]re)"
        r"|[aeiou]j[ao]s?\b|uji|\bqui[nñ]",
        (r"\bjoa(?=qu)|\bjua(?=n|r)|\bhua", "wa"),
        (r"\bx", "h"),
        (r"ñ", "ny"),
        (r"(?<=\w)ll(?=[aeiouáéíóú])", "y"),
        (r"gü", "gw"),
        (r"gu(?=[eiéí])", "g"),
        (r"qu(?=[eiéí])", "k"),
        (r"j(?=[aeiouáéíóú])", "h"),
    ),
    _spelling(  # Polish
        r"[łęąńśźż]|sz|cz|rz|ciech|[aeoó]j(?=c)|cki\b|wicz\b",
        (r"ci(?=[aeou])|cz|ć|cz", "ch"),
        (r"(?<=j)ci(?=k)", "chi"),
        (r"chech\b", "chek"),
        (r"rz|ż|ź", "zh"),
        (r"sz|ś", "sh"),
        (r"cki\b", "tski"),
        (r"ł", "w"),
        (r"ę|ą(?=[bp])", "em"),
        (r"ą", "on"),
        (r"j", "y"),
        (r"\bw|(?<=[aeiouy])w", "v"),
    ),
    _spelling(  # German, Dutch and the north: a "j" is an English "y"
        r"[äöüøåæß]|sch|ij|\bbj|kj|\bjo(?:ost|ris|chem|hann)|\b(?:van|von)\b",
        (r"ij", "y"),
        (r"sch(?=[lmnrw])|sch\b", "sh"),
        (r"kj", "k"),
        (r"æ", "ae"),
        (r"j", "y"),
    ),
    _spelling(  # French
        r"eau|oux\b|aux\b|ault\b|ois\b|ier\b|[çèêëâîôœ]",
        (r"eaux?|aux\b|ault\b", "o"),
        (r"oux\b", "oo"),
        (r"ois\b", "wa"),
        (r"oi", "wa"),
        (r"ç", "s"),
    ),
    _spelling(r"\bst\b\.?\s", (r"\bst\b\.?(?=\s)", "saint")),
    _spelling(r"\bzh|\bq(?!u)", (r"\bzh", "j"), (r"\bq(?!u)", "ch")),  # Chinese
)


def as_heard(name: str) -> Iterator[str]:
    """How English ears would spell a name, once for each language that it may be of."""
    plain = name.casefold()
    for spelling in _SPELLINGS:
        if not spelling.mark.search(plain):
            continue
        heard = plain
        for letters, said in spelling.said:
            heard = letters.sub(said, heard)
        if heard != plain:
            yield heard


_EVERYDAY = {
    "oh": "o",
    "owe": "o",
    "eye": "i",
    "one": "wun",
    "two": "tu",
    "too": "tu",
    "who": "hu",
    "you": "yu",
    "cough": "cof",
    "rough": "ruf",
    "tough": "tuf",
    "though": "tho",
    "through": "thru",
    "laugh": "laf",
    "sure": "shur",
    "know": "no",
    "knee": "nee",
    "key": "kee",
    "guy": "gy",
    "guess": "ges",
    "tea": "tee",
    "the": "the",
}
"""Everyday words whose letters say little of their sound."""

_EVERYDAY_RULES = tuple(
    (regex(letters), said)
    for letters, said in (
        (r"(?<=[ao])lk", "k"),
        (r"eigh", "ay"),
        (r"igh", "y"),
        (r"ing$", "in"),
        (r"ior$", "yor"),
        (r"(?:ui|oo)[sz]e$|ews$", "uz"),
        (r"tion", "shun"),
        (r"tch", "ch"),
        (r"^kn", "n"),
        (r"^wh", "w"),
        (r"mb$", "m"),
        (r"[iu]r(?![aeiour])", "er"),
    )
)


def plainly(words: Sequence[str]) -> str:
    """Folded words, each spelled as plainly as it sounds: `wakin via senyor`."""
    return " ".join(_plain(word) for word in words)


def _plain(word: str) -> str:
    known = _EVERYDAY.get(word)
    if known is not None:
        return known
    for letters, said in _EVERYDAY_RULES:
        word = letters.sub(said, word)
    return word
