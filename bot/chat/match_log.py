"""The score of a match as a fold over its log: entries are the truth, the state follows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import field, replace
from typing import Any

from knowledge.dataclass import dataclass
from knowledge.game import (
    Discipline,
    GameFormat,
    GameState,
    Lineup,
    MatchState,
    PlayedRally,
    RallyRotation,
    Scoring,
    after_saying,
    if_reached,
    start,
    with_server,
)
from knowledge.vocabulary import PlayerId
from scouting_db.values import EntryKind, EntryRow, Winner

OF_VIDEO = "video"
"""Marks the format of a match that is rallies of a video: nobody met in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchLog:
    """What the log of a match comes to.

    `serve_known`: somebody said who serves, or who served first in the game before; until then
    a game is played as if its first server were the guessed one. `on_known_serve` are the
    played rallies without those of such games. `finished` are the games before the current one.
    `lines` counts the log's lines, voided ones and voids included; `is_begun` once any counts.
    `is_serve_open`: we asked who serves at this score, and nobody has said.
    """

    match: MatchState
    serve_known: bool = False
    played: tuple[PlayedRally, ...] = ()
    on_known_serve: tuple[PlayedRally, ...] = ()
    finished: tuple[tuple[int, int], ...] = ()
    lines: int = 0
    is_begun: bool = False
    is_serve_open: bool = False

    @property
    def games(self) -> tuple[tuple[int, int], ...]:
        """The score of every game so far, ours first, the current one last."""
        return (*self.finished, (self.match.game.ours, self.match.game.theirs))

    @property
    def next_game_no(self) -> int:
        """The number of the game that the next rally belongs to, from 1."""
        return self.match.games_ours + self.match.games_theirs + 1 + self.match.game.is_over


def fold(entries: Sequence[EntryRow], format: GameFormat) -> MatchState:
    """The match now, from its unvoided entries in order."""
    return read_log(entries, format).match


def played(entries: Sequence[EntryRow], format: GameFormat) -> tuple[PlayedRally, ...]:
    """Every counted rally with the state before it, across the match's games, oldest first."""
    return read_log(entries, format).played


def played_on_known_serve(
    entries: Sequence[EntryRow], format: GameFormat
) -> tuple[PlayedRally, ...]:
    """The same without rallies whose serve was a guess: what serving and receiving teach."""
    return read_log(entries, format).on_known_serve


def read_log(
    entries: Sequence[EntryRow],
    format: GameFormat,
    *,
    tags: Mapping[int, tuple[str, ...]] | None = None,
) -> MatchLog:
    """What the unvoided entries come to, in order; `tags` of rallies go by entry number.

    Nothing but a corrected score follows the end of a match.
    """
    counted = unvoided(entries)
    reader = _Reader(match=MatchState(game=replace(start(format, we_serve=True), we_started=None)))
    for entry in counted:
        reader.read(entry, (tags or {}).get(entry.n, ()))
    return MatchLog(
        match=reader.match,
        serve_known=reader.serve_known,
        played=tuple(rally for rally, _ in reader.played),
        on_known_serve=tuple(rally for rally, is_known in reader.played if is_known),
        finished=tuple(reader.finished),
        lines=len(entries),
        is_begun=bool(counted),
        is_serve_open=reader.serve_open,
    )


def counted_rallies(entries: Sequence[EntryRow]) -> frozenset[int]:
    """The numbers of the rallies that count.

    What is stored with a rally stays when it is taken back, and is read only of these.
    """
    return frozenset(one.n for one in unvoided(entries) if one.kind is EntryKind.RALLY)


def unvoided(entries: Sequence[EntryRow]) -> tuple[EntryRow, ...]:
    """Entries that count: a void takes its target out, and a void of a void puts it back."""
    dead: set[int] = set()
    for entry in reversed(entries):
        if entry.kind is EntryKind.VOID and entry.n not in dead and entry.voids is not None:
            dead.add(entry.voids)
    return tuple(
        entry for entry in entries if entry.n not in dead and entry.kind is not EntryKind.VOID
    )


