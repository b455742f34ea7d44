"""A first name and a surname that are both cut short: `ant dibart`, `zachwhit`.

Only where nothing else fits; then both must begin the same player's names. Common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scouting_db.known_names import is_no_name
from scouting_db.name_cost import is_another_first_name
from scouting_db.name_keys import NameKeys
from scouting_db.short_names import is_short_for, long_forms
from scouting_db.sounds import fold

_FEWEST_LETTERS = 5
"""Letters of both together, from which they are no initials."""

_OF_ONE_WORD, _OF_EITHER = 7, 3
"""Letters of a word that may be two run together, and of either."""

_BEARERS = 60


def both_cut(keys: NameKeys, words: Sequence[str]) -> set[int]:
    """Whose first name and surname begin so."""
    return {
        position
        for first, rest in _two_parts(words)
        for position in _called(keys, first)
        if _has_surname(keys, position, rest)
    }


def _two_parts(words: Sequence[str]) -> Iterator[tuple[str, str]]:
    if len(words) == 1:
        word = words[0]
        if len(word) >= _OF_ONE_WORD and is_no_name(word):
            places = range(_OF_EITHER, len(word) - _OF_EITHER + 1)
            yield from ((word[:at], word[at:]) for at in places)
        return
    first, rest = words[0], "".join(words[1:])
    letters = len(first), len(rest)
    if min(letters) > 1 and sum(letters) >= _FEWEST_LETTERS:
        yield first, rest


def _called(keys: NameKeys, first: str) -> set[int]:
    """Whom one may call so: the given names that begin so, and those it is short for."""
    begun = [*keys.given_beginning_with(first), *long_forms(first)]
    begun += [one for one in keys.given_beginning_with(first[:2]) if is_short_for(first, one)]
    called = [given for given in begun if not is_another_first_name(first, given)]
    return {each for given in called for each in keys.bearers(given)[:_BEARERS]}


def _has_surname(keys: NameKeys, position: int, rest: str) -> bool:
    """`lind` of Lindahl, `dibart` of Di Bartolo, `fh` of Finch-Hayes."""
    words = fold(keys.roster[position].name.partition(" (")[0]).split()[1:]
    if any("".join(words[at:]).startswith(rest) for at in range(len(words))):
        return True
    return len(words) > 1 and "".join(word[0] for word in words) == rest
