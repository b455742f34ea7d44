"""How names are compared: folded spelling, rough English sound, and consonants alone."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterable
from functools import lru_cache

from knowledge.regex import regex

_Said = str | Callable[[re.Match[str]], str]

_APOSTROPHES = regex(r"['’‘`´ʼʹ＇]")
_NOT_WORD = regex(r"[^0-9a-z]+")
_FOLDED_LETTERS = str.maketrans(
    {"ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "æ": "ae", "œ": "oe", "ß": "ss", "ı": "i"}
)

_IRISH = {
    "aoife": "eefa",
    "saoirse": "sersha",
    "caoimhe": "keeva",
    "niamh": "neev",
    "eoin": "owen",
    "siobha": "shivo",
    "sioba": "shivo",
    "sinead": "shinade",
    "roisin": "rosheen",
    "oisin": "osheen",
    "grainne": "grawnya",
    "cillian": "killian",
    "ciara": "keera",
    "meadhbh": "mave",
    "maebh": "mave",
    "tadhg": "tig",
    "fionnuala": "finoola",
    "eilis": "eilish",
    "diarmuid": "dermot",
    "cathal": "kahal",
    "padraig": "paurick",
    "aisling": "ashling",
    "eimear": "eemer",
    "laoise": "leesha",
    "ruairi": "rory",
    "uohy": "ooey",
    "strachan": "strawn",
}
"""Irish and Scottish names, as English ears would write them. From memory."""

_NAMES: tuple[tuple[str, _Said], ...] = (
    (r"ng?uy?en|ng[uy]{1,2}[ae]n|n[uy][gw][uy]?en|new?y[eiu]n", "win"),
    ("|".join(_IRISH), lambda found: _IRISH[found[0]]),
    (r"^sean", "shawn"),
    (r"^geof", "jef"),
    (r"^[ck]a(?:i|y|te|t)t?[ie]?l[iy]nn?e?", "ketlin"),
    (r"xim", "him"),
    (r"stle(?![aiou])", "sle"),
    (r"^mc(?=[aeiou])", "mac"),
    (r"(?<!t)ch(?=[lr])", "k"),
    (r"(?<=[bgtv])re$", "er"),
    (r"^nw", "w"),
    (r"^x", "s"),
    (r"x", "ks"),
)
"""Names that are not said as they are written. From memory."""

_SOUNDS: tuple[tuple[str, _Said], ...] = (
    *_NAMES,
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
    (r"ew(?![aeiouy])", "u"),
    (r"[ao]w(?![aeiouy])", "o"),
    (r"v|w", "f"),
    (r"b", "p"),
    (r"(?<=.)h", ""),
    (r"e(?=[^aeiou]e$)", "i"),
    (r"a(?=[^aeiou]e$)", "e"),
    (r"^([^aeiou]+)e$", r"\1i"),
    (r"(?<=[^aeiou])e$", ""),
    (r"([aeiou][^aeiou]+)ey$", r"\1i"),
    (r"ai|ay|ei|ey|ae", "e"),
    (r"ee|ea|ie|y", "i"),
    (r"oa|ou|au|ao", "o"),
    (r"oo|ue", "u"),
    (r"(.)\1+", r"\1"),
)
"""Spellings that dictation and hurried thumbs mix up, in order. From memory, English ears."""

_SOUND_RULES = tuple((regex(pattern), sound) for pattern, sound in _SOUNDS)
_VOWELS = regex(r"[aeiou]")
_DOUBLES = regex(r"(.)\1+")


@lru_cache(maxsize=1 << 13)
def fold(text: str) -> str:
    """Lower case, no accents, no apostrophes; hyphens and other marks become single spaces."""
    plain = unicodedata.normalize("NFKD", text.casefold())
    plain = "".join(letter for letter in plain if not unicodedata.combining(letter))
    plain = _APOSTROPHES.sub("", plain.translate(_FOLDED_LETTERS))
    return _NOT_WORD.sub(" ", plain).strip()


_SPOKEN: tuple[tuple[str, _Said], ...] = (
    *_NAMES,
    (r"^(?:mc|mac)(?=[^aeiou])", "mk"),
    (r"sz|sch|sh", "S"),
    (r"tch|cz|ch", "x"),
    (r"ph", "f"),
    (r"th", "t"),
    (r"qu|qv|kv", "kw"),
    (r"ck|c(?![eiyx])|q", "k"),
    (r"c|z", "s"),
    (r"wr", "r"),
    (r"^kn|^gn", "n"),
    (r"g(?=[eiy])|j", "j"),
    (r"gh", ""),
    (r"(?<=n)(?:dh|dt?|th?)$|(?<=[lr])dt$", "t"),
    (r"ew", "u"),
    (r"[ao]w(?![aeiouy])", "o"),
    (r"our", "or"),
    (r"[vw]+$", "f"),
    (r"w", "v"),
    (r"(?<=.)h", ""),
    (r"(?<=[aeouy][aeiouy][klmnprt])es$|(?<=[aeou]y)es$", "s"),
    (r"([aeiou][^aeiou]+)ey$", r"\1i"),
    (r"(?:ie|ee|y)$", "i"),
    (r"ei$", "e"),
    (r"[iy](?=[^aeiou]e$)", "Y"),
    (r"e(?=[^aeiou]e$)", "i"),
    (r"a(?=[^aeiouS]e$)", "e"),
    (r"(?<=[^aeiou])e$", ""),
    (r"ai|ay|ae", "e"),
    (r"ee|ea|ie|ei|ey|y", "i"),
    (r"ue|oo|ou", "u"),
    (r"oe|oa|au|ao", "o"),
    (r"(.)\1+", r"\1"),
)
"""What one says alike: as above, but `b` and `p`, `d` and `t`, `g` and `k`, `v` and `f` are told
apart, as only those who misspell a name mix them up. From memory, English ears."""

_SPOKEN_RULES = tuple((regex(pattern), spoken) for pattern, spoken in _SPOKEN)


@lru_cache(maxsize=1 << 12)
def spoken(squeezed: str) -> str:
    """How a folded name is said: `oaks` and `oakes` come out equal, `boyd` and `loyd` do not."""
    return _applied(_SPOKEN_RULES, squeezed)


@lru_cache(maxsize=1 << 15)
def sound(squeezed: str) -> str:
    """A rough English sound of a folded name without spaces: `hail` and `hale` come out equal."""
    return _applied(_SOUND_RULES, squeezed)


def _applied(rules: Iterable[tuple[re.Pattern[str], _Said]], squeezed: str) -> str:
    for pattern, replacement in rules:
        squeezed = pattern.sub(replacement, squeezed)
    return squeezed


def consonants(sounding: str) -> str:
    """The consonants of a sound; a name of vowels alone keeps them."""
    return _DOUBLES.sub(r"\1", _VOWELS.sub("", sounding)) or sounding
