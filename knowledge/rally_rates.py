"""What one told rally says of the players' rates: serves and returns in, depth, thirds, steadiness.

Only of rallies of which somebody told how they went: one that was merely counted says nothing.
What would have to be guessed is left out too: an error of the serving side with no stroke told may
have been the serve, one of the receiving side the return.

1. The serve goes first and one player makes it (national rulebook, from memory): a rally that
   ended with the serve's fault is a serve missed; any that went on is one made.
2. The return is the receiver's, after the bounce (two-bounce rule, from memory); a rally that
   ended on the serve, ace or fault, says nothing of the return.
3. A return called deep or short went in.
4. A third counts as forward where it is told to have got its side to the line, not where it came
   too high, kept them back, or was missed by somebody named.
5. An error ends on one player's paddle and not on the partner's: one is steady, the other not.
"""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.dataclass import dataclass
from knowledge.vocabulary import Ending, PlayerId, Rate, Stroke

Pair = tuple[PlayerId, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldRally:
    """A rally as told. `server` and `receiver` are None where the score does not settle them.

    `by` is who hit the winner or made the error. `is_deep` tells of the return, `forward` whether
    the third got its side to the line and `third_by` who hit it.
    """

    serving: Pair
    receiving: Pair
    won_by_serving: bool
    server: PlayerId | None = None
    receiver: PlayerId | None = None
    ending: Ending | None = None
    by: PlayerId | None = None
    stroke: Stroke | None = None
    is_deep: bool | None = None
    forward: bool | None = None
    third_by: PlayerId | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RateSaid:
    """One datum: the player did it, or failed to."""

    player: PlayerId
    rate: Rate
    made: bool


def rates_of(rally: ToldRally) -> tuple[RateSaid, ...]:
    """What the rally says of anybody's rates; empty where nothing of it was told."""
    return tuple(
        RateSaid(player=player, rate=rate, made=made)
        for player, rate, made in (
            *_serve(rally),
            *_return(rally),
            *_third(rally),
            *_steady(rally),
        )
        if player is not None
    )


def ended_by(rally: ToldRally) -> PlayerId | None:
    """Whose winner or error it was: told, or settled by who serves and who receives."""
    if rally.by is not None or rally.ending is None:
        return rally.by
    if rally.stroke is Stroke.SERVE and _is_by_serving(rally):
        return rally.server
    return rally.receiver if rally.stroke is Stroke.RETURN and not _is_by_serving(rally) else None


_Datum = tuple[PlayerId | None, Rate, bool]


def _is_by_serving(rally: ToldRally) -> bool:
    """Whether the side that ended it, by winner or error, is the serving one."""
    assert rally.ending is not None, "asked of a rally whose ending is known"
    return rally.won_by_serving is not rally.ending.is_error


def _serve(rally: ToldRally) -> Iterator[_Datum]:
    is_missed = rally.stroke is Stroke.SERVE and rally.ending is not None and rally.ending.is_error
    if is_missed:
        # Whoever is said to have missed it served, whatever the score makes of it.
        yield ended_by(rally), Rate.SERVE_IN, False
    elif _went_past_serve(rally):
        yield rally.server, Rate.SERVE_IN, True


def _went_past_serve(rally: ToldRally) -> bool:
    """Whether the serve surely went in."""
    if rally.is_deep is not None or rally.forward is not None:
        return True
    if rally.ending is None:
        return False
    if rally.stroke is None:
        return not (rally.ending.is_error and _is_by_serving(rally))
    return True


def _return(rally: ToldRally) -> Iterator[_Datum]:
    ended = rally.ending is not None and rally.stroke is Stroke.RETURN
    if ended and rally.ending is not None and rally.ending.is_error:
        yield ended_by(rally), Rate.RETURN_IN, False
        return
    if rally.is_deep is not None:
        yield rally.receiver, Rate.RETURN_DEEP, rally.is_deep
    if _went_past_return(rally):
        yield rally.receiver, Rate.RETURN_IN, True


def _went_past_return(rally: ToldRally) -> bool:
    """Whether the return surely went in."""
    if rally.is_deep is not None or rally.forward is not None:
        return True
    if rally.ending is None or rally.stroke is Stroke.SERVE:
        return False
    if rally.stroke is None:
        return not rally.ending.is_error and not _is_by_serving(rally)
    return True


def _third(rally: ToldRally) -> Iterator[_Datum]:
    ended = rally.stroke is Stroke.THIRD and rally.ending is not None
    by = rally.by if ended else None
    if ended and rally.ending is not None and rally.ending.is_error:
        yield by, Rate.THIRD_FORWARD, False
    elif rally.forward is not None:
        yield rally.third_by or by, Rate.THIRD_FORWARD, rally.forward


def _steady(rally: ToldRally) -> Iterator[_Datum]:
    by = ended_by(rally)
    if rally.ending is None or not rally.ending.is_error or by is None:
        return
    losers = rally.receiving if rally.won_by_serving else rally.serving
    if by not in losers:
        return
    for player in losers:
        yield player, Rate.STEADY, player != by
