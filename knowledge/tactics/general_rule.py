"""What a call rests on where no note decided it, said so that it agrees with the reasons above."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import Advice
from knowledge.situation import Situation
from knowledge.sources import SourceKind

NO_NOTES_DECIDE = "General rule: no notes on them that change it."
NOTES_AGREE = "General rule; your notes on them agree."


def with_notes_named(advice: Advice, situation: Situation) -> Advice:
    """The advice; where it names a note on them, it does not say that there is none."""
    if advice.assumed != NO_NOTES_DECIDE:
        return advice
    names = [one.name for one in situation.theirs if one.name]
    told = (
        reason
        for reason in (*advice.reasons, *advice.lines)
        if reason.source.kind is SourceKind.BOOK and any(name in reason.text for name in names)
    )
    return advice if next(told, None) is None else replace(advice, assumed=NOTES_AGREE)
