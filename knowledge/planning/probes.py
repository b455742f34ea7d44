"""What to look at when the book is empty: three things, in the warm-up and the first points."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.advice import Choice, Reason
from knowledge.situation import OnCourt
from knowledge.sources import COMMON_PRACTICE
from knowledge.vocabulary import Topic, Trait, Value

PROBES: tuple[Reason, ...] = (
    Reason(text="Lefty? Two-handed backhand?", source=COMMON_PRACTICE),
    Reason(text="Who hurries forward, who stays?", source=COMMON_PRACTICE),
    Reason(text="Speed up once at each hip: who's late?", source=COMMON_PRACTICE),
)
"""Hand, feet, hands: they change the most calls."""

_HANDS = PROBES[-1]


def probes(theirs: Sequence[OnCourt]) -> tuple[Reason, ...]:
    """Those that are still worth a look: nobody speeds up at hands that are noted as quick, and no
    hand is looked for that is known.
    """
    which, *others = PROBES
    wings = _which_hand(theirs) if theirs else (which,)
    unknown = [one for one in theirs if not has_quick_hands(one)]
    if len(unknown) == len(theirs):
        return (*wings, *others)
    at = tuple(
        replace(_HANDS, text=f"Speed up once at {one.name}: late?") for one in unknown if one.name
    )
    return (*wings, *others[:-1], *at)


def _which_hand(theirs: Sequence[OnCourt]) -> tuple[Reason, ...]:
    """What is left to see of their hands: of one alone by name, and nothing once all is known."""
    which = PROBES[0]
    unknown = [one for one in theirs if one.hand is None]
    if len(unknown) == len(theirs):
        return (which,)
    if unknown:
        return tuple(replace(which, text=f"Is {one.name} a lefty?") for one in unknown if one.name)
    is_open = any(one.profile.fact(Trait.TWO_HANDED_BACKHAND) is None for one in theirs)
    return (replace(which, text="Who hits a two-handed backhand?"),) if is_open else ()


def has_quick_hands(one: OnCourt) -> bool:
    """Whether notes agree on a strong counter."""
    counter = one.profile.skill(Trait.COUNTER)
    return bool(counter.evidence) and counter.level > 0 and not counter.is_open


MEANWHILE = "Till then: deep returns, middle thirds."


def hand_choices(players: Sequence[OnCourt], topic: Topic) -> tuple[Choice, ...]:
    """A button per opponent whose hand is not known."""
    return tuple(
        Choice(
            label=f"{one.name} is lefty",
            topic=topic,
            fact=Trait.HAND.value,
            value=Value.LEFT.value,
            about=one.player,
        )
        for one in players
        if one.hand is None
    )
