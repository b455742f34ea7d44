"""Where a note takes something back: "no wait", a bare "no" with a "sorry" behind it, or what
others told and whoever writes saw otherwise."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice
from typing import Final

from bot.chat.forms import any_of, word_set
from bot.chat.words import Word
from knowledge.dataclass import dataclass

_CUE: Final = "takes_back_within"
_OWNING_UP = (("sorry",), ("i", "mean"), ("i", "meant"), ("my", "bad"), ("my", "mistake"))
"""What closes a word put right: "right hip no left hip sorry"."""
BEFORE_A_WORD = word_set("before_a_word_put_right")
OTHER = {
    one: other
    for pair in (
        ("left", "right"),
        ("lefty", "righty"),
        ("lefties", "righties"),
        ("forehand", "backhand"),
        ("fh", "bh"),
        ("one", "two"),
        ("tall", "short"),
        ("deep", "short"),
    )
    for one, other in (pair, pair[::-1])
}
_NEAR = 3
"""Words from a bare "no" to the "sorry" behind what it puts right. Our own bound."""
_TELLS = frozenset(["he", "she", "they", "to", "for", "about", "if"])
"""What "sorry" is a matter of its own beside: "no backhand he says sorry", "sorry for him"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Breach:
    """The words before what takes something back, those that take back, and those behind.

    `seen`: nothing is taken back by others' word, but by what whoever writes saw.
    """

    before: Sequence[Word]
    cue: frozenset[str]
    behind: Sequence[Word]
    seen: bool = False


def breach_of(said: Sequence[Word]) -> Breach | None:
    """Where something is taken back, with words on both its sides; None where nothing is."""
    return _owned_up(said) or _cued(said) or _seen_otherwise(said)


def _owned_up(said: Sequence[Word]) -> Breach | None:
    """ "His right hip no left hip sorry": a bare "no" before the opposite of a word said.

    The "sorry" right behind it, or at the line's end, says that it denies nothing: "good forehand
    no backhand". What follows goes on: "no left hip sorry, hates it".
    """
    line = [word.folded for word in said]
    for at in reversed([at for at, word in enumerate(line) if word == "no" and at > 0]):
        closing = _closing(line, at + 1)
        told = (word for word in line[at + 1 :] if word not in BEFORE_A_WORD)
        if closing is not None and any(OTHER.get(word) in line[:at] for word in islice(told, 1)):
            behind = (*said[at + 1 : closing.start], *said[closing.stop :])
            return Breach(before=said[:at], cue=frozenset(["no"]), behind=behind)
    return None


def _closing(line: Sequence[str], begins: int) -> range | None:
    """Where somebody owns up to a slip: at the line's end, or a word or three behind its "no"."""
    for at in range(begins, len(line)):
        one = next((one for one in _OWNING_UP if tuple(line[at : at + len(one)]) == one), None)
        if one is not None:
            ends = at + len(one)
            is_near = at - begins <= _NEAR and not _TELLS & {
                *line[begins:at],
                *line[ends : ends + 1],
            }
            return range(at, ends) if ends == len(line) or is_near else None
    return None


def _cued(said: Sequence[Word]) -> Breach | None:
    """The last place where words such as "no wait" stand."""
    line = " ".join(word.folded for word in said)
    for found in reversed([*any_of(_CUE).finditer(line)]):
        start = line.count(" ", 0, found.start())
        stop = line.count(" ", 0, found.end()) + 1
        if start > 0 and stop < len(said) and "?" not in said[start].gap:
            cue = frozenset(found[0].split())
            return Breach(before=said[:start], cue=cue, behind=said[stop:])
    return None


def is_seen_otherwise(said: Sequence[Word]) -> bool:
    """Whether it tells what whoever writes saw, against what others told."""
    return _seen_otherwise(said) is not None


def _seen_otherwise(said: Sequence[Word]) -> Breach | None:
    """ "Teo says hale is slow but | i saw him and he is quick": what others told stands before a
    turn, and behind it begins what whoever writes saw."""
    line = " ".join(word.folded for word in said)
    for found in any_of("seen_by_myself").finditer(line):
        start = line.count(" ", 0, found.start())
        if start and any_of("told_by_others").search(line[: found.start()]):
            behind = said[start + 1 :]
            return Breach(before=said[:start], cue=frozenset(["but"]), behind=behind, seen=True)
    return None
