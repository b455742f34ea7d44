"""Who runs round a backhand: the reason given for a weak one, and no shot round the post."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.words import Word, folded_line
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_RUNS_ROUND: Final = r"(?:runs?|running|ran|goes|going|moves|steps) a?round"
_THE_BACKHAND: Final = regex(rf"\b{_RUNS_ROUND} (?:it|(?:his|her|the|their|a) (?:backhand|bh))\b")
_SO_RUNS_ROUND: Final = regex(
    r"\bno (?:backhand|bh) (?P<so>(?:(?:and|so|at|all|he|she|they|just|always|will) )*"
    rf"{_RUNS_ROUND} it(?: (?:every|all|the|time|day|always))*)(?![^ ])"
)
_AROUND_THE_POST: Final = frozenset({Trait.AROUND_POST, Trait.ERNIE})
_BACKHANDS: Final = frozenset(
    {Trait.BACKHAND_DINK, Trait.COUNTER_BACKHAND, Trait.BACKHAND_VOLLEY, Trait.BACKHAND_DRIVE}
)


def without_running_round(said: Sequence[Word]) -> Sequence[Word]:
    """The words without "runs round it" behind a "no backhand", which says the same again."""
    line = folded_line(said)
    found = _SO_RUNS_ROUND.search(line)
    if found is None:
        return said
    first = len(line[: found.start("so")].split())
    return [*said[:first], *said[first + len(found["so"].split()) :]]


def only_runs_round(claim: Claim, note: NoteLine) -> bool:
    """Whether a shot round the post, or praise of the backhand, is read out of running round it."""
    is_praised = claim.trait in _BACKHANDS and claim.value is Value.STRENGTH and not claim.denied
    if not (is_praised or claim.trait in _AROUND_THE_POST):
        return False
    return _THE_BACKHAND.search(" ".join(note.line)) is not None
