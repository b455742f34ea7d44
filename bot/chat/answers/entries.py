"""What a new line of the match log brings: the score told, an undo, and the match's end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.coachs_pairs import of_which_pair
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.match_curve import match_picture
from bot.chat.answers.pool_order import move_on
from bot.chat.answers.scoreboard import score_taps, score_text, scoreboard
from bot.chat.answers.serve_asked import ask_first_serve
from bot.chat.lineup import usual_sides
from bot.chat.match_log import MatchLog, fold
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.game import GameState, is_opening
from knowledge.vocabulary import Mode
from scouting_db.values import AlreadyCounted, EntryKind, EntryRow, MatchId
from scouting_db.values import MatchState as StoredState


def after_entry(
    desk: Desk,
    match: MatchId,
    row: EntryRow | AlreadyCounted,
    *,
    also: Sequence[int] = (),
    more: Sequence[Button] = (),
) -> Reply:
    """Keep the undo, tell the score, and end the match when it is won.

    `also` are lines written just before that are undone together with it, `more` the taps that
    say more of the rally.
    """
    if isinstance(row, AlreadyCounted):
        return already_counted(desk, match)
    asked = desk.context.asked
    if asked is not None and (asked.score is not None or asked.rally is not None):
        # What was supposed of the score before is over: "and if we lose it" is of this one.
        asked = replace(asked, score=None, we_serve=None, rally=None)
    desk.context = replace(desk.context, asked_serve=None, asked=asked)
    lines = {"n": row.n, "also": list(also)} if also else {"n": row.n}
    change = desk.record("entry", {"match": match, **lines}, {"context": desk.context.to_json()})
    desk.book.set_state(match, StoredState.RUNNING)
    log = desk.log()
    desk.trace |= {"game": log.match.game, "match": match}
    if log.match.we_won is not None:
        return close(desk, match, won=log.match.we_won, games=_score_of(log.games))
    text = score_text(desk, log, names_game=bool(also) and row.kind is EntryKind.SCORE)
    between_games = log.match.game.is_over
    mode = Mode.BREAK if between_games else Mode.MATCH
    desk.context = replace(desk.context, mode=mode, asked_last=False)
    if between_games:
        ask_first_serve(desk, match)
    return Reply(
        text="\n".join([text, *_remarks(desk, log, row)]),
        buttons=rows([*score_taps(desk, match, log), *more, undo_button(change)]),
        picture=match_picture(desk) if between_games else None,
        about=("match", match),
    )


def sides_of_first(desk: Desk, log: MatchLog) -> dict[str, Any]:
    """What the first entry of a match tells beside its own: our starter as agreed beforehand."""
    if log.is_begun:
        return {}
    usual = usual_sides(
        desk.format(),
        ours=desk.ours,
        theirs=desk.context.theirs,
        view=desk.view,
        agreements=desk.agreements(),
    )
    return dict(usual or {})


def _remarks(desk: Desk, log: MatchLog, row: EntryRow) -> list[str]:
    """What goes with the score: ends change, or what it could not tell."""
    game = log.match.game
    if game.is_over or row.kind not in (EntryKind.RALLY, EntryKind.SCORE):
        return []
    before = _before(desk, log, row)
    found = []
    if log.match.changes_ends_after(before):
        found.append(wording("score.ends"))
    if not log.serve_known and row.kind is EntryKind.RALLY and is_opening(before):
        found.append(wording("score.we_guessed" if before.we_serve else "score.they_guessed"))
    if row.kind is EntryKind.SCORE and None in (game.our_starter_right, game.their_starter_right):
        found.append(wording("score.courts_open"))
    return found


def _before(desk: Desk, log: MatchLog, row: EntryRow) -> GameState:
    """The game as it stood before the newest line."""
    if row.kind is EntryKind.RALLY and log.played:
        return log.played[-1].before
    return fold(desk.entries()[:-1], desk.format()).game


def already_counted(desk: Desk, match: MatchId) -> Reply:
    """A second tap of one button: nothing more is counted."""
    return with_score(desk, match, wording("already_counted"))


def with_score(desk: Desk, match: MatchId, text: str) -> Reply:
    """A line that changes nothing, with the score as it stands and the taps to count on."""
    score, buttons = scoreboard(desk, match)
    return Reply(text="\n".join([text, score]), buttons=rows(buttons), about=("match", match))


def _score_of(games: Sequence[tuple[int, int]]) -> str:
    return " ".join(f"{ours}-{theirs}" for ours, theirs in games)


def close(desk: Desk, match: MatchId, *, won: bool, games: str) -> Reply:
    """The match is over, and what was said of it with it."""
    desk.book.set_state(match, StoredState.OVER)
    picture = match_picture(desk) if desk.log().match.we_won is not None else None
    row = desk.book.match(match)
    desk.context = replace(desk.context.after_result(), over=match)
    text = wording("match.over_won" if won else "match.over_lost").format(games=games)
    last = desk.book.last_change(desk.chat.chat)
    buttons = [] if last is None else [undo_button(last.change)]
    following = [] if row is None else move_on(desk, row)
    return Reply(
        text="\n".join(
            [" ".join(text.split()).replace(" .", "."), *of_which_pair(desk), *following]
        ),
        buttons=rows(buttons),
        picture=picture,
        about=("match", match),
    )
