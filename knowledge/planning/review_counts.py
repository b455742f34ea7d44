"""What worked in a match and what cost: choices and endings counted, with how many there were."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from knowledge.dataclass import dataclass
from knowledge.vocabulary import Ending, PlayerId, Stroke, Topic

FEWEST = 3
"""Rallies of one choice below which a review is silent on it. Our own guess."""

FEW = 30
"""Below so many of one choice luck tells more than the choice: to see 5 points of difference at
two standard deviations takes some 800 rallies (computed from the binomial)."""

PRIOR_RALLIES = 20.0
"""Rallies at the usual chance that stand beside each count, so that 3 of 3 is not the best."""

SERVING_CHANCE = 0.44
RECEIVING_CHANCE = 0.56
"""The usual chance of a rally by who serves, at level 4.5 and below. Common practice, no source."""

_USUAL = {
    Topic.AIM_SERVE: SERVING_CHANCE,
    Topic.THIRD_SHOT: SERVING_CHANCE,
    Topic.AIM_RETURN: RECEIVING_CHANCE,
}
EVEN = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """One of our choices in a rally, and whether the rally became ours."""

    topic: Topic
    option: str
    against: PlayerId | None
    won: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Ended:
    """How a rally ended, as far as it was told."""

    ending: Ending
    stroke: Stroke | None
    won: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """A choice of ours: rallies won of rallies played with it."""

    topic: Topic
    option: str
    against: PlayerId | None
    won: int
    of: int

    @property
    def excess(self) -> float:
        """How much more than usual came of it, shrunk by how few there were."""
        usual = _USUAL.get(self.topic, EVEN)
        return (self.won - usual * self.of) / (self.of + PRIOR_RALLIES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Endings:
    """Of `of` rallies told: on which stroke ours were won, or theirs given away by us."""

    stroke: Stroke
    count: int
    of: int


def counts(chosen: Iterable[Chosen]) -> tuple[Count, ...]:
    """Every choice made often enough, the one that brought most first."""
    rallies: Counter[tuple[Topic, str, PlayerId | None]] = Counter()
    won: Counter[tuple[Topic, str, PlayerId | None]] = Counter()
    for one in chosen:
        key = (one.topic, one.option, one.against)
        rallies[key] += 1
        won[key] += one.won
    found = [
        Count(topic=key[0], option=key[1], against=key[2], won=won[key], of=of)
        for key, of in rallies.items()
        if of >= FEWEST
    ]
    return tuple(sorted(found, key=lambda one: (-one.excess, one.topic, one.option)))


def best(found: Sequence[Count]) -> Count | None:
    """What brought more than usual, most of all."""
    return found[0] if found and found[0].excess > 0 else None


def worst(found: Sequence[Count]) -> Count | None:
    """What brought less than usual, least of all."""
    return found[-1] if found and found[-1].excess < 0 else None


def our_winners(ended: Iterable[Ended]) -> Endings | None:
    """The stroke that most of our winners were hit with; None below FEWEST."""
    ours = [one for one in ended if one.ending is Ending.WINNER and one.won]
    return _most(ours)


def our_errors(ended: Iterable[Ended]) -> Endings | None:
    """The stroke that most of our errors were made with; None below FEWEST."""
    ours = [one for one in ended if one.ending.is_error and not one.won]
    return _most(ours)


def _most(ended: Sequence[Ended]) -> Endings | None:
    strokes = Counter(one.stroke for one in ended if one.stroke is not None)
    if not strokes:
        return None
    stroke, count = min(strokes.items(), key=lambda each: (-each[1], each[0]))
    return Endings(stroke=stroke, count=count, of=len(ended)) if count >= FEWEST else None
