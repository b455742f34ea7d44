"""The score of a match as a fold over its log: entries are the truth, the state follows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from knowledge.game import (
    Discipline,
    GameFormat,
    GameState,
    MatchState,
    RallyRotation,
    Scoring,
    after,
    side_out,
    start,
)
from scouting_db.values import EntryKind, EntryRow, Winner


def fold(entries: Sequence[EntryRow], format: GameFormat) -> MatchState:
    """The match now, from its unvoided entries in order.

    A rally tapped before anybody said who serves starts the game on our serve, as `start`
    does; a `score` entry sets what it says and keeps the rest.
    """
    match = MatchState(game=start(format, we_serve=True))
    for entry in unvoided(entries):
        match = _step(match, entry)
    return match


def unvoided(entries: Sequence[EntryRow]) -> tuple[EntryRow, ...]:
    """Entries that count: a void takes its target out, and a void of a void puts it back."""
    dead: set[int] = set()
    for entry in reversed(entries):
        if entry.kind is EntryKind.VOID and entry.n not in dead and entry.voids is not None:
            dead.add(entry.voids)
    return tuple(
        entry for entry in entries if entry.n not in dead and entry.kind is not EntryKind.VOID
    )


def _step(match: MatchState, entry: EntryRow) -> MatchState:
    if entry.kind is EntryKind.RALLY:
        return _after_rally(match, won_by_us=entry.won_by is Winner.US)
    if entry.kind is EntryKind.SCORE:
        return replace(match, game=_said(_between_games(match).game, entry))
    if entry.kind is EntryKind.GAME:
        return _new_game(match, entry)
    if entry.kind is EntryKind.TIMEOUT:
        return _after_timeout(match, ours=entry.won_by is Winner.US)
    return match


def _after_rally(match: MatchState, *, won_by_us: bool) -> MatchState:
    match = _between_games(match)
    return replace(match, game=after(match.game, won_by_us=won_by_us))


def _between_games(match: MatchState) -> MatchState:
    """A finished game is counted when something of the next one comes in."""
    won = match.game.we_won
    if won is None or match.we_won is not None:
        return match
    started = match.game.we_started
    return match.next_game(we_serve=True if started is None else not started)


def _said(game: GameState, entry: EntryRow) -> GameState:
    """The state a spoken score gives: who of the serving pair serves is then not known."""
    ours = game.ours if entry.ours is None else entry.ours
    theirs = game.theirs if entry.theirs is None else entry.theirs
    we_serve = game.we_serve if entry.we_serve is None else entry.we_serve
    server = entry.server if game.format.has_two_servers else None
    if (ours, theirs, we_serve, server) == _told(game):
        return game
    if (ours, theirs, we_serve, server) == _told(other := side_out(game)):
        return other
    if _is_opening(game) and (ours, theirs, server) == (0, 0, game.server):
        return start(game.format, we_serve=we_serve)
    return replace(
        game,
        ours=ours,
        theirs=theirs,
        we_serve=we_serve,
        server=game.server if server is None else server,
        starter_serves=None if game.format.has_two_servers else True,
    )


def _told(game: GameState) -> tuple[int, int, bool, int | None]:
    """What a spoken score can say of a state."""
    return game.ours, game.theirs, game.we_serve, game.server


def _is_opening(game: GameState) -> bool:
    """Whether nothing of the game was played yet."""
    return game == start(game.format, we_serve=game.we_serve)


def _new_game(match: MatchState, entry: EntryRow) -> MatchState:
    match = _between_games(match)
    we_serve = True if entry.we_serve is None else entry.we_serve
    return replace(match, game=start(match.format, we_serve=we_serve))


def _after_timeout(match: MatchState, *, ours: bool) -> MatchState:
    if ours:
        return replace(match, timeouts_used_ours=match.timeouts_used_ours + 1)
    return replace(match, timeouts_used_theirs=match.timeouts_used_theirs + 1)


def format_to_json(format: GameFormat) -> dict[str, Any]:
    """What is stored with a match."""
    return {
        "target": format.target,
        "win_by": format.win_by,
        "cap": format.cap,
        "scoring": format.scoring.value,
        "discipline": format.discipline.value,
        "best_of": format.best_of,
        "freeze_on_serve": format.freeze_on_serve,
        "rally_rotation": format.rally_rotation.value,
    }


def format_from_json(stored: Mapping[str, Any]) -> GameFormat:
    """The format of a stored match; the common one where nothing is said."""
    return GameFormat(
        target=stored.get("target", 11),
        win_by=stored.get("win_by", 2),
        cap=stored.get("cap"),
        scoring=Scoring(stored.get("scoring", Scoring.SIDE_OUT)),
        discipline=Discipline(stored.get("discipline", Discipline.DOUBLES)),
        best_of=stored.get("best_of", 3),
        freeze_on_serve=stored.get("freeze_on_serve", False),
        rally_rotation=RallyRotation(stored.get("rally_rotation", RallyRotation.SWAP_ON_OWN_SERVE)),
    )
