"""What to do first in an emergency, before anything else is said."""

from __future__ import annotations

from knowledge.advice import Advice, Confidence, Reason
from knowledge.cautions import DEFERS
from knowledge.emergencies import Emergency
from knowledge.sources import COMMON_PRACTICE, rule
from knowledge.vocabulary import Topic

FIRST_AID = {
    Emergency.LIFE: (
        "Stop. Call emergency help and medical staff now.",
        ("Sit or lie down; don't stay alone", "Not breathing: start CPR, send for the AED"),
    ),
    Emergency.KNOCKED: (
        "Stop. Call emergency help and medical staff now.",
        (
            "Head and neck still; don't sit or pull them up",
            "Stay with them; no breath: CPR, send for the AED",
        ),
    ),
    Emergency.DOWN: (
        "Stop play. Call medical staff and the referee now.",
        ("Don't pull them up; stay with them", "Not moving: emergency number; no breath: CPR"),
    ),
    Emergency.SUGAR: (
        "Stop now. Sit down; get medical staff.",
        (
            "Own plan first: the sugar you carry; not alone",
            "Drowsy or odd: emergency number, no food",
        ),
    ),
    Emergency.THINNER: (
        "Stop now. Get medical staff, even if you feel fine.",
        (
            "Thinner and a knock: a bleed can stay hidden",
            "Headache, sick, sleepy: emergency number",
        ),
    ),
    Emergency.HEAT: (
        "Stop now. Get medical staff; shade, cool down.",
        ("Lie down, feet up; don't stay alone", "Confused or not sweating: emergency number"),
    ),
    Emergency.HEAD: (
        "Stop now. Get medical staff: it may be the head.",
        ("No more play today, even if it passes", "Worse, sick or sleepy: emergency number"),
    ),
    Emergency.EYE: (
        "Stop now. Get medical staff: an eye can't wait.",
        ("Don't rub or press; cover it loosely", "Sight changed: emergency number"),
    ),
    Emergency.FACE: (
        "Stop now. Get medical staff: eye and head first.",
        (
            "Sight blurred, double or dark: emergency number",
            "Headache, dizzy or sick: no more play today",
        ),
    ),
    Emergency.INJURY: (
        "Stop now. Get medical staff; don't play on it.",
        ("Keep it still; press a clean cloth on bleeding", "Heavy bleeding: emergency number"),
    ),
}
"""What to do first, in the words of general first-aid teaching (from memory)."""

ON_PURPOSE = "On purpose, or mocked? Tell the referee, after that."


def stop(emergency: Emergency) -> Advice:
    """The call for help of that kind."""
    call, first_aid = FIRST_AID[emergency]
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=call,
        reasons=(
            *(Reason(text=text, source=COMMON_PRACTICE) for text in first_aid),
            Reason(text="Medical time-out: up to 15 minutes", source=rule("10.B")),
        ),
        unless=ON_PURPOSE if emergency is Emergency.FACE else None,
        caution=DEFERS,
        confidence=Confidence.GENERAL_RULE,
    )
