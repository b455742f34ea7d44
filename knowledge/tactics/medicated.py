"""Medicine, or a condition, that somebody tells of who asks whether to play on.

Whether a drug and effort go together is for a doctor or the staff: nothing here judges it. Common
practice, no source: it may hide what the body says, so it never makes playing on likelier.
"""

from __future__ import annotations

from typing import Final

from knowledge.advice import Reason
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.weather_said import folded

_TAKES = (
    r"(?:on|take|takes|taking|took|taken|got|have|has|had|having|need|needs|with|without|forgot"
    r"|missed|after|wear|wears)"
)
_MEDICINE = (
    r"(?:tablets?|pills?|meds|medication|medicines?|blood thinn?(?:er|ers|ing)|thinners|warfarin"
    r"|anticoagul\w+|beta ?blockers?|statins?|pain ?killers?|paracetamol|ibuprofen|aspirin"
    r"|antibiotics?|steroids?|cortisone|inhalers?|insulin|antihistamines?|diuretics?)"
)
_CONDITION = (
    r"(?:(?:high |low |bad )?blood pressure|(?:a |bad |weak )?heart (?:condition|problems?|trouble"
    r"|disease|murmur|failure)|pacemaker|stents?|diabetes|epilepsy|asthma|angina|copd)"
)
_TOLD = regex(rf"\b{_TAKES} (?:\w+ ){{0,3}}(?:{_MEDICINE}|{_CONDITION})\b")

HIDES: Final = Reason(text="What you take can hide it: tell the staff", source=COMMON_PRACTICE)


def takes_medicine(words: str) -> bool:
    """Whether somebody is said to take a drug, or to have what one takes it for."""
    return _TOLD.search(folded(words)) is not None
