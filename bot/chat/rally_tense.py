"""Whether words of play tell what holds at all times, or is only said to be so: by their verbs.

A rally is told in the past, or without a verb at all: "they burned us", "okafor into the net". The
present tells what they do: "okafor stays back", "they burn us". (A message of nothing but "okafor
nets it" is one rally all the same: `rallies_said` reads those.) Who "called it out" tells what was
said, and not what the ball did.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import dropwhile

from bot.chat.forms import word_set
from bot.chat.rally_words import link_words, rally_lexicon
from bot.chat.said import Mention
from bot.chat.words import Word

_ONE = frozenset(["he", "she", "it"])
_SEVERAL = frozenset(["we", "they", "i", "you"])
_THIRD_PERSON = "s"
_OURS = frozenset(["we", "us", "our", "i", "me", "my"])
_MARKS = frozenset(",;.!?:()\n–—")
_BETWEEN = word_set("between_who_and_verb")
_STATES = word_set("begins_a_state")
_OF_A_STATE = word_set("of_a_state")
_NO_VERBS = word_set("ends_in_s_and_is_no_verb")
_PRESENT = word_set("present_of_play")
_BORNE, _BORNE_OF = word_set("borne_at_all_times"), word_set("borne_of")
_REPORTS = word_set("reports")


def tells_what_holds(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether somebody does something in the present, "okafor crosses", "they net", or bears
    something: with "a fear of the net" nothing went into it."""
    names = [one.span for one in mentions if not one.pronoun]
    return any(_is_borne(at, said) or _does_it_always(at, said, names) for at in range(len(said)))


def _is_borne(at: int, said: Sequence[Word]) -> bool:
    """ "A fear of the net", "problems with": who is in trouble with a ball is so for one rally."""
    behind = said[at + 1 : at + 2]
    is_of = any(one.folded in _BORNE_OF and not set(one.gap) & _MARKS for one in behind)
    return is_of and said[at].folded in _BORNE and not (at and said[at - 1].folded == "in")


def is_reported(said: Sequence[Word]) -> bool:
    """ "They called it out": it tells who said so, and not whose the rally was."""
    return any(word.folded in _REPORTS for word in said)


def _does_it_always(at: int, said: Sequence[Word], names: Sequence[tuple[int, int]]) -> bool:
    word, verb = said[at], _verb_after(at, said)
    is_named = any(start <= word.span[0] < stop for start, stop in names)
    before = said[at - 1].folded if at else ""
    is_owner = word.is_possessive or before in link_words("at_whom") | link_words("of_whose")
    if verb is None or is_owner:
        return False
    if is_named or word.folded in _ONE:
        pressed = _behind_a_state(at, said) or verb
        return _is_third_person(pressed.folded)
    return word.folded in _SEVERAL and _is_present(verb.folded)


def _verb_after(at: int, said: Sequence[Word]) -> Word | None:
    """The word after who does it; None where a mark stands between."""
    for word in said[at + 1 :]:
        if set(word.gap) & _MARKS:
            return None
        if word.folded not in _BETWEEN:
            return word
    return None


def _behind_a_state(at: int, said: Sequence[Word]) -> Word | None:
    """ "Okafor pulled wide floats it": the verb behind what was done to somebody before.

    Behind a mark it may be how one rally goes on: "okafor pulled wide, floats it, we put it away".
    """
    if at + 1 >= len(said) or said[at + 1].folded not in _STATES:
        return None
    rest = list(dropwhile(lambda word: word.folded in _OF_A_STATE, said[at + 2 :]))
    if not rest or any(word.folded in _OURS or set(word.gap) & _MARKS for word in rest[1:]):
        return None
    return rest[0]


def _is_third_person(word: str) -> bool:
    is_s = word.endswith(_THIRD_PERSON) and not word.endswith(2 * _THIRD_PERSON)
    return is_s and word not in _NO_VERBS


def _is_present(word: str) -> bool:
    """Whether it is a verb without its ending: "net" of "netted", "serve" of "served"."""
    pasts = (f"{word}ed", f"{word}d", f"{word}{word[-1]}ed")
    return word in _PRESENT or any(past in rally_lexicon().words for past in pasts)
