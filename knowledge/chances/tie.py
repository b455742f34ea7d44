"""The tie where two points in a row are needed: in closed form, without going round for ever.

Values: T at the tie, A one point up, B one point down. A point scored from T leads to A or B,
and from there to the end of the game or back to T.
"""

from __future__ import annotations

from knowledge.chances.rates import Number
from knowledge.chances.serve_loop import Cell, EveryRally, OneServer, TwoServers


def tie_of_one_server(loop: OneServer[Number], won: Number, lost: Number) -> Cell[Number]:
    """(we serve, they serve) at the tie of side-out singles."""
    once, n = loop.round, loop.per_rally / loop.round
    return _between_two(
        we_score=(loop.p / once, loop.q * loop.p / once),
        they_score=(loop.f * loop.g / once, loop.g / once),
        rallies=(n * (1 + loop.f), n * (1 + loop.q)),
        ends=(won, lost),
    )


def tie_of_every_rally(loop: EveryRally[Number], won: Number, lost: Number) -> Cell[Number]:
    """The same in rally scoring; game points there are always played on one's own serve."""
    n = loop.per_rally * (loop.p * 0 + 1)
    return _between_two(
        we_score=(loop.p, loop.q), they_score=(loop.f, loop.g), rallies=(n, n), ends=(won, lost)
    )


def _between_two(
    *,
    we_score: tuple[Number, Number],
    they_score: tuple[Number, Number],
    rallies: tuple[Number, Number],
    ends: tuple[Number, Number],
) -> Cell[Number]:
    """Two serve states, each with its chances of who scores next and the rallies until then.

    A = u W + t T', B = u' T + t' L, T = u A + t B and T' = u' A + t' B (with rallies added),
    where ' marks their serve: two equations in T and T', solved by determinants.
    """
    (u, u_), (t, t_), (n, n_), (won, lost) = we_score, they_score, rallies, ends
    known_we = u * (u * won + n) + t * (t_ * lost + n_) + n
    known_they = u_ * (u * won + n) + t_ * (t_ * lost + n_) + n_
    # 1 - t u', without cancellation: t + u and t' + u' are 1.
    stays = u + t * t_
    determinant = stays * stays - u * t * t_ * u_
    return (
        (stays * known_we + u * t * known_they) / determinant,
        (stays * known_they + t_ * u_ * known_we) / determinant,
    )


def tie_of_two_servers(loop: TwoServers[Number], won: Number, lost: Number) -> Cell[Number]:
    """(we 1, we 2, they 1, they 2) at the tie of side-out doubles.

    With D = 1 - f²q², the chances of who scores next, and with which server, are
    ours from ours  (p/D) [[1, f], [f q², 1]],   theirs from ours   (g/D) (f², f)ᵀ (1, q),
    ours from theirs (p/D) (q², q)ᵀ (1, f),      theirs from theirs (g/D) [[1, q], [q f², 1]].
    Two of the four have rank one, so everything hangs on two numbers: what a point against us
    is worth one point up, a = (g/D)(they1 + q they2), and a point for us one point down,
    b = (p/D)(we1 + f we2).

    1. A = W-part + (f², f) a and B = L-part + (q², q) b.
    2. Putting A and B into the tie gives two linear equations in a and b: determinants.
    3. One more step from A and B gives the four values.
    """
    q, f = loop.q, loop.f
    ours, theirs, n = loop.ours, loop.theirs, loop.rallies
    rallies_we = (n * (1 + f + f * f * (1 + q)), n * (1 + f * (1 + q + q * q)))
    rallies_they = (n * (1 + q + q * q * (1 + f)), n * (1 + q * (1 + f + f * f)))

    def from_ours(x1: Number, x2: Number) -> tuple[Number, Number]:
        return ours * (x1 + f * x2), ours * (f * q * q * x1 + x2)

    def from_theirs(y1: Number, y2: Number) -> tuple[Number, Number]:
        return theirs * (y1 + q * y2), theirs * (q * f * f * y1 + y2)

    up1, up2 = _plus(from_ours(won, won), rallies_we)
    down1, down2 = _plus(from_theirs(lost, lost), rallies_they)
    again_we = _plus(from_ours(up1, up2), rallies_we)
    again_they = _plus(from_theirs(down1, down2), rallies_they)
    both = ours * theirs
    stays = 1 - 4 * f * f * q * q * both
    b_in_a = theirs * theirs * q * q * (3 + q * q * f * f)
    a_in_b = ours * ours * f * f * (3 + f * f * q * q)
    known_a = theirs * (2 * q * q * ours * (up1 + f * up2) + again_they[0] + q * again_they[1])
    known_b = ours * (2 * f * f * theirs * (down1 + q * down2) + again_we[0] + f * again_we[1])
    determinant = stays * stays - a_in_b * b_in_a
    a = (stays * known_a + b_in_a * known_b) / determinant
    b = (stays * known_b + a_in_b * known_a) / determinant
    up = ((up1 + f * f * a), up2 + f * a, won, won)
    down = (lost, lost, down1 + q * q * b, down2 + q * b)
    return loop.row([up], down)[0]


def _plus(one: tuple[Number, Number], other: tuple[Number, Number]) -> tuple[Number, Number]:
    return one[0] + other[0], one[1] + other[1]
