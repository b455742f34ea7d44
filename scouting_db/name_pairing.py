"""Which of some typed words are a player's first name and surname, as well as they fit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from enum import StrEnum
from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from knowledge.dataclass import dataclass
from scouting_db.heard import plainly
from scouting_db.name_forms import spoken_parts
from scouting_db.name_resemblance import alikeness, resemblance
from scouting_db.short_names import is_short_for
from scouting_db.sounds import sound

_TOLD_MORE = 0.02
"""How much likelier words are a first name and a surname than one of the two, or both as one."""

_LETTERS = 2
"""Letters that a part weighs beyond its own, so that a short one counts too."""

_SURNAME_LETTERS = 3
_SHORT_FORM = 0.8
"""How well a short form fits at a glance."""


class As(StrEnum):
    """What the words are taken for."""

    GIVEN = "given"
    SURNAME = "surname"
    RUN_TOGETHER = "together"
    BOTH = "both"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pairing:
    """Typed words beside the parts of a name they fit best, and how well, from 0 to about 1."""

    taken_as: As
    given: tuple[str, str] | None = None
    surname: tuple[str, str] | None = None
    whole: float


_UNLIKE = Pairing(taken_as=As.RUN_TOGETHER, whole=0.0)
"""A name that has no letters, or of which one word is the whole and another was typed beside it."""


def pairing(words: Sequence[str], name: str, aliases: tuple[str, ...] = ()) -> Pairing:
    """The best way to read the folded words as this name; of none the fit is 0."""
    found = _pairings(words, _parts(name, aliases))
    return max(found, key=lambda one: one.whole, default=_UNLIKE)


def glance(words: Sequence[str], name: str, aliases: tuple[str, ...] = ()) -> float:
    """How well the words may fit the name, from 0 to 1: quick, to choose whom to compare then."""
    typed = "".join(words)
    return max((_glance(typed, words, *part) for part in _parts(name, aliases)), default=0.0)


def _glance(typed: str, words: Sequence[str], given: str, surname: str) -> float:
    as_one = max(_looks_like(typed, one) for one in (given, surname, given + surname))
    if len(words) == 1 or not given or not surname:
        return max(as_one, _SHORT_FORM if is_short_for(typed, given) else 0.0)
    likes = (max(_looks_like(word, part) for word in words) for part in (given, surname))
    return max(as_one, sum(likes) / 2)


def _looks_like(typed: str, name: str) -> float:
    spelled = DamerauLevenshtein.normalized_similarity(typed, name)
    return max(spelled, DamerauLevenshtein.normalized_similarity(sound(typed), sound(name)))


def features(pair: Pairing, *, of_words: int) -> dict[str, float]:
    """What speaks for the pairing and against it, by name."""
    found = {f"{pair.taken_as}": 1.0, "whole": pair.whole}
    if of_words > 1:
        found[f"{pair.taken_as}, of more words"] = 1.0
    told = pair.taken_as
    if pair.given is not None:
        found |= _named(f"{told}: given", resemblance(*pair.given, given=True))
    if pair.surname is not None:
        found |= _named(f"{told}: surname", resemblance(*pair.surname, given=False))
    if pair.given is not None and pair.surname is not None:
        found |= _one_without_the_other(found)
    return found


def _one_without_the_other(found: Mapping[str, float]) -> dict[str, float]:
    """One part to the letter beside one that is far off: a brother, or a namesake."""
    parts = "both: given", "both: surname"
    more = {}
    for one, other in (parts, parts[::-1]):
        same = found[f"{one} same"]
        more[f"{one} alone"] = same * (1 - found[f"{other} same"]) * (1 - found[f"{other} best"])
        more[f"{one} beside a name"] = same * found[f"{other} a name"]
    return more


def _named(part: str, found: Mapping[str, float]) -> dict[str, float]:
    return {f"{part} {name}": value for name, value in found.items()}


@lru_cache(maxsize=1 << 10)
def _parts(name: str, aliases: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    return tuple(dict.fromkeys(spoken_parts(name, aliases)))


def _pairings(words: Sequence[str], parts: Sequence[tuple[str, str]]) -> Iterator[Pairing]:
    if not _has_a_part(words, parts):
        for typed in _typed_and_heard(words):
            yield from _of_one(typed, parts)
    else:
        for typed in _typed_and_heard(words):
            yield from _run_together(typed, parts)
    for at in range(1, len(words)):
        for first, last in ((words[:at], words[at:]), (words[at:], words[:at])):
            yield from _of_both(first, last, parts)


def _has_a_part(words: Sequence[str], parts: Sequence[tuple[str, str]]) -> bool:
    """Whether one of several words is a part of the name to the letter: the others are the rest."""
    return len(words) > 1 and any(
        word == given or (word == surname and len(word) >= _SURNAME_LETTERS)
        for word in words
        for given, surname in parts
    )


@lru_cache(maxsize=1 << 10)
def _spelled(words: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(("".join(words), plainly(words).replace(" ", ""))))


def _typed_and_heard(words: Sequence[str]) -> tuple[str, ...]:
    """The words as one, and as dictation may have meant them."""
    return _spelled(tuple(words))


def _of_one(typed: str, parts: Sequence[tuple[str, str]]) -> Iterator[Pairing]:
    for given, surname in parts:
        if given:
            like = alikeness(typed, given, given=True).whole
            yield Pairing(taken_as=As.GIVEN, given=(typed, given), whole=like)
        if surname:
            like = alikeness(typed, surname, given=False).whole
            yield Pairing(taken_as=As.SURNAME, surname=(typed, surname), whole=like)
    yield from _run_together(typed, parts)


def _run_together(typed: str, parts: Sequence[tuple[str, str]]) -> Iterator[Pairing]:
    for given, surname in parts:
        for whole in (given + surname, surname + given) if given and surname else ():
            like = alikeness(typed, whole, given=False).whole - _TOLD_MORE
            yield Pairing(taken_as=As.RUN_TOGETHER, surname=(typed, whole), whole=like)


def _of_both(
    first: Sequence[str], last: Sequence[str], parts: Sequence[tuple[str, str]]
) -> Iterator[Pairing]:
    for one in _typed_and_heard(first):
        for other in _typed_and_heard(last):
            for given, surname in parts:
                if not given or not surname:
                    continue
                weights = len(one) + _LETTERS, len(other) + _LETTERS
                likes = (
                    alikeness(one, given, given=True).whole,
                    alikeness(other, surname, given=False).whole,
                )
                like = (likes[0] * weights[0] + likes[1] * weights[1]) / sum(weights)
                yield Pairing(
                    taken_as=As.BOTH,
                    given=(one, given),
                    surname=(other, surname),
                    whole=like + _TOLD_MORE,
                )
