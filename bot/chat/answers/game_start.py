"""Who serves and stands where, as told: first server, starters, and who of a pair serves now."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import after_entry, already_counted, sides_of_first, with_score
from bot.chat.answers.no_match import no_match
from bot.chat.answers.scoreboard import PAIR
from bot.chat.match_log import SERVES, sides_to_json
from bot.chat.reply import Reply
from bot.chat.said import ServerSaid, StarterSaid
from bot.chat.wording import wording
from knowledge.game import Discipline, GameState, Lineup, is_opening, server
from knowledge.vocabulary import PlayerId
from scouting_db.values import EntryKind, EntryRow, MatchId


def start_game(desk: Desk, *, we_serve: bool, match: MatchId, game_no: int = 1) -> Reply:
    """The first serve is ours or theirs; once a rally was played, the button is an old one."""
    if match != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    log = desk.log()
    game = log.match.game
    if game_no != log.next_game_no or not (game.is_over or is_opening(game)):
        return with_score(desk, match, wording("unclear.too_old"))
    if not game.is_over and log.serve_known and game.we_serve is we_serve:
        return already_counted(desk, match)
    return open_game(desk, match, we_serve=we_serve)


def open_game(desk: Desk, match: MatchId, *, we_serve: bool) -> Reply:
    """A game whose first server is told."""
    log = desk.log()
    row = desk.book.append(
        match,
        EntryKind.GAME,
        game_no=log.next_game_no,
        we_serve=we_serve,
        detail=sides_of_first(desk, log) or None,
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)


def starts_right(
    desk: Desk, *, ours: bool, player: PlayerId, match: MatchId, game_no: int
) -> Reply:
    """Who of a pair started right in this game; a button of an earlier game is an old one."""
    pair = desk.ours if ours else desk.context.theirs
    log = desk.log()
    is_now = match == desk.context.match and game_no == log.next_game_no
    is_doubles = log.match.format.discipline is Discipline.DOUBLES
    if not is_now or not is_doubles or player not in pair or len(pair) != PAIR:
        return Reply(text=wording("unclear.too_old"))
    partner = next(one for one in pair if one != player)
    known = (log.match.game.lineup or Lineup()).pair(ours=ours)
    if known == (player, partner) and not log.match.game.is_over:
        return already_counted(desk, match)
    row = desk.book.append(
        match,
        EntryKind.SIDES,
        game_no=game_no,
        detail=sides_to_json(player, partner, ours=ours),
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)


def take_starter(desk: Desk, said: StarterSaid) -> Reply:
    """The same in words; who starts on the left leaves the right to the partner."""
    match, player = desk.context.match, said.mention.players[0]
    ours = player in desk.ours
    pair = desk.ours if ours else desk.context.theirs
    if match is None:
        return no_match(desk)
    if len(pair) != PAIR:
        return with_score(desk, match, wording("match.whose_partner"))
    right = player if said.is_right else next(one for one in pair if one != player)
    return starts_right(desk, ours=ours, player=right, match=match, game_no=desk.log().next_game_no)


def take_server(desk: Desk, said: ServerSaid) -> Reply:
    """Who serves now, in words: before the first rally who starts right, later who of the pair.

    The other side's player tells that the serve has changed sides. Who serves by the log already
    is only told so.
    """
    match, player = desk.context.match, said.mention.players[0]
    if match is None:
        return no_match(desk)
    ours, log = player in desk.ours, desk.log()
    game = log.match.game
    pair = desk.ours if ours else desk.context.theirs
    if said.first and not (game.is_over or is_opening(game)):
        # In mid-game it tells who began it, and began it on the right.
        return take_starter(desk, StarterSaid(text=said.text, mention=said.mention, is_right=True))
    if not game.is_over and log.serve_known and server(game) == player:
        return with_score(desk, match, wording("score.counted_so"))
    if game.is_over or is_opening(game):
        return _first_server(desk, match, ours=ours, player=player)
    is_singles = game.format.discipline is Discipline.SINGLES
    is_new = is_singles and player not in _pair_of(game, ours=ours)
    same_side = game.we_serve is ours
    first_after = None if same_side or not game.format.has_two_servers else 1
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        game_no=log.next_game_no,
        ours=game.ours,
        theirs=game.theirs,
        server=game.server if first_after is None else first_after,
        we_serve=ours,
        detail=sides_to_json(player, None, ours=ours) if is_new else None,
        inbox=desk.inbox,
    )
    assert isinstance(row, EntryRow), "an entry without an expected number always lands"
    if is_singles or server(desk.log().match.game) == player:
        return after_entry(desk, match, row)
    named = _serves(desk, match, player, pair)
    return after_entry(desk, match, named, also=[row.n])


def name_server(desk: Desk, match: MatchId, player: PlayerId) -> EntryRow | None:
    """Who of the pair serves at the score just set; None if known, or if it is not their serve."""
    game, ours = desk.log().match.game, player in desk.ours
    pair = desk.ours if ours else desk.context.theirs
    is_doubles = game.format.discipline is Discipline.DOUBLES
    if game.is_over or game.we_serve is not ours or server(game) == player or not is_doubles:
        return None
    return _serves(desk, match, player, pair) if len(pair) == PAIR else None


def _serves(desk: Desk, match: MatchId, player: PlayerId, pair: Sequence[PlayerId]) -> EntryRow:
    told = _sides_by_server(desk.log().match.game, player, pair)
    row = desk.book.append(
        match,
        EntryKind.SIDES,
        game_no=desk.log().next_game_no,
        detail={**told, SERVES: player},
        inbox=desk.inbox,
    )
    assert isinstance(row, EntryRow), "an entry without an expected number always lands"
    return row


def _sides_by_server(game: GameState, player: PlayerId, pair: Sequence[PlayerId]) -> dict[str, Any]:
    """Who of the serving pair started right, by who serves now; nothing where that was told.

    Where it is the starter's partner who has to serve, whoever is named is that partner.
    """
    if player in _pair_of(game, ours=game.we_serve):
        return {}
    partner = next((one for one in pair if one != player), None)
    if game.server_is_starter is False and partner is not None:
        return sides_to_json(partner, player, ours=game.we_serve)
    return sides_to_json(player, partner, ours=game.we_serve)


def _pair_of(game: GameState, *, ours: bool) -> tuple[PlayerId | None, ...]:
    return (game.lineup or Lineup()).pair(ours=ours)


def _first_server(desk: Desk, match: MatchId, *, ours: bool, player: PlayerId) -> Reply:
    """Who serves first stands right (2025 rulebook: the first server starts on the right)."""
    log = desk.log()
    pair = desk.ours if ours else desk.context.theirs
    is_singles = log.match.format.discipline is Discipline.SINGLES
    partner = None if is_singles else next((one for one in pair if one != player), None)
    row = desk.book.append(
        match,
        EntryKind.GAME,
        game_no=log.next_game_no,
        we_serve=ours,
        detail={**sides_of_first(desk, log), **sides_to_json(player, partner, ours=ours)},
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)


def serves_now(desk: Desk, *, player: PlayerId, match: MatchId, expected: int) -> Reply:
    """Which of the serving pair serves, where a said score left it open."""
    log = desk.log()
    game = log.match.game
    pair = (game.lineup or Lineup()).pair(ours=game.we_serve)
    if match != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    if expected != log.lines + 1 or player not in pair or game.is_over:
        return with_score(desk, match, wording("unclear.too_old"))
    row = desk.book.append(
        match,
        EntryKind.SIDES,
        expected=expected,
        game_no=log.next_game_no,
        detail={SERVES: player},
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)
