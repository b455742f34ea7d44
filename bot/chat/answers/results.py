"""Results in words: finished games count as such, a finished match ends what was said of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import after_entry, close, with_score
from bot.chat.answers.no_match import no_match
from bot.chat.answers.pool_order import pick_in_pool, settle_assumed_format
from bot.chat.answers.result_again import told_again
from bot.chat.match_log import GUESSED_SERVE, format_from_json
from bot.chat.match_results import MatchResult, finished_games, result_of
from bot.chat.reply import Reply
from bot.chat.said import ResultSaid, ScoreSaid
from bot.chat.score_reading import StateSaid, faults_said, state_said
from bot.chat.wording import wording
from knowledge.game import GameFormat, faults, state_at
from scouting_db.values import EntryKind, EntryRow, MatchId, MatchRow, MatchState, Winner

Games = Sequence[tuple[int, int]]


def take_result(desk: Desk, said: ResultSaid) -> Reply:
    """ "Won 11-8 9-11 11-6" ends the match; games that don't decide it are its next ones."""
    pick_in_pool(desk, said)
    match = desk.context.match
    if match is None:
        return no_match(desk)
    settle_assumed_format(desk, said.games)
    format = desk.format()
    wrong = [fault for game in said.games for fault in game_faults(game, format)]
    wrong += too_many(said.games, format)
    if wrong:
        return Reply(text=wording("score.questioned").format(fault=wrong[0]))
    desk.trace |= {"match": match}
    if said.whose_open:
        return _ask_whose(said.games)
    if said.tally is not None:
        return _take_match(desk, match, said, said.tally[0] > said.tally[1], (said.tally,))
    if not said.games and said.won is not None:
        return _take_match(desk, match, said, said.won, finished_games(desk.log()))
    if decides(said.games, format):
        return _take_match(desk, match, said, _wins(said.games) * 2 > len(said.games), said.games)
    whole = _whole_match(desk, said)
    if whole:
        told = replace(said, games=whole)
        return _take_match(desk, match, told, _wins(whole) * 2 > len(whole), whole)
    return _take_games(desk, match, said)


def _whole_match(desk: Desk, said: ResultSaid) -> tuple[tuple[int, int], ...]:
    """All games of a match whose last one is told as the whole; none where that decides nothing."""
    known = finished_games(desk.log())
    games = known if known[-1:] == said.games else (*known, *said.games)
    is_tied = _wins(games) * 2 == len(games)
    return games if said.whole and not is_tied and not decides(games, desk.format()) else ()


def _take_match(desk: Desk, match: MatchId, said: ResultSaid, won: bool, shown: Games) -> Reply:
    """The whole match: it is closed whatever was counted of it before."""
    tally = {"tally": list(said.tally)} if said.tally is not None else {}
    row = desk.book.append(
        match,
        EntryKind.RESULT,
        won_by=Winner.US if won else Winner.THEM,
        detail={"games": [list(game) for game in said.games], "words": said.text, **tally},
        inbox=desk.inbox,
    )
    assert isinstance(row, EntryRow), "an entry without an expected number always lands"
    desk.record("entry", {"match": match, "n": row.n}, {"context": desk.context.to_json()})
    return close(desk, match, won=won, games=score_of(shown))


def _ask_whose(games: Games) -> Reply:
    """ "We split, 11-9 11-6": two readings to send back, and nothing kept until then."""
    (a, b), (c, d) = games
    first, second = score_of([(a, b), (d, c)]), score_of([(b, a), (c, d)])
    return Reply(text=wording("match.whose_games").format(first=first, second=second))


def score_of(games: Games) -> str:
    """The games of a match, ours first: `11-8 9-11 11-6`."""
    return " ".join(f"{ours}-{theirs}" for ours, theirs in games)


def last_match(desk: Desk) -> Reply:
    """The games of the match that this chat closed last, while no match is on."""
    change = desk.book.last_change(desk.chat.chat, verb="entry")
    row = None if change is None else desk.book.match(MatchId(change.targets["match"]))
    if row is None or row.state is not MatchState.OVER:
        return Reply(text=wording("match.none_last"))
    result = told_result(desk, row)
    key = "match.last_won" if result.won else "match.last_lost"
    text = wording(key).format(games=score_of(result.games)).replace(" .", ".")
    return Reply(text=text, about=("match", row.match))


