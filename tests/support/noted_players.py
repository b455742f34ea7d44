"""People with notes in words, for tests of plans: `player(3, "Okafor", Side.LEFT, "hand left")`."""

from __future__ import annotations

from itertools import count

from knowledge.evidence import Observation, profile
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import EvidenceId, PlayerId, Seen, Side, Topic, Trait, Value

TODAY = 739_000
"""An ordinal day."""

_NUMBERS = count(1)


def note(player: int, claim: str) -> Observation:
    """An observation from "trait value [by AUTHOR] [N days ago]"."""
    trait, value, *more = claim.split()
    author = more[more.index("by") + 1] if "by" in more else "mira"
    age = int(more[more.index("days") - 1]) if "days" in more else 1
    return Observation(
        evidence=EvidenceId(f"note:{next(_NUMBERS)}:1"),
        player=PlayerId(player),
        trait=Trait(trait),
        value=Value(value),
        weight=1.0,
        seen=Seen.LIVE,
        author=author,
        day=TODAY - age,
        words=claim,
    )


def player(number: int, name: str, side: Side | None, *claims: str) -> OnCourt:
    """A player with one note per claim."""
    notes = [note(number, claim) for claim in claims]
    return OnCourt(profile=profile(PlayerId(number), name, notes, today=TODAY), side=side)


def often_noted(claim: str, times: int = 5) -> tuple[str, ...]:
    """The same claim by several people, so that its level is high."""
    return tuple(f"{claim} by watcher{number}" for number in range(times))


MIRA = player(1, "Mira", Side.RIGHT, "hand right")
TOM = player(2, "Tom", Side.LEFT, "hand left")


def match(
    topic: Topic,
    *theirs: OnCourt,
    ours: tuple[OnCourt, ...] = (MIRA, TOM),
) -> Situation:
    """Our pair against theirs."""
    return Situation(topic=topic, ours=ours, theirs=theirs, today=TODAY)
