"""Players with notes for tests: invented people, every note of ours, seen live yesterday."""

from __future__ import annotations

from collections.abc import Iterable

from knowledge.evidence import Observation, profile
from knowledge.situation import OnCourt
from knowledge.vocabulary import EvidenceId, Hand, PlayerId, Seen, Side, Tag, Trait, Value

TODAY = 739_000

Noted = tuple[Trait, Value, int]
"""A trait, what the notes say of it, and how many notes of different days say so."""


def observation(
    trait: Trait,
    value: Value,
    *,
    player: int = 1,
    number: int = 1,
    age_days: int = 0,
    weight: float = 1.0,
    seen: Seen = Seen.LIVE,
    author: str = "mira",
    denied: bool = False,
    tag: Tag | None = None,
) -> Observation:
    """One observation `age_days` before TODAY."""
    return Observation(
        evidence=EvidenceId(f"note:{number}:1"),
        player=PlayerId(player),
        trait=trait,
        value=value,
        weight=weight,
        seen=seen,
        author=author,
        day=TODAY - age_days,
        words="",
        tag=tag,
        denied=denied,
    )


def player(
    number: int,
    name: str,
    *,
    hand: Hand | None = None,
    side: Side | None = None,
    noted: Iterable[Noted] = (),
) -> OnCourt:
    """A player on court with a hand, a side and notes."""
    wanted = list(noted)
    if hand is not None:
        wanted.append((Trait.HAND, Value(hand.value), 1))
    observations = [
        observation(
            trait, value, player=number, number=1000 * number + 10 * row + day, age_days=day
        )
        for row, (trait, value, days) in enumerate(wanted)
        for day in range(days)
    ]
    return OnCourt(profile=profile(PlayerId(number), name, observations, today=TODAY), side=side)
