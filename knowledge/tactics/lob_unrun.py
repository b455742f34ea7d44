"""Their lob over one of us who cannot run for it: the other takes it, or nobody does.

Common practice, no source; that medical staff decide who plays on stands beside it.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from knowledge.advice import Advice, Choice, Reason
from knowledge.cautions import DEFERS
from knowledge.complaints import complains_of_us
from knowledge.planning.names import first_that_fits
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.weather_said import folded
from knowledge.vocabulary import Topic

_PART = r"(?:knees?|hips?|ankles?|back|legs?|achilles|cal(?:f|ves)|foot|feet|hamstrings?|groin)"
_CANNOT_RUN = regex(
    r"\b(?:can not|cannot|cant|doesnt|does not|wont|shouldnt|should not|must not|mustnt|unable to"
    r"|not able to|no) (?:\w+ )?(?:run(?:ning)?|sprint|turn(?: and)? run|go back|get back|move back"
    r"|chase|bend|running)\b"
    rf"|\bwith (?:my|his|her|our|partners|\w+s?) (?:(?:bad|left|right|sore) )*{_PART}\b"
)
_MINE = regex(
    rf"\b(?:my (?:(?:bad|left|right|own|sore) )*{_PART}|i (?:can|cannot|cant|should)|im)\b"
)


def who_cannot_run(situation: Situation) -> bool:
    """Whether one of us is told of who should not run, here or in what this goes on from."""
    names = [one.name for one in situation.ours if one.name]
    theirs = [one.name for one in situation.theirs if one.name]
    return any(
        _tells(line, names) and not _is_of_them(line, names, theirs) for line in _lines(situation)
    )


_ONE_OF_US = regex(r"\b(?:my|mine|our|partners?|im|i have|i cant|husband|wife)\b")


def _is_of_them(line: str, ours: Iterable[str], theirs: Iterable[str]) -> bool:
    """Whether it names one of them and none of us: "walt has a bad knee, what if he lobs us"."""
    said = folded(line)
    named = any(name.casefold() in said for name in theirs)
    return named and not (_ONE_OF_US.search(said) or any(one.casefold() in said for one in ours))


def _lines(situation: Situation) -> list[str]:
    return [situation.asked.words, *situation.asked.before.splitlines()[::-1]]


def _tells(line: str, names: Iterable[str]) -> bool:
    return _CANNOT_RUN.search(folded(line)) is not None or complains_of_us(line, names=names)


def advise(situation: Situation) -> Advice:
    """Who takes it, where the other starts, and that a ball may go."""
    return Advice(
        topic=Topic.LOB,
        call=_call(situation),
        reasons=(
            Reason(text="Out of reach: let it go, it is one point", source=COMMON_PRACTICE),
            Reason(text="Deeper start: fewer lobs go over at all", source=COMMON_PRACTICE),
            Reason(text="Dink low and wide of them: less to lob off", source=COMMON_PRACTICE),
        ),
        unless="Sharp, new or worse? Off the court; staff look.",
        caution=DEFERS,
        choices=(Choice(label="weather, body", topic=Topic.WEATHER_OR_BODY),),
    )


_GENERAL: Final = "Partner takes every lob; who hurts starts deeper."


def _call(situation: Situation) -> str:
    hurt = _who(situation)
    if hurt is not None:
        other = next((one for one in situation.ours if one is not hurt), None)
        return first_that_fits(
            (
                f"{other.name} takes every lob; {hurt.name} starts deeper." if other else _GENERAL,
                _GENERAL,
            )
        )
    line = folded(next(one for one in _lines(situation) if _tells(one, ())))
    if _MINE.search(line):
        return "Partner takes every lob; you start deeper."
    return "Take every lob yourself; partner starts deeper."


def _who(situation: Situation) -> OnCourt | None:
    """The one of us whom the line that tells of it names."""
    named = [one for one in situation.ours if one.name]
    for line in _lines(situation):
        if _tells(line, [one.name for one in named]):
            said = folded(line)
            return next((one for one in named if one.name.casefold() in said), None)
    return None
