"""What a pair does when one of them gets every ball: the page of effects behind being_targeted.

Three small choices: the ball that the targeted one plays back, what the partner does, and plan B.
All sizes common practice, no source; "row" is the row of the trade's table of sizes.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from knowledge.dataclass import dataclass
from knowledge.engine import Decision, Effect, Mechanism, Points
from knowledge.planning import sizes
from knowledge.planning.weighing import always, from_trait, is_weak, option
from knowledge.situation import Familiarity, OnCourt, Situation
from knowledge.tactics.targeted_said import HitWith, Targeted
from knowledge.vocabulary import Hand, Trait, Wing

SHARE: Final = 60.0
"""Row 25: rallies of 100 in which feeding one player comes into play."""

OWN_SHOT: Final = Points(mean=4, sd=2.5)
"""What answering with the shot one owns gains over one that is average (as for the middle)."""

SAFE_FIRST: Final = Points(mean=2, sd=1.5)
"""Row 10: middle and deep or low, against a line."""

IS_BRAVE: Final = Points(mean=-0.5, sd=1.5)
"""An attack under pressure, by one without a note that it is theirs."""

COVERS_MIDDLE: Final = Points(mean=2, sd=1.5)
"""The middle is where the easy ball goes; the line that is left is the harder shot."""

POACH_ONCE: Final = Points(mean=1, sd=1.5)
"""Shown once it makes them look: as an Erne that is shown once."""

OWN_FEET: Final = Points(mean=1.5, sd=1.5)
HIT_BEHIND: Final = Points(mean=-4, sd=2)
"""They go behind the helper: what the step in gained is gone, and the court is open."""

NEW_PAIR_POACHES: Final = Points(mean=-2, sd=1.5)

STACK_LEFTY_RIGHTY: Final = Points(mean=2, sd=2)
STACK_NEW: Final = Points(mean=-2, sd=1)
SWAP_SIDES: Final = Points(mean=1, sd=1.5)
"""Their lanes change and they must think: for two points."""

LOSES_FOREHANDS: Final = Points(mean=-2, sd=2)
"""Changing sides with both forehands in the middle already: the same two points, given away."""

HOLD, COVER, POACH = "hold", "cover", "poach"
SWAP, STACK, STAY = "swap", "stack", "stay"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """A ball the targeted one can play back: in the call, in full, and the shot it needs."""

    id: str
    call: str
    full: str
    needs: Trait | None = None
    brave: bool = False


def _attack(id: str, call: str, full: str, needs: Trait) -> Reply:
    return Reply(id=id, call=call, full=full, needs=needs, brave=True)


MIDDLE = Reply(id="middle", call="middle and deep", full="middle and deep, no line")
FEET = Reply(
    id="feet", call="soft at their feet", full="soft at {squeezer}'s feet", needs=Trait.RESET
)
_HIP = "first high one at {squeezer}'s hip"
_BEHIND = "lob behind {squeezer}, once a game"
_CHEST_HIGH = "counter at {squeezer}'s feet, chest high"

REPLIES: Mapping[HitWith, tuple[Reply, ...]] = MappingProxyType(
    {
        HitWith.ANYTHING: (MIDDLE, FEET),
        HitWith.DINKS: (
            Reply(id="soft", call="dink low middle", full="dink low and middle, not wide"),
            _attack("attack", "speed up the high one", _HIP, Trait.SPEED_UP),
            _attack("lob", "lob behind {squeezer}", _BEHIND, Trait.LOB),
        ),
        HitWith.DRIVES: (
            Reply(id="block", call="block low middle", full="block low and middle, no swing"),
            _attack("counter", "counter at their feet", _CHEST_HIGH, Trait.COUNTER),
        ),
        HitWith.SPEED_UPS: (
            Reply(id="reset", call="block it low middle", full="backhand in front, block low"),
            _attack(
                "counter",
                "counter straight back",
                "counter straight back, then be set",
                Trait.COUNTER,
            ),
        ),
        HitWith.LOBS: (
            Reply(id="high", call="let it drop, high and deep", full="turn early, high and deep"),
            Reply(
                id="overhead",
                call="overhead deep middle",
                full="overhead deep middle, big target",
                needs=Trait.OVERHEAD,
            ),
        ),
        HitWith.RETURNS: (
            Reply(
                id="middle third", call="third low, middle", full="third low to the middle, then in"
            ),
            Reply(
                id="drop",
                call="drop middle",
                full="drop middle: you hit them all",
                needs=Trait.THIRD_SHOT_DROP,
            ),
            _attack("drive", "drive middle", "drive middle, drop the fifth", Trait.FOREHAND_DRIVE),
        ),
    }
)
"""The first of each needs no special shot."""


def replies(said: Targeted) -> tuple[Reply, ...]:
    """What they can play back: nothing that our own profile marks as weak."""
    return tuple(
        reply
        for reply in REPLIES[said.hit_with]
        if reply.needs is None or not is_weak(said.targeted, reply.needs)
    )


def reply_decision(said: Targeted) -> Decision:
    """Which ball the targeted one plays back."""
    found = replies(said)
    effects: list[Effect] = []
    for reply in found:
        on = (reply.id,)
        if reply.needs is None:
            effects.append(
                always("safe", "the middle is safe", SAFE_FIRST, Mechanism.OUR_ERROR, on=on)
            )
        elif said.targeted is not None:
            owned = from_trait(
                said.targeted, reply.needs, OWN_SHOT, Mechanism.THEIR_REPLY, on=on, up=True
            )
            effects.append(owned)
        if reply.brave:
            effects.append(
                always(f"{reply.id}:brave", "under pressure", IS_BRAVE, Mechanism.OUR_ERROR, on=on)
            )
    return Decision(
        options=tuple(option(reply.id, reply.call) for reply in found),
        effects=tuple(effects),
        neutral=sizes.EVEN_CHANCE,
        share=SHARE,
    )


def help_decision(situation: Situation, said: Targeted) -> Decision:
    """What the partner does: hold, step in and give the line, or poach once and show it."""
    cover, together = Mechanism.COVER, Mechanism.AGREEMENT
    effects = [
        always("covers", "the line is the harder shot", COVERS_MIDDLE, cover, on=(COVER,)),
        always("shows", "shown once, they look", POACH_ONCE, Mechanism.HABIT, on=(POACH,)),
    ]
    if said.burnt:
        effects.append(
            always("behind", "they hit behind", HIT_BEHIND, Mechanism.TIME, on=(COVER, POACH))
        )
    if situation.familiarity is Familiarity.NEW:
        effects.append(always("new", "new together", NEW_PAIR_POACHES, together, on=(POACH,)))
    if said.helper is not None:
        effects += _own(said.helper)
    return Decision(
        options=(
            option(HOLD, "stay home"),
            option(COVER, "step in, show it"),
            option(POACH, "poach once, show it"),
        ),
        effects=tuple(effects),
        neutral=sizes.EVEN_CHANCE,
        share=SHARE,
    )


def _own(helper: OnCourt) -> list[Effect]:
    time, reply, on = Mechanism.TIME, Mechanism.THEIR_REPLY, (POACH,)
    return [
        from_trait(helper, Trait.FOOT_SPEED, OWN_FEET, time, on=on, up=True),
        from_trait(helper, Trait.FOOT_SPEED, -OWN_FEET, time, on=on, up=False),
        from_trait(helper, Trait.FOREHAND_VOLLEY, OWN_FEET, reply, on=on, up=True),
        from_trait(helper, Trait.FOREHAND_VOLLEY, -OWN_FEET, reply, on=on, up=False),
        from_trait(
            helper, Trait.POACHING, OWN_FEET, Mechanism.AGREEMENT, on=on, up=True, habit=True
        ),
    ]


def plan_b_decision(situation: Situation) -> Decision:
    """Swap sides for two points, stack, or stay: the table's runner-up, with its price when new."""
    reply, together = Mechanism.THEIR_REPLY, Mechanism.AGREEMENT
    effects = [always("swap", "they must think", SWAP_SIDES, Mechanism.HABIT, on=(SWAP,))]
    if has_both_forehands_inside(situation):
        because = "both forehands are in the middle now"
        effects.append(always("inside", because, LOSES_FOREHANDS, reply, on=(SWAP, STACK)))
    elif {Hand.LEFT, Hand.RIGHT} <= {one.hand for one in situation.ours}:
        because = "both forehands in the middle"
        effects.append(always("forehands", because, STACK_LEFTY_RIGHTY, reply, on=(STACK,)))
    if situation.familiarity is Familiarity.NEW:
        effects.append(always("new", "new together", STACK_NEW, together, on=(STACK,)))
    return Decision(
        options=(option(SWAP, "swap sides"), option(STACK, "stack"), option(STAY, "stay")),
        effects=tuple(effects),
        neutral=sizes.EVEN_CHANCE,
        share=SHARE,
    )


def has_both_forehands_inside(situation: Situation) -> bool:
    """Whether the sides we play already put both forehands in the middle."""
    wings = [one.middle_wing() for one in situation.ours]
    return len(wings) == 2 and all(wing is Wing.FOREHAND for wing in wings)
