"""A return that one of them crosses for: the middle feeds it, so it goes where they came from.

Common practice, no source: deep all the same, since the third is hit after the bounce.
"""

from __future__ import annotations

from typing import Final

from knowledge.advice import Advice, Confidence, Reason
from knowledge.planning.names import first_that_fits
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.aim_words import short, wind_choices
from knowledge.tactics.told_ball import plain_words
from knowledge.vocabulary import Topic

_CROSSED = regex(
    r"\breturns?\b.*\b(?:(?:pick|picks|picked|picking|cut|cuts|cutting) (?:\w+ ){0,2}off"
    r"|poach\w*|jump(?:s|ed|ing)?\b|cross(?:es|ed|ing)?\b(?! ?court))"
    r"|\b(?:poach\w*|crosses|crossing|jumps|jumping|cuts off|picks off)\b.*\breturns?\b"
)
_OURS = regex(r"\b(?:should|can|do|shall|could) (?:i|we) (?:poach|cross|jump)\b|\btheir returns?\b")
_LINE = regex(r"\b(?:down (?:the|his|her|their) line|behind (?:him|her|them))\b")


def is_crossed(situation: Situation) -> bool:
    """Whether it is told, now or in the question before, that one of them crosses for it."""
    return any(_CROSSED.search(line) and not _OURS.search(line) for line in _lines(situation))


def asks_the_line(situation: Situation) -> bool:
    """Whether it is asked about a return down the line."""
    return any(_LINE.search(line) for line in _lines(situation))


def _lines(situation: Situation) -> list[str]:
    asked = situation.asked
    return [plain_words(line) for line in (*asked.before.splitlines(), asked.words)]


DOWN_THE_LINE: Final = Reason(
    text="Down the line: harder aim, and you face the third", source=COMMON_PRACTICE
)
"""The plain answer where nobody crosses: the page has weighed both lanes."""


def behind_the_crosser(situation: Situation) -> Advice:
    """Deep, into the place that is left; asked about the line, a yes with its price."""
    one = _crosser(situation)
    name = one.name if one is not None else ""
    start = "Yes: return deep" if asks_the_line(situation) else "Return deep"
    return Advice(
        topic=Topic.AIM_RETURN,
        call=first_that_fits(
            (f"{start} behind {name or 'the one who crosses'}, as they leave.", f"{start} behind.")
        ),
        reasons=tuple(
            Reason(text=short((text,)), source=COMMON_PRACTICE)
            for text in (
                "A middle return is the one they cross for",
                "Once early holds them at home for the next",
                "Feet inside the line: it is the harder aim",
            )
        ),
        unless="They stay home? High, deep and middle again.",
        confidence=Confidence.LEAN,
        choices=tuple(wind_choices(Topic.AIM_RETURN, situation.wind)),
    )


def _crosser(situation: Situation) -> OnCourt | None:
    named = [one for one in situation.theirs if one.player in situation.asked.about]
    return named[0] if len(named) == 1 else None
