"""Who stands where at a score: server, receiver and courts by the rulebook, and stacked places."""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.game.formats import Discipline
from knowledge.game.state import GameState
from knowledge.vocabulary import PlayerId, Side


@dataclass(frozen=True, slots=True, kw_only=True)
class PairPlaces:
    """A pair's correct courts, and which of the two must play from theirs.

    `bound` is the server of the serving pair or the receiver of the receiving pair: only that
    player's place is fixed; the partner may stand anywhere (2025 edition, 4.B.6 and 4.B.7).
    """

    starter_court: Side
    bound_is_starter: bool
    bound_court: Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Places:
    """Both pairs' places before the serve."""

    serving: PairPlaces
    receiving: PairPlaces
    we_serve: bool

    @property
    def ours(self) -> PairPlaces:
        return self.serving if self.we_serve else self.receiving

    @property
    def theirs(self) -> PairPlaces:
        return self.receiving if self.we_serve else self.serving


def places(state: GameState) -> Places | None:
    """Places before the serve; None in doubles where the call does not settle who serves.

    The receiver stands diagonally from the server: right faces right, as both count their own
    courts facing the net.
    """
    court = state.serving_court
    if court is None:
        return None
    return Places(
        serving=_pair(state, ours=state.we_serve, bound_court=court),
        receiving=_pair(state, ours=not state.we_serve, bound_court=court),
        we_serve=state.we_serve,
    )


def _pair(state: GameState, *, ours: bool, bound_court: Side) -> PairPlaces:
    if state.format.discipline is Discipline.SINGLES:
        return PairPlaces(starter_court=bound_court, bound_is_starter=True, bound_court=bound_court)
    starter = state.starter_court(ours=ours)
    return PairPlaces(
        starter_court=starter, bound_is_starter=starter is bound_court, bound_court=bound_court
    )


def server(state: GameState) -> PlayerId | None:
    """The player who must serve; None without a lineup or where the call does not settle it."""
    return _bound_player(state, ours=state.we_serve)


def receiver(state: GameState) -> PlayerId | None:
    """The player who must receive; None without a lineup or where the call does not settle it."""
    return _bound_player(state, ours=not state.we_serve)


def _bound_player(state: GameState, *, ours: bool) -> PlayerId | None:
    at = places(state)
    if at is None or state.lineup is None:
        return None
    pair = at.ours if ours else at.theirs
    starter, partner = _pair_of(state, ours=ours)
    return starter if pair.bound_is_starter else partner


def courts(state: GameState, *, ours: bool) -> dict[Side, PlayerId] | None:
    """Which of the pair correctly stands in which court; None without a lineup.

    In doubles side-out this needs only the pair's own score, whoever serves; in singles both
    players' court is that of the server's score.
    """
    if state.lineup is None:
        return None
    starter, partner = _pair_of(state, ours=ours)
    if state.format.discipline is Discipline.SINGLES:
        both = state.serving_court
        return None if both is None else {both: starter}
    court = state.starter_court(ours=ours)
    return {court: starter, court.other: partner}


def _pair_of(state: GameState, *, ours: bool) -> tuple[PlayerId, PlayerId]:
    assert state.lineup is not None
    if ours:
        return state.lineup.our_starter, state.lineup.our_partner
    return state.lineup.their_starter, state.lineup.their_partner


@dataclass(frozen=True, slots=True, kw_only=True)
class StackedPlaces:
    """Where a stacking pair stands before the ball is struck, and where each then plays.

    `plays` gives the court each ends up in; `stands_out` is the partner of the bound player
    when both start on one side (standing outside the sideline), None when no move is needed.
    """

    bound: PlayerId
    bound_court: Side
    plays: tuple[tuple[PlayerId, Side], tuple[PlayerId, Side]]
    stands_out: PlayerId | None


def stacked(state: GameState, *, ours: bool, plays_left: PlayerId) -> StackedPlaces | None:
    """Places of a pair that always wants `plays_left` in the left court.

    Serving, the server serves from the court the score gives and both then go to their
    places; receiving, the receiver returns from the court the score gives and then crosses.
    None without a lineup or where the server is not settled; ValueError for a player who is
    not of that pair.
    """
    bound = _bound_player(state, ours=ours)
    at = places(state)
    if bound is None or at is None:
        return None
    pair = _pair_of(state, ours=ours)
    if plays_left not in pair:
        raise ValueError(f"player {plays_left} is not of that pair")
    plays_right = pair[1] if plays_left == pair[0] else pair[0]
    bound_court = (at.ours if ours else at.theirs).bound_court
    wanted = Side.LEFT if bound == plays_left else Side.RIGHT
    partner = plays_right if bound == plays_left else plays_left
    return StackedPlaces(
        bound=bound,
        bound_court=bound_court,
        plays=((plays_left, Side.LEFT), (plays_right, Side.RIGHT)),
        stands_out=None if wanted is bound_court else partner,
    )
