"""With which hand and on which side somebody plays: what makes players, and pairs, alike."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from knowledge.evidence import Observation, Peers, RateCount, estimate_fact, peers_of
from knowledge.vocabulary import Hand, PlayerId, Side, Trait

Stances = Mapping[PlayerId, tuple[Hand | None, Side | None]]
"""Hand and side, as far as either is known."""


def stances_of(said: Iterable[Observation], *, today: int) -> Stances:
    """Of everybody of whom these notes tell either."""
    noted: dict[tuple[PlayerId, Trait], list[Observation]] = {}
    for one in said:
        noted.setdefault((one.player, one.trait), []).append(one)
    facts = {key: estimate_fact(group, today=today) for key, group in noted.items()}
    known = {key: fact.known for key, fact in facts.items() if fact and fact.known}
    return {
        player: (
            Hand(hand) if (hand := known.get((player, Trait.HAND))) else None,
            Side(side) if (side := known.get((player, Trait.SIDE_PLAYED))) else None,
        )
        for player in dict.fromkeys(player for player, _ in known)
    }


def peers_known(counts: Iterable[RateCount], stances: Stances, *, today: int) -> Peers:
    """Everybody's counts, with whom it is known of how they stand."""
    known = {
        player: (hand, side)
        for player, (hand, side) in stances.items()
        if hand is not None and side is not None
    }
    return peers_of(counts, known, today=today)
