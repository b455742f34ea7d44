"""Whom to play at, by phase of the rally: the weaker player is weaker at something."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.effects import FactId
from knowledge.general_rule import LINE_LIMIT
from knowledge.planning.names import first_that_fits
from knowledge.planning.phrases import trait_words
from knowledge.planning.probes import hand_choices
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import target_words as words
from knowledge.tactics.aim_words import NOBODY_NAMED, rallies
from knowledge.tactics.conditions import player_of, trait_of
from knowledge.tactics.standing_words import capital
from knowledge.tactics.target_answer import THE_OTHER, Target, open_notes, slightly_at, targets
from knowledge.tactics.target_effects import EVEN, at
from knowledge.tactics.target_phases import TargetPhase
from knowledge.tactics.target_share import best_share, kept
from knowledge.vocabulary import TRAITS, Topic, Trait, TraitKind

NO_BOOK = "No notes on them yet: these three tell."
PARTNER_UNKNOWN = "Partner not known: taken as average."

GROUNDS = 2
"""Reasons from the phases, beside the sign that it fades."""


def advise(situation: Situation) -> Advice:
    """The phases with a target each, or the phase asked about, or what to look at."""
    said = situation.asked.words
    mixed = bool(situation.mixed) or words.mixed_said(said)
    found = targets(situation, mixed=mixed)
    phase = words.phase_said(said)
    if not any(one.profile.is_known for one in situation.theirs):
        return _no_book(situation, mixed=mixed)
    settled = [one for one in found if one.one is not None]
    if phase is None and words.serve_said(said):
        return _serve(situation, found, settled)
    if phase is not None:
        return _one_phase(situation, found, phase, mixed=mixed)
    if not settled:
        return _even(situation, found)
    return _table(situation, found, settled, mixed=mixed)


def _table(
    situation: Situation, found: Sequence[Target], settled: Sequence[Target], *, mixed: bool
) -> Advice:
    by_worth = sorted(settled, key=lambda one: -one.per_100)
    top = by_worth[0]
    return Advice(
        topic=Topic.WHOM_TO_TARGET,
        call=words.table_call(settled),
        reasons=(*_grounds(by_worth), _sign(by_worth, mixed=mixed)),
        number=words.number(top),
        unless=_unless(found, by_worth),
        assumed=_assumed(situation),
        confidence=top.confidence,
        numbers=_numbers(found, called=settled),
        choices=_choices(situation),
        more=_more(found),
    )


def _one_phase(
    situation: Situation, found: Sequence[Target], phase: TargetPhase, *, mixed: bool
) -> Advice:
    """The phase asked about first; then whoever it is elsewhere, where that differs."""
    target = next((one for one in found if one.phase is phase), None)
    others = [one for one in found if one.one is not None and one.phase is not phase]
    others.sort(key=lambda one: -one.per_100)
    is_aimed = target is not None and target.one is not None
    reasons = _grounds([target] if target is not None else [])
    if is_aimed and target is not None:
        reasons.append(_sign([target], mixed=mixed))
    reasons += _grounds(others)[: 3 - len(reasons)]
    return Advice(
        topic=Topic.WHOM_TO_TARGET,
        call=words.NOT_OURS[phase] if target is None else words.phase_call(target),
        reasons=tuple(reasons),
        number=words.number(target) if is_aimed and target is not None else None,
        unless=_unless(found, [target] if target is not None else []),
        assumed=_assumed(situation),
        confidence=Confidence.LEAN if target is None else target.confidence,
        numbers=_numbers(found, called=[target] if is_aimed and target is not None else []),
        choices=_choices(situation),
        more=_more(found),
    )


def _serve(situation: Situation, found: Sequence[Target], settled: Sequence[Target]) -> Advice:
    by_worth = sorted(settled, key=lambda one: -one.per_100)
    return Advice(
        topic=Topic.WHOM_TO_TARGET,
        call=words.SERVE_CALL,
        reasons=(words.RECEIVER, *_grounds(by_worth)),
        unless="After the serve you do choose: see above." if settled else None,
        assumed=_assumed(situation),
        confidence=Confidence.CLEAR,
        numbers=_numbers(found),
        choices=(Choice(label="serve where?", topic=Topic.AIM_SERVE),),
        more=_more(found),
    )


def _even(situation: Situation, found: Sequence[Target]) -> Advice:
    """Notes that settle nobody: both alike is an answer."""
    disputed = [text for one in found if (text := _disputed(one))]
    leaning = slightly_at(found)
    slight = [] if leaning is None else [words.slightly(leaning)]
    return Advice(
        topic=Topic.WHOM_TO_TARGET,
        call=words.EVEN_CALL if leaning is None else words.slight_call(leaning[0]),
        reasons=(*slight, *words.PROBES)[: len(words.PROBES)],
        number=words.MEANWHILE,
        unless=disputed[0] if disputed else _unless(found, found),
        assumed=_assumed(situation),
        confidence=Confidence.TOSS_UP,
        numbers=_numbers(found),
        choices=_choices(situation),
        more=_more(found),
    )


def _no_book(situation: Situation, *, mixed: bool) -> Advice:
    return Advice(
        topic=Topic.WHOM_TO_TARGET,
        call=words.UNKNOWN_CALL,
        reasons=words.PROBES,
        number=words.MEANWHILE,
        unless=_when_not_in_mixed() if mixed else "Then 7 of 10 at who is late, by shot.",
        assumed=NO_BOOK if situation.theirs else NOBODY_NAMED,
        numbers=MappingProxyType(_share_numbers()),
        choices=_choices(situation),
    )


def _grounds(chosen: Sequence[Target]) -> list[Reason]:
    found = [reason for one in chosen if (reason := words.ground(one)) is not None]
    return found[:GROUNDS]


def _sign(shown: Sequence[Target], *, mixed: bool) -> Reason:
    text = _when_not_in_mixed() if mixed else words.fade_sign(shown)
    return Reason(text=text, source=COMMON_PRACTICE)


def _when_not_in_mixed() -> str:
    """In mixed it is nearly always the same one: what helps is when to leave it."""
    return "Not when stretched, or the partner is over"


def _unless(found: Sequence[Target], shown: Sequence[Target]) -> str:
    """The unknown that would turn a shown phase round, by what knowing it is worth; else the rule.

    Notes that contradict each other come first: they are the cheapest to settle.
    """
    for one in shown:
        disputed = _disputed(one)
        if disputed and one.one is None:
            return disputed
    flips = [
        (ask.worth * one.ranking.share, text)
        for one in (shown or found)
        for ask in one.ranking.unknowns[:3]
        if (text := _flip(one, ask.fact, ask.if_yes, ask.if_no)) is not None and ask.worth > 0
    ]
    return max(flips)[1] if flips else words.RECHECK


def _flip(target: Target, fact: FactId, if_yes: str, if_no: str) -> str | None:
    """The answer to an unknown that brings another target than now."""
    player, trait = player_of(fact), trait_of(fact)
    now = EVEN if target.one is None else at(target.one)
    one = next((each for each in target.pair if each.player == player), None)
    if one is None or trait is None or one.player == THE_OTHER or if_yes == if_no:
        return None
    if TRAITS[trait].kind is TraitKind.FACT:
        return None
    up = if_yes != now
    new = if_yes if up else if_no
    to = next((each.name for each in target.pair if at(each) == new), "both")
    habit = TRAITS[trait].kind is TraitKind.HABIT
    said = trait_words(trait, habit=habit, up=up)
    label = words.LABEL[target.phase]
    if up and target.phase is TargetPhase.THIRD and trait is Trait.POACHING and to == one.name:
        to = f"behind {to}"
    text = f"{one.name}: {said}? {label}: {to}."
    return text if len(text) <= LINE_LIMIT else None


def _disputed(target: Target) -> str | None:
    found = open_notes(target)
    if found is None:
        return None
    one, trait = found
    label = TRAITS[trait].label
    return first_that_fits(
        (
            f"Notes disagree on {one.name}'s {label}: try it.",
            f"Notes disagree on the {label}: try it.",
            "Notes disagree: try it.",
        ),
        limit=LINE_LIMIT,
    )


def _assumed(situation: Situation) -> str | None:
    return PARTNER_UNKNOWN if len(situation.theirs) == 1 else None


def _choices(situation: Situation) -> tuple[Choice, ...]:
    probe = Choice(label="what to look for", topic=Topic.PROBE)
    return (*hand_choices(situation.theirs, Topic.WHOM_TO_TARGET), probe)


def _share_numbers() -> dict[str, float]:
    return {
        "best_share": best_share(0.0),
        "best_share_if_covered": best_share(1.0),
        "kept_of_all": kept(1.0, 1.0, 0.0),
    }


def _numbers(found: Sequence[Target], *, called: Sequence[Target] = ()) -> Mapping[str, float]:
    """What was weighed. The call names the targets `called`: it is as sure as the least of them."""
    numbers = _share_numbers()
    if called:
        numbers["p_best"] = min(one.p_better for one in called)
    for one in found:
        name = str(one.phase)
        numbers[f"{name}_points"] = one.points if one.one is not None else 0.0
        numbers[f"{name}_per_100"] = one.per_100
        numbers[f"{name}_p_better"] = one.p_better
        numbers[f"{name}_target_share"] = one.share if one.one is not None else 0.5
        numbers[f"{name}_share"] = one.ranking.share
        for each in one.pair:
            numbers[f"{name}_at_{each.player}"] = float(one.ranking.of(at(each)).chance)
    numbers["per_100"] = sum(one.per_100 for one in found)
    return MappingProxyType(numbers)


def _more(found: Sequence[Target]) -> tuple[str, ...]:
    """Every phase, the even ones in one line, and the arithmetic of the share."""
    even = [words.LABEL[one.phase] for one in found if words.ground(one) is None]
    lines = [_in_full(one) for one in found if words.ground(one) is not None]
    lines += [f"Even: {', '.join(even).lower()}"] if even else []
    total = sum(one.per_100 for one in found)
    return (
        *lines,
        rallies(total),
        "The more balls one gets, the more of the edge is lost.",
        f"Best share: {100 * best_share(0.0):.0f} balls in 100; "
        f"{100 * best_share(1.0):.0f} if the partner covers.",
        "All 100: they adjust (half), the fed one warms up (half).",
        words.RECHECK,
    )


def _in_full(target: Target) -> str:
    label, aim = words.LABEL[target.phase], words.aimed(target)
    reason = words.ground(target)
    assert reason is not None, "what is even has no reason"
    why = reason.text.partition(": ")[2] or reason.text
    if words.is_behind(target):
        why = why.removeprefix(f"{aim}, ")
    only = f" ({target.only.name} only)" if target.only else ""
    return f"{label}: {aim}{only}. {capital(why)} ({reason.source})"
