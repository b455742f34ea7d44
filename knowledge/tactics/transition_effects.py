"""What speaks for going or stopping on the way in, and for each place of a fourth and a fifth."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.ball_facts import Depth
from knowledge.court import HALF_LENGTH_M
from knowledge.effects import Effect, Mechanism, OptionId
from knowledge.planning.weighing import from_trait
from knowledge.situation import OnCourt
from knowledge.tactics import third_sizes
from knowledge.tactics import transition_sizes as sizes
from knowledge.tactics.conditions import rule_of_thumb, skill
from knowledge.tactics.told_ball import told
from knowledge.tactics.transition_said import TransitionSaid
from knowledge.tactics.transition_time import RUN_IN
from knowledge.vocabulary import Trait

GO = OptionId("go")
SPLIT = OptionId("split")

SOFT = OptionId("soft:middle")
BLOCK = OptionId("block:middle")
ATTACK = OptionId("attack")
SOFT_LATE = OptionId("soft:late")
SOFT_LINE = OptionId("soft:line")

DEEP = OptionId("deep:middle")
DEEP_LATE = OptionId("deep:late")
LIFT = OptionId("lift")
SHORT = OptionId("short")
ANGLE = OptionId("angle")
BOUNCE = OptionId("bounce")

FAR_M = HALF_LENGTH_M - 1.0
"""From here back the line is out of reach before they hit, whatever the third."""


def soft_at(one: OnCourt) -> OptionId:
    return OptionId(f"soft:{one.player}")


def deep_at(one: OnCourt) -> OptionId:
    return OptionId(f"deep:{one.player}")


def move_effects(
    said: TransitionSaid, runner: OnCourt | None, theirs: Sequence[OnCourt]
) -> Iterator[Effect]:
    """In behind a low one; stop and split behind a high one."""
    time, error, cover = Mechanism.TIME, Mechanism.OUR_ERROR, Mechanism.COVER
    low = told("their ball is below the tape", said.low, usual=sizes.THIRDS_THAT_ARE_LOW)
    high = told("their ball is above it", said.high, usual=1 - sizes.THIRDS_THAT_ARE_LOW)
    because = "Below the tape they must hit up"
    yield rule_of_thumb("low", GO, sizes.GO_BEHIND_A_LOW_ONE, time, because, when=low)
    because = "High, they hit down at moving feet"
    yield rule_of_thumb("high", SPLIT, sizes.WAIT_FOR_A_HIGH_ONE, error, because, when=high)
    because = "Still feet beat two steps nearer"
    yield rule_of_thumb("still feet", SPLIT, sizes.STILL_FEET, cover, because)
    if said.from_net_m is not None and said.from_net_m >= FAR_M:
        because = "The line is too far before they hit"
        yield rule_of_thumb("far", GO, sizes.TOO_FAR, time, because, source=RUN_IN)
    if said.theirs is Depth.BOTH_BACK:
        because = "They are back: the line is free"
        yield rule_of_thumb("free", GO, sizes.LINE_IS_FREE, cover, because)
    if said.one_back:
        because = "One up, one back leaves the middle"
        yield rule_of_thumb("one back", GO, sizes.ONE_UP_ONE_BACK, cover, because)
    if runner is not None:
        named = f"{runner.name}'s speed coming forward"
        yield skill(runner, Trait.FORWARD_SPEED, sizes.QUICK_IN, time, on=(GO,), named=named)
        named = f"{runner.name}'s mid-court play"
        size = sizes.GOOD_IN_MID_COURT
        yield skill(runner, Trait.TRANSITION, size, error, on=(SPLIT,), named=named)
    for one in theirs:
        size, habit = sizes.THEY_LOB.times(1 / len(theirs)), Mechanism.HABIT
        yield from_trait(one, Trait.LOB, size, habit, on=(SPLIT,), up=True, habit=True)


def fifth_effects(
    said: TransitionSaid, hitter: OnCourt | None, theirs: Sequence[OnCourt], soft: str
) -> Iterator[Effect]:
    """Soft and low to the middle, unless it sits up; `soft` is the touch that we own."""
    error, reply, cover = Mechanism.OUR_ERROR, Mechanism.THEIR_REPLY, Mechanism.COVER
    if said.high:
        because = "Above the net: hit down on it"
        yield rule_of_thumb("sits up", ATTACK, sizes.ATTACK_A_HIGH_BALL, reply, because)
    elif said.low or said.balanced is False:
        because = "From the feet a drive rises to them"
        yield rule_of_thumb("at the feet", ATTACK, sizes.ATTACK_A_LOW_BALL, error, because)
    else:
        because = "They are set at the line for pace"
        yield rule_of_thumb("plain", ATTACK, sizes.ATTACK_A_PLAIN_BALL, error, because)
    because = "The line: higher net, less court"
    yield rule_of_thumb("line", SOFT_LINE, third_sizes.DOWN_THE_LINE, error, because)
    because = "At the one still coming in"
    yield rule_of_thumb("late one", SOFT_LATE, third_sizes.AT_THE_LATE_ONE, cover, because)
    if hitter is not None:
        trait = Trait.RESET
        named = f"{hitter.name}'s reset"
        on = [OptionId(soft), *(soft_at(one) for one in theirs)]
        size = sizes.GOOD_IN_MID_COURT
        for each in on:
            yield skill(hitter, trait, size, error, on=(each,), named=named)
    for one in theirs:
        for trait in (Trait.GETS_LOW, Trait.FOREHAND_VOLLEY, Trait.BACKHAND_VOLLEY):
            size = sizes.AT_WEAK_HANDS_OR_KNEES
            yield from_trait(one, trait, size, reply, on=(soft_at(one),), up=False)
        size = sizes.INTO_A_POACHER
        yield from_trait(one, Trait.POACHING, size, cover, on=(soft,), up=True, habit=True)


def fourth_effects(said: TransitionSaid, theirs: Sequence[OnCourt]) -> Iterator[Effect]:
    """Deep at the feet of whoever comes in; never a short one that lets them in."""
    time, error, reply = Mechanism.TIME, Mechanism.OUR_ERROR, Mechanism.THEIR_REPLY
    deep = [DEEP, DEEP_LATE, *(deep_at(one) for one in theirs)]
    for on in deep:
        because = "Deep at the feet stops them in mid-court"
        yield rule_of_thumb("deep", on, sizes.KEEPS_THEM_BACK, time, because)
        if said.low:
            because = "Below the net a push deep floats"
            yield rule_of_thumb("lifted", on, sizes.LIFTED_DEEP, error, because)
    because = "A short one lets them in for free"
    yield rule_of_thumb("lets in", SHORT, sizes.DROP_VOLLEY_LETS_THEM_IN, time, because)
    because = "The angle has little court"
    yield rule_of_thumb("misses", ANGLE, sizes.ANGLE_MISSES, error, because)
    if said.high:
        because = "High and near: the angle is open"
        yield rule_of_thumb("open angle", ANGLE, sizes.ANGLE_WHEN_HIGH, reply, because)
    because = "At the one still coming in"
    yield rule_of_thumb("late one", DEEP_LATE, third_sizes.AT_THE_LATE_ONE, reply, because)
    for one in theirs:
        at, short = deep_at(one), sizes.DROP_AT_SLOW_FEET
        size = sizes.WEAK_IN_MID_COURT
        yield from_trait(one, Trait.TRANSITION, size, reply, on=(at,), up=False)
        yield from_trait(one, Trait.GETS_LOW, sizes.SLOW_FORWARD, error, on=(at,), up=False)
        if said.theirs is Depth.BOTH_BACK:
            yield from_trait(one, Trait.FORWARD_SPEED, short, reply, on=(SHORT,), up=False)
        else:
            size = sizes.SLOW_FORWARD
            yield from_trait(one, Trait.FORWARD_SPEED, size, reply, on=(at,), up=False)
