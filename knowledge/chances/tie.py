"""The tie where two points in a row are needed: in closed form, without going round for ever.

Values: T at the tie, A one point up, B one point down. A point scored from T leads to A or B,
and from there to the end of the game or back to T. `rallies` is what is added until each next
point, by how the serve stands: nothing for a win chance.
"""

from __future__ import annotations

from knowledge.chances.rates import Number
from knowledge.chances.serve_loop import Cell, EveryRally, FrozenGamePoint, OneServer, TwoServers


def tie_of_one_server(
    loop: OneServer[Number], won: Number, lost: Number, rallies: Cell[Number]
) -> Cell[Number]:
    """(we serve, they serve) at the tie of side-out singles."""
    once = loop.round
    return _between_two(
        we_score=(loop.p / once, loop.q * loop.p / once),
        they_score=(loop.f * loop.g / once, loop.g / once),
        rallies=rallies,
        ends=(won, lost),
    )


def tie_of_every_rally(
    loop: EveryRally[Number] | FrozenGamePoint[Number],
    won: Number,
    lost: Number,
    rallies: Cell[Number],
) -> Cell[Number]:
    """The same in rally scoring; game points there are always played on one's own serve."""
    return _between_two(
        we_score=(loop.p, loop.q),
        they_score=(loop.f, loop.g),
        rallies=rallies,
        ends=(won, lost),
    )


def _between_two(
    *,
    we_score: tuple[Number, Number],
    they_score: tuple[Number, Number],
    rallies: Cell[Number],
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


def tie_of_two_servers(
    loop: TwoServers[Number], won: Number, lost: Number, rallies: Cell[Number]
) -> Cell[Number]:
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
    q, f, ours, theirs = loop.q, loop.f, loop.ours, loop.theirs
    n1, n2, m1, m2 = rallies
    won_by, lost_by = f * q * q, q * f * f
    up1, up2 = ours * won * (1 + f) + n1, ours * won * (won_by + 1) + n2
    down1, down2 = theirs * lost * (1 + q) + m1, theirs * lost * (lost_by + 1) + m2
    again_we1 = ours * (up1 + f * up2) + n1
    again_we2 = ours * (won_by * up1 + up2) + n2
    again_they1 = theirs * (down1 + q * down2) + m1
    again_they2 = theirs * (lost_by * down1 + down2) + m2
    ff, qq, both = f * f, q * q, ours * theirs
    stays = 1 - 4 * ff * qq * both
    b_in_a = theirs * theirs * qq * (3 + qq * ff)
    a_in_b = ours * ours * ff * (3 + ff * qq)
    known_a = theirs * (2 * qq * ours * (up1 + f * up2) + again_they1 + q * again_they2)
    known_b = ours * (2 * ff * theirs * (down1 + q * down2) + again_we1 + f * again_we2)
    determinant = stays * stays - a_in_b * b_in_a
    a = (stays * known_a + b_in_a * known_b) / determinant
    b = (stays * known_b + a_in_b * known_a) / determinant
    up, down = (up1 + ff * a, up2 + f * a), (down1 + qq * b, down2 + q * b)
    (we1, we2, they1, they2) = loop.row([(*up, won, won)], (lost, lost, *down))[0]
    return we1 + n1, we2 + n2, they1 + m1, they2 + m2
