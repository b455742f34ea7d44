"""Scores of the running match in words: set, put right, questioned, or asked about."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any

from bot.chat.answers.call_doubted import asked_whose_points
from bot.chat.answers.call_either_way import with_other_reading
from bot.chat.answers.call_turned import call_read, call_turned
from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import after_entry, sides_of_first, with_score
from bot.chat.answers.game_start import name_server, open_game
from bot.chat.answers.games_told import games_so_far
from bot.chat.answers.no_match import no_match
from bot.chat.answers.rallies import count_rally, take_rally
from bot.chat.answers.rally_at_call import rally_at_call
from bot.chat.answers.score_faults import faults_of_state
from bot.chat.answers.score_turned import says_it_turned
from bot.chat.answers.scoreboard import serve_buttons
from bot.chat.answers.serve_asked import ask_again, ask_serve, open_call, serve_asked_beside
from bot.chat.match_log import ASKED_SERVE, GUESSED_SERVE
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import (
    Mention,
    RallySaid,
    SaidScore,
    ScoreSaid,
)
from bot.chat.score_reading import (
    StateSaid,
    faults_said,
    names_server,
    says_no_points,
    says_one_side,
    state_said,
    with_serve_open,
)
from bot.chat.score_words import SIDE_OUT
from bot.chat.settled_forms import rally_told
from bot.chat.wording import wording
from knowledge.game import (
    GameState,
    ScoreCall,
    after,
    is_opening,
    side_out,
)
from scouting_db.values import (
    EntryKind,
    EntryRow,
    MatchId,
)


def take_score(desk: Desk, said: ScoreSaid, *, expected: int | None = None) -> Reply:
    """A score in words. An impossible one is questioned, and nothing is stored.

    `expected` is the log line that a tap under an older question counts on.
    """
    if said.won_by_us is not None:
        return count_rally(desk, ours=said.won_by_us, match=None, expected=None)
    match = desk.context.match
    answered = None if match is None else _side_out_answers(desk, match, said)
    if answered is not None:
        return answered
    if said.side_out and (said.score is None or said.score.call is None):
        return no_match(desk) if match is None else _side_out(desk, match, said)
    if match is not None and said.rally_ours is not None:
        counted = rally_at_call(desk, match, said, ours=said.rally_ours)
        if counted is not None:
            return counted
    if match is not None and said.score is not None and says_no_points(said.score):
        answered, turned = _serve_answered(desk, match, said.score), call_turned(desk, said)
        if answered is None and turned is not None:
            return set_score(desk, match, turned)
        return answered or _serve_said(desk, match, said.score)
    return _score_said(desk, match, said, expected)


def _score_said(desk: Desk, match: MatchId | None, said: ScoreSaid, expected: int | None) -> Reply:
    wanted, format = _wanted(desk, match, said), desk.format()
    if wanted is None:
        wrong = faults_said(said, format)
    else:
        wrong = faults_of_state(wanted.game, said.leads)
    if wrong:
        return Reply(text=wording("score.questioned").format(fault=wrong[0]))
    if wanted is None:
        return no_match(desk) if match is None else _ask_whose(desk, match, said)
    if match is None:
        desk.trace |= {"game": wanted.game}
        return no_match(desk)
    if expected is None and _are_games(desk, said):
        return games_so_far(desk, match)
    doubted = asked_whose_points(desk, match, said, wanted.game) if expected is None else None
    if doubted is not None:
        return doubted
    before, is_begun = desk.log().match.game, desk.log().is_begun
    is_open = wanted.is_serve_guessed and said.served_by is None and not names_server(said)
    reply = set_score(
        desk,
        match,
        wanted.game,
        is_serve_guessed=wanted.is_serve_guessed,
        asks_serve=is_open,
        expected=expected,
        served_by=said.served_by,
        read={} if wanted.is_serve_guessed else call_read(said),
    )
    reply = says_it_turned(reply, before, wanted.game)
    if is_begun:
        reply = with_other_reading(desk, match, reply, said, before=before)
    return serve_asked_beside(desk, match, reply) if is_open else reply


def _are_games(desk: Desk, said: ScoreSaid) -> bool:
    """ "1-1" between two games that stand so: games, since no rally of the next was told of."""
    log = desk.log()
    score, now = said.score, log.match
    if not (log.is_begun and now.game.is_over) or now.we_won is not None or said.side_out:
        return False
    if score is not None and (score.we_serve is not None or names_server(said)):
        return False
    won = now.game.we_won is True
    games = (now.games_ours + won, now.games_theirs + (not won))
    if said.all_at is not None:
        return games == (said.all_at, said.all_at)
    call = None if score is None else score.call
    return call is not None and games in (
        (call.serving, call.receiving),
        (call.receiving, call.serving),
    )


def _wanted(desk: Desk, match: MatchId | None, said: ScoreSaid) -> StateSaid | None:
    """The state said; one side's points alone are put right even before anything was counted."""
    known, format = desk.match_state(), desk.format()
    turned = call_turned(desk, said) if match is not None and says_one_side(said) else None
    if turned is not None:
        return StateSaid(game=turned)
    is_told = said.score is not None and said.score.ours is not None
    if said.side_out and not is_told and not desk.log().serve_known:
        return None
    if match is None or known is not None or not says_one_side(said):
        return with_serve_open(
            state_said(said, known.game if known else None, format), said, desk.log()
        )
    put_right = state_said(said, desk.log().match.game, format)
    return None if put_right is None else replace(put_right, is_serve_guessed=True)


