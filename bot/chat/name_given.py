"""A name typed where we asked which of several is meant: as good as the tap under the question."""

from __future__ import annotations

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.they_told import hears_they
from bot.chat.view import ChatView
from bot.chat.words import words
from scouting_db.names import NameIndex, Nobody, likeliest_of

LONGEST_ANSWER = 6
"""Words of such an answer; a longer message says something of its own."""

_PLACES = {
    "first": 0,
    "1st": 0,
    "second": 1,
    "2nd": 1,
    "third": 2,
    "3rd": 2,
    "fourth": 3,
    "4th": 3,
    "last": -1,
}
_YES = frozenset(["yes", "y", "yep", "yeah", "yup", "correct"])
_BESIDE_YES = frozenset(["please", "sure", "ok", "right", "him", "her"])
"""Alone they only nod: "ok" must put nothing to anybody's name."""
_ADDS = frozenset(["add", "new"])
_AROUND_ADDS = frozenset(
    ["no", "nope", "him", "her", "them", "they", "are", "player", "players", "neither", "none"]
)
_OURS = frozenset(["ours", "our", "us", "we", "my", "mine"])
_ACROSS = frozenset(["other", "others", "theirs", "their", "opponents", "opponent", "opps"])
_AROUND_A_SIDE = frozenset(["pair", "team", "side", "two", "girls", "boys", "guys", "ones"])
_AND = frozenset(["and", "n", "with"])
_ALL_OF_THEM = frozenset(["both", "two", "all"])


def name_given(text: str, pending: Pending, chat: ChatView) -> str | None:
    """The payload of the button that the message stands for; None where it says anything else.

    "ana", "the second one", "i mean peña"; "yes" where one name was offered, "no, add her".
    """
    said = [word.folded for word in words(text)]
    rest = [word for word in said if word not in word_set("around_a_name_given")]
    if not rest or len(said) - len(_names_of(pending)) > LONGEST_ANSWER:
        return None
    if len(rest) == 1 and rest[0] in _PLACES:
        return _of_place(pending, _PLACES[rest[0]])
    names = _names_of(pending)
    is_of_all = names <= set(rest) or names.isdisjoint(rest)
    if pending.typed and is_of_all and _adds(set(rest) - names, pending):
        return tap(Verb.ADD, pending.number)
    index = NameIndex(row for row in chat.roster if row.player in pending.candidates)
    if pending.typed and len(pending.candidates) == 1 and _is_yes(set(rest)):
        return _yes(pending, index)
    typed = " ".join(rest)
    if pending.typed and hears_they(pending.typed):
        return _of_a_side(rest, pending, index)
    if all(map(is_common, rest)) and not index.has(typed):
        return None  # an everyday word that only sounds like one of them
    meant = likeliest_of(index.lookup(typed, nearest=False))
    return None if meant is None else tap(Verb.WHO, pending.number, meant.player)


def _of_a_side(rest: list[str], pending: Pending, index: NameIndex) -> str | None:
    """Whom "they" meant to a coach: "ours", "the others", or whoever of a pair is named."""
    if set(rest) & _OURS and set(rest) <= _OURS | _AROUND_A_SIDE:
        return tap(Verb.WHO, pending.number, pending.candidates[0])
    if set(rest) & _ACROSS and set(rest) <= _ACROSS | _AROUND_A_SIDE:
        return tap(Verb.WHO, pending.number, pending.candidates[-1])
    found = [likeliest_of(index.lookup(word, nearest=False)) for word in rest if word not in _AND]
    meant = found[0] if all(found) else None
    return None if meant is None else tap(Verb.WHO, pending.number, meant.player)


def _names_of(pending: Pending) -> set[str]:
    return {word.folded for name in (pending.typed, *pending.also) for word in words(name)}


def _adds(said: set[str], pending: Pending) -> bool:
    """Whether the name that nobody bears is to be added: in so many words, or by yes to that.

    "Add both" adds the one that is asked about as well: the other may be known, or was missed.
    """
    if (pending.also or said & _ADDS) and said & _ALL_OF_THEM:
        said = (said - _ALL_OF_THEM) or set(_ADDS)
    if said & _ADDS:
        return said <= _ADDS | _AROUND_ADDS | _YES | _BESIDE_YES
    return not pending.candidates and _is_yes(said)


def _yes(pending: Pending, index: NameIndex) -> str:
    """The one offered, where the name may be theirs; "yes" to "Dag Holm" never makes him a Dahl.

    Whoever is only the nearest was offered beside adding the name, and that is what yes says then.
    """
    if isinstance(index.lookup(pending.typed, nearest=False), Nobody):
        return tap(Verb.ADD, pending.number)
    return tap(Verb.WHO, pending.number, pending.candidates[0])


def _is_yes(said: set[str]) -> bool:
    return bool(said & _YES) and said <= _YES | _BESIDE_YES


def _of_place(pending: Pending, place: int) -> str | None:
    if not -1 <= place < len(pending.candidates) or len(pending.candidates) < 2:
        return None
    return tap(Verb.WHO, pending.number, pending.candidates[place])
