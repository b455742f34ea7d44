"""What a score said aloud settles: points, serve and server, and where players then stand."""

from __future__ import annotations

from dataclasses import replace

from knowledge.game.formats import Discipline, GameFormat
from knowledge.game.state import (
    GameState,
    Lineup,
    after,
    court_of_parity,
    side_out,
    start,
    with_rally_server,
)
from knowledge.game.swaps import courts_fit, with_courts_that_follow, with_starter
from knowledge.vocabulary import PlayerId, Side


def state_at(
    format: GameFormat,
    *,
    ours: int,
    theirs: int,
    we_serve: bool,
    server: int | None = None,
    we_started: bool | None = None,
    lineup: Lineup | None = None,
) -> GameState:
    """A game known by its score alone: whatever the rules do not settle from it is None.

    Doubles side-out: the courts follow from the score, which partner serves mostly does not.
    Doubles rally scoring: the server's court follows, who stands in it mostly does not.
    """
    state = with_courts_that_follow(
        GameState(
            format=format,
            ours=ours,
            theirs=theirs,
            we_serve=we_serve,
            server=server,
            we_started=we_started,
            our_starter_right=None,
            their_starter_right=None,
            lineup=lineup,
        )
    )
    return state if format.has_two_servers else with_rally_server(state)


def after_saying(
    game: GameState, *, ours: int, theirs: int, we_serve: bool, server: int | None
) -> GameState:
    """The game once that score was said; without a server number the one before stands.

    1. At 0-0 of a game not begun it says who serves first.
    2. A score that is the one before, or one rally or a side-out on from it, keeps what was
       known of who stands where.
    3. Any other is a correction: only what the score itself settles is known.
    """
    number = game.server if server is None else server
    said = (ours, theirs, we_serve, number if game.format.has_two_servers else None)
    opening = start(game.format, we_serve=we_serve, lineup=game.lineup)
    if is_opening(game) and said == _said_of(opening):
        return opening
    if not (is_opening(game) and game.we_started is None):
        for reached in _soon_after(game):
            if said == _said_of(reached):
                return reached
    return state_at(
        game.format,
        ours=ours,
        theirs=theirs,
        we_serve=we_serve,
        server=said[-1],
        we_started=game.we_started,
        lineup=game.lineup,
    )


def _said_of(game: GameState) -> tuple[int, int, bool, int | None]:
    """What a spoken score can say of a state."""
    return game.ours, game.theirs, game.we_serve, game.server


def _soon_after(game: GameState) -> tuple[GameState, ...]:
    if game.is_over:
        return (game,)
    one_on = tuple(after(game, won_by_us=won) for won in (True, False))
    return (game, *one_on, side_out(game)) if game.format.has_two_servers else (game, *one_on)


def is_opening(game: GameState) -> bool:
    """Whether nothing of the game was played yet, also where nobody said who serves first."""
    opening = start(game.format, we_serve=game.we_serve, lineup=game.lineup)
    return game in (opening, replace(opening, we_started=None))


def with_server(game: GameState, player: PlayerId) -> GameState:
    """The game once it is told by name who serves, where the score left that open.

    Where it did not, as behind a side-out at 0, it is who started right that was told wrongly:
    the pair is turned round, since what was said last counts and the other of the two can't serve.
    In rally scoring that tells where the pair stands; what was held of the other pair gives way
    where it cannot be so as well.
    ValueError for somebody whom the lineup does not have in the serving pair.
    """
    lineup = game.lineup or Lineup()
    pair = lineup.pair(ours=game.we_serve)
    if player not in pair:
        raise ValueError(f"player {player} is not of the serving pair")
    is_starter, by_call = player == pair[0], game.call_names_starter
    if game.format.has_two_servers and by_call not in (None, is_starter):
        turned = lineup.turned(ours=game.we_serve)
        return replace(game, starter_serves=by_call, lineup=turned)
    known = replace(game, starter_serves=is_starter)
    if game.format.has_two_servers or game.format.discipline is Discipline.SINGLES:
        return known
    is_right = (court_of_parity(game.serving_points) is Side.RIGHT) is is_starter
    known = with_starter(known, is_right=is_right, ours=game.we_serve)
    if not courts_fit(known):
        known = with_starter(known, is_right=None, ours=not game.we_serve)
    return with_courts_that_follow(known)
