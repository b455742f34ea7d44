"""What a note asks and answers itself: "lefty? no", "tired? can't tell", "is she slow? no"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from enum import StrEnum

from bot.chat.clauses import Clause
from bot.chat.forms import word_set
from bot.chat.note_claims import Judged
from bot.chat.words import Word
from knowledge.vocabulary import TRAITS, Trait, TraitKind, Value

_ASKING = word_set("asking_verbs")
_NO = word_set("plain_no")
_UNSURE = word_set("unsure_answers")
"""Two words or one, as they stand at the start of an answer."""

_OTHER = {
    Value.YES: Value.NO,
    Value.NO: Value.YES,
    Value.STRENGTH: Value.WEAKNESS,
    Value.OFTEN: Value.RARELY,
}
"""What "no" to a question says. Who is not slow need not be quick, nor a right-hander."""

_STOPS = frozenset(".;!\n")


class Answer(StrEnum):
    """What follows the mark of a question."""

    NO = "no"
    UNSURE = "unsure"


def answered(
    judged: Sequence[Judged], clause: Clause, said: Sequence[Word]
) -> tuple[tuple[Judged, ...], frozenset[Trait]]:
    """What stays of a clause's claims once its question is answered, and the traits left open."""
    mark = _mark(clause, said)
    answer = None if mark is None else _answer(said, mark)
    if mark is None or answer is None:
        return tuple(judged), frozenset()
    asked = [one for one in judged if one.at < mark]
    if answer is Answer.NO and said[clause.start].folded not in _ASKING:
        asked = [one for one in asked if _denies(one, said, mark)]
    turned = [_turned(one) for one in asked if answer is Answer.NO and one.value in _OTHER]
    kept = [one for one in judged if one not in asked]
    return (*kept, *turned), frozenset(one.trait for one in asked)


def _denies(judged: Judged, said: Sequence[Word], at: int) -> bool:
    """A fact is denied by "no"; of a skill or habit only a "no" that stands alone tells."""
    if TRAITS[judged.trait].kind is TraitKind.FACT:
        return True
    stands_alone = at + 1 == len(said) or bool(set(said[at + 1].gap) & _STOPS)
    return stands_alone and judged.value in _OTHER


def _mark(clause: Clause, said: Sequence[Word]) -> int | None:
    """The place of the word before which the clause's question ends."""
    places = range(clause.start + 1, min(clause.stop + 1, len(said)))
    return next((at for at in places if "?" in said[at].gap), None)


def _answer(said: Sequence[Word], at: int) -> Answer | None:
    words = [word.folded for word in said[at : at + 2]]
    if words[0] in _UNSURE or " ".join(words) in _UNSURE:
        return Answer.UNSURE
    return Answer.NO if words[0] in _NO and words[1:] != ["thanks"] else None


def _turned(judged: Judged) -> Judged:
    return replace(judged, value=_OTHER[judged.value])
