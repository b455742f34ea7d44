"""The guessing game solved exactly: its value, our mix, their guesses, and what a habit costs.

They lower one option by guessing it, so the game is solved like water poured into basins:

1. Leave out the options that cost nothing when guessed; the best of them is worth its chance z.
2. Take the others from the best unguessed chance a down while a > v, with
   S = sum of 1/c and v = (sum of a/c - 1)/S over those taken.
3. If z > v, play z on every ball: guessing cannot hurt it.
4. Otherwise our shares are (1/c)/S, and they guess each with (a - v)/c.

Then no option of ours does better than v against their guesses, and no guess of theirs holds our
shares below v: the minimax theorem (von Neumann 1928, from memory). Among the options that are
in, our shares depend on c alone: who is weak shows in which are in, and in what a guess costs.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from itertools import accumulate
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.effects import OptionId
from knowledge.mixing.guessing import Guessable, payoffs, unguessed_chances
from knowledge.vocabulary import RallyChance

LEAST_COST = 1e-6
"""A cost below this (a ten-thousandth of a rally point) is none."""

SAME_SHARE = 1e-9
"""Shares this close are equal."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mix:
    """How to vary, and what it is worth.

    `shares` are ours and `guesses` theirs, by option, 0 for one that is out. `value` is our
    chance whatever they guess. `pattern_loss` is the chance that the recent pattern gives away
    to the best reply, 0 without one; `worth` what mixing gains over the best single option
    once they know it.
    """

    options: tuple[Guessable, ...]
    value: RallyChance
    shares: Mapping[OptionId, float]
    guesses: Mapping[OptionId, float]
    pattern_loss: float
    worth: float

    @property
    def by_share(self) -> tuple[OptionId, ...]:
        """The options that are in, most often first; of equal shares the better estimate leads."""
        into = [one for one in self.options if self.shares[one.option] > 0]
        into.sort(
            key=lambda one: (
                -round(self.shares[one.option] / SAME_SHARE),
                -one.chance,
                one.option,
            )
        )
        return tuple(one.option for one in into)

    @property
    def is_every_ball(self) -> bool:
        """Whether one option is right on every ball, until they move."""
        return len(self.by_share) == 1


def mix_of(options: Sequence[Guessable]) -> Mix:
    """The mix of these options. ValueError for none, or two of one name."""
    if not options:
        raise ValueError("a mix needs an option")
    if len({one.option for one in options}) < len(options):
        raise ValueError(f"two options share a name: {[one.option for one in options]}")
    unguessed = unguessed_chances(options)
    taken, value = _poured(options, unguessed)
    sure = _guess_proof(options)
    if sure is not None and (not taken or unguessed[sure] >= value):
        taken, value = {sure}, unguessed[sure]
    shares = _shares(options, taken)
    return Mix(
        options=tuple(options),
        value=RallyChance(value),
        shares=_by_option(options, shares),
        guesses=_by_option(options, _guesses(options, unguessed, shares, value)),
        pattern_loss=_recent_loss(options, value),
        worth=max(0.0, value - max(min(row) for row in payoffs(options))),
    )


def _by_option(options: Sequence[Guessable], values: Sequence[float]) -> Mapping[OptionId, float]:
    return MappingProxyType({one.option: value for one, value in zip(options, values, strict=True)})


def _shares(options: Sequence[Guessable], taken: Set[int]) -> list[float]:
    """Ours: the less a guess costs, the more often; one that is in alone is every ball."""
    if len(taken) == 1:
        return [float(place in taken) for place in range(len(options))]
    total = sum(1 / options[place].cost for place in taken)
    return [1 / one.cost / total if place in taken else 0.0 for place, one in enumerate(options)]


def _guesses(
    options: Sequence[Guessable],
    unguessed: Sequence[float],
    shares: Sequence[float],
    value: float,
) -> list[float]:
    """Theirs: each option pressed down to the value; what is left over changes nothing."""
    guesses = [
        max(0.0, (chance - value) / one.cost) if one.cost >= LEAST_COST else 0.0
        for one, chance in zip(options, unguessed, strict=True)
    ]
    most_played = max(range(len(options)), key=shares.__getitem__)
    guesses[most_played] += max(0.0, 1 - sum(guesses))
    return guesses


def _poured(options: Sequence[Guessable], unguessed: Sequence[float]) -> tuple[set[int], float]:
    """Which options with a cost are in among themselves, and the level v that they reach."""
    costly = [place for place, one in enumerate(options) if one.cost >= LEAST_COST]
    taken: set[int] = set()
    inverse = weighted = 0.0
    level = float("-inf")
    for place in sorted(costly, key=lambda place: -unguessed[place]):
        if unguessed[place] <= level:
            break
        taken.add(place)
        inverse += 1 / options[place].cost
        weighted += unguessed[place] / options[place].cost
        level = (weighted - 1) / inverse
    return taken, level


def _guess_proof(options: Sequence[Guessable]) -> int | None:
    """The best option that guessing costs nothing."""
    free = [place for place, one in enumerate(options) if one.cost < LEAST_COST]
    return max(free, key=lambda place: options[place].chance, default=None)


def pattern_loss_of(mix: Mix, shares: Mapping[OptionId, float]) -> float:
    """Chance that these shares give away to the best reply, against the mix: v - min over g."""
    return _loss(mix.options, [shares.get(one.option, 0.0) for one in mix.options], mix.value)


def _recent_loss(options: Sequence[Guessable], value: float) -> float:
    total = sum(one.recent for one in options)
    return _loss(options, [one.recent / total for one in options], value) if total else 0.0


def _loss(options: Sequence[Guessable], shares: Sequence[float], value: float) -> float:
    matrix = payoffs(options)
    worst = min(
        sum(share * row[guess] for share, row in zip(shares, matrix, strict=True))
        for guess in range(len(options))
    )
    return max(0.0, value - worst)


def of_ten(shares: Mapping[OptionId, float]) -> dict[OptionId, int]:
    """Counts that add up to ten, by largest remainder; among equals the earlier one gets more."""
    exact = {option: 10 * share for option, share in shares.items()}
    counts = {option: int(value + SAME_SHARE) for option, value in exact.items()}
    by_remainder = sorted(exact, key=lambda option: -round((exact[option] - counts[option]) * 1e9))
    for option in by_remainder[: 10 - sum(counts.values())]:
        counts[option] += 1
    return counts


def drawn(shares: Mapping[OptionId, float], uniform: float) -> OptionId:
    """The option that a number in [0, 1) draws from shares; ValueError for another number."""
    if not 0 <= uniform < 1:
        raise ValueError(f"a draw lies in [0, 1), not at {uniform}")
    into = [option for option, share in shares.items() if share > 0]
    for option, reached in zip(into, accumulate(shares[option] for option in into), strict=True):
        if uniform < reached:
            return option
    return into[-1]
