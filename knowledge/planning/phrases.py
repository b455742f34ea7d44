"""How a reply says what a note says: "weak third shot", "poaches a lot", "lefty"."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from knowledge.vocabulary import TRAITS, Trait, Value

_SKILLS: Mapping[Trait, tuple[str, str]] = MappingProxyType(
    {
        Trait.THIRD_SHOT_DROP: ("strong third shot", "weak third shot"),
        Trait.RETURN_DEPTH: ("returns deep", "returns short"),
        Trait.TRANSITION: ("strong in mid-court", "weak in mid-court"),
        Trait.LOB_DEFENSE: ("handles lobs", "weak under lobs"),
        Trait.HANDLES_PACE: ("likes pace", "dislikes pace"),
        Trait.HANDLES_NO_PACE: ("likes slow balls", "dislikes slow balls"),
        Trait.HANDLES_SPIN: ("handles spin", "dislikes spin"),
        Trait.BODY_JAM: ("fine with body balls", "jams at the body"),
        Trait.FOOT_SPEED: ("quick feet", "slow feet"),
        Trait.FORWARD_SPEED: ("quick forward", "slow forward"),
        Trait.MOVES_LEFT: ("quick to the left", "slow to the left"),
        Trait.MOVES_RIGHT: ("quick to the right", "slow to the right"),
        Trait.REACH: ("long reach", "short reach"),
        Trait.GETS_LOW: ("gets low", "slow getting low"),
        Trait.FITNESS: ("fit", "tires"),
        Trait.PATIENCE: ("patient", "impatient"),
        Trait.NERVES: ("cool late on", "tight late on"),
        Trait.COMMUNICATION: ("talks well", "talks little"),
    }
)

_HABITS: Mapping[Trait, tuple[str, str]] = MappingProxyType(
    {
        Trait.THIRD_SHOT_DROP: ("drops most thirds", "rarely drops thirds"),
        Trait.LOB: ("lobs a lot", "rarely lobs"),
        Trait.POACHING: ("poaches a lot", "rarely poaches"),
        Trait.ERNIE: ("jumps for Ernies", "no Ernies"),
        Trait.AROUND_POST: ("goes round the post", "rarely goes round the post"),
        Trait.FOOTWORK_KITCHEN_FAULTS: ("kitchen faults", "few kitchen faults"),
        Trait.CRASH: ("crashes behind drives", "rarely crashes"),
        Trait.SQUEEZES_MIDDLE: ("squeezes the middle", "stays wide"),
        Trait.LEAVES_OUT_BALLS: ("leaves out balls", "plays out balls"),
        Trait.TOPSPIN: ("heavy topspin", "hits flat"),
        Trait.STACKS: ("stacks", "rarely stacks"),
    }
)

_FACTS: Mapping[tuple[Trait, Value], str] = MappingProxyType(
    {
        (Trait.HAND, Value.LEFT): "lefty",
        (Trait.HAND, Value.RIGHT): "right-handed",
        (Trait.HAND, Value.AMBIDEXTROUS): "plays with both hands",
        (Trait.SIDE_PLAYED, Value.LEFT): "plays left",
        (Trait.SIDE_PLAYED, Value.RIGHT): "plays right",
        (Trait.TWO_HANDED_BACKHAND, Value.YES): "two-handed backhand",
        (Trait.TWO_HANDED_BACKHAND, Value.NO): "one-handed backhand",
        (Trait.READY_POSITION, Value.FOREHAND): "waits on the forehand",
        (Trait.READY_POSITION, Value.NEUTRAL): "waits neutral",
        (Trait.READY_POSITION, Value.BACKHAND): "waits on the backhand",
        (Trait.HEIGHT, Value.TALL): "tall",
        (Trait.HEIGHT, Value.SHORT): "short",
    }
)


def skill_words(trait: Trait, *, strong: bool) -> str:
    """A skill as a reply says it."""
    strength, weakness = _SKILLS.get(
        trait, (f"strong {TRAITS[trait].label}", f"weak {TRAITS[trait].label}")
    )
    return strength if strong else weakness


def habit_words(trait: Trait, *, often: bool) -> str:
    """A habit as a reply says it."""
    said = _HABITS.get(trait, (f"{TRAITS[trait].label} often", f"{TRAITS[trait].label} rarely"))
    return said[0] if often else said[1]


def trait_words(trait: Trait, *, habit: bool, up: bool, denied: bool = False) -> str:
    """A skill or habit: `up` for strength or often; `denied`: only said not to be the other."""
    if denied and not habit:
        return f"{TRAITS[trait].label} not {'weak' if up else 'strong'}"
    return habit_words(trait, often=up) if habit else skill_words(trait, strong=up)


def fact_words(trait: Trait, value: Value) -> str:
    """A fact as a reply says it."""
    return _FACTS[trait, value]
