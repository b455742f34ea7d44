"""Whose traits we see otherwise after a match than before it, those that moved the most first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from knowledge.dataclass import dataclass
from knowledge.evidence import NOTHING_KNOWN, OPEN_LEVEL, Profile, TraitEstimate
from knowledge.planning.phrases import trait_words
from knowledge.vocabulary import TRAITS, PlayerId, Trait

MOST_MOVED = 3

LEAST_MOVE = 0.02
"""Of a level between -1 and 1: less is the mere ageing of old notes. Our own guess."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A trait's estimate before and after, and how many notes and rallies came in."""

    player: PlayerId
    name: str
    trait: Trait
    habit: bool
    before: TraitEstimate
    after: TraitEstimate

    @property
    def move(self) -> float:
        return self.after.level - self.before.level

    @property
    def notes(self) -> int:
        return max(0, self.after.notes - self.before.notes)

    @property
    def rallies(self) -> int:
        return max(0, self.after.rallies - self.before.rallies)

    @property
    def words(self) -> str:
        """What the estimate says now: "weak backhand dink", or that it settles nothing."""
        if self.after.is_open:
            return f"{TRAITS[self.trait].label} open again"
        if abs(self.after.level) < OPEN_LEVEL:
            return f"{TRAITS[self.trait].label} about average"
        return trait_words(self.trait, habit=self.habit, up=self.after.level > 0)

    @property
    def how(self) -> str:
        """Against what we held before: new, surer, less sure, or turned round."""
        if not self.before.evidence:
            return "new"
        if self.before.level * self.after.level < 0:
            return "turned round"
        return "surer" if abs(self.after.level) > abs(self.before.level) else "less sure"


def moved(before: Iterable[Profile], after: Iterable[Profile]) -> tuple[Moved, ...]:
    """The three traits that moved most, of all these players."""
    earlier = {one.player: one for one in before}
    found = [each for one in after for each in _of(earlier[one.player], one)]
    found.sort(key=lambda one: (-abs(one.move), one.player, one.trait))
    return tuple(found[:MOST_MOVED])


def _of(before: Profile, after: Profile) -> Iterator[Moved]:
    for (trait, habit), estimate in after.skills.items():
        one = Moved(
            player=after.player,
            name=after.name,
            trait=trait,
            habit=habit,
            before=before.skills.get((trait, habit), NOTHING_KNOWN),
            after=estimate,
        )
        if abs(one.move) >= LEAST_MOVE and (one.notes or one.rallies):
            yield one
