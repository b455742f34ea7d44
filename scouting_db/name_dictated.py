"""A whole name that dictation broke or changed into other words: `ya blond ska` for Jabłońska.

Nothing of it is known as it stands, so it is compared by ear: its first part with the first name
and its last with the surname, and both must sound like the same person's. A stranger who bears a
known surname, Ahmed beside Mohammed El-Sayed, stays one.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import product

from knowledge.dataclass import dataclass
from scouting_db.heard import plainly
from scouting_db.known_names import Known, known_first_name, known_surname
from scouting_db.name_ear import likeness
from scouting_db.name_forms import is_particles, spoken_parts
from scouting_db.name_keys import NameKeys
from scouting_db.name_supposed import SMALL_ROSTER, candidates
from scouting_db.short_names import is_short_for
from scouting_db.sounds import sound

WORDS_OF_ONE_NAME = 3
"""Words from which they may be one surname alone; of two, each is a name."""

_SHORTEST = 6
"""Sounds of what was typed, from which it can be told from any three short words."""

_WHOLE, _WHOLE_OF_TWO, _PART, _APART = 0.72, 0.8, 0.6, 0.08
"""Likeness of the whole, of two words alone and of either part, and how much less whoever is not
asked about has. Set on the voices and line writers that were read and on strangers made of two of
their names."""

_CLEAR, _CLEARLY_APART = 0.85, 0.2
"""The same of somebody beside whom nobody else need be asked about."""

_REAL_NAME = 0.9
"""The same of a part that is a name people bear: it is heard rightly more often."""

_SHORT = 0.8
"""Taken for the likeness of a short form, which says less than the name itself."""

_BESIDE_THEIRS = 0.75
"""The same of a part beside one that is theirs to the letter, as a namesake's is."""

_SURNAME_ALONE = 0.75


def dictated(keys: NameKeys, words: Sequence[str]) -> set[int]:
    """Whose name sounds much as these words do: nobody, one, or those to ask about."""
    is_of_two = len(words) < WORDS_OF_ONE_NAME
    if len(words) < 2 or (is_of_two and any(map(keys.held, words))):
        return set()  # of two words, where one is theirs, the other is another person's
    if is_particles(words[0]) or len(keys.roster) > SMALL_ROSTER:
        return set()
    if len(sound("".join(words))) < _SHORTEST:
        return set()
    found = {each: _likeness(keys, each, words) for each in candidates(keys, words)}
    best = max(found.values(), default=0.0)
    if best < (_WHOLE_OF_TWO if is_of_two else _WHOLE):
        return set()
    return {each for each, one in found.items() if one >= max(best - _APART, _PART)}


def clearest_by_ear(keys: NameKeys, meant: Collection[int], words: Sequence[str]) -> int | None:
    """Who of these is near in both parts, where nobody else is: `owen mul cahey` is Eoghan
    Mulcahy before some Owen whose surname was misheard."""
    if len(words) < WORDS_OF_ONE_NAME or is_particles(words[0]):
        return None
    ranked = sorted(((_likeness(keys, each, words), each) for each in meant), reverse=True)
    (best, position), (next_best, _) = ranked[:2]
    return position if best >= _CLEAR and next_best <= best - _CLEARLY_APART else None


@dataclass(frozen=True, slots=True)
class _Part:
    """Some of the words: as they were typed, and how they may have been meant."""

    typed: str
    heard: tuple[str, ...]
    is_one_word: bool


def _part(words: Sequence[str]) -> _Part:
    typed = "".join(words)
    heard = dict.fromkeys((typed, plainly(words).replace(" ", "")))
    return _Part(typed, tuple(heard), is_one_word=len(words) == 1)


def _likeness(keys: NameKeys, position: int, words: Sequence[str]) -> float:
    row = keys.roster[position]
    names = tuple(spoken_parts(row.name, row.aliases))
    splits = [(_part(words[:at]), _part(words[at:])) for at in range(1, len(words))]
    as_written = [split for split in splits if any(split[1].typed == last for _, last in names[:1])]
    compared = product(as_written or splits, names)
    best = max((_of_both(*split, *name) for split, name in compared), default=0.0)
    if best or len(words) < WORDS_OF_ONE_NAME:
        return best
    return max((_of_surname(splits, words, surname) for _, surname in names), default=0.0)


def _of_both(first: _Part, last: _Part, given: str, surname: str) -> float:
    is_short = first.is_one_word and is_short_for(first.typed, given)
    one = _SHORT if is_short else _of_part(first, given, known_first_name(first.typed))
    if not one:
        return 0.0
    other = _of_part(last, surname, known_surname(last.typed))
    if not other:
        return 0.0
    if min(one, other) < _BESIDE_THEIRS and (first.typed == given or last.typed == surname):
        return 0.0
    letters = len(given), len(surname)
    return (one * letters[0] + other * letters[1]) / sum(letters)


def _of_part(part: _Part, name: str, known: Known) -> float:
    like = max(likeness(one, name) for one in part.heard)
    is_real = part.is_one_word and known is Known.COMMONLY
    return like if like >= (_REAL_NAME if is_real else _PART) else 0.0


def _of_surname(splits: Sequence[tuple[_Part, _Part]], words: Sequence[str], surname: str) -> float:
    """Of all words together; but where the last alone are the surname, the first are a name."""
    if any(likeness(last.typed, surname) >= _SURNAME_ALONE for _, last in splits):
        return 0.0
    whole = _part(words)
    if sound(whole.typed)[:1] != sound(surname)[:1]:
        return 0.0
    return max(likeness(one, surname) for one in whole.heard)
