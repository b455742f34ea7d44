"""What to change: one cheap, reversible change from one trouble; the log breaks ties; luck is told.

It answers at once, on the trouble that the words name or on all of them, and offers the four
as buttons. What the changes are worth is common practice, no source (changes.toml).
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from knowledge.advice import CALL_LIMIT, MAX_REASONS, Advice, Choice, MatchFact, Reason
from knowledge.general_rule import LINE_LIMIT
from knowledge.odds_words import of_hundred
from knowledge.planning.names import first_that_fits
from knowledge.planning.phrases import habit_words, skill_words
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind
from knowledge.tactics.adjust_answer import (
    FEWEST_TAGGED,
    Adjustment,
    Culprit,
    Weighed,
    adjustment_of,
)
from knowledge.tactics.adjust_keep import IF_IT_TURNS, keeps_it
from knowledge.tactics.bad_stretch import bad_stretch, luck_or_leak
from knowledge.tactics.changes import WORKS_IF, Trouble, troubles
from knowledge.tactics.win_chance import leak_numbers, leak_of
from knowledge.vocabulary import TRAITS, Topic, TraitKind

NAME_WHAT_HURTS = "Taken: nothing named. What hurts most?"

SMALL_LEAK = 0.005
"""A part of the leak (each rally's swing of our chance, added up) this small is not told."""


def advise(situation: Situation) -> Advice:
    """The change that gains most, why, how one sees that it works, and the next one if not."""
    found = adjustment_of(situation)
    best = found.best
    kept = None if found.trouble else keeps_it(situation)
    return Advice(
        topic=Topic.ADJUST,
        call=kept or _call(best),
        reasons=(_once_it_turns(best),) if kept else _reasons(best, found),
        number=_number(situation),
        unless=None if kept else _unless(found),
        assumed=NAME_WHAT_HURTS if found.trouble is None and not kept else None,
        confidence=found.confidence,
        numbers=_numbers(found, situation),
        choices=_choices(found.trouble),
        more=_in_full(found, situation),
    )


def _once_it_turns(best: Weighed) -> Reason:
    change = best.change.call
    text = first_that_fits(
        (IF_IT_TURNS.format(change=f"{change[0].lower()}{change[1:]}".rstrip(".")), change),
        limit=CALL_LIMIT,
    )
    return Reason(text=text, source=COMMON_PRACTICE)


def _call(best: Weighed) -> str:
    """By name where one of us is noted to be where the leak is: the other need change nothing."""
    call = best.change.call
    if best.culprit is None:
        return call
    name = best.culprit.player.name
    return first_that_fits((f"{name}: {call[0].lower()}{call[1:]}", call), limit=CALL_LIMIT)


def _reasons(best: Weighed, found: Adjustment) -> tuple[Reason, ...]:
    """What our own book says first, then why the change helps."""
    noted = () if best.culprit is None else (_noted(best.culprit),)
    logged = () if not best.ended else (_logged(best, found),)
    return (*logged, *noted, *best.change.why)[:MAX_REASONS]


def _noted(culprit: Culprit) -> Reason:
    is_habit = TRAITS[culprit.trait].kind is TraitKind.HABIT
    words = (
        habit_words(culprit.trait, often=False)
        if is_habit
        else skill_words(culprit.trait, strong=False)
    )
    text = first_that_fits((f"{culprit.player.name}: {words}",), limit=LINE_LIMIT)
    return Reason(text=text, source=culprit.estimate.source)


def _logged(best: Weighed, found: Adjustment) -> Reason:
    """ "It lost 4 of the 11 you tagged", of this match's log."""
    text = f"It lost {best.ended} of the {found.tagged} you tagged"
    return Reason(text=text, source=Source(kind=SourceKind.BOOK, citation=_rallies(found.lost)))


def _rallies(lost: int) -> str:
    return f"{lost} lost {'rally' if lost == 1 else 'rallies'} today"


def _number(situation: Situation) -> str | None:
    """Luck or a leak, where there is a bad stretch to tell it of."""
    stretch = bad_stretch(situation)
    return None if stretch is None else luck_or_leak(stretch)


def _unless(found: Adjustment) -> str:
    """How one sees that it works; the next change stands behind "why"."""
    return f"{WORKS_IF}{found.best.change.sign}."


def _numbers(found: Adjustment, situation: Situation) -> Mapping[str, float]:
    of_each = {f"{one.change.id}_gain": one.gain for one in found.ranked}
    chances = {f"{one.change.id}_chance": one.chance for one in found.ranked}
    return MappingProxyType(
        {
            "gain_per_100": found.best.gain,
            "gain_sd": found.best.sd,
            "p_best": found.p_best,
            "lost": float(found.lost),
            "lost_and_tagged": float(found.tagged),
            **of_each,
            **chances,
            **leak_numbers(situation),
        }
    )


def _choices(trouble: Trouble | None) -> tuple[Choice, ...]:
    """The troubles that were not named."""
    return tuple(
        Choice(
            label=one.label,
            topic=Topic.ADJUST,
            fact=MatchFact.SYMPTOM.value,
            value=one.id,
        )
        for one in troubles()
        if one != trouble
    )


def _in_full(found: Adjustment, situation: Situation) -> tuple[str, ...]:
    return (
        f"Gains about {found.best.gain:.1f} rallies in 100; more if this is the leak.",
        *(f"Else: {one.change.call} ({one.gain:.1f} in 100)" for one in found.ranked[1:3]),
        *_log(found),
        *_where_it_went(situation),
    )


def _log(found: Adjustment) -> tuple[str, ...]:
    """How much of the log tells of leaks, and what that is good for."""
    if not found.lost:
        return ()
    use = "too few to count" if found.tagged < FEWEST_TAGGED else "they break ties"
    return (f"Log: {found.tagged} of {_rallies(found.lost)} tagged; {use}.",)


def _where_it_went(situation: Situation) -> tuple[str, ...]:
    """The leak identity: what our serves and theirs did to our chance, adding up to all of it."""
    found = leak_of(situation)
    if found is None:
        return ()
    parts = ", ".join(
        f"{part.name} {_signed(part.swing)}"
        for part in found.parts
        if abs(part.swing) >= SMALL_LEAK
    )
    total = f"Match chance {_signed(found.total)} in 100 so far"
    return (f"{total}: {parts} (maths).",) if parts else ()


def _signed(change: float) -> str:
    said = of_hundred(abs(change))
    sign = "" if said == "0" else "+" if change > 0 else "-"
    return f"{sign}{said}"
