"""One score of a game: the serve going round until somebody scores, solved in closed form.

p is our rally chance serving, q receiving; f = 1 - p and g = 1 - q are theirs. A cell holds a
value for each way the serve can stand at one score. A value is a win chance, or an expected
number of rallies; then every rally adds `per_rally`.
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


class TwoServers(Generic[Number]):
    """Side-out doubles: we 1, we 2, they 1, they 2, and round again.

    With x for a point of ours and y for theirs: we1 = p x1 + f we2, we2 = p x2 + f they1,
    they1 = g y1 + q they2, they2 = g y2 + q we1. Once round gives we1 over 1 - f²q², which is
    (p + fg)(1 + fq) without the cancellation near p = 0, q = 1.
    """

    def __init__(self, p: Number, q: Number, per_rally: int = 0) -> None:
        f, g = 1 - p, 1 - q
        once = (p + f * g) * (1 + f * q)
        self.p, self.q, self.f, self.g, self.per_rally = p, q, f, g, per_rally * (p * 0 + 1)
        self.ours, self.theirs = p / once, g / once
        self.rallies = self.per_rally / once

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        p, q, f, g, n = self.p, self.q, self.f, self.g, self.per_rally
        x1_share, x2_share = self.ours, f * self.ours
        y1_share, y2_share = f * f * self.theirs, f * f * q * self.theirs
        taken = (1 + f + f * f * (1 + q)) * self.rallies
        _, _, they1, they2 = beyond
        cells: list[Cell[Number]] = []
        for x1, x2, _, _ in ours_next:
            we1 = x1_share * x1 + x2_share * x2 + y1_share * they1 + y2_share * they2 + taken
            they2 = g * they2 + q * we1 + n
            they1 = g * they1 + q * they2 + n
            cells.append((we1, p * x2 + f * they1 + n, they1, they2))
        return cells


class OneServer(Generic[Number]):
    """Side-out singles: we = p x + f they, they = g y + q we."""

    def __init__(self, p: Number, q: Number, per_rally: int = 0) -> None:
        f, g = 1 - p, 1 - q
        self.p, self.q, self.f, self.g, self.per_rally = p, q, f, g, per_rally * (p * 0 + 1)
        self.round = p + f * g

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        p, q, f, g, n = self.p, self.q, self.f, self.g, self.per_rally
        they = beyond[1]
        cells: list[Cell[Number]] = []
        for x, _ in ours_next:
            we = (p * x + f * g * they + n * (1 + f)) / self.round
            they = g * they + q * we + n
            cells.append((we, they))
        return cells


class EveryRally(Generic[Number]):
    """Rally scoring: whoever wins the rally scores and serves."""

    def __init__(self, p: Number, q: Number, per_rally: int = 0) -> None:
        self.p, self.q, self.f, self.g, self.per_rally = p, q, 1 - p, 1 - q, per_rally

    def row(self, ours_next: Sequence[Cell[Number]], beyond: Cell[Number]) -> list[Cell[Number]]:
        p, q, f, g, n = self.p, self.q, self.f, self.g, self.per_rally
        they = beyond[1]
        cells: list[Cell[Number]] = []
        for x, _ in ours_next:
            we, they = p * x + f * they + n, q * x + g * they + n
            cells.append((we, they))
        return cells


class FrozenGamePoint(Generic[Number]):
    """Rally scoring whose last point counts only on one's own serve: else only the serve moves.

    `won` and `lost` are the ends of the game; a cell next to one is told by identity.
    """

    def __init__(
        self,
        p: Number,
        q: Number,
        per_rally: int = 0,
        *,
        won: Cell[Number],
        lost: Cell[Number],
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
