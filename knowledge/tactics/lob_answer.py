"""The decision behind an attack lob, which the plan's line and the topic share."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.effects import Decision
from knowledge.planning import sizes as plan_sizes
from knowledge.planning.weighing import Weighed, is_weak, weigh
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics.lob_effects import NO_LOB, LobQuestion, effects, over, question_of
from knowledge.tactics.serve_answer import NOBODY
from knowledge.vocabulary import Trait


@dataclass(frozen=True, slots=True, kw_only=True)
class LobAnswer:
    """Over whom, if at all; `lobbers` are those of us whose lob is not marked weak."""

    question: LobQuestion
    weighed: Weighed
    target: OnCourt | None
    lobbers: tuple[OnCourt, ...]
    is_one_of_us: bool

    @property
    def is_specific(self) -> bool:
        """Whether notes on them decide it."""
        return self.target is not None and bool(self.weighed.evidence)

    @property
    def who(self) -> str:
        """The name of the only one of us who should lob, or nothing."""
        return self.lobbers[0].name if self.is_one_of_us else ""


def answer_lob(situation: Situation) -> LobAnswer | None:
    """The lob weighed; None where no lob of ours is good enough.

    Somebody who is asked about is the only one weighed.
    """
    hitters = _hitters(situation)
    lobbers = tuple(one for one in hitters if not is_weak(one, Trait.LOB))
    if hitters and not lobbers:
        return None
    asked = tuple(one for one in situation.theirs if one.player in situation.asked.about)
    question = question_of(situation, asked or situation.theirs or (NOBODY,))
    weighed = weigh(_decision(question), situation, plain=NO_LOB)
    target = next((one for one in question.pair if over(one) == weighed.best), None)
    return LobAnswer(
        question=question,
        weighed=weighed,
        target=target,
        lobbers=lobbers,
        is_one_of_us=0 < len(lobbers) < len(hitters),
    )


def _hitters(situation: Situation) -> tuple[OnCourt, ...]:
    """Whose lob it may be: the striker's where that is known, else anybody's of ours."""
    struck = tuple(one for one in situation.ours if one.player == situation.striker)
    return struck or situation.ours


def lob_decision(situation: Situation) -> Decision:
    """Over whom to lob, or not at all."""
    return _decision(question_of(situation, situation.theirs))


def _decision(question: LobQuestion) -> Decision:
    return Decision(
        options=question.options(),
        effects=effects(question),
        neutral=plan_sizes.EVEN_CHANCE,
        share=sizes.LOB_SHARE,
    )
