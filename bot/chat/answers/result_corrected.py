"""A result put right: the match stays closed, and what was told last of it counts."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.entries import after_entry, with_score
from bot.chat.answers.no_match import no_match
from bot.chat.answers.pool_order import format_of, match_words, opponents_of, pool_of
from bot.chat.answers.rallies import last_rally, take_rally
from bot.chat.answers.result_again import game_told_anew, turns_the_last
from bot.chat.answers.results import (
    append_game,
    decides,
    game_faults,
    score_of,
    take_result,
    told_result,
    too_many,
)
from bot.chat.answers.whose_they import whose_they
from bot.chat.match_log import unvoided
from bot.chat.match_results import Games, MatchResult, finished_games
from bot.chat.message import is_ours, read_message
from bot.chat.render import offer_buttons, rows, with_buttons
from bot.chat.reply import Reply
from bot.chat.results_games import games_told
from bot.chat.said import Certainty, RallySaid, ResultSaid
from bot.chat.wording import wording
from bot.chat.words import words
from scouting_db.values import EntryKind, EntryRow, MatchId, MatchRow, MatchState, Winner

_SAYS_WHOSE = frozenset(
    ["won", "win", "lost", "lose", "loss", "us", "we", "ours", "they", "them", "theirs"]
)
_ENDS_A_GAME = (EntryKind.RALLY, EntryKind.SCORE)


def take_or_correct(desk: Desk, said: ResultSaid) -> Reply:
    """A result as told, unless it is said instead of the one before."""
    asked = whose_they(desk, said)
    if asked is not None:
        return asked
    again = game_told_anew(desk, said)
    if isinstance(again, Reply):
        return again
    if said.corrects or again or turns_the_last(desk, said):
        return correct_result(desk, said)
    return with_buttons(take_result(desk, said), offer_buttons(said.may_ask))


def correct_result(desk: Desk, said: ResultSaid) -> Reply:
    """The last match's result as it is said now, or that of the pool's match against a pair named.

    What was told before stays in the log beneath it, and counts again once this is taken back.
    """
    of_others = [one for one in said.mentions if not is_ours(one, desk.ours)]
    if desk.context.match is not None and desk.log().match.game.is_over and not of_others:
        return _correct_game(desk, desk.context.match, said)
    row = _meant(desk, said)
    if row is None:
        return no_match(desk)
    old, format = told_result(desk, row), format_of(row)
    if said.turned:
        if said.won is old.won:
            return Reply(text=wording("score.counted_so"), about=("match", row.match))
        said = replace(said, won=not old.won)
    games = _as_told_before(desk, row, old, said.games, said.text) or _turned(old, won=said.won)
    wrong = [fault for game in games for fault in game_faults(game, format)]
    wrong += too_many(games, format)
    if wrong:
        return Reply(text=wording("score.questioned").format(fault=wrong[0]))
    if games and not decides(games, format):
        return Reply(text=wording("match.other_games").format(games=score_of(old.games)))
    ours = sum(first > second for first, second in games)
    won = 2 * ours > len(games) if games else bool(said.won)
    if (won, games) == (old.won, old.games):
        return Reply(text=wording("score.counted_so"), about=("match", row.match))
    entry = desk.book.append(
        row.match,
        EntryKind.RESULT,
        won_by=Winner.US if won else Winner.THEM,
        detail={"games": [list(game) for game in games], "words": said.text},
        inbox=desk.inbox,
    )
    assert isinstance(entry, EntryRow), "an entry without an expected number always lands"
    targets = {"match": row.match, "n": entry.n}
    change = desk.record("entry", targets, {"context": desk.context.to_json()})
    desk.trace |= {"match": row.match}
    key = "match.corrected_won" if won else "match.corrected_lost"
    was = score_of(old.games) or wording("match.was_won" if old.won else "match.was_lost")
    lines = [wording(key).format(games=score_of(games), old=was).replace(" ,", ",")]
    following = desk.match_row()
    if following is not None and following.match != row.match:
        lines.append(wording("pool.then").format(who=match_words(desk, following)))
    return Reply(
        text="\n".join(lines), buttons=rows([undo_button(change)]), about=("match", row.match)
    )


def _correct_game(desk: Desk, match: MatchId, said: ResultSaid) -> Reply:
    """The game of the running match that has just ended; both lines are one step to undo."""
    ours, theirs = finished_games(desk.log())[-1]
    if len(said.games) > 1 or said.tally is not None:
        return take_result(desk, replace(said, corrects=False))
    last = last_rally(desk) if said.turned else None
    turned = said.turned or said.won is not None
    if said.won is not None:
        turned = said.won is not (ours > theirs)
    if last is not None and turned:
        told_rally = RallySaid(text=said.text, won_by_us=theirs > ours, corrects=True)
        return take_rally(desk, told_rally)
    told = said.games[0] if said.games else (theirs, ours) if turned else (ours, theirs)
    wrong = game_faults(told, desk.format())
    if wrong:
        return Reply(text=wording("score.questioned").format(fault=wrong[0]))
    if told == (ours, theirs):
        return with_score(desk, match, wording("score.counted_so"))
    ended = [one for one in unvoided(desk.entries()) if one.kind in _ENDS_A_GAME][-1]
    gone = desk.book.void(match, ended.n, inbox=desk.inbox)
    return after_entry(desk, match, append_game(desk, match, told), also=[gone.n])


def _meant(desk: Desk, said: ResultSaid) -> MatchRow | None:
    """The match closed last, unless another of the pool is named by who played it."""
    over = desk.context.over
    last = None if over is None else desk.match_of(over)
    named = {one.players[0] for one in said.mentions if one.certainty is Certainty.SURE}
    named -= set(desk.ours)
    if not named:
        return last
    pool = pool_of(desk)
    played = () if pool is None else pool.matches
    found = [*([] if last is None else [last]), *reversed(played)]
    return next(
        (row for row in found if row.state is MatchState.OVER and named <= set(opponents_of(row))),
        None,
    )


def _turned(old: MatchResult, *, won: bool | None) -> Games:
    """The games as told before, with the other side the winner if that is what was wrong."""
    if won is None or won is old.won or old.is_tally:
        return () if old.is_tally else old.games
    return tuple((second, first) for first, second in old.games)


def _as_told_before(desk: Desk, row: MatchRow, old: MatchResult, games: Games, text: str) -> Games:
    """The games, winner's points first where that is how the loss was told: "lost 16-14, no 17-15".

    The same two numbers the other way round say that it was the other way round.
    """
    if len(games) != 1 or len(old.games) != 1 or set(games[0]) == set(old.games[0]):
        return games
    if _SAYS_WHOSE.intersection(word.folded for word in words(text)):
        return games
    told = [one for one in desk.entries_of(row.match) if one.kind is EntryKind.RESULT]
    typed = str((told[-1].detail or {}).get("words", "")) if told else ""
    before = [one.game for one in games_told(read_message(typed, desk.chat_view()).told.words)]
    ours, theirs = old.games[0]
    is_turned = ours < theirs and before[-1:] == [(theirs, ours)]
    first, second = games[0]
    return ((second, first),) if is_turned and first > second else games
