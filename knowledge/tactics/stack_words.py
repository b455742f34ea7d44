"""How an answer on stacking is said: the call, why, and where each of us plays and waits."""

from __future__ import annotations

from collections.abc import Iterable

from knowledge.advice import MAX_REASONS, Reason
from knowledge.effects import Truth
from knowledge.engine import Part
from knowledge.planning.names import first_that_fits
from knowledge.planning.weighing import is_open
from knowledge.situation import Formation, OnCourt
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.aim_words import rallies, short
from knowledge.tactics.stack_answer import StackAnswer, unknown_hands
from knowledge.tactics.stack_formations import Keep, Plan, backhands_meet, hand_of
from knowledge.vocabulary import TRAITS, Hand, Trait

LEAST_SAID = 0.1
"""Rallies in 100 below which a part is no reason."""

STRAIGHT_CALL = "Play straight: stand by the score, no stack."
SWAP_CALL = "Swap sides for some rallies, against the score."
SIDES_TURNED = "Your sides put both backhands in the middle: swap"
ONE_OF_EACH = "One forehand is in the middle either way"


def call_of(plan: Plan) -> str:
    """The formation and the two positions to remember."""
    if plan.left is None or plan.right is None:
        return SWAP_CALL if plan.formation is Formation.SIDE_SWAP else STRAIGHT_CALL
    left, right = plan.left.name, plan.right.name
    match plan.formation:
        case Formation.STACK_ON_SERVE:
            full = (
                f"Stack on serve, {left} always left. On return: straight.",
                f"Stack on serve, {left} left; return: straight.",
                "Stack on serve only; play straight on return.",
            )
        case Formation.STACK_ON_RETURN:
            full = (
                f"Stack on return, {left} always left. On serve: straight.",
                f"Stack on return, {left} left; serve: straight.",
                "Stack on return only; play straight on serve.",
            )
        case Formation.ON_SIGNAL:
            full = (
                f"Stack on serve, {left} left. Return: cross on a signal.",
                f"Stack on serve, {left} left; return: signal.",
                "Stack on serve; on return cross on a signal.",
            )
        case _:
            full = (
                f"Stack on both: {left} always left, {right} right.",
                f"Stack on both: {left} always left.",
                "Stack on serve and on return.",
            )
    return first_that_fits(full)


def reasons_of(answer: StackAnswer) -> tuple[Reason, ...]:
    """What speaks for it, most first; of playing straight, what a stack would cost."""
    for_it = [part for part in answer.parts if part.points >= LEAST_SAID]
    found = [said for part in for_it if (said := reason_of(part, answer.pair))]
    if backhands_meet(answer.pair):
        found.insert(0, Reason(text=SIDES_TURNED, source=COMMON_PRACTICE))
    if answer.plan.formation is Formation.STRAIGHT:
        stacked = next(one for one in answer.ranking.ranked if "@" in one.option.id)
        against = sorted(stacked.parts, key=lambda part: part.points)
        found += [
            said
            for part in against
            if part.points <= -LEAST_SAID
            and not _is_of_a_player(part)
            and (said := reason_of(part, answer.pair))
        ]
        hands = {hand_of(one) for one in answer.pair}
        if len(hands) == 1 and Hand.AMBIDEXTROUS not in hands:
            found.insert(1, Reason(text=ONE_OF_EACH, source=COMMON_PRACTICE))
    else:
        price = _why_not_on_return(answer) or _price(answer.parts, answer.pair)
        found += [] if price is None else [price]
    return tuple(dict.fromkeys(found))[:MAX_REASONS]


def _why_not_on_return(answer: StackAnswer) -> Reason | None:
    """The longer run, where the call leaves returns straight."""
    if answer.plan.keep(we_serve=False) is not Keep.SCORE:
        return None
    both = next(
        one for one in answer.ranking.ranked if one.option.id.startswith(Formation.STACK_ALWAYS)
    )
    run = next((part for part in both.parts if part.effect.id.startswith("run:")), None)
    return None if run is None else Reason(text=run.effect.because, source=run.effect.source)


def _price(parts: Iterable[Part], pair: Iterable[OnCourt]) -> Reason | None:
    """What it costs most, where that is a reason at all."""
    against = sorted(parts, key=lambda part: part.points)
    two = tuple(pair)
    said = (reason_of(part, two) for part in against if part.points <= -LEAST_SAID)
    return next((one for one in said if one is not None), None)


