"""Names that dictation wrote down as everyday words: "okay for won't dink", "against okay four".

Each word of them is a word, so they count only where a name must stand: before what is told of
somebody, or beside another name; and only if they sound like one player's name and nobody else's.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.unknown_names import begins_a_clause, has_predicate
from bot.chat.words import Word
from scouting_db.names import Found, Match, NameIndex

HEARD_WORDS_AT_MOST = 3
_SHORTEST = 5
"""Letters of the words together: fewer sound like too much."""

_BEFORE = word_set("before_a_full_name")
_JOINS = frozenset(["and", "n", "plus", "with"])
_DENIES = word_set("denies_a_verb")
_SKILLS = word_set("owned_skills")
_OWNED = "s"
_HEARD_OWNED = "ce"
"""How an owner's "s" ends a word that dictation knows: "okay force serve"."""
_NEVER_FIRST = word_set("never_in_a_name") - {"ok", "okay"}
_NEVER_LAST = word_set("never_in_a_name") - {"for"}

_SENTENCE_ENDS = frozenset(".!?\n,;:")


def heard_at(said: Sequence[Word], start: int, index: NameIndex) -> tuple[int, Match] | None:
    """Where a name of everyday words that begins here ends, and whose it is; None without one."""
    if not _may_begin(said, start):
        return None
    for stop in range(min(len(said), start + HEARD_WORDS_AT_MOST), start + 1, -1):
        window = said[start:stop]
        if not _are_words(window) or any(index.has(one.folded, initials=False) for one in window):
            continue
        for typed, is_owner in _readings(window):
            if not _is_told_of(said, start, stop, is_owner=is_owner):
                continue
            match = index.lookup(typed, nearest=False)
            if isinstance(match, Found) and index.is_said_as(typed, match.player):
                return stop, match
    return None


def _may_begin(said: Sequence[Word], start: int) -> bool:
    if start + 1 >= len(said):
        return False
    return begins_a_clause(said, start) or said[start - 1].folded in _BEFORE


def _are_words(window: Sequence[Word]) -> bool:
    letters = sum(len(word.folded) for word in window)
    if window[0].folded in _NEVER_FIRST or window[-1].folded in _NEVER_LAST:
        return False
    in_a_row = all(word.gap == " " for word in window[1:])
    return in_a_row and letters >= _SHORTEST and all(is_common(word.folded) for word in window)


def _readings(window: Sequence[Word]) -> Iterator[tuple[str, bool]]:
    """The words, and without an owner's ending; and whether they own what follows."""
    typed = " ".join(word.folded for word in window)
    if window[-1].is_possessive:
        yield typed, True
        return
    yield typed, False
    for ending in (_HEARD_OWNED, _OWNED):
        if typed.endswith(ending) and len(window[-1].folded) > len(ending) + 1:
            yield typed.removesuffix(ending), True


def _is_told_of(said: Sequence[Word], start: int, stop: int, *, is_owner: bool) -> bool:
    """Whether something is told of whoever stands before this place."""
    ahead = [word.folded for word in said[stop : stop + 3]]
    if is_owner:
        return bool(_SKILLS & set(ahead[:2])) or said[stop - 1].is_possessive
    if not ahead or set(said[stop].gap) & _SENTENCE_ENDS:
        return bool(start) and said[start - 1].folded in _BEFORE | _JOINS
    is_of_a_skill = ahead[0] == "on" and bool(_SKILLS & set(ahead[1:]))
    return has_predicate(said, stop) or ahead[0] in _DENIES or is_of_a_skill
