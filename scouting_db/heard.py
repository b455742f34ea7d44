"""How a name is heard: other languages' spellings put into English ones, everyday words likewise.

A phone that takes dictation writes down what it heard as words it knows: `walking via senior` for
Joaquín Villaseñor, `oh cough or` for Okafor. So a name gets the forms in which English ears would
spell it, and words broken off a name are spelled as plainly as they sound. Common knowledge of
spelling, from memory, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from importlib.resources import files

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from scouting_db.sounds import fold


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
        r"ñ|\bll|v[ií]ll|ll(?:[oa]s?|ano|ermo|er[oa]s?)\b|güe|\bhua"
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
    _spelling(  # Italian
        r"chi[aeo]|gli|gn[aeio]|cci|ggi|zz|sci[aeo]|[aeiou]c[ei]\w*[aeiou]\b|ini\b|etti\b",
        (r"c?ch(?=[ei])", "k"),
        (r"sci(?=[aou])|sc(?=[ei])", "sh"),
        (r"cci(?=[aou])|cc(?=[ei])|\bci(?=[aou])|c(?=[ei])", "ch"),
        (r"ggi(?=[aou])|gi(?=[aou])|gg(?=[ei])", "j"),
        (r"gli", "lyi"),
        (r"gn", "ny"),
        (r"zz", "ts"),
    ),
    _spelling(  # Portuguese
        r"[ãõ]|nh|lh",
        (r"nh", "ny"),
        (r"lh", "ly"),
        (r"ão", "ow"),
        (r"ãe|õe", "oy"),
        (r"ç", "s"),
    ),
    _spelling(  # Turkish
        r"[şğıç]",
        (r"c", "j"),
        (r"ç", "ch"),
        (r"ş", "sh"),
        (r"ğ", ""),
    ),
    _spelling(  # Croatian, Czech and their neighbours
        r"[čšžćđř]|vić\b",
        (r"dž|đ", "j"),
        (r"j", "y"),
        (r"c", "ts"),
        (r"[čć]", "ch"),
        (r"š", "sh"),
        (r"ž|ř", "zh"),
    ),
    _spelling(  # Hungarian
        r"[őű]|sz[aáeéoó]|\bgy|zs|ics\b|[aeo]gy\b",
        (r"gy", "j"),
        (r"zs", "zh"),
        (r"cs", "ch"),
        (r"(?<!z)s(?!z)", "sh"),
        (r"sz", "s"),
    ),
    _spelling(  # Welsh
        r"\bgw|\bll|ff|[aeiouwy]dd|\w{2}yn\b|wy",
        (r"\bgw(?=[aeily])", "w"),
        (r"dd", "th"),
        (r"(?<!f)f(?!f)", "v"),
        (r"ff", "f"),
        (r"wy", "oy"),
    ),
    _spelling(r"\bng", (r"\bng", "n")),  # Vietnamese, Maori, West African
    _spelling(r"[bm]h(?=[aeiouáéíóú]|\b)", (r"[bm]h", "v")),  # Irish
    _spelling(r"tx|tz", (r"tx", "ch"), (r"tz", "ts")),  # Basque
    _spelling(r"\bst\b\.?\s", (r"\bst\b\.?(?=\s)", "saint")),
    _spelling(r"\bzh|\bq(?!u)", (r"\bzh", "j"), (r"\bq(?!u)", "ch")),  # Chinese
)


def as_heard(name: str) -> Iterator[str]:
    """How English ears would spell a name, once for each language that it may be of."""
    plain = name.casefold()
    spelled = [plain, *(_spelled_by(spelling, plain) for spelling in _marked(plain))]
    yield from (one for one in spelled[1:] if one != plain)
    for one in dict.fromkeys(spelled):
        yield from _by_word(plain, one)


def _marked(plain: str) -> list[_Spelling]:
    return [spelling for spelling in _SPELLINGS if spelling.mark.search(plain)]


def _spelled_by(spelling: _Spelling, plain: str) -> str:
    for letters, said in spelling.said:
        plain = letters.sub(said, plain)
    return plain


def _by_word(plain: str, spelled: str) -> Iterator[str]:
    """`shock lemaire` of Jacques Lemaire: names that are not said as any rule would have it."""
    words, known = spelled.split(), _heard_names()
    heard = [known.get(fold(word), ()) for word in plain.split()]
    if len(words) != len(heard):
        return
    for at in range(max(map(len, heard), default=0)):
        said = (one[min(at, len(one) - 1)] if one else "" for one in heard)
        yield " ".join(one or word for one, word in zip(said, words, strict=True))


@lru_cache(maxsize=1)
def _heard_names() -> dict[str, tuple[str, ...]]:
    text = files("scouting_db").joinpath("data", "heard_names.txt").read_text(encoding="utf-8")
    lines = (line.split() for line in text.splitlines() if not line.startswith("#"))
    return {name: tuple(heard) for name, *heard in lines}


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


@lru_cache(maxsize=1 << 12)
def _plain(word: str) -> str:
    known = _EVERYDAY.get(word)
    if known is not None:
        return known
    for letters, said in _EVERYDAY_RULES:
        word = letters.sub(said, word)
    return word
