""" "They do X, what now": one call, a change for each partner, the sign it works, and plan B."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.general_rule import LINE_LIMIT
from knowledge.planning.names import first_that_fits
from knowledge.planning.phrases import skill_words
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.culprit import Culprit, culprit_of, noted_by_tap
from knowledge.tactics.fourth_asked import fourth_instead
from knowledge.tactics.standing_words import capital
from knowledge.tactics.symptoms import PLAN_B, Symptom, symptoms, symptoms_of
from knowledge.tactics.targeted_one import with_names
from knowledge.vocabulary import Topic, Trait

NO_SHOT = "play deep and middle; give no angle."
"""What takes no shot that somebody may own as weak."""

NOT_READ = "I read no symptom in that: these come most."
MAY_BE = "Not sure which symptom you mean: is it one?"
COMMONEST = ("bang", "lob", "pop_up")
"""Offered where the words name none: as many as there are buttons."""


def advise(situation: Situation) -> Advice:
    """The answer to the symptom that the words name, sharpened by what the book knows."""
    fourth = fourth_instead(situation, Topic.ANSWER_PATTERN)
    if fourth is not None:
        return fourth
    found = symptoms_of(situation)
    if not found.named:
        return _unnamed(found.others)
    advice = _told((*found.named, *found.others), situation)
    return replace(advice, assumed=_taken_as(found.named[0])) if found.is_guess else advice


def _taken_as(symptom: Symptom) -> str:
    return f"Taken as: {symptom.label}. Not so? Name the ball."


def _told(found: Sequence[Symptom], situation: Situation) -> Advice:
    symptom = with_names(found[0], situation)
    culprit = culprit_of(symptom, situation)
    return replace(
        _answer(symptom, situation, culprit),
        choices=_choices(symptom, found[1:], situation, culprit),
        numbers=_numbers(symptom),
        confidence=Confidence.GENERAL_RULE if culprit is None else Confidence.LEAN,
    )


def _answer(symptom: Symptom, situation: Situation, culprit: Culprit | None) -> Advice:
    weak = [one for one in situation.ours if _weakness(one, symptom.needs) is not None]
    able = [one for one in situation.ours if one not in weak]
    if not weak:
        return _as_it_is(symptom, culprit)
    return _by_name(symptom, able[0], weak[0]) if able else _by_plan_b(symptom, weak, culprit)


def _as_it_is(symptom: Symptom, culprit: Culprit | None) -> Advice:
    changes = (symptom.you, symptom.partner)
    plan_b = f"{PLAN_B}{symptom.plan_b}"
    sign = Reason(text=symptom.sign.rstrip("."), source=COMMON_PRACTICE)
    return Advice(
        topic=Topic.ANSWER_PATTERN,
        call=symptom.call,
        reasons=(*changes, sign) if culprit is None else (culprit.reason, *changes),
        number=worth_of(symptom),
        unless=plan_b if culprit is None else f"{symptom.sign} {plan_b}",
    )


def _by_name(symptom: Symptom, able: OnCourt, weak: OnCourt) -> Advice:
    """One of us does not own the shot: the call is the other's, plan B is theirs."""
    instead = NO_SHOT if _weakness(weak, symptom.plan_b_needs) else symptom.plan_b
    call = symptom.call[0].lower() + symptom.call[1:]
    return Advice(
        topic=Topic.ANSWER_PATTERN,
        call=first_that_fits((f"{able.name}: {call}", symptom.call)),
        reasons=(
            _why_not(weak, symptom.needs),
            Reason(text=_fits(f"{weak.name}: {instead.rstrip('.')}"), source=COMMON_PRACTICE),
            symptom.you,
        ),
        number=worth_of(symptom),
        unless=symptom.sign,
    )


def _by_plan_b(symptom: Symptom, weak: Sequence[OnCourt], culprit: Culprit | None) -> Advice:
    """Nobody of us owns the shot: plan B is the call, or what takes no shot at all."""
    unable = all(_weakness(one, symptom.plan_b_needs) for one in weak)
    call = NO_SHOT if unable else symptom.plan_b
    sign = Reason(text=symptom.sign.rstrip("."), source=COMMON_PRACTICE)
    why = _why_not(weak[0], symptom.needs)
    return Advice(
        topic=Topic.ANSWER_PATTERN,
        call=capital(call),
        reasons=(why, symptom.partner, sign if culprit is None else culprit.reason),
        unless=None if culprit is None else symptom.sign,
    )


def _weakness(one: OnCourt, needs: Sequence[Trait]) -> Trait | None:
    """The first of these shots that our notes on this player mark as weak."""
    for trait in needs:
        estimate = one.profile.skill(trait)
        if estimate.level < 0 and not estimate.is_open:
            return trait
    return None


def _why_not(one: OnCourt, needs: Sequence[Trait]) -> Reason:
    trait = _weakness(one, needs) or needs[0]
    estimate = one.profile.skill(trait)
    return Reason(
        text=_fits(f"{one.name}: {skill_words(trait, strong=False)}, so not for {one.name}"),
        source=estimate.source,
    )


def _fits(text: str) -> str:
    return first_that_fits((text,), limit=LINE_LIMIT)


def worth_of(symptom: Symptom) -> str | None:
    """What the answer is worth where it comes up; None where the trade has no number."""
    if symptom.worth is not None:
        return symptom.worth
    if symptom.points is None:
        return None
    return f"Where it comes up: about {symptom.points:g} in 100 (judgement)."


def _numbers(symptom: Symptom) -> Mapping[str, float]:
    if symptom.points is None or symptom.share is None:
        return {}
    per_100 = symptom.points * symptom.share / 100
    return {"points": symptom.points, "share": symptom.share, "per_100": per_100}


def _choices(
    symptom: Symptom, others: Sequence[Symptom], situation: Situation, culprit: Culprit | None
) -> tuple[Choice, ...]:
    still = Choice(label="still bad", topic=Topic.ADJUST)
    noted = noted_by_tap(symptom, situation) if culprit is None else None
    also = [_of_symptom(one) for one in others[: 1 if noted else 2]]
    return (*also, *([noted] if noted else []), still)


def _of_symptom(symptom: Symptom) -> Choice:
    return Choice(
        label=symptom.label,
        topic=Topic.ANSWER_PATTERN,
        fact=MatchFact.SYMPTOM.value,
        value=symptom.id,
    )


def _unnamed(likeliest: Sequence[Symptom]) -> Advice:
    """The general answer, with what may be meant or else what comes most."""
    offered = likeliest or [one for id in COMMONEST for one in symptoms() if one.id == id]
    return Advice(
        topic=Topic.ANSWER_PATTERN,
        call="Slow it to the middle; see which ball hurts.",
        reasons=(
            Reason(text="Low, soft, middle: nobody bangs that", source=COMMON_PRACTICE),
            Reason(text="Partner: watch who hits it and from where", source=COMMON_PRACTICE),
            Reason(text="Sign: you can name the ball that hurts", source=COMMON_PRACTICE),
        ),
        unless="Tell me that ball and I give one answer.",
        assumed=MAY_BE if likeliest else NOT_READ,
        choices=tuple(_of_symptom(one) for one in offered),
    )
