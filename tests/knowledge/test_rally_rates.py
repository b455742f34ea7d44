"""What a told rally says of rates: worked by hand from who must serve and return by the rulebook.

Sources: one player serves, from the court that the score gives, and the receiver diagonally across
must return after the bounce (national rulebook, serving sequence and two-bounce rule, from
memory); so every rally is serve, return, third, and each of them is a datum only of the ball that
was played. The examples are worked by hand. That an error is one player's and not the partner's
is common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest

from knowledge.rally_rates import RateSaid, ToldRally, ended_by, rates_of
from knowledge.vocabulary import Ending, PlayerId, Rate, Stroke

MIRA, TOM, OKAFOR, HALE = (PlayerId(n) for n in (1, 2, 3, 4))
SERVED = ToldRally(
    serving=(MIRA, TOM), receiving=(OKAFOR, HALE), won_by_serving=True, server=MIRA, receiver=HALE
)
"""Mira serves to Hale; won by the serving side unless replaced."""

LOST = replace(SERVED, won_by_serving=False)

IN, RETURN, DEEP, THIRD, STEADY = (
    Rate.SERVE_IN,
    Rate.RETURN_IN,
    Rate.RETURN_DEEP,
    Rate.THIRD_FORWARD,
    Rate.STEADY,
)
MISS, FORCED, WINNER = Ending.UNFORCED_ERROR, Ending.FORCED_ERROR, Ending.WINNER


def said(rally: ToldRally) -> set[tuple[PlayerId, Rate, bool]]:
    return {(one.player, one.rate, one.made) for one in rates_of(rally)}


@pytest.mark.parametrize(
    ("rally", "worked"),
    [
        # A missed serve is the server's, and nobody returned anything.
        (
            replace(LOST, ending=MISS, stroke=Stroke.SERVE),
            {(MIRA, IN, False), (MIRA, STEADY, False), (TOM, STEADY, True)},
        ),
        # An ace went in; that it came back or not says nothing of the receiver's return.
        (replace(SERVED, ending=WINNER, stroke=Stroke.SERVE), {(MIRA, IN, True)}),
        # A return error is the receiver's, off a serve that went in.
        (
            replace(SERVED, ending=MISS, stroke=Stroke.RETURN),
            {
                (MIRA, IN, True), (HALE, RETURN, False),
                (HALE, STEADY, False), (OKAFOR, STEADY, True),
            },
        ),
        # A dink error comes after serve and return.
        (
            replace(SERVED, ending=FORCED, by=OKAFOR, stroke=Stroke.DINK),
            {(MIRA, IN, True), (HALE, RETURN, True), (OKAFOR, STEADY, False), (HALE, STEADY, True)},
        ),
        # The third missed by Tom: his side lost it by an error, and did not get forward.
        (
            replace(LOST, ending=MISS, by=TOM, stroke=Stroke.THIRD),
            {
                (MIRA, IN, True), (HALE, RETURN, True), (TOM, THIRD, False),
                (TOM, STEADY, False), (MIRA, STEADY, True),
            },
        ),
        # Somebody's third, nobody knows whose: nothing of thirds or of steadiness.
        (
            replace(LOST, ending=MISS, stroke=Stroke.THIRD),
            {(MIRA, IN, True), (HALE, RETURN, True)},
        ),
        # Their winner, with no stroke told: they hit the ball after the serve, so both went in.
        (replace(LOST, ending=WINNER), {(MIRA, IN, True), (HALE, RETURN, True)}),
        # Our winner, with no stroke told, may have been an ace: only the serve surely went in.
        (replace(SERVED, ending=WINNER), {(MIRA, IN, True)}),
        # Our error, with no stroke told, may have been the serve; theirs may have been the return.
        (replace(LOST, ending=MISS), set()),
        (replace(SERVED, ending=MISS), {(MIRA, IN, True)}),
        (
            replace(SERVED, ending=MISS, by=OKAFOR),
            {(MIRA, IN, True), (OKAFOR, STEADY, False), (HALE, STEADY, True)},
        ),
        # A deep return went in; so did the serve before it.
        (
            replace(SERVED, is_deep=True),
            {(MIRA, IN, True), (HALE, DEEP, True), (HALE, RETURN, True)},
        ),
        (
            replace(LOST, is_deep=False),
            {(MIRA, IN, True), (HALE, DEEP, False), (HALE, RETURN, True)},
        ),
        # The third got us in: serve and return were in play.
        (
            replace(SERVED, forward=True, third_by=MIRA),
            {(MIRA, IN, True), (HALE, RETURN, True), (MIRA, THIRD, True)},
        ),
        (replace(LOST, forward=False), {(MIRA, IN, True), (HALE, RETURN, True)}),
        # Only counted: nothing.
        (SERVED, set()),
        (LOST, set()),
    ],
)  # fmt: skip
def test_worked_by_hand(rally: ToldRally, worked: set[tuple[PlayerId, Rate, bool]]) -> None:
    assert said(rally) == worked


def all_rallies() -> list[ToldRally]:
    """Every told rally there can be of these four, whoever is known to serve and return."""
    return [
        ToldRally(
            serving=(MIRA, TOM), receiving=(OKAFOR, HALE), won_by_serving=won, server=server,
            receiver=receiver, ending=ending, by=by, stroke=stroke, is_deep=deep, forward=forward,
        )
        for won, server, receiver, ending, by, stroke, deep, forward in product(
            (True, False), (None, MIRA), (None, HALE), (None, *Ending),
            (None, MIRA, TOM, OKAFOR, HALE), (None, *Stroke), (None, True), (None, False),
        )
    ]  # fmt: skip


def test_what_ended_on_the_serve_says_nothing_of_the_return() -> None:
    for rally in all_rallies():
        goes_on = rally.is_deep is not None or rally.forward is not None
        if rally.stroke is Stroke.SERVE and rally.ending and not goes_on:
            assert not {RETURN, DEEP} & {one.rate for one in rates_of(rally)}, rally


def test_a_rate_is_said_once_and_of_the_right_side() -> None:
    """The receiving side serves nothing, the serving side returns nothing, unless told by name."""
    for rally in all_rallies():
        found = rates_of(rally)
        assert len({(one.player, one.rate) for one in found}) == len(found), rally
        for one in found:
            if one.rate is DEEP:
                assert one.player in rally.receiving
            if rally.by is None and one.rate in (IN, RETURN):
                assert one.player in (rally.serving if one.rate is IN else rally.receiving)


def test_one_is_not_steady_and_the_other_is() -> None:
    for rally in all_rallies():
        steady = [one for one in rates_of(rally) if one.rate is STEADY]
        assert len(steady) in (0, 2)
        assert [one.made for one in steady].count(True) == len(steady) // 2
        if steady:
            losers = rally.receiving if rally.won_by_serving else rally.serving
            assert {one.player for one in steady} == {*losers}


def test_who_serves_not_known_leaves_the_serve_and_the_return_out() -> None:
    rally = replace(SERVED, server=None, receiver=None, ending=MISS, stroke=Stroke.RETURN)
    assert rates_of(rally) == ()
    assert ended_by(rally) is None
    named = replace(rally, by=OKAFOR)
    assert RateSaid(player=OKAFOR, rate=RETURN, made=False) in rates_of(named)


def test_alone_nobody_is_the_partner() -> None:
    """Singles: the error is the player's, and nobody else is steady for it."""
    rally = ToldRally(
        serving=(MIRA,), receiving=(HALE,), won_by_serving=True, server=MIRA, receiver=HALE,
        ending=MISS, stroke=Stroke.DROP, by=HALE,
    )  # fmt: skip
    assert said(rally) == {(MIRA, IN, True), (HALE, RETURN, True), (HALE, STEADY, False)}
