"""Nothing drunk for long: drink and shade first, the signs to stop, and staff where one is unwell.

Common practice; how much to drink in the heat is of the sheet that `heat_answer` names.
"""

from __future__ import annotations

from knowledge.advice import Advice, Reason
from knowledge.cautions import HEAT_DEFERS
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
