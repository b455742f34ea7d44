"""One score of a game: the serve going round until somebody scores, solved in closed form.

p is our rally chance serving, q receiving; f = 1 - p and g = 1 - q are theirs. A cell holds a
value for each way the serve can stand at one score.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Generic, Protocol, TypeAlias

from knowledge.chances.rates import Number

Cell: TypeAlias = tuple[Number, ...]
"""(we serve, they serve), or with two servers (we 1, we 2, they 1, they 2)."""


class ServeLoop(Protocol[Number]):
    """How the serve goes round in one way of scoring."""

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        """The cells of one score of ours, from their highest score down.

        `ours_next` are the cells with one point more for us, `beyond` the cell with one point
        more for them than the first.
        """
        ...

    def rallies_to_a_point(self) -> Cell[Number]:
        """How many rallies are played, on average, until the score changes."""
        ...


class TwoServers(Generic[Number]):
    """Side-out doubles: we 1, we 2, they 1, they 2, and round again.

    With x for a point of ours and y for theirs: we1 = p x1 + f we2, we2 = p x2 + f they1,
    they1 = g y1 + q they2, they2 = g y2 + q we1. Once round gives we1 over 1 - f²q², which is
    (p + fg)(1 + fq) without the cancellation near p = 0, q = 1.
    """

    def __init__(self, p: Number, q: Number) -> None:
        f, g = 1 - p, 1 - q
        self.p, self.q, self.f, self.g = p, q, f, g
        self.round = (p + f * g) * (1 + f * q)
        self.ours, self.theirs = p / self.round, g / self.round

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        p, q, f, g = self.p, self.q, self.f, self.g
        ours, theirs = self.ours, f * f * self.theirs
        _, _, they1, they2 = beyond
        scored = they1 + q * they2
        cells: list[Cell[Number]] = []
        # The sums are shared as far as they can be: the grid of scores is swept here.
        for x1, x2, _, _ in ours_next:
            we1 = ours * (x1 + f * x2) + theirs * scored
            they2 = g * they2 + q * we1
            second = q * they2
            they1 = g * they1 + second
            scored = they1 + second
            cells.append((we1, p * x2 + f * they1, they1, they2))
        return cells

    def rallies_to_a_point(self) -> Cell[Number]:
        q, f, n = self.q, self.f, 1 / self.round
        return (
            n * (1 + f + f * f * (1 + q)),
            n * (1 + f * (1 + q + q * q)),
            n * (1 + q + q * q * (1 + f)),
            n * (1 + q * (1 + f + f * f)),
        )


class OneServer(Generic[Number]):
    """Side-out singles: we = p x + f they, they = g y + q we."""

    def __init__(self, p: Number, q: Number) -> None:
        f, g = 1 - p, 1 - q
        self.p, self.q, self.f, self.g = p, q, f, g
        self.round = p + f * g

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        q, g = self.q, self.g
        ours, theirs = self.p / self.round, self.f * g / self.round
        they = beyond[1]
        cells: list[Cell[Number]] = []
        for x, _ in ours_next:
            we = ours * x + theirs * they
            they = g * they + q * we
            cells.append((we, they))
        return cells

    def rallies_to_a_point(self) -> Cell[Number]:
        return (1 + self.f) / self.round, (1 + self.q) / self.round


class EveryRally(Generic[Number]):
    """Rally scoring: whoever wins the rally scores and serves."""

    def __init__(self, p: Number, q: Number) -> None:
        self.p, self.q, self.f, self.g = p, q, 1 - p, 1 - q

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        p, q, f, g = self.p, self.q, self.f, self.g
        they = beyond[1]
        cells: list[Cell[Number]] = []
        for x, _ in ours_next:
            we, they = p * x + f * they, q * x + g * they
            cells.append((we, they))
        return cells

    def rallies_to_a_point(self) -> Cell[Number]:
        one = self.p * 0 + self.q * 0 + 1
        return one, one


class FrozenGamePoint(Generic[Number]):
    """Rally scoring whose last point counts only on one's own serve: else only the serve moves.

    `won` and `lost` are the ends of the game; a cell next to one is told by identity. Rallies
    that do not score depend on the score here, so `per_rally` is added as they are played.
    """

    def __init__(
        self, p: Number, q: Number, *, won: Cell[Number], lost: Cell[Number], per_rally: int = 0
    ) -> None:
        self.p, self.q, self.f, self.g, self.per_rally = p, q, 1 - p, 1 - q, per_rally
        self.won, self.lost = won, lost

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        cells = []
        for ahead in ours_next:
            beyond = self._cell(ahead, beyond)
            cells.append(beyond)
        return cells

    def _cell(self, ahead: Cell[Number], beyond: Cell[Number]) -> Cell[Number]:
        p, q, f, g, n = self.p, self.q, self.f, self.g, self.per_rally
        x, y = ahead[0], beyond[1]
        ours_is_last, theirs_is_last = ahead is self.won, beyond is self.lost
        if ours_is_last and theirs_is_last:
            we = (p * x + f * g * y + n * (1 + f)) / (p + f * g)
            return we, q * we + g * y + n
        if ours_is_last:
            we = p * x + f * y + n
            return we, q * we + g * y + n
        if theirs_is_last:
            they = q * x + g * y + n
            return p * x + f * they + n, they
        return p * x + f * y + n, q * x + g * y + n

    def rallies_to_a_point(self) -> Cell[Number]:
        """As if nothing were frozen: at the tie every point is won on one's own serve."""
        return EveryRally(self.p, self.q).rallies_to_a_point()


class Counting(Generic[Number]):
    """Another loop whose values grow by the rallies that are played until a point is scored."""

    def __init__(self, loop: ServeLoop[Number]) -> None:
        self.loop = loop

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        rallies, cells = self.loop.rallies_to_a_point(), []
        for ahead in ours_next:
            (cell,) = self.loop.row([ahead], beyond)
            beyond = tuple(value + played for value, played in zip(cell, rallies, strict=True))
            cells.append(beyond)
        return cells

    def rallies_to_a_point(self) -> Cell[Number]:
        return self.loop.rallies_to_a_point()
