"""Whether a first name is the short form of another: `ben`, `toby`, `bob`."""

from __future__ import annotations

from functools import lru_cache
from importlib.resources import files

SHORTEST_STEM = 3
"""Letters by which a short form must begin its name."""

_ENDINGS = ("ie", "ey", "y", "i")
_VOWELS = frozenset("aeiou")


def is_short_for(typed: str, given: str) -> bool:
    """`ben` for Benedict, `toby` for Tobias, `bob` for Robert; not `mary` for Marcus."""
    if given in long_forms(typed) or (len(typed) >= SHORTEST_STEM and given.startswith(typed)):
        return True
    stem = stem_of(typed)
    if stem and is_doubled(stem) and given.startswith(stem[:-1]):
        return True  # `benny` for Benedict
    return bool(stem) and given.startswith(stem) and given.removeprefix(stem)[:1] in _VOWELS


def stem_of(typed: str) -> str:
    """`sunn` of `sunny`, "" of a name without such an ending or with too little before it."""
    if not typed.endswith(_ENDINGS):
        return ""
    stem = next(typed[: -len(end)] for end in _ENDINGS if typed.endswith(end))
    return stem if len(stem) >= SHORTEST_STEM else ""


def is_doubled(stem: str) -> bool:
    """`sunn`, `bobb`: hardly the stem of a name of its own."""
    return stem[-2:-1] == stem[-1:]


def long_forms(short: str) -> tuple[str, ...]:
    """The names that a short form or a pet name is known to stand for."""
    return _table().get(short, ())


@lru_cache(maxsize=1)
def _table() -> dict[str, tuple[str, ...]]:
    text = files("scouting_db").joinpath("data", "short_names.txt").read_text(encoding="utf-8")
    lines = (line.split() for line in text.splitlines() if not line.startswith("#"))
    return {short: tuple(long) for short, *long in lines}
