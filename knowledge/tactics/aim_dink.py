"""Where to dink: whom, which foot and by which lane, with a change-up and what would flip it."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.effects import OptionId, Truth
from knowledge.engine import Part, Unknown
from knowledge.evidence import FactEstimate
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import aim_attack
from knowledge.tactics import dink_words as words
from knowledge.tactics.attack_answer import aimed
from knowledge.tactics.attack_whether import whether
from knowledge.tactics.conditions import marked_wing, player_of, trait_of
from knowledge.tactics.dink_aims import SOFT, attack_at
from knowledge.tactics.dink_answer import DinkAnswer, answer_dink
from knowledge.tactics.dink_effects import LANE_SOURCE
from knowledge.tactics.dink_lanes import Lane, Spot, lane_net_height_m
from knowledge.tactics.dink_picture import picture
from knowledge.vocabulary import (
    TRAITS,
    BallQuality,
    PlayerId,
    Side,
    Topic,
    Trait,
    TraitKind,
    Value,
    Wing,
)

GROOVED_AFTER_THREE = 2.0
"""What a fourth ball to the same spot loses (row 13). Common practice."""

LIKELY = 0.75
"""A condition that holds this often may carry a reason, with the assumption said."""

REASONS_BESIDE_THE_CHANGE = 2
CHOICES_AT_MOST = 6


def advise(situation: Situation) -> Advice:
    """The call, its change-up and trigger, what would flip it, and the picture.

    A ball that is better sped up, at somebody of whom notes speak, is the speed-up's own answer:
    same ball, same call.
    """
    answer = answer_dink(situation)
    is_general = all(one.profile.notes == 0 for one in answer.question.pair)
    ask = answer.ranking.ask()
    sped_up = _sped_up(answer, situation)
    if sped_up is not None:
        return replace(sped_up, topic=Topic.AIM_DINK, unless=_unless(answer, ask, situation))
    best = answer.best
    return Advice(
        topic=Topic.AIM_DINK,
        call=_call(answer, situation, is_general=is_general),
        reasons=_reasons(answer, named=not is_general or _is_named(situation)),
        number=_number(answer),
        unless=_unless(answer, ask, situation),
        assumed=_assumed(answer, situation, is_general=is_general),
        confidence=Confidence.GENERAL_RULE if is_general else answer.ranking.confidence,
        numbers=_numbers(answer),
        choices=_choices(answer, ask, situation, is_general=is_general),
        picture=None
        if best is None
        else picture(
            best,
            answer.change,
            ours=situation.ours,
            theirs=answer.question.pair,
            striker_side=answer.question.striker_side,
        ),
        more=_more(answer),
    )


def _sped_up(answer: DinkAnswer, situation: Situation) -> Advice | None:
    if answer.best is not None or answer.ranking.best.option.id == SOFT:
        return None
    found = aimed(situation)
    attacks = found.is_settled and whether(situation, found).attacks
    return aim_attack.advise(situation) if attacks else None


def _number(answer: DinkAnswer) -> str | None:
    """What the call is worth; nothing where it may as well be another one."""
    if answer.best is None or answer.ranking.confidence is Confidence.TOSS_UP:
        return None
    return words.worth(_gain_over_any_aim(answer))


def _call(answer: DinkAnswer, situation: Situation, *, is_general: bool) -> str:
    best = answer.best
    if best is not None and is_general and not _is_named(situation):
        return words.nameless(best)
    if best is not None:
        return words.call(best, names_wing=words.names_wing(best, situation.asked.wing))
    option = answer.ranking.best.option.id
    if option == SOFT:
        stretched = answer.question.ball is BallQuality.STRETCHED
        return words.STRETCHED_CALL if stretched else words.SOFT_CALL
    target = next(one for one in answer.question.pair if attack_at(one).id == option)
    return words.attack_call(target)


def _is_named(situation: Situation) -> bool:
    return any(one.player in situation.asked.about for one in situation.theirs)


def _reasons(answer: DinkAnswer, *, named: bool) -> tuple[Reason, ...]:
    found = [
        Reason(text=part.effect.because, source=part.effect.source)
        for part in _speaking_parts(answer)
    ]
    if not found and answer.best is not None and answer.best.spot is Spot.MIDDLE:
        found = [Reason(text="Lower net, and a miss stays in", source=LANE_SOURCE)]
    found = _about_the_weak_wing(answer) + found
    found = list(dict.fromkeys(found))[:REASONS_BESIDE_THE_CHANGE]
    change = answer.change
    if change is not None and answer.best is not None:
        same = change.target.player == answer.best.target.player
        found.append(
            Reason(
                text=words.change_up(change, same_target=same, named=named), source=COMMON_PRACTICE
            )
        )
    return tuple(found)


def _about_the_weak_wing(answer: DinkAnswer) -> list[Reason]:
    """Why the call names a wing though the foot is not known, or why it leaves the weak one."""
    best = answer.best
    weak = None if best is None else marked_wing(best.target)
    if best is None or weak is None or best.wing is weak:
        return []
    if best.wing is None and best.lane is not None:
        return []
    if best.wing is None:
        text = f"{best.target.name}'s {weak} dink is weak"
    elif best.lane is Lane.STRAIGHT:
        text = f"The weak {weak} is down the line: pick it"
    else:
        text = f"The weak {weak} is the harder ball here"
    trait = Trait.BACKHAND_DINK if weak is Wing.BACKHAND else Trait.FOREHAND_DINK
    estimate = best.target.profile.skill(trait)
    return [Reason(text=text, source=estimate.source)]


def _speaking_parts(answer: DinkAnswer) -> list[Part]:
    """What speaks for the best, and what notes say against the next: notes first."""
    first, *others = answer.ranking.ranked
    parts = [part for part in first.parts if part.points > 0 and _may_say(part)]
    if others:
        parts += [
            part
            for part in others[0].parts
            if part.points < 0 and part.evidence and not _is_open(part)
        ]
    return sorted(parts, key=lambda part: (not part.evidence, -abs(part.points)))


def _may_say(part: Part) -> bool:
    """Whether a reason is true enough to be said: known, or noted and likely."""
    if _is_open(part):
        return False
    if part.truth is Truth.YES:
        return True
    return bool(part.evidence) and part.effect.when.prevalence >= LIKELY


def _is_open(part: Part) -> bool:
    """Whether the notes behind it contradict each other so much that they settle nothing."""
    return part.effect.scale is not None and part.effect.scale.estimate.is_open


def _gain_over_any_aim(answer: DinkAnswer) -> float:
    """What the call gains over aiming anywhere."""
    chances = [one.chance for one in answer.ranking.ranked]
    return 100 * (chances[0] - sum(chances) / len(chances))


def _numbers(answer: DinkAnswer) -> MappingProxyType[str, float]:
    ranking = answer.ranking
    gain = _gain_over_any_aim(answer)
    numbers = {
        "points_gained": gain,
        "points_over_next": float(ranking.gain()),
        "p_best": ranking.best.p_best,
        "chance": float(ranking.best.chance),
        "chance_sd": ranking.best.sd,
        "share": ranking.share,
        "rallies_in_100": gain * ranking.share / 100,
        "grooved_after_three": GROOVED_AFTER_THREE,
    }
    if answer.best is not None and answer.best.lane is not None:
        numbers["net_height_m"] = lane_net_height_m(answer.best.lane)
    return MappingProxyType(numbers)


def _unless(answer: DinkAnswer, ask: Unknown | None, situation: Situation) -> str | None:
    best = answer.best
    if best is None and answer.question.ball is BallQuality.EASY and answer.aims:
        order = [answer.aim(one.option.id) for one in answer.ranking.ranked]
        dink = next((aim for aim in order if aim is not None), None)
        return None if dink is None else f"Below the net? {words.call(dink)}"
    if best is not None and best.wing is None and best.target.side is not None:
        flipped = _other_hand(answer, best.target, situation)
    else:
        flipped = None if ask is None else _flip(answer, ask, situation)
    if flipped is not None:
        return flipped
    is_stretched = answer.question.ball is BallQuality.STRETCHED
    return None if is_stretched else words.STRETCHED_BRANCH


def _flip(answer: DinkAnswer, ask: Unknown, situation: Situation) -> str | None:
    """What would change the call, and to what, by answering again as if it were known."""
    player, trait = player_of(ask.fact), trait_of(ask.fact)
    if player is None or trait is None:
        return None
    one = situation.find(player)
    if one is None:
        return None
    if trait is Trait.HAND:
        return _other_hand(answer, one, situation)
    if trait is Trait.TWO_HANDED_BACKHAND:
        return _if_known(answer, one, situation, trait, Value.YES, "two-handed")
    now = answer.ranking.best.option.id
    if TRAITS[trait].kind is not TraitKind.SKILL or ask.if_yes == ask.if_no:
        return None
    is_strong = ask.if_yes != now
    if trait in words.MOVES:
        return f"Changes if {one.name} {words.MOVES[trait][is_strong]}."
    how = "strong" if is_strong else "weak"
    return f"Changes if {one.name}'s {TRAITS[trait].label} is {how}."


def _other_hand(answer: DinkAnswer, one: OnCourt, situation: Situation) -> str | None:
    return _if_known(answer, one, situation, Trait.HAND, Value.LEFT, "left-handed")


def _if_known(
    answer: DinkAnswer, one: OnCourt, situation: Situation, trait: Trait, value: Value, what: str
) -> str | None:
    """The call if the fact were so; None if the call would stay."""
    other = answer_dink(_supposing(situation, one, trait, value))
    if other.best is None or other.best.id == answer.ranking.best.option.id:
        return None
    return f"{one.name} {what}? {words.call(other.best)}"


def _supposing(situation: Situation, one: OnCourt, trait: Trait, value: Value) -> Situation:
    fact = FactEstimate(value=value, chance=1.0, evidence=(), contradicted=False, newest_day=0)
    profile = replace(one.profile, facts=MappingProxyType({**one.profile.facts, trait: fact}))
    theirs = tuple(
        replace(each, profile=profile) if each.player == one.player else each
        for each in situation.theirs
    )
    return replace(situation, theirs=theirs)


def _assumed(answer: DinkAnswer, situation: Situation, *, is_general: bool) -> str | None:
    if is_general:
        return "No notes on them: general rule."
    best = answer.best
    if best is None:
        return None
    if best.target.side is None:
        return f"I don't know {best.target.name}'s side."
    if best.wing is None:
        return f"I don't know {best.target.name}'s hand: most are right-handed."
    if answer.question.striker_side is None:
        return "From either of our courts."
    return None if situation.asked.ball else "For a neutral ball."


def _choices(
    answer: DinkAnswer, ask: Unknown | None, situation: Situation, *, is_general: bool
) -> tuple[Choice, ...]:
    found: list[Choice] = []
    named = [one for one in answer.question.pair if one.name]
    best = answer.best
    order = [best.target, *named] if best and best.target.name else named
    for one in {each.player: each for each in order}.values():
        found += [] if any(each.fact == MatchFact.SIDE for each in found) else _open_facts(one)
    if ask is not None:
        found += _skill_choice(ask, answer.ranking.best.option.id, situation)
    found = found[: CHOICES_AT_MOST - 2]
    if situation.asked.ball is None:
        found += [
            _choice(ball.value, MatchFact.BALL, ball.value)
            for ball in (BallQuality.STRETCHED, BallQuality.EASY)
        ]
    room = CHOICES_AT_MOST - len(found) - is_general
    if answer.question.striker_side is None and room >= len(Side):
        found += [
            _choice(f"from our {side}", MatchFact.STRIKER, side.value)
            for side in (Side.LEFT, Side.RIGHT)
        ]
    if is_general:
        found = [*found[: CHOICES_AT_MOST - 1], Choice(label="what to look for", topic=Topic.PROBE)]
    return tuple(found)


def _open_facts(one: OnCourt) -> list[Choice]:
    """Two buttons for a side that is not known, or else for a hand."""
    if one.side is None:
        return [
            _choice(f"{one.name} {side}", MatchFact.SIDE, side.value, one.player)
            for side in (Side.LEFT, Side.RIGHT)
        ]
    if one.profile.fact(Trait.HAND) is None:
        return [
            _choice(f"{one.name} is lefty", Trait.HAND, Value.LEFT, one.player),
            _choice(f"{one.name} is a righty", Trait.HAND, Value.RIGHT, one.player),
        ]
    return []


def _skill_choice(ask: Unknown, now: OptionId, situation: Situation) -> list[Choice]:
    """The button that would flip the call."""
    player, trait = player_of(ask.fact), trait_of(ask.fact)
    one = None if player is None else situation.find(player)
    if one is None or trait is None or TRAITS[trait].kind is not TraitKind.SKILL:
        return []
    value = Value.STRENGTH if ask.if_yes != now else Value.WEAKNESS
    how = "strong" if value is Value.STRENGTH else "weak"
    return [_choice(f"{one.name}: {how} {TRAITS[trait].label}", trait, value, one.player)]


def _choice(label: str, fact: str, value: str, about: PlayerId | None = None) -> Choice:
    return Choice(label=label, topic=Topic.AIM_DINK, fact=str(fact), value=str(value), about=about)


def _more(answer: DinkAnswer) -> tuple[str, ...]:
    """The sum in full, what comes back, and the grooving."""
    lines = [
        f"{part.points:+.1f} {part.effect.because} ({part.effect.source.kind})"
        for part in answer.ranking.best.parts
        if abs(part.points) >= 0.1
    ]
    best = answer.best
    if best is not None and best.spot is Spot.SIDELINE:
        lines.append("It comes back wide: partner shades the middle.")
    if best is not None:
        lines.append(f"After three to one spot it loses {GROOVED_AFTER_THREE:.0f} in 100: move it.")
    return tuple(lines)
