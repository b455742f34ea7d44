"""How names are compared: folded spelling, rough English sound, and consonants alone."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

_APOSTROPHES = re.compile(r"['’‘`´ʼʹ＇]")
_NOT_WORD = re.compile(r"[^0-9a-z]+")
_FOLDED_LETTERS = str.maketrans(
    {"ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "æ": "ae", "œ": "oe", "ß": "ss", "ı": "i"}
)

_SOUNDS = (
    (r"ng?uy?en", "win"),
    (r"^(?:mc|mac)(?=[^aeiou])", "mk"),
    (r"sz|sch|sh", "s"),
    (r"tch|cz|ch", "x"),
    (r"ph", "f"),
    (r"th", "t"),
    (r"q[uv]|kv|ck|c(?![eiyx])|q", "k"),
    (r"c|z", "s"),
    (r"wr", "r"),
    (r"^kn|^gn", "n"),
    (r"g(?=[eiy])|j", "j"),
    (r"gh", ""),
    (r"g", "k"),
    (r"d", "t"),
    (r"v|w", "f"),
    (r"b", "p"),
    (r"(?<=.)h", ""),
    (r"a(?=[^aeiou]e$)", "e"),
    (r"(?<=[^aeiou])e$", ""),
    (r"ai|ay|ei|ey|ae", "e"),
    (r"ee|ea|ie|y", "i"),
    (r"oa|ou|ow|au", "o"),
    (r"oo", "u"),
    (r"(.)\1+", r"\1"),
)
"""Spellings that dictation and hurried thumbs mix up, in order. From memory, English ears."""

_SOUND_RULES = tuple((re.compile(pattern), sound) for pattern, sound in _SOUNDS)
_VOWELS = re.compile(r"[aeiou]")
_DOUBLES = re.compile(r"(.)\1+")


@lru_cache(maxsize=1 << 13)
def fold(text: str) -> str:
    """Lower case, no accents, no apostrophes; hyphens and other marks become single spaces."""
    plain = unicodedata.normalize("NFKD", text.casefold())
    plain = "".join(letter for letter in plain if not unicodedata.combining(letter))
    plain = _APOSTROPHES.sub("", plain.translate(_FOLDED_LETTERS))
    return _NOT_WORD.sub(" ", plain).strip()


@lru_cache(maxsize=1 << 15)
def sound(squeezed: str) -> str:
    """A rough English sound of a folded name without spaces: `hail` and `hale` come out equal."""
    for pattern, replacement in _SOUND_RULES:
        squeezed = pattern.sub(replacement, squeezed)
    return squeezed


def consonants(sounding: str) -> str:
    """The consonants of a sound; a name of vowels alone keeps them."""
    return _DOUBLES.sub(r"\1", _VOWELS.sub("", sounding)) or sounding
