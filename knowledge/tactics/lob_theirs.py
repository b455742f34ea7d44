"""Their lob: who calls it, who runs, and what to hit from back there."""

from __future__ import annotations

import re
from types import MappingProxyType
from typing import Final

from knowledge.advice import CALL_LIMIT, MAX_REASONS, Advice, Choice, Confidence, MatchFact, Reason
from knowledge.engine import Ranking
from knowledge.planning.names import name_or
from knowledge.regex import regex
from knowledge.situation import Agreement, Situation, Wind
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind
from knowledge.tactics import lob_back
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics.lob_lanes import said_in_the_wind
from knowledge.tactics.lob_meaning import LobMeaning
from knowledge.tactics.lob_race import RACE
from knowledge.tactics.lob_runner import (
    Lobbed,
    forehand_overhead,
    noted_feet,
    over_you,
    runner_call,
    speaks_to,
    under_it,
    who_runs,
)
from knowledge.tactics.lob_words import CAUTION
from knowledge.tactics.sun_said import SunSide, sun_told
from knowledge.vocabulary import AgreementKey, Topic

FALLS_SAID: Final = (
    "Falls: 63.3% of emergency visits of players over 60 (Weiss et al. 2021).",
    "Hurt after a fall? Stop. Medical staff decide.",
)
"""Injury Epidemiology 8:34 (read); of 92 players 42% had fallen, most of them lunging or moving
backward (Myers and Hanks 2024, read)."""


def advise(situation: Situation, asked: LobMeaning) -> Advice:
    """The part that was asked first, the other two after it."""
    back = lob_back.answer_from_the_back(situation)
    runs = tuple(who_runs(situation, one) for one in under_it(situation))
    call, reasons = _said(situation, asked, runs, back)
    if asked is not LobMeaning.WHAT_BACK and sun_told(situation.asked) is SunSide.US:
        reasons = (IN_THE_SUN, *reasons[: MAX_REASONS - 1])
    return Advice(
        topic=Topic.LOB,
        call=call,
        reasons=reasons,
        unless=_unless(situation, asked),
        assumed=None if situation.ours or asked is LobMeaning.WHAT_BACK else _NOBODY_OF_OURS,
        caution=CAUTION,
        confidence=_confidence(situation, runs, back, asked),
        numbers=_numbers(runs, back),
        choices=_choices(situation, asked),
        more=(*FALLS_SAID, *_both_runs(runs)),
    )


IN_THE_SUN: Final = Reason(
    text="Sun in your eyes: let it bounce; hand up to shade", source=COMMON_PRACTICE
)
_NOBODY_OF_OURS: Final = "General rule: name your pair and I use your notes."

_UNLESS: Final = {
    LobMeaning.THEIRS: "One step back is enough? Hit it in the air.",
    LobMeaning.WHO_RUNS: "You can hit it moving one step back: it's yours.",
    LobMeaning.WHAT_BACK: "It sits up short? Then step in and hit down.",
}


def _unless(situation: Situation, asked: LobMeaning) -> str:
    is_windy = situation.wind not in (None, Wind.NONE)
    runs = asked is not LobMeaning.WHAT_BACK
    return said_in_the_wind() if is_windy and runs else _UNLESS[asked]


def _said(
    situation: Situation, asked: LobMeaning, runs: tuple[Lobbed, ...], back: Ranking
) -> tuple[str, tuple[Reason, ...]]:
    answer = Reason(text=lob_back.SAID[back.best.option.id], source=COMMON_PRACTICE)
    if asked is LobMeaning.WHAT_BACK:
        return lob_back.CALLS[back.best.option.id], lob_back.back_reasons(back)
    agreement = situation.agreements.get(AgreementKey.LOBS)
    to_you = speaks_to(situation, runs)
    call = runner_call(runs, to_you=to_you)
    if agreement is not None:
        return _as_agreed(agreement, asked, call, answer)
    who = _who_reasons(situation, runs, to_you=to_you)
    if asked is LobMeaning.WHO_RUNS:
        return call, (*who, answer)
    over = Reason(text=over_you(runs, to_you=to_you), source=RACE)
    return BACK_OFF, (over, *who[1:], answer)


