"""Whether to lob these two, and over whom: the lob's own decision as a line of the plan."""

from __future__ import annotations

from dataclasses import replace

from knowledge.planning.line import Line, Phase, worth_of
from knowledge.situation import Asked, Situation
from knowledge.tactics.lob_answer import LobAnswer, answer_lob, lob_decision
from knowledge.tactics.lob_effects import NO_LOB, over
from knowledge.tactics.lob_words import off_a_dead_dink

__all__ = ["NO_LOB", "lob_decision", "lob_line", "over"]


def lob_line(situation: Situation) -> Line | None:
    """Over whom to lob; None if nobody invites it or no lob of ours is good enough."""
    if not situation.theirs:
        return None
    answer = answer_lob(replace(situation, asked=Asked(), striker=None))
    return None if answer is None or not answer.is_specific else _line(answer)


def _line(answer: LobAnswer) -> Line:
    do = off_a_dead_dink(answer)
    return Line(
        phase=Phase.LOB,
        do=do,
        because=answer.weighed.because,
        cue=f"{do}.",
        points=answer.weighed.gain,
        share=answer.weighed.ranking.share,
        source=answer.weighed.source,
        option=answer.weighed.best,
        worth=worth_of(answer.weighed.ranking, answer.weighed.gain),
    )
