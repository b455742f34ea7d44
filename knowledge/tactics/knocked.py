"""A part of the body that hurts after a fall or a knock: looked at before anybody plays on.

Common practice as first aid is taught (from memory): what a blow has done doesn't show at once.
"""

from __future__ import annotations

from knowledge.advice import Advice, Reason
from knowledge.cautions import DEFERS
from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE, rule
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_KNOCK = regex(
    r"\b(?:fell|fallen|falling|tripped|tumbled|slipped|a fall|a tumble|crashed|collided|clobbered"
    r"|landed (?:wrong|funny|badly|hard|awkward\w*|on|onto)|(?:ran|run|running|went|backed|smashed"
    r"|slid) (?:\w+ )?into|(?:went|came) down|(?:banged|bashed|slammed|bumped|knocked|smacked"
    r"|whacked|jammed|bruised|hit)"
    r" (?:(?:my|his|her|their|a|the|into|against|on) )*(?:\w+ ){0,2}(?:fence|post|wall|ground|deck"
    r"|floor|court|net|elbow|shoulder|knee|wrist|ankle|hip|rib|ribs|hand|finger|thumb|shin|leg|arm))\b"
)


def hurts_from_a_knock(words: str) -> bool:
    """Whether it tells of a part that hurts and of a fall or a knock that did it."""
    return complains(words) and _KNOCK.search(folded(words)) is not None


def advise() -> Advice:
    """Stop, and have it looked at."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Stop. Have medical staff look before you play on.",
        reasons=(
            Reason(text="Swollen, bent, numb or no grip: done for today", source=COMMON_PRACTICE),
            Reason(text="Medical time-out: up to 15 minutes", source=rule("10.B")),
            Reason(text="Keep it still, with something cold on it", source=COMMON_PRACTICE),
        ),
        unless="The head took some of it? No more play today.",
        caution=DEFERS,
    )