BACK_OFF: Final = "Back off half a step; turn and run for the lob."

OTHER_SOONER: Final = "The other one sees it: {gap} s sooner there"
UNDER_SOONER: Final = "Whoever is under it gets there {gap} s sooner"

AGREED: Final = Source(kind=SourceKind.AGREED, citation="")
_LABEL = regex(r"^lobs?\s*:\s*", re.IGNORECASE)
"""What the agreement is about may stand before its words."""


def _as_agreed(
    agreement: Agreement, asked: LobMeaning, call: str, answer: Reason
) -> tuple[str, tuple[Reason, ...]]:
    """The pair's own word goes first, as a call where it fits."""
    said = (agreement.words or agreement.value).strip().rstrip(".")
    agreed = f"Do as agreed: {_LABEL.sub('', said)}."
    if len(agreed) <= CALL_LIMIT:
        return agreed, (Reason(text="Agreed beforehand: no hesitation", source=AGREED), answer)
    told = Reason(text="Who runs: as you agreed", source=AGREED)
    return (BACK_OFF if asked is LobMeaning.THEIRS else call), (told, answer)


def _who_reasons(
    situation: Situation, runs: tuple[Lobbed, ...], *, to_you: bool
) -> tuple[Reason, ...]:
    first = runs[0]
    gap = first.crossing.spare_s - first.own.spare_s
    noted = noted_feet(situation, first)
    if noted is not None:
        race = noted
    elif gap >= 0:
        who = "Partner sees it: {gap} s sooner there than you" if to_you else OTHER_SOONER
        race = Reason(text=who.format(gap=f"{gap:.1f}"), source=RACE)
    else:
        who = "You get there {gap} s sooner than partner" if to_you else UNDER_SOONER
        race = Reason(text=who.format(gap=f"{-gap:.1f}"), source=RACE)
    takes = forehand_overhead(situation.ours)
    whose = (
        "the forehand overhead takes it" if takes is None else f"{takes.name}'s forehand overhead"
    )
    return race, Reason(text=f"In the middle: {whose}", source=COMMON_PRACTICE)


def _confidence(
    situation: Situation, runs: tuple[Lobbed, ...], back: Ranking, asked: LobMeaning
) -> Confidence:
    if asked is LobMeaning.WHAT_BACK:
        known = any(part.evidence for one in back.ranked for part in one.parts)
        return back.confidence if known else Confidence.GENERAL_RULE
    noted = noted_feet(situation, runs[0]) is not None
    return runs[0].ranking.confidence if noted else Confidence.GENERAL_RULE


def _numbers(runs: tuple[Lobbed, ...], back: Ranking) -> MappingProxyType[str, float]:
    first = runs[0]
    found = {
        "own_spare_s": first.own.spare_s,
        "crossing_spare_s": first.crossing.spare_s,
        "points_over_other_runner": float(first.ranking.gain()),
        "back_points_over_next": float(back.gain()),
        "share": sizes.LOB_SHARE,
    }
    return MappingProxyType(found)


def _both_runs(runs: tuple[Lobbed, ...]) -> tuple[str, ...]:
    return tuple(
        f"Over {one.under.name if one.under else 'you'}: {name_or(one.under, 'own run')} "
        f"{one.own.spare_s:+.1f} s, {name_or(one.partner, 'partner')} "
        f"{one.crossing.spare_s:+.1f} s to spare (maths)"
        for one in runs
    )


def _choices(situation: Situation, asked: LobMeaning) -> tuple[Choice, ...]:
    found = []
    if asked is not LobMeaning.WHAT_BACK and len(under_it(situation)) == 2:
        found += [
            Choice(
                label=f"over {one.name}",
                topic=Topic.LOB,
                fact=MatchFact.ABOUT.value,
                about=one.player,
            )
            for one in situation.ours
            if one.name
        ]
    return tuple(found)