def set_score(
    desk: Desk,
    match: MatchId,
    game: GameState,
    *,
    is_serve_guessed: bool = False,
    asks_serve: bool = False,
    expected: int | None = None,
    served_by: Mention | None = None,
    read: Mapping[str, Any] = MappingProxyType({}),
) -> Reply:
    log = desk.log()
    guess = {GUESSED_SERVE: True} if is_serve_guessed else {}
    guess |= {ASKED_SERVE: True} if asks_serve else {}
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        expected=expected,
        game_no=log.next_game_no,
        ours=game.ours,
        theirs=game.theirs,
        server=game.server,
        we_serve=game.we_serve,
        detail={**guess, **read, **sides_of_first(desk, log)} or None,
        inbox=desk.inbox,
    )
    if served_by is None or not isinstance(row, EntryRow):
        return after_entry(desk, match, row)
    named = name_server(desk, match, served_by.players[0])
    return after_entry(desk, match, named or row, also=[row.n] if named is not None else [])


def _serve_answered(desk: Desk, match: MatchId, score: SaidScore) -> Reply | None:
    """The score of which we asked who serves, once that is typed; None where none is open."""
    asked = open_call(desk)
    if asked is None or score.we_serve is None or score.server is not None:
        return None
    known = SaidScore(call=ScoreCall.parse(asked.call), we_serve=score.we_serve)
    return answer_call(desk, match, ScoreSaid(text=asked.call, score=known), asked.n)


def _side_out_answers(desk: Desk, match: MatchId, said: ScoreSaid) -> Reply | None:
    """The score of which we asked who serves, answered by a side-out: "side out, we get it now".

    Who has the serve now did not serve at that call, unless it is the first server's, which a
    side-out leads to. Who has it is told, or won the rally that waits; else it is asked again.
    """
    asked = open_call(desk)
    is_told = SIDE_OUT.search(said.text.lower()) is not None
    if asked is None or not is_told or (said.score is not None and not says_no_points(said.score)):
        return None
    gained = said.score.we_serve if said.score is not None else None
    if gained is None and asked.then:
        gained = asked.then[-1][0]
    if gained is None:
        return ask_again(desk, asked)
    call = ScoreCall.parse(asked.call)
    is_led_to = call.server == 1 and not asked.then
    score = SaidScore(call=call, we_serve=gained is is_led_to)
    reply = answer_call(desk, match, ScoreSaid(text=asked.call, score=score), asked.n)
    if open_call(desk) is not None or desk.log().match.game.we_serve is gained:
        return reply
    return _side_out(desk, match, said)


def answer_call(desk: Desk, match: MatchId, said: ScoreSaid, expected: int) -> Reply:
    """The score whose server is known now, and the rallies told since we asked."""
    asked = open_call(desk)
    reply = _score_said(desk, match, said, expected)
    if asked is None or asked.n != expected or asked.call != said.text or open_call(desk):
        return reply
    for ours, text in asked.then:
        told = rally_told(text, desk.chat_view()) if text else None
        if told is not None and told.won_by_us is ours:
            reply = take_rally(desk, told)
        else:
            reply = count_rally(desk, ours=ours, match=None, expected=None)
    return reply


def _serve_said(desk: Desk, match: MatchId, score: SaidScore) -> Reply:
    """Who serves, or that the second server does, at the score as it stands."""
    log = desk.log()
    game = log.match.game
    we_serve = game.we_serve if score.we_serve is None else score.we_serve
    is_server_of_it = score.server in (None, game.server) or not log.serve_known
    if game.is_over or (is_opening(game) and is_server_of_it):
        if score.we_serve is None and (game.is_over or not log.serve_known):
            return Reply(text=wording("match.who_serves"), buttons=rows(serve_buttons(match, log)))
        return open_game(desk, match, we_serve=we_serve)
    same_side = we_serve is game.we_serve
    number = score.server or (game.server if same_side else 1)
    guessed = score.we_serve is None and not log.serve_known
    now = replace(game, we_serve=we_serve, server=number)
    return set_score(desk, match, now, is_serve_guessed=guessed)


def _side_out(desk: Desk, match: MatchId, said: ScoreSaid) -> Reply:
    """ "Side out": the serve changes sides, whichever server was on.

    "Side out, our ball" while we have it as ours already changes nothing. Where the rally it came
    by is told, and leads there by itself, that rally is counted.
    """
    log = desk.log()
    if log.match.game.is_over:
        return with_score(desk, match, wording("score.again"))
    if said.score is not None and said.score.we_serve is log.match.game.we_serve:
        return _serve_said(desk, match, said.score)
    lost = rally_told(said.text, desk.chat_view()) if said.rally_ours is not None else None
    if lost is not None and log.serve_known and _leads_to_side_out(log.match.game, lost):
        return take_rally(desk, lost)
    return set_score(desk, match, side_out(log.match.game), is_serve_guessed=not log.serve_known)


def _leads_to_side_out(game: GameState, rally: RallySaid) -> bool:
    return after(game, won_by_us=rally.won_by_us) == side_out(game)


def _ask_whose(desk: Desk, match: MatchId, said: ScoreSaid) -> Reply:
    """Whose call a bare score was; a score with whose number is whose is never asked about."""
    call = said.score.call if said.score else None
    return Reply(text=wording("score.again")) if call is None else ask_serve(desk, match, call)