def told_result(desk: Desk, row: MatchRow) -> MatchResult:
    """How a match ended, in words or as the log has it."""
    return result_of(desk.book.entries(row.match), format_from_json(row.format))


def _wins(games: Games) -> int:
    return sum(first > second for first, second in games)


def decides(games: Games, format: GameFormat) -> bool:
    """Whether these games alone win the match for somebody."""
    ours = _wins(games)
    return max(ours, len(games) - ours) > format.best_of // 2


def too_many(games: Games, format: GameFormat) -> list[str]:
    """What is wrong where the match was won before the last of its games; nothing if it was not."""
    if not decides(games[:-1], format):
        return []
    over = next(games[:n] for n in range(1, len(games)) if decides(games[:n], format))
    return [wording("match.over_before").format(games=score_of(over), best_of=format.best_of)]


def _take_games(desk: Desk, match: MatchId, said: ResultSaid) -> Reply:
    """The games told that the log does not have yet, and the score of the next one if told.

    All of it is one step to undo.
    """
    again = told_again(desk, match, said)
    if again is not None:
        return again
    known = finished_games(desk.log())
    fresh = said.games
    if len(fresh) > 1 and known:
        shared = min(len(known), len(fresh))
        if fresh[:shared] != known[:shared]:
            return with_score(
                desk, match, wording("match.other_games").format(games=score_of(known))
            )
        fresh = fresh[shared:]
    last = _running(desk, said)
    if isinstance(last, Reply):
        return last
    written = [append_game(desk, match, game) for game in fresh]
    if last is not None and desk.log().match.we_won is None:
        written.append(_append_score(desk, match, last))
    if not written:
        return with_score(desk, match, wording("score.counted_so"))
    return after_entry(desk, match, written[-1], also=[row.n for row in written[:-1]])


def _running(desk: Desk, said: ResultSaid) -> StateSaid | Reply | None:
    """The score of the game after those told; a reply where it can't be or isn't said whose."""
    if said.running is None:
        return None
    score, format = ScoreSaid(text=said.text, score=said.running), desk.format()
    state = state_said(score, None, format)
    if state is None:
        # A bare call: whose it is was not said, so it is taken as ours and marked as a guess.
        opening = state_at(format, ours=0, theirs=0, we_serve=True, server=1)
        guessed = state_said(score, opening, format)
        state = None if guessed is None else replace(guessed, is_serve_guessed=True)
    wrong = faults_said(score, format) if state is None else faults(state.game)
    if wrong:
        return Reply(text=wording("score.questioned").format(fault=wrong[0]))
    return state


def append_game(desk: Desk, match: MatchId, game: tuple[int, int]) -> EntryRow:
    """The running game ends at this score."""
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        game_no=desk.log().next_game_no,
        ours=game[0],
        theirs=game[1],
        we_serve=game[0] > game[1],
        inbox=desk.inbox,
    )
    assert isinstance(row, EntryRow), "an entry without an expected number always lands"
    return row


def _append_score(desk: Desk, match: MatchId, state: StateSaid) -> EntryRow:
    game = state.game
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        game_no=desk.log().next_game_no,
        ours=game.ours,
        theirs=game.theirs,
        server=game.server,
        we_serve=game.we_serve,
        detail={GUESSED_SERVE: True} if state.is_serve_guessed else None,
        inbox=desk.inbox,
    )
    assert isinstance(row, EntryRow), "an entry without an expected number always lands"
    return row


def game_faults(game: tuple[int, int], format: GameFormat) -> tuple[str, ...]:
    """Of a finished game; whichever server won it, whoever won it was serving or scored last."""
    server = 1 if format.has_two_servers else None
    won = game[0] > game[1]
    found = faults(state_at(format, ours=game[0], theirs=game[1], we_serve=won, server=server))
    if found or format.is_won(max(game), min(game)):
        return found
    told = f"{game[0]}-{game[1]}"
    return (wording("match.not_finished").format(game=told, target=format.target),)
