"""Which of them does it: what the book says of a symptom, or a tap that notes it."""

from __future__ import annotations

from knowledge.advice import Choice, Reason
from knowledge.dataclass import dataclass
from knowledge.planning.phrases import fact_words, habit_words, skill_words
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.symptoms import Sign, Symptom
from knowledge.vocabulary import TRAITS, Topic, TraitKind, Value

MIN_LEVEL = 0.15
"""A habit below this level is hardly noted: half a hedged note gives less."""

_HABITS = (Value.OFTEN, Value.RARELY)


@dataclass(frozen=True, slots=True, kw_only=True)
class Culprit:
    """One of them whom notes say it of, how clearly (0 to 1), and the reason that says so."""

    one: OnCourt
    level: float
    reason: Reason


def culprit_of(symptom: Symptom, situation: Situation) -> Culprit | None:
    """Whoever of them, of those named if any are, the book says it of most clearly."""
    found = [
        culprit
        for one in _suspects(situation)
        for sign in symptom.who
        if (culprit := _culprit(one, sign)) is not None
    ]
    return max(found, key=lambda culprit: culprit.level, default=None)


def _suspects(situation: Situation) -> tuple[OnCourt, ...]:
    named = tuple(one for one in situation.theirs if one.player in situation.asked.about)
    return named or situation.theirs


def _culprit(one: OnCourt, sign: Sign) -> Culprit | None:
    if TRAITS[sign.trait].kind is TraitKind.FACT:
        return _by_fact(one, sign)
    is_habit = sign.value in _HABITS
    profile = one.profile
    estimate = profile.habit(sign.trait) if is_habit else profile.skill(sign.trait)
    level = -estimate.level if sign.value is Value.WEAKNESS else estimate.level
    if level < MIN_LEVEL or estimate.is_open:
        return None
    source = estimate.source
    return Culprit(one=one, level=level, reason=Reason(text=_says(one, sign), source=source))


def _by_fact(one: OnCourt, sign: Sign) -> Culprit | None:
    fact = one.profile.facts.get(sign.trait)
    if fact is None or fact.known is not sign.value:
        return None
    source = fact.source
    return Culprit(one=one, level=fact.chance, reason=Reason(text=_says(one, sign), source=source))


def _says(one: OnCourt, sign: Sign) -> str:
    """ "Lindqvist: poaches a lot"."""
    if TRAITS[sign.trait].kind is TraitKind.FACT:
        words = fact_words(sign.trait, sign.value)
    elif sign.value in _HABITS:
        words = habit_words(sign.trait, often=sign.value is Value.OFTEN)
    else:
        words = skill_words(sign.trait, strong=sign.value is Value.STRENGTH)
    return f"{one.name}: {words}"


def noted_by_tap(symptom: Symptom, situation: Situation) -> Choice | None:
    """The button that notes it of the one who is named; None if nobody or both are."""
    named = [one for one in situation.theirs if one.player in situation.asked.about]
    if len(named) != 1 or not symptom.who:
        return None
    sign = symptom.who[0]
    return Choice(
        label=f"note: {_says(named[0], sign)}",
        topic=Topic.ANSWER_PATTERN,
        fact=sign.trait.value,
        value=sign.value.value,
        about=named[0].player,
    )
