"""Players' own rates from logged rallies, and what others' rallies add, for who asks why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType

from knowledge.evidence import RATE_TRAIT, RateEstimate, RateRing, Ring
from knowledge.odds_words import of_hundred
from knowledge.situation import OnCourt
from knowledge.sources import Source
from knowledge.vocabulary import EvidenceId, Rate

_DONE: Mapping[Rate, str] = MappingProxyType(
    {
        Rate.SERVE_IN: "serves in",
        Rate.RETURN_IN: "returns in",
        Rate.RETURN_DEEP: "returns deep",
        Rate.THIRD_FORWARD: "thirds that got them forward",
        Rate.STEADY: "lost rallies that ended on the partner",
    }
)


def rate_words(rate: Rate) -> str:
    """A rate as a reply says it: "returns deep"."""
    return _DONE[rate]


RATE_RANGE = 0.8
"""The chance that a rate lies in the range given for it."""


def rate_lines(people: Sequence[OnCourt]) -> tuple[str, ...]:
    """A line per rate of each player: as counted, and as believed with its range."""
    return tuple(
        _rate_line(one.name, rate) for one in people for rate in one.profile.rates.values()
    )


def _rate_line(name: str, rate: RateEstimate) -> str:
    """ "Okafor: returns in 17 of 20; about 91 of 100, 86 to 95." """
    low, high = (of_hundred(each) for each in rate.interval(RATE_RANGE))
    counted = f"{name}: {_DONE[rate.rate]} {rate.made} of {rate.of}"
    return f"{counted}; about {of_hundred(rate.mean)} of 100, {low} to {high}"


def rate_numbers(people: Sequence[OnCourt]) -> dict[str, float]:
    """Each rate with its range and its counts, by name."""
    numbers: dict[str, float] = {}
    for one in people:
        for rate, found in one.profile.rates.items():
            name = f"{one.name}.{rate}"
            low, high = found.interval(RATE_RANGE)
            numbers |= {
                f"{name}_rate": found.mean,
                f"{name}_rate_low": low,
                f"{name}_rate_high": high,
                f"{name}_made": found.made,
                f"{name}_of": found.of,
            }
    return numbers


def others_lines(people: Iterable[OnCourt], named: Iterable[Source]) -> tuple[str, ...]:
    """A line per ring around each player of whom a named source rests on rallies."""
    said = frozenset(source.evidence for source in named)
    return tuple(line for one in people for line in _of_player(one, said))


def _of_player(one: OnCourt, said: frozenset[tuple[EvidenceId, ...]]) -> Iterator[str]:
    for rate, rings in one.profile.others.items():
        skill = one.profile.skill(RATE_TRAIT[rate])
        if skill.rallies and skill.evidence in said:
            for ring in rings:
                yield _line(one.name, rate, ring)


def _line(name: str, rate: Rate, told: RateRing) -> str:
    """ "Others like Okafor: 3 fewer returns in of 30 than usual, counted 40%." """
    count, excess = round(abs(told.count.excess)), told.count.excess
    who = f"Others like {name}" if told.ring is Ring.ALIKE else f"Everybody but {name}"
    part = f"counted {100 * told.count.part:.0f}%"
    if not count:
        return f"{who}: {_DONE[rate]} as usual, of {told.rallies}, {part}."
    more = "more" if excess > 0 else "fewer"
    return f"{who}: {count} {more} {_DONE[rate]} of {told.rallies} than usual, {part}."
