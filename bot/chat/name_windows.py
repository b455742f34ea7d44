"""Words that stand together and may be a name: mistyped, dictated, or none that we know."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.common_words import is_common, is_form_of_common
from bot.chat.forms import word_set
from bot.chat.unknown_names import is_no_word
from bot.chat.words import Word
from scouting_db.known_names import Known, known_surname
from scouting_db.names import Match, NameIndex, Nobody

SHORTEST_FUZZY = 4
"""Letters of a word that may be a name mistyped."""

_SHORTEST_DICTATED = 6
_NEVER_WITHIN = frozenset(",;:!?\n()/&+")
_NO_NAME = word_set("no_name")
NEVER_PART_OF_A_NAME = word_set("never_in_a_name")


def supposed_at(
    said: Sequence[Word], start: int, index: NameIndex, budget: Iterator[int]
) -> tuple[int, Match] | None:
    """ "Where do i dink lindkivst": no word of ours where no name need stand, but like one."""
    odd = [is_no_word(word.folded) for word in said[start : start + 2]]
    for stop in (start + 2, start + 1):
        window = said[start:stop]
        if not all(odd[: len(window)]) or len(window) < stop - start or is_broken(window):
            continue
        if next(budget, None) is None:
            return None
        match = index.lookup(" ".join(word.folded for word in window))
        if isinstance(match, Nobody) and len(match.supposed) == 1:
            return stop, match
    return None


def strangers_first(
    said: Sequence[Word], start: int, stop: int, index: NameIndex
) -> tuple[int, Match] | None:
    """ "Cast Whitlow misses": no Castellano where somebody else's surname stands behind it."""
    if stop != start + 1 or stop >= len(said) or said[stop].gap != " ":
        return None
    first, last = said[start].folded, said[stop].folded
    is_theirs = index.has(first) or not isinstance(index.lookup(last, nearest=False), Nobody)
    if is_theirs or not is_no_word(last) or known_surname(last) is Known.NO:
        return None
    return stop + 1, index.lookup(f"{first} {last}")


def may_be_mangled(window: Sequence[Word]) -> bool:
    """One odd word, or a few that dictation may have made of one name ("oak a four")."""
    first, last = window[0].folded, window[-1].folded
    if len(window) == 1:
        is_odd = not (is_common(first) or is_form_of_common(first)) and first not in _NO_NAME
        if NEVER_PART_OF_A_NAME & {first, first.removesuffix("s")}:
            return False  # "what" and "whats" sound like a Bhatt
        return is_odd and len(first) >= SHORTEST_FUZZY and not first[0].isdigit()
    if first in NEVER_PART_OF_A_NAME or last in NEVER_PART_OF_A_NAME:
        return False
    if all(is_common(word.folded) for word in window):
        return False
    letters = sum(len(word.folded) for word in window)
    return letters >= _SHORTEST_DICTATED and not any(word.folded[0].isdigit() for word in window)


def has_own_name(window: Sequence[Word], index: NameIndex) -> bool:
    """`beat Hale`, `lefty Hales`: a name among everyday words; `win Brandt` is Nguyen-Brandt."""
    named = [_is_name(word.folded, index) for word in window]
    if any(named) and any(word.folded == "or" for word in window[1:-1]):
        return True  # "bex or hal" are two people
    rest = [word for word, is_name in zip(window, named, strict=True) if not is_name]
    is_own = bool(rest) and any(named) and all(is_common(word.folded) for word in rest)
    return is_own and not index.sounds_like_one(" ".join(word.folded for word in window))


def _is_name(folded: str, index: NameIndex) -> bool:
    """Whether somebody is called so; `hales`, whose something is, is Hale too."""
    owner = folded.removesuffix("s")
    is_owner = owner != folded and len(owner) >= SHORTEST_FUZZY
    return index.has(folded, initials=False) or (is_owner and index.has(owner, initials=False))


def is_broken(window: Sequence[Word]) -> bool:
    """Whether a mark that no name goes across stands within."""
    marked = (word.gap for word in window[1:] if word.gap != " ")
    return any(not _NEVER_WITHIN.isdisjoint(gap) or ". " in gap for gap in marked)
