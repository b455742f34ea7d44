"""The two rally chances everything here is computed from, and what they may be."""

from __future__ import annotations

from typing import Any, Protocol, Self, TypeVar, cast

import numpy as np

from knowledge.dataclass import dataclass
from knowledge.vocabulary import POINT


class Arithmetic(Protocol):
    """What a chance must be able to do: the closed forms are plain arithmetic on it."""

    def __add__(self, other: Any, /) -> Self: ...
    def __radd__(self, other: Any, /) -> Self: ...
    def __sub__(self, other: Any, /) -> Self: ...
    def __rsub__(self, other: Any, /) -> Self: ...
    def __mul__(self, other: Any, /) -> Self: ...
    def __rmul__(self, other: Any, /) -> Self: ...
    def __truediv__(self, other: Any, /) -> Self: ...
    def __rtruediv__(self, other: Any, /) -> Self: ...


Number = TypeVar("Number", bound=Arithmetic)
"""One chance, an exact fraction, an array of chances (or a complex number, for a slope)."""


class RateError(ValueError):
    """A rally chance that is none: outside 0 to 1, or not a number."""


class EndlessGameError(ValueError):
    """Whoever serves always loses the rally, in a format where such a game never ends."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RallyRates:
    """Our chance to win a rally when we serve, and when they serve; RateError outside 0 to 1."""

    serving: float
    receiving: float

    def __post_init__(self) -> None:
        checked(self.serving, self.receiving)

    def of_rally(self, *, we_serve: bool) -> float:
        """Our chance to win a rally on that side's serve."""
        return self.serving if we_serve else self.receiving

    def shifted(self, serving_points: float, receiving_points: float) -> RallyRates:
        """The rates so many rally points higher (or lower), within 0 to 1."""
        return RallyRates(
            serving=within_0_and_1(self.serving + serving_points * POINT),
            receiving=within_0_and_1(self.receiving + receiving_points * POINT),
        )


def checked(serving: Number, receiving: Number) -> None:
    """RateError, naming the number, unless both lie in 0 to 1 everywhere."""
    for name, rate in (("serving", serving), ("receiving", receiving)):
        if not _everywhere(_is_chance(rate)):
            raise RateError(f"a chance of winning a rally {name} lies in 0 to 1, not {rate}")


def never_scores(serving: Number, receiving: Number) -> bool:
    """Whether the serving side always loses the rally, so that only the serve changes hands."""
    lost: Any = serving
    won: Any = receiving
    return not _everywhere((lost.real != 0) | (won.real != 1))


def _is_chance(rate: Any) -> Any:
    if isinstance(rate, float):
        return 0 <= rate <= 1
    return (rate.real >= 0) & (rate.real <= 1)


def _everywhere(holds: Any) -> bool:
    return holds if holds is True or holds is False else bool(np.all(holds))


def within_0_and_1(chance: Number) -> Number:
    """The chance without what rounding put beyond its limits; exact fractions need nothing."""
    if isinstance(chance, float):
        return cast(Number, min(max(chance, 0.0), 1.0))
    if isinstance(chance, np.ndarray) and chance.dtype.kind == "f":
        return cast(Number, chance.clip(0.0, 1.0))
    return chance
