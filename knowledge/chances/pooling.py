"""What rallies against other pairs say of the two rally chances against this one."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from knowledge.chances.belief import Beta, RallyTally, RateBelief
from knowledge.dataclass import dataclass
from knowledge.evidence.rings import RING_PART, Ring, RingCount, moved_mean


@dataclass(frozen=True, slots=True, kw_only=True)
class RingTally:
    """Rallies of one match against another pair, and how near that pair is to this one."""

    ring: Ring
    tally: RallyTally


def pooled_prior(prior: RateBelief, rings: Iterable[RingTally]) -> RateBelief:
    """The prior of these two, moved by what happened against others; as heavy as before."""
    told = tuple(rings)
    return RateBelief(
        serving=_moved(prior.serving, told, serving=True),
        receiving=_moved(prior.receiving, told, serving=False),
    )


def _moved(belief: Beta | float, rings: Sequence[RingTally], *, serving: bool) -> Beta | float:
    if not isinstance(belief, Beta) or not rings:
        return belief
    counts = [_count(one, belief.mean, serving=serving) for one in rings]
    mean = moved_mean(belief.mean, belief.rallies, counts)
    return Beta(wins=mean * belief.rallies, losses=(1 - mean) * belief.rallies)


def _count(one: RingTally, expected: float, *, serving: bool) -> RingCount:
    tally = one.tally
    won, lost = (
        (tally.served_won, tally.served_lost)
        if serving
        else (tally.received_won, tally.received_lost)
    )
    return RingCount(
        made=tally.weight * won,
        of=tally.weight * (won + lost),
        expected=expected,
        part=RING_PART[one.ring],
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class RingSum:
    """One ring in all: rallies there, how many more were won than expected, what one counts."""

    ring: Ring
    rallies: int
    excess: float
    part: float


def ring_sums(prior: RateBelief, rings: Iterable[RingTally]) -> tuple[RingSum, ...]:
    """Each ring that has rallies, the nearest first; exact rates have no excess to tell."""
    if not (isinstance(prior.serving, Beta) and isinstance(prior.receiving, Beta)):
        return ()
    told = tuple(rings)
    means = {True: prior.serving.mean, False: prior.receiving.mean}
    found = []
    for ring in Ring:
        inside = [one for one in told if one.ring is ring]
        rallies = sum(one.tally.rallies for one in inside)
        excess = sum(
            _count(one, mean, serving=serving).excess
            for one in inside
            for serving, mean in means.items()
        )
        if rallies:
            found.append(RingSum(ring=ring, rallies=rallies, excess=excess, part=RING_PART[ring]))
    return tuple(found)
