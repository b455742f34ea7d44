"""Who stands where at a score: server, receiver and courts by the rulebook, and stacked places."""

from __future__ import annotations

from knowledge.dataclass import dataclass
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
    """Places before the serve; None in doubles where the score does not settle who plays.

    The receiver stands diagonally from the server: right faces right, as both count their own
    courts facing the net.
    """
    serving, receiving = (_pair(state, ours=ours) for ours in (state.we_serve, not state.we_serve))
    if serving is None or receiving is None:
        return None
    return Places(serving=serving, receiving=receiving, we_serve=state.we_serve)


def _pair(state: GameState, *, ours: bool) -> PairPlaces | None:
    """One pair's places; they may be known where the other pair's are not."""
    court = state.serving_court
    if court is None:
        return None
    if state.format.discipline is Discipline.SINGLES:
        return PairPlaces(starter_court=court, bound_is_starter=True, bound_court=court)
    starter = state.starter_court(ours=ours)
    if starter is None:
        return None
    return PairPlaces(starter_court=starter, bound_is_starter=starter is court, bound_court=court)


def server(state: GameState) -> PlayerId | None:
    """The player who must serve; None where the lineup or the score does not settle it."""
    return _bound_player(state, ours=state.we_serve)


def receiver(state: GameState) -> PlayerId | None:
    """The player who must receive; None where the lineup or the score does not settle it."""
    return _bound_player(state, ours=not state.we_serve)


def _bound_player(state: GameState, *, ours: bool) -> PlayerId | None:
    pair = _pair(state, ours=ours)
    if pair is None or state.lineup is None:
        return None
    starter, partner = state.lineup.pair(ours=ours)
    return starter if pair.bound_is_starter else partner


def courts(state: GameState, *, ours: bool) -> dict[Side, PlayerId] | None:
    """Which of the pair correctly stands in which court, as far as known; None where nobody is.

    In doubles side-out this needs only the pair's own score, whoever serves; in singles both
    players' court is that of the server's score.
    """
    if state.lineup is None:
        return None
    starter, partner = state.lineup.pair(ours=ours)
    if state.format.discipline is Discipline.SINGLES:
        court, partner = state.serving_court, None
    else:
        court = state.starter_court(ours=ours)
    if court is None:
        return None
    standing = {court: starter, court.other: partner}
    return {side: player for side, player in standing.items() if player is not None} or None


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
    None in singles, without the pair's lineup, or where the score does not settle who plays;
    ValueError for a player who is not of that pair.
    """
    if state.format.discipline is Discipline.SINGLES:
        return None
    bound, bound_court = _bound_player(state, ours=ours), state.serving_court
    pair = (None, None) if state.lineup is None else state.lineup.pair(ours=ours)
    if plays_left not in pair and None not in pair:
        raise ValueError(f"player {plays_left} is not of that pair")
    plays_right = pair[1] if plays_left == pair[0] else pair[0]
    if bound is None or bound_court is None or plays_right is None:
        return None
    wanted = Side.LEFT if bound == plays_left else Side.RIGHT
    partner = plays_right if bound == plays_left else plays_left
    return StackedPlaces(
        bound=bound,
        bound_court=bound_court,
        plays=((plays_left, Side.LEFT), (plays_right, Side.RIGHT)),
        stands_out=None if wanted is bound_court else partner,
    )
