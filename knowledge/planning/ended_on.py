"""On whose paddle their lost rallies ended: one effect, about the less steady of the two."""

from __future__ import annotations

from collections.abc import Iterable

from knowledge.effects import Effect, EffectId, Mechanism, OptionId, Points, TraitScale
from knowledge.evidence.rates import FEWEST_RALLIES
from knowledge.situation import OnCourt
from knowledge.sources import COMMON_PRACTICE
from knowledge.vocabulary import Rate

ENDED_ON = Points(mean=4, sd=2.5)
"""Row 25's size, for one on whom their lost rallies end as often as on hardly anybody: whatever
the shot is, that player is the weaker one in it. Common practice, no source."""


def ended_on(target: OnCourt, partner: OnCourt | None, *, on: Iterable[OptionId]) -> Effect | None:
    """What logged rallies say for playing at the target; None where the partner is no steadier,
    or where too few ended on either.

    A rally that ended on the one did not end on the other: it may not speak twice.
    """
    rate = target.profile.settled.get(Rate.STEADY)
    if rate is None or rate.of < FEWEST_RALLIES:
        return None
    other = None if partner is None else partner.profile.settled.get(Rate.STEADY)
    if other is not None and other.as_level.level <= rate.as_level.level:
        return None
    ended = rate.of - rate.made
    return Effect(
        id=EffectId(f"ended on:{target.player}"),
        on=frozenset(on),
        points=ENDED_ON,
        mechanism=Mechanism.THEIR_ERROR,
        because=f"{ended} of {rate.of} lost rallies ended on {target.name}",
        source=COMMON_PRACTICE,
        scale=TraitScale(estimate=rate.as_level, towards=-1, player=target.player),
    )