def reason_of(part: Part, pair: Iterable[OnCourt]) -> Reason | None:
    """One part in a line; None for what notes leave open or nobody knows.

    An id ends with the plan that it acts on, or begins with it.
    """
    if is_open(part) or part.truth is Truth.UNKNOWN:
        return None
    name, *rest = part.effect.id.split(":")
    rest = rest if "@" in name else rest[:-1]
    if not _is_of_a_player(part):
        return Reason(text=part.effect.because, source=part.source)
    scale = part.effect.scale
    if scale is None or not part.evidence:
        return None
    one = next((each for each in pair if each.player == scale.player), None)
    if one is None:
        return None
    return Reason(text=_of_player(name, rest, part, one), source=part.source)


def _is_of_a_player(part: Part) -> bool:
    return (
        part.effect.id.split(":")[0] in ("inside", "wing", "legs")
        or "@" in (part.effect.id.split(":")[0])
    )


def _of_player(name: str, rest: list[str], part: Part, one: OnCourt) -> str:
    helps = part.points > 0
    scale = part.effect.scale
    trait = Trait(rest[1]) if len(rest) > 1 else scale.trait if scale else None
    what = TRAITS[trait].label if trait else ""
    if name == "legs":
        return short((f"{one.name} tires: the longer run adds up", "Tired legs: longer run"))
    if name == "wing":
        where = "hidden in the middle" if helps else "alone at the sideline"
        return short((f"{one.name}'s weak {what} {where}", f"Weak {what} {where}"))
    if name == "inside":
        is_strong = rest[-1] == "up"
        inside = is_strong is helps
        where = "in the middle" if inside else "out of the middle"
        weak = "" if is_strong else "weak "
        return short(
            (
                f"{one.name}'s {weak}{what} {where}",
                f"{one.name}: {weak}{what} {where}",
                f"{weak}{what} {where}".capitalize(),
            )
        )
    if trait is Trait.TWO_HANDED_BACKHAND:
        where = "in the middle" if helps else "short at the sideline"
        return short((f"{one.name}'s two-hander {where}", f"A two-hander {where}"))
    side = rest[-1]
    text = f"{one.name} usually plays {side}"
    return short((text, f"One of you usually plays {side}"))


def number_of(answer: StackAnswer) -> str:
    """What it is worth, in rallies of 100."""
    if answer.plan.formation is not Formation.STRAIGHT:
        if answer.gain < 1:  # the reasons tell tenths: "about 1" over "+0.5" would disagree
            return "Little over straight: under 1 rally in 100."
        return rallies(answer.gain, over="straight")
    stacked = next(one for one in answer.ranking.ranked if "@" in one.option.id)
    lost = round(-answer.gain_of(stacked.option.id))
    if lost < 1:
        return "The best stack: nothing to gain, if close."
    return f"The best stack loses about {lost} in 100."


def assumed_of(answer: StackAnswer) -> str | None:
    """What was taken because nobody noted it."""
    unknown = unknown_hands(answer.pair)
    if not answer.is_named:
        return "Your two aren't known: I took right-handers."
    if len(unknown) == len(answer.pair):
        return "No hands noted: I took two right-handers."
    return f"No hand noted for {unknown[0].name}: took right." if unknown else None


def positions(answer: StackAnswer) -> tuple[str, ...]:
    """Each case of the score in a line: who waits where, and who ends up where."""
    plan, lines = answer.plan, []
    one, other = answer.pair
    for serves in (True, False):
        for score_left, score_right in ((one, other), (other, one)):
            for bound in (score_left, score_right):
                lines.append(position(plan, bound, score_left, score_right, we_serve=serves))
    return tuple(lines)


def position(
    plan: Plan, bound: OnCourt, score_left: OnCourt, score_right: OnCourt, *, we_serve: bool
) -> str:
    """Where the bound one starts, where the partner waits, and who plays where after that."""
    court = "left" if bound is score_left else "right"
    partner = score_right if bound is score_left else score_left
    does = "serves" if we_serve else "returns"
    crosses = plan.crosses(score_left.player, we_serve=we_serve)
    stay = f"{score_left.name} left, {score_right.name} right"
    swap = f"{score_right.name} left, {score_left.name} right"
    start = f"{bound.name} {does} {court}"
    if crosses is False:
        return f"{start}: stay, {stay}."
    if crosses is None:
        return f"{start}: on the sign {swap}; else stay."
    if plan.formation is Formation.SIDE_SWAP:
        return f"{start}: both cross after it, {swap}."
    return f"{start}: {partner.name} waits outside {court}; then {swap}."
