"""The fourth shot, where a question about thirds turns out to be about theirs."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import Advice, Reason
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import transition
from knowledge.tactics.their_thirds import tells_their_thirds
from knowledge.vocabulary import Topic

DEEPER = Reason(text="Return deeper: their third comes up", source=COMMON_PRACTICE)
"""The cheaper cure is the ball before: a deep return leaves them the longer drop."""

OTHERS = 2


def fourth_instead(situation: Situation, topic: Topic) -> Advice | None:
    """What to do about thirds of theirs, in the name of this topic; None where none are told."""
    if not tells_their_thirds(situation):
        return None
    advice = transition.advise(situation)
    return replace(advice, topic=topic, reasons=(DEEPER, *advice.reasons[:OTHERS]))
