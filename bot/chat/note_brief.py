"""A word that says how brief an answer is to be, and nothing of anybody."""

from __future__ import annotations

from bot.chat.forms import word_set
from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.words import words_in
from knowledge.vocabulary import Trait, Value

_ASKED_FOR = word_set("asked_for_in_brief")
_BRIEF = frozenset({(Trait.HEIGHT, Value.SHORT), (Trait.FOOT_SPEED, Value.STRENGTH)})
_BEFORE_BRIEF = words_in("keep make it but very real super please pls ok so just and")
_MARKS = frozenset(",;:.!?()\n–—|")


def is_of_the_answer(claim: Claim, note: NoteLine) -> bool:
    """ "Short, timeout lines for danka", "cue for danka, quick", "short one for danka": how the
    answer is to be.

    The word stands alone before a mark, or behind the last one, beside what is asked for.
    """
    if (claim.trait, claim.value) not in _BRIEF:
        return False
    asked = [at for at, word in enumerate(note.line) if word in _ASKED_FOR]
    begins = place = _place(claim, note)
    while begins > 0 and note.line[begins - 1] in _BEFORE_BRIEF:
        begins -= 1
    marks = [at for at, word in enumerate(note.said) if at and set(word.gap) & _MARKS]
    if begins == 0 and list(note.line[place + 1 : place + 3]) == ["one", "for"]:
        return True
    opens = begins == 0 and place + 1 in marks
    closes = place + 1 == len(note.line) and begins in marks and asked[:1] == [0]
    return bool(asked) and (opens or closes)


def _place(claim: Claim, note: NoteLine) -> int:
    return next(
        (at for at, word in enumerate(note.said) if word.span[0] >= claim.span[0]), len(note.said)
    )
