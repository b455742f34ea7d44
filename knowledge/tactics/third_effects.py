"""What makes one third better than another: the page of effects behind third_shot and the plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.effects import Effect, Mechanism, Option, OptionId, Points
from knowledge.planning import sizes
from knowledge.planning.weighing import always, from_fact, from_trait
from knowledge.situation import OnCourt, Situation, Wind
from knowledge.tactics import third_sizes
from knowledge.tactics.aim_words import WIND
from knowledge.tactics.conditions import TWO_HANDERS, rule_of_thumb, two_handed
from knowledge.tactics.shot_success import OurScatter, our_scatter
from knowledge.tactics.third_contact import contact_of
from knowledge.tactics.third_options import (
    DRIVE,
    DROP,
    LATE,
    LINE,
    LOB,
    MIDDLE,
    SHOT_TRAITS,
    at,
    trait_of_shot,
)
from knowledge.tactics.third_said import Return, ThirdSaid
from knowledge.tactics.third_success import (
    SHOTS,
    ThirdBall,
    hands_effect,
    success,
)
from knowledge.tactics.wind_along import wind_along_mps
from knowledge.vocabulary import Trait, Value, Wing

WIND_CARRIES_DROP_FT = 3.45
WIND_STOPS_DROP_FT = 4.44
"""Feet that 10 mph along the court move a drop, by the flight model (tests work them out)."""


def effects_of(
    hitter: OnCourt | None, options: Sequence[Option], said: ThirdSaid, situation: Situation
) -> tuple[Effect, ...]:
    """Everything that speaks for or against these options."""
    theirs = situation.theirs
    found: list[Effect] = list(computed_effects(hitter, options, said, situation))
    for one in theirs:
        found += _on_target(one, said, share=1 / len(theirs))
    found += _around_poachers(theirs)
    for each in options:
        shot, _, where = each.id.partition(":")
        if shot == DRIVE:
            found += _drive(each.id, said, hitter)
        if shot == LOB:
            found += _lob(each.id, said)
        found += _place(each.id, where, said, theirs)
        found += _wind(each.id, shot, said, situation.wind)
        found += _ours(each.id, shot, said, hitter, situation)
    known = {each.id for each in options}
    return tuple(effect for effect in found if effect.on <= known)


def third_ball(said: ThirdSaid, situation: Situation) -> ThirdBall:
    """The ball as told, and as such a return usually is where it is not."""
    return ThirdBall(
        contact=contact_of(said.met),
        wind_mps=wind_along_mps(situation.wind, said.wind_mps),
        off_balance=said.balanced is False,
        both_back=said.both_back,
    )


def scatter_of(
    hitter: OnCourt | None, shot: str, said: ThirdSaid, situation: Situation
) -> OurScatter:
    return our_scatter(hitter, trait_of_shot(shot, said), situation.level)


def computed_effects(
    hitter: OnCourt | None, options: Sequence[Option], said: ThirdSaid, situation: Situation
) -> Iterator[Effect]:
    """How often each works from here, and whose hands are late; nothing before the rally."""
    if not said.is_told:
        return
    ball, level = third_ball(said, situation), our_scatter(None, Trait.LOB, situation.level).factor
    for each in options:
        shot, _, where = each.id.partition(":")
        scatter = scatter_of(hitter, shot, said, situation)
        yield success(each.id, SHOTS[shot], ball, scatter, level=level, met=said.met, one=hitter)
        if shot == DRIVE and not said.both_back:
            yield hands_effect(each.id, ball, scatter, moving=_moving_share(where, said))


def _moving_share(where: str, said: ThirdSaid) -> float:
    """How much of the pair that this one goes at is still on the move; of the middle half."""
    if not said.moving or where == LINE:
        return 0.0
    if where == MIDDLE or (said.late is None and where != LATE):
        return 0.5
    return 1.0 if where in (LATE, str(said.late)) else 0.0


def _on_target(one: OnCourt, said: ThirdSaid, *, share: float) -> Iterator[Effect]:
    """Reasons to play at one of them; `share` of the returns are theirs."""
    drop, drive, lob = at(DROP, one), at(DRIVE, one), at(LOB, one)
    reply, time = Mechanism.THEIR_REPLY, Mechanism.TIME
    rows: list[tuple[Trait, Points, Mechanism, str, bool]] = [
        (Trait.FORWARD_SPEED, sizes.THIRD_AT_LATE_ONE, time, drop, False),
        (Trait.FORWARD_SPEED, sizes.THIRD_AT_LATE_ONE, time, drive, False),
        (Trait.FOREHAND_VOLLEY, sizes.THIRD_AT_WEAK_VOLLEY, reply, drop, False),
        (Trait.BACKHAND_VOLLEY, sizes.THIRD_AT_WEAK_VOLLEY, reply, drop, False),
        (Trait.GETS_LOW, sizes.THIRD_AT_WEAK_VOLLEY, reply, drop, False),
        (Trait.HANDLES_PACE, sizes.DRIVE_AT_ONE_WHO_DISLIKES_PACE, reply, drive, False),
        (Trait.HANDLES_PACE, -sizes.DRIVE_AT_ONE_WHO_DISLIKES_PACE, reply, drive, True),
        (Trait.RESET, third_sizes.DRIVE_AT_ONE_WHO_CANNOT_RESET, reply, drive, False),
        (Trait.LOB_DEFENSE, third_sizes.LOB_AT_WEAK_DEFENCE, reply, lob, False),
        (Trait.FOOT_SPEED, third_sizes.LOB_AT_QUICK_FEET, time, lob, True),
    ]
    if not (said.moving and said.late == one.player):
        rows.append((Trait.COUNTER, sizes.DRIVE_AT_SET_COUNTER, reply, drive, True))
    for trait, size, mechanism, on, up in rows:
        yield from_trait(one, trait, size, mechanism, on=(on,), up=up)
    yield from_fact(
        one,
        Trait.HEIGHT,
        Value.TALL,
        third_sizes.LOB_AT_QUICK_FEET,
        Mechanism.COVER,
        on=(lob,),
        prevalence=0.0,
    )
    if said.came is None:
        short = sizes.DRIVE_OFF_SHORT_RETURN
        yield from_trait(one, Trait.RETURN_DEPTH, short, time, on=(drive,), up=False, part=share)


def _around_poachers(theirs: Sequence[OnCourt]) -> Iterator[Effect]:
    """Behind the poacher, not into the middle and not at the partner whom they cover."""
    away, cover, poaches = sizes.THIRD_AWAY_FROM_POACHER, Mechanism.COVER, Trait.POACHING
    for one in theirs:
        behind = [at(shot, one) for shot in SHOT_TRAITS]
        into = [f"{shot}:{MIDDLE}" for shot in SHOT_TRAITS]
        into += [at(shot, other) for other in theirs if other != one for shot in SHOT_TRAITS]
        for on in behind:
            yield from_trait(one, poaches, away, cover, on=(on,), up=True, habit=True)
        for on in into:
            yield from_trait(one, poaches, -away, cover, on=(on,), up=True, habit=True)


def _drive(on: OptionId, said: ThirdSaid, hitter: OnCourt | None) -> Iterator[Effect]:
    """Before the ball is known the drop is the plain third: a drive sits up for a volley."""
    error, time = Mechanism.OUR_ERROR, Mechanism.TIME
    if not said.is_told:
        because, size = "A drive sits up for a set volley", sizes.DRIVE_AT_SET_PAIR
        yield always(f"drive:{on}", because, size, error, on=(on,))
    if said.both_back:
        because = "Both back: pace keeps them there"
        yield rule_of_thumb("both back", on, third_sizes.DRIVE_KEEPS_THEM_BACK, time, because)
    if said.wing is Wing.BACKHAND and hitter is not None:
        yield rule_of_thumb(
            "backhand",
            on,
            third_sizes.DRIVE_OFF_A_BACKHAND,
            error,
            "A one-handed backhand drops it better",
            when=~two_handed(hitter),
        )
    elif said.wing is Wing.BACKHAND:
        size = third_sizes.DRIVE_OFF_A_BACKHAND.times(1 - TWO_HANDERS)
        yield rule_of_thumb("backhand", on, size, error, "A one-handed backhand drops it better")


def _lob(on: OptionId, said: ThirdSaid) -> Iterator[Effect]:
    because = "They see a third lob coming"
    size = third_sizes.LOB_WITHOUT_DISGUISE
    yield rule_of_thumb("no disguise", on, size, Mechanism.THEIR_REPLY, because)
    if said.balanced is False:
        because = "Off balance, high buys time"
        yield rule_of_thumb("buys time", on, third_sizes.LOB_BUYS_TIME, Mechanism.TIME, because)
    if said.both_back:
        because = "They are back already"
        size = third_sizes.LOB_AT_DEEP_PAIR
        yield rule_of_thumb("nobody up", on, size, Mechanism.COVER, because)


def _place(
    on: OptionId, where: str, said: ThirdSaid, theirs: Sequence[OnCourt]
) -> Iterator[Effect]:
    shot = on.partition(":")[0]
    if shot != LOB and said.moving and where in (LATE, str(said.late)):
        who = next((one.name for one in theirs if str(one.player) == where), "One")
        yield rule_of_thumb(
            "late one",
            on,
            third_sizes.AT_THE_LATE_ONE,
            Mechanism.COVER,
            f"{who} is still coming in",
        )
    if where == LINE:
        because = "The line: higher net, less court"
        size = third_sizes.DOWN_THE_LINE
        yield rule_of_thumb("line", on, size, Mechanism.OUR_ERROR, because)
        if said.line_open:
            size = third_sizes.LINE_LEFT_OPEN
            yield rule_of_thumb("line open", on, size, Mechanism.COVER, "They left the line")


def wind_words(wind: Wind | None, shot: str) -> str | None:
    """What a wind along the court does to this shot, in feet where the flight model has them."""
    match wind, shot:
        case Wind.BEHIND_US, "drop":
            return f"Wind behind: drops sail {WIND_CARRIES_DROP_FT:.0f} ft, aim shorter"
        case Wind.AGAINST_US, "drop":
            return f"Into the wind drops die {WIND_STOPS_DROP_FT:.0f} ft short"
        case Wind.AGAINST_US, "drive":
            return "Into the wind drives dip"
        case Wind.BEHIND_US, "lob":
            return "Wind behind carries a lob out"
    return None


def _wind(on: OptionId, shot: str, said: ThirdSaid, wind: Wind | None) -> Iterator[Effect]:
    """What it changes; once the ball is told, what it does to our misses is computed."""
    because = wind_words(wind, shot)
    size = _WIND_SIZES.get((wind, shot)) if wind else None
    is_ours = shot != DRIVE
    if because is None or size is None or (said.is_told and is_ours):
        return
    mechanism = Mechanism.OUR_ERROR if is_ours else Mechanism.THEIR_REPLY
    yield rule_of_thumb(_WIND_NAMES[shot], on, size, mechanism, because, source=WIND)


_WIND_NAMES = {DROP: "drop in wind", DRIVE: "dips"}
_WIND_SIZES: dict[tuple[Wind, str], Points] = {
    (Wind.BEHIND_US, DROP): third_sizes.DROPS_SAIL,
    (Wind.AGAINST_US, DROP): third_sizes.DROPS_DIE,
    (Wind.AGAINST_US, DRIVE): third_sizes.DRIVES_DIP,
}


def _ours(
    on: OptionId, shot: str, said: ThirdSaid, hitter: OnCourt | None, situation: Situation
) -> Iterator[Effect]:
    """The hitter's own better shot, and a partner who crashes behind a drive."""
    if shot == DRIVE and said.partner_crashes:
        because = "Partner crashes behind it: drive it low"
        yield rule_of_thumb("crasher", on, _crash_told(said), Mechanism.COVER, because)
    if hitter is None:
        return
    if shot in SHOT_TRAITS and not said.is_told:
        size, error = sizes.OUR_BETTER_SHOT, Mechanism.OUR_ERROR
        yield from_trait(hitter, SHOT_TRAITS[shot], size, error, on=(on,), up=True)
    if shot != DRIVE:
        return
    for one in situation.ours:
        if one.player != hitter.player:
            size = _crash(said)
            yield from_trait(one, Trait.CRASH, size, Mechanism.COVER, on=(on,), up=True, habit=True)


def _crash_told(said: ThirdSaid) -> Points:
    """Of a partner who surely crashes: a help, unless the drive must come up high."""
    if said.came is Return.GOOD:
        return third_sizes.CRASH_BEHIND_A_HIGH_DRIVE
    return third_sizes.CRASH_BEHIND_A_LOW_DRIVE


def _crash(said: ThirdSaid) -> Points:
    if said.came is Return.POOR:
        return third_sizes.CRASH_BEHIND_A_LOW_DRIVE
    if said.came is Return.GOOD:
        return third_sizes.CRASH_BEHIND_A_HIGH_DRIVE
    return third_sizes.CRASH_BEFORE_IT_IS_KNOWN
