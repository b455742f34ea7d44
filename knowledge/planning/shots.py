"""One shot asked about: the plan's own decision on it where notes decide it, else the rule."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Advice, Confidence, Reason
from knowledge.planning.hands import hands_line
from knowledge.planning.line import Line
from knowledge.planning.lobbing import lob_line
from knowledge.planning.mixes import MIXES
from knowledge.planning.names import first_that_fits
from knowledge.planning.probes import hand_choices
from knowledge.situation import Situation
from knowledge.tactics import general_rules
from knowledge.tactics.aim_words import NO_NOTES_DECIDE, NOBODY_NAMED
from knowledge.tactics.other_meanings import meaning
from knowledge.vocabulary import Topic

GENERAL_REASONS = 2
"""Reasons of the general rule that stand beside the one from notes."""


def advise(situation: Situation) -> Advice:
    """The plan's line on this shot with its reason, or the general rule and why it is that."""
    general = general_rules.advise(situation)
    if situation.topic is Topic.LOB and meaning(situation) is not None:
        return general
    line = _LINES[situation.topic](situation)
    if line is None or not line.is_specific:
        return _unsharpened(situation, general)
    mix = MIXES.get(situation.topic)
    return replace(
        general,
        call=first_that_fits((f"{line.do}.", line.cue, general.call)),
        reasons=(
            Reason(text=line.because[:1].upper() + line.because[1:], source=line.reason().source),
            *general.reasons[:GENERAL_REASONS],
        ),
        assumed=None,
        confidence=Confidence.LEAN,
        numbers=_numbers((line,)),
        choices=hand_choices(situation.theirs, situation.topic),
        mix=mix(situation) if mix else None,
    )


_LINES: Mapping[Topic, Callable[[Situation], Line | None]] = MappingProxyType(
    {
        Topic.AIM_ATTACK: hands_line,
        Topic.LOB: lob_line,
    }
)


def _unsharpened(situation: Situation, general: Advice) -> Advice:
    why = NO_NOTES_DECIDE if situation.theirs else NOBODY_NAMED
    return replace(general, assumed=why)


def _numbers(lines: tuple[Line, ...]) -> Mapping[str, float]:
    return MappingProxyType({f"{line.phase}_per_100": line.per_100 for line in lines})
