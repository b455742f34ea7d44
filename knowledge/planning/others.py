"""What others' rallies add to a player's own rates, said in a line per ring for who asks why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType

from knowledge.evidence import RATE_TRAIT, RateRing, Ring
from knowledge.situation import OnCourt
from knowledge.vocabulary import EvidenceId, Rate

_DONE: Mapping[Rate, str] = MappingProxyType(
    {
        Rate.SERVE_IN: "serves in",
        Rate.RETURN_IN: "returns in",
        Rate.RETURN_DEEP: "returns deep",
        Rate.THIRD_FORWARD: "thirds that got them forward",
    }
)


def others_lines(people: Iterable[OnCourt], named: Iterable[EvidenceId]) -> tuple[str, ...]:
    """A line per ring around each player of whom reasons name rallies that tell of a rate."""
    said = frozenset(named)
    return tuple(line for one in people for line in _of_player(one, said))


def _of_player(one: OnCourt, said: frozenset[EvidenceId]) -> Iterator[str]:
    for rate, rings in one.profile.others.items():
        skill = one.profile.skill(RATE_TRAIT[rate])
        if skill.rallies and not said.isdisjoint(skill.evidence):
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
