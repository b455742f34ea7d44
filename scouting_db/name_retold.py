"""What was typed for a name that is nobody's, as it may have been meant otherwise.

An initial said as its letter's name (`dee Okafor`), a letter held down in a double one (`haddda`),
a name spelled by ear in another language's letters (`Şantal`). Common practice, no source.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from knowledge.regex import regex
from scouting_db.known_names import is_no_name
from scouting_db.sounds import fold

_LETTERS = {
    "ay": "a",
    "bee": "b",
    "be": "b",
    "bea": "b",
    "cee": "c",
    "see": "c",
    "sea": "c",
    "dee": "d",
    "ee": "e",
    "ef": "f",
    "eff": "f",
    "gee": "g",
    "aitch": "h",
    "haitch": "h",
    "eye": "i",
    "jay": "j",
    "kay": "k",
    "okay": "k",
    "el": "l",
    "ell": "l",
    "elle": "l",
    "em": "m",
    "en": "n",
    "oh": "o",
    "owe": "o",
    "pee": "p",
    "pea": "p",
    "cue": "q",
    "queue": "q",
    "ar": "r",
    "are": "r",
    "es": "s",
    "ess": "s",
    "tee": "t",
    "tea": "t",
    "ti": "t",
    "you": "u",
    "yu": "u",
    "vee": "v",
    "ex": "x",
    "why": "y",
    "wye": "y",
    "zee": "z",
    "zed": "z",
}
"""How English speakers say a letter, as dictation writes it."""

_STRETCHED = regex(r"([a-z])\1\1+")
_TURKISH = regex(r"[şğıç]")
_TURKISH_LETTERS = str.maketrans({"c": "j", "ç": "ch", "ş": "sh", "ğ": "", "ı": "i"})
_BEGINS_WITH_C = regex(r"\bc(?=[aeiouy])")


def retold(typed: str) -> Iterator[str]:
    """Every other way in which it may have been meant, folded; the likeliest first."""
    folded = fold(typed)
    if _STRETCHED.search(folded):
        yield _STRETCHED.sub(r"\1\1", folded)
    yield from _with_letter(folded.split())
    plain = unicodedata.normalize("NFC", typed.casefold())
    begun = [one for one in folded.split() if _BEGINS_WITH_C.match(one)]
    if (begun and all(map(is_no_name, begun))) or _TURKISH.search(plain):
        yield fold(plain.translate(_TURKISH_LETTERS))


def _with_letter(words: list[str]) -> Iterator[str]:
    """`jay lobato`, `ana are` and `ana are pee`: all words but one are letters."""
    if len(words) < 2:
        return
    before, after = (_letters(part) for part in (words[:-1], words[1:]))
    if before:
        yield f"{before} {words[-1]}"
    if after:
        yield f"{words[0]} {after}"


def _letters(words: list[str]) -> str:
    """The letters that these words all say, "" where one is no letter's name."""
    if any(word not in _LETTERS for word in words):
        return ""
    return "".join(_LETTERS[word] for word in words)
