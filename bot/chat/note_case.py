"""What is told as the case and judged by nothing: "pops up when Mira dinks behind him, good".

Nobody's dink is good or weak there: what is good is that he pops it up.
"""

from __future__ import annotations

from bot.chat.clauses import Clause
from bot.chat.note_hits import JUDGEMENTS
from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME
from knowledge.vocabulary import Value

_MARKS = frozenset(",;:.!?()\n–—|")
_SKILL = frozenset({Value.STRENGTH, Value.WEAKNESS})
_CASES = frozenset(["when", "whenever", "if"])


def is_of_a_case(claim: Claim, note: NoteLine) -> bool:
    """Whether a skill is read in what somebody else does, with no judgement beside it."""
    at = next((at for at, word in enumerate(note.line) if word in _CASES and at), None)
    if at is None or claim.value not in _SKILL or claim.span[0] < note.said[at].span[0]:
        return False
    if note.line[at + 1 : at + 2] != [NAME] or claim.player not in note.subjects.at(at + 1):
        return False
    ahead = range(at + 1, len(note.said))
    marked = (place for place in ahead if set(note.said[place].gap) & _MARKS)
    case = Clause(start=at, stop=next(marked, len(note.said)))
    return not note.hits.inside(case).having(*JUDGEMENTS)
