"""In what a typed word and a part of a name are alike: numbers for a model to weigh.

Each is between 0 and 1 or near it. What tells two people apart are the words that are names of
their own: `prentice` beside Prentiss may be a slip, and may be Prentice.
"""

from __future__ import annotations

from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein, Prefix

from knowledge.dataclass import dataclass
from scouting_db.known_names import Known, known_first_name, known_surname
from scouting_db.name_ear import likeness
from scouting_db.name_foreign_ears import foreign_likeness
from scouting_db.name_slips import is_slip, lacks_vowels
from scouting_db.name_thumbs import thumb_cost
from scouting_db.short_names import is_short_for
from scouting_db.sounds import consonants, sound, spoken

_AS_GOOD_AS = 0.95
"""What a likeness to a foreign ear counts beside one to an English one."""

_SHORT_FORM, _BEGINNING, _INITIAL = 0.85, 0.8, 0.55
"""Likeness taken for a short form, a name begun, and its first letter alone."""

_BEGUN, _SHORT = 3, 4
_SCALE = 6
_KNOWN = {Known.NO: 0.0, Known.RARELY: 0.5, Known.COMMONLY: 1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Alikeness:
    """How much alike a typed word and a name's part are: to the eye, the ear and the thumbs."""

    seen: float
    heard: float
    typed: float
    whole: float
    """Of all, a short form or a beginning among them."""

    @property
    def best(self) -> float:
        return max(self.seen, self.heard, self.typed)


@lru_cache(maxsize=1 << 11)
def alikeness(typed: str, name: str, *, given: bool) -> Alikeness:
    """Of two folded words without spaces, neither empty; `given` where the name is a first one."""
    seen = DamerauLevenshtein.normalized_similarity(typed, name)
    heard = max(likeness(typed, name), _AS_GOOD_AS * foreign_likeness(typed, name))
    by_thumb = 1 - min(1.0, thumb_cost(typed, name) / max(len(typed), len(name)))
    whole = max(seen, heard, by_thumb)
    if len(typed) == 1:
        whole = _INITIAL if name.startswith(typed) else 0.0
    elif given and is_short_for(typed, name):
        whole = max(whole, _SHORT_FORM)
    elif len(typed) >= _BEGUN and name.startswith(typed):
        whole = max(whole, _BEGINNING)
    return Alikeness(seen=seen, heard=heard, typed=by_thumb, whole=whole)


@lru_cache(maxsize=1 << 8)
def resemblance(typed: str, name: str, *, given: bool) -> dict[str, float]:
    """What speaks for and against the one being meant by the other, by name. Not to be changed."""
    alike, differs = alikeness(typed, name, given=given), float(spoken(typed) != spoken(name))
    best, slip = alike.best, float(is_slip(typed, name))
    sounds, skeletons = (
        (sound(typed), sound(name)),
        tuple(map(consonants, map(sound, (typed, name)))),
    )
    same_sound = float(sounds[0] == sounds[1])
    known = _KNOWN[known_first_name(typed) if given else known_surname(typed)] * differs
    theirs = _KNOWN[known_first_name(name) if given else known_surname(name)]
    either = _KNOWN[max(known_first_name(typed), known_surname(typed))]
    edits = DamerauLevenshtein.distance(typed, name)
    one_edit = float(edits == 1)
    is_short = given and is_short_for(typed, name)
    begun = Prefix.similarity(typed, name)
    return {
        "same": float(typed == name),
        "said alike": 1 - differs,
        "same sound": same_sound,
        "same consonants": float(skeletons[0] == skeletons[1]),
        "consonants": DamerauLevenshtein.normalized_similarity(*skeletons),
        "seen": alike.seen,
        "heard": alike.heard,
        "typed": alike.typed,
        "best": best,
        "well": max(0.0, best - 0.6),
        "very well": max(0.0, best - 0.8),
        "thumb cost": min(thumb_cost(typed, name), _SCALE) / _SCALE,
        "edits": min(edits, _SCALE) / _SCALE,
        "a slip": slip,
        "begins it": float(len(typed) > 1 and typed != name and name.startswith(typed)),
        "short form": float(is_short and typed != name),
        "vowels left out": float(lacks_vowels(typed, name)),
        "first letter": float(typed[0] == name[0]),
        "first sound": float(sounds[0][:1] == sounds[1][:1]),
        "letters begun": min(begun, _SCALE) / _SCALE,
        "a name": known,
        "a name, unlike": known * (1 - best),
        "a name, mistyped": known * (1 - alike.typed),
        "a name of either kind": either * differs,
        "no name, alike": (1 - either) * differs * best,
        "a name, short form": known * is_short,
        "a name, one edit": known * one_edit,
        "a name, a slip": known * one_edit * slip,
        "a name, same sound": known * same_sound,
        "theirs a name": theirs,
        "both names": known * theirs,
        "both names, mistyped": known * theirs * (1 - alike.typed),
        "letters": min(len(typed), 2 * _SCALE) / (2 * _SCALE) * differs,
        "longer": (len(typed) - len(name)) / _SCALE,
        "other length": min(abs(len(typed) - len(name)), _SCALE) / _SCALE,
        "a letter": float(len(typed) == 1),
        "another letter": float(len(typed) == 1 and not name.startswith(typed)),
        "few letters": float(len(typed) <= _SHORT) * differs,
        "few letters, alike": float(len(typed) <= _SHORT) * differs * best,
    }
