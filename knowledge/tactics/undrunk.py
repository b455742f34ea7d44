"""Nothing drunk for long, or thirst: drink and shade first, the signs to stop, and staff to judge.

Common practice; how much to drink in the heat is of the sheet that `heat_answer` names.
"""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import Advice, Reason
from knowledge.cautions import HEAT_DEFERS
from knowledge.complaints import complains
from knowledge.emergencies import emergency_of
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import heat_answer
from knowledge.tactics.weather_said import HeatSaid, folded
from knowledge.vocabulary import Topic

_NOT = r"(?:havent|havnt|hasnt|hadnt|have not|has not|ive not|weve not|didnt|did not|not|never)"
_SOFT = r"(?:(?:really|even|yet|properly|been|had time to|managed to|remembered to|i|we|he|she) )*"
_WATER = r"(?:water|fluids?|electrolytes|sips?|drinks?)"
_UNDRUNK = regex(
    rf"\b{_NOT} {_SOFT}(?:drank|drunk|drink|drinking)\b"
    rf"|\b{_NOT} {_SOFT}(?:had|got|have|taken|touched)"
    rf" (?:(?:any|a|enough|much|my|our|one|single|of) )*{_WATER}\b"
    rf"|\b{_NOT} {_SOFT}(?:had|got|have) (?:anything|enough|much|a thing) to drink\b"
    rf"|\bdr[au]nk (?:nothing|no {_WATER}|hardly anything|barely anything)\b"
    rf"|\b(?:had|got|have|having|with|without) (?:nothing to drink|no {_WATER})\b"
    r"|\b(?:forgot|forgotten|forget|forgets) (?:to drink|my water|our water|the water)\b"
    rf"|\bwithout (?:drinking|(?:any )?{_WATER})\b"
    rf"|\b(?:run|ran|are|am|im|were) out of {_WATER}\b|\bno water (?:left|all|since|today)\b"
)
"""`havent drank`, `had no water`, `forgot to drink`: told, whatever else is told of the day."""

_THIRSTY = regex(
    r"\b(?:i|im|am|we|were|are|me|feel|feeling|just|only|so|very|really|bit|fine|ok|okay|but|and|hot)"
    r" (?:(?:a|bit|so|just|only|really|very|getting|fine|ok|super) )*(?:thirsty|parched)\b"
    r"(?! (?:for|to))|\bdying of thirst\b"
)
_OF_ME = regex(r"\b(?:i|im|ive|me|my|we|were|our|us)\b")
_STILL_OFF = "Whoever was unwell: off till staff clear it."


def tells_thirst(words: str) -> bool:
    """Whether it tells that one of us is thirsty."""
    said = " ".join(folded(words).split())
    return _THIRSTY.search(said) is not None and _OF_ME.search(said) is not None


def thirsty(words: str, before: str, heat: HeatSaid) -> Advice | None:
    """Drink, where thirst is all that I tell of; None where `before` it was I who needed help."""
    if not tells_thirst(words) or complains(words):
        return None
    alarms = [line for line in before.splitlines() if emergency_of(line)]
    if any(_OF_ME.search(folded(line)) for line in alarms):
        return None
    is_hurt = bool(alarms) or any(complains(line) for line in before.splitlines())
    return replace(advise(heat), unless=_STILL_OFF) if is_hurt else advise(heat)


def tells_undrunk(words: str) -> bool:
    """Whether it tells that somebody has not drunk."""
    return _UNDRUNK.search(" ".join(folded(words).split())) is not None


def advise(heat: HeatSaid) -> Advice:
    """Drink before the next ball, with the heat that is told."""
    index = heat_answer.felt(heat)
    is_hot = index is not None and index.index_f >= heat_answer.HOT_FROM_F
    shown = index if is_hot else None
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Drink now, in the shade, before you play on.",
        reasons=(
            Reason(text="Dizzy, chills, sick, headache: stop at once", source=COMMON_PRACTICE),
            heat_answer.HOW_MUCH_METRIC if heat.celsius else heat_answer.HOW_MUCH,
            Reason(text="Sips with salt, not a litre at once", source=COMMON_PRACTICE),
        ),
        number=None if shown is None else heat_answer.heat_line(shown, celsius=heat.celsius),
        unless="On court? A time-out is for this.",
        assumed=None if shown is None else heat_answer.assumed_line(heat, shown),
        caution=HEAT_DEFERS,
        numbers={} if shown is None else {"heat_index_f": shown.index_f},
    )
