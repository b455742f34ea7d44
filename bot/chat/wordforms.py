"""Words brought to a common form before they are compared: shorthand spelled out, endings cut,
and the people of a match reduced to the roles they play (they, us, partner)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import StrEnum
from functools import lru_cache
from typing import NamedTuple

_ENDINGS = ("ings", "ing", "ies", "ers", "ed", "es", "er", "s")
_SHORTEST_STEM = 3
_DROPPED_G = 5  # letters of the shortest word read as one in -ing: "hittin", not "again"


class Word(NamedTuple):
    """A word after spelling out, and the token it came from."""

    text: str
    token: int


class Role(StrEnum):
    """Who a word speaks of, whatever the name."""

    THEY = "THEY"
    US = "US"
    PARTNER = "PARTNER"


_ROLES = {
    Role.THEY: (
        "they he she him her them his their theirs opponents opponent <name> guy guys these those"
        " pair woman lady man"
    ),
    Role.US: "we us our ours i me my mine",
    Role.PARTNER: "partner <ours> p mate teammate",
}
ROLE_OF = {word: role for role, words in _ROLES.items() for word in words.split()}


def spell_out(
    words: Sequence[str], shorthand: Mapping[str, str], known: frozenset[str]
) -> list[Word]:
    """The words with shorthand in full ("rn" is "now") and a dropped g put back ("hittin")."""
    found: list[Word] = []
    for at, word in enumerate(words):
        full = shorthand.get(word) or _with_g(word, known)
        found += [Word(text=part, token=at) for part in full.split()]
    return found


def _with_g(word: str, known: frozenset[str]) -> str:
    longer = word + "g"
    drops = word.endswith("in") and len(word) > _DROPPED_G
    return longer if drops and word not in known and longer in known else word


@lru_cache(maxsize=8192)
def stem(word: str) -> str:
    """The word without its ending: rough, but the same for "poaches", "poaching" and "poach"."""
    if word.startswith("<") or len(word) <= _SHORTEST_STEM:
        return word
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= _SHORTEST_STEM:
            word = word[: -len(ending)]
            break
    if len(word) > _SHORTEST_STEM and word[-1] == word[-2] and word[-1] not in "ls":
        word = word[:-1]
    return word[:-1] if len(word) > _SHORTEST_STEM and word[-1] in "ey" else word