@dataclass(slots=True, kw_only=True)
class _Reader:
    """A match as it is read line by line; a match of a hundred rallies is read in a moment."""

    match: MatchState
    serve_known: bool = False
    serve_open: bool = False
    guess: bool = True
    rested: bool = False
    played: list[tuple[PlayedRally, bool]] = field(default_factory=list)
    finished: list[tuple[int, int]] = field(default_factory=list)

    def read(self, entry: EntryRow, tags: tuple[str, ...]) -> None:
        """One line that counts."""
        if self.match.we_won is not None and entry.kind is not EntryKind.SCORE:
            return
        if entry.kind is EntryKind.TIMEOUT:
            self.match = _after_timeout(self.match, ours=entry.won_by is Winner.US)
            self.rested = True
        elif entry.kind in _OF_A_GAME:
            self._between_games()
            game = if_reached(_with_sides(self.match.game, entry), self.match.game)
            self.match = replace(self.match, game=self._moved(game, entry, tags))

    def _moved(self, game: GameState, entry: EntryRow, tags: tuple[str, ...]) -> GameState:
        if entry.kind is not EntryKind.SIDES:
            self.serve_open = _is_marked(entry, ASKED_SERVE)
        match entry.kind:
            case EntryKind.RALLY:
                return self._rally(game, entry, tags)
            case EntryKind.SCORE:
                self.serve_known |= entry.we_serve is not None and not _is_marked(
                    entry, GUESSED_SERVE
                )
                return if_reached(_said(game, entry), game)
            case EntryKind.GAME:
                self.serve_known = entry.we_serve is not None
                opening = start(game.format, we_serve=entry.we_serve is not False)
                return replace(opening, we_started=entry.we_serve, lineup=game.lineup)
            case _:
                return game

    def _rally(self, game: GameState, entry: EntryRow, tags: tuple[str, ...]) -> GameState:
        rally = PlayedRally(
            before=game,
            won_by_us=entry.won_by is Winner.US,
            tags=tags,
            games=(self.match.games_ours, self.match.games_theirs),
            after_timeout=self.rested,
        )
        self.rested = False
        self.played.append((rally, self.serve_known))
        return rally.next

    def _between_games(self) -> None:
        """A finished game is counted when something of the next one comes in.

        Our pair's starter stays until somebody says otherwise; theirs is asked about anew.
        """
        game = self.match.game
        if not game.is_over or self.match.we_won is not None:
            return
        we_serve = self.match.we_serve_next_game
        self.guess = not self.guess
        self.serve_known = we_serve is not None
        self.finished.append((game.ours, game.theirs))
        following = self.match.next_game(we_serve=self.guess if we_serve is None else we_serve)
        opening = replace(following.game, we_started=we_serve, lineup=_carried(game))
        self.match = replace(following, game=opening)


_OF_A_GAME = frozenset({EntryKind.RALLY, EntryKind.SCORE, EntryKind.GAME, EntryKind.SIDES})
"""With the first of them a finished game gives way to the next."""


def _carried(game: GameState) -> Lineup | None:
    if game.lineup is None or game.format.discipline is Discipline.SINGLES:
        return game.lineup
    return replace(game.lineup, their_starter=None, their_partner=None)


def _said(game: GameState, entry: EntryRow) -> GameState:
    """A spoken score sets what it says and keeps the rest."""
    return after_saying(
        game,
        ours=game.ours if entry.ours is None else entry.ours,
        theirs=game.theirs if entry.theirs is None else entry.theirs,
        we_serve=game.we_serve if entry.we_serve is None else entry.we_serve,
        server=entry.server if game.format.has_two_servers else None,
    )


GUESSED_SERVE = "guessed_serve"
ASKED_SERVE = "asked_serve"


def _is_marked(entry: EntryRow, mark: str) -> bool:
    """Whether the entry's serve only follows from a guess, or was asked about."""
    return bool((entry.detail or {}).get(mark))


SERVES = "serves"


def _with_sides(game: GameState, entry: EntryRow) -> GameState:
    """Who of a pair started right in this game, and who serves now, where the entry tells."""
    if not entry.detail:
        return game
    for ours in (True, False):
        starter = _player(entry, f"{_whose(ours)}_starter")
        partner = _player(entry, f"{_whose(ours)}_partner")
        if starter is not None:
            lineup = (game.lineup or Lineup()).with_pair(starter, partner, ours=ours)
            game = replace(game, lineup=lineup)
    serves = _player(entry, SERVES)
    pair = (game.lineup or Lineup()).pair(ours=game.we_serve)
    return with_server(game, serves) if serves is not None and serves in pair else game


def _player(entry: EntryRow, key: str) -> PlayerId | None:
    number = (entry.detail or {}).get(key)
    return PlayerId(number) if isinstance(number, int) else None


def sides_to_json(starter: PlayerId, partner: PlayerId | None, *, ours: bool) -> dict[str, Any]:
    """What an entry tells of who started right; with any entry of the game it may be stored."""
    whose = _whose(ours)
    told = {f"{whose}_starter": starter, f"{whose}_partner": partner}
    return {key: player for key, player in told.items() if player is not None}


def _whose(ours: bool) -> str:
    return "our" if ours else "their"


def _after_timeout(match: MatchState, *, ours: bool) -> MatchState:
    if not match.timeouts_left[0 if ours else 1]:
        return match
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
        "timeouts_each": format.timeouts_each,
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
        timeouts_each=stored.get("timeouts_each"),
    )
