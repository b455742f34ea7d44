"""What is said of the running score without being one: turned round, one number, whose point."""

from __future__ import annotations

from bot.chat.answers.ace import ace
from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import with_score
from bot.chat.answers.games_told import games_without_points
from bot.chat.answers.match_over import take_over
from bot.chat.answers.no_match import no_match
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.rallies import last_rally, take_rally
from bot.chat.answers.rally_details import lines_about
from bot.chat.answers.score_faults import faults_of_state
from bot.chat.answers.scoreboard import score_buttons, score_line
from bot.chat.answers.scores import set_score
from bot.chat.answers.won_what import won_what
from bot.chat.asked import Asked
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import RallySaid, RemarkSaid, ScoreRemark
from bot.chat.score_reading import with_points
from bot.chat.wording import wording
from knowledge.game import after, state_at
from knowledge.vocabulary import Topic
from scouting_db.values import MatchId, Winner


def take_remark(desk: Desk, said: RemarkSaid) -> Reply:
    """What is said of the running score without being one; what is open is asked for."""
    match = desk.context.match
    if said.remark is ScoreRemark.NO_SCORE:
        form = wording("score.form")
        return Reply(text=form) if match is None else with_score(desk, match, form)
    if match is None:
        return no_match(desk)
    match said.remark:
        case ScoreRemark.TURNED_ROUND:
            return _turn_round(desk, match, said)
        case ScoreRemark.GAME_WITHOUT_POINTS:
            return games_without_points(desk, match, said.number)
        case ScoreRemark.ONE_NUMBER:
            return _ask_whose_number(desk, match, said.number or 0)
        case ScoreRemark.LET:
            return with_score(desk, match, wording("score.let"))
        case ScoreRemark.COUNTED_AS:
            return _as_counted(desk, match, said)
        case ScoreRemark.SERVE_AFTER:
            return _serve_after(desk, match, ours=said.ours is True)
        case ScoreRemark.MATCH_OVER:
            return take_over(desk, said)
        case ScoreRemark.RALLY_OR_MATCH:
            return won_what(desk, match, ours=said.ours is True)
        case _:
            buttons = score_buttons(match, desk.log().lines + 1)[:2]
            whose = Reply(text=wording("score.point_whose"), buttons=rows(buttons))
            return ace(desk, said) or whose


def _as_counted(desk: Desk, match: MatchId, said: RemarkSaid) -> Reply:
    """Whose the last rally was by the log, and why; with none told, what the rulebook asks."""
    last = last_rally(desk)
    if last is None:
        return answer_asked(desk, Asked(topic=Topic.RULES_QUESTION, text=said.text))
    ours = last.won_by is Winner.US
    lines = [wording("score.counted_ours" if ours else "score.counted_theirs")]
    return with_score(desk, match, "\n".join([*lines, *lines_about(desk, match, last.n)]))


def _serve_after(desk: Desk, match: MatchId, *, ours: bool) -> Reply:
    """The call after a rally that nobody has played yet; nothing is counted."""
    log = desk.log()
    if log.match.game.is_over or not log.serve_known:
        return with_score(desk, match, wording("score.serve_after_what"))
    then = after(log.match.game, won_by_us=ours)
    if then.is_over:
        return with_score(desk, match, wording("score.then_over"))
    key = "score.after_ours" if ours else "score.after_theirs"
    return with_score(desk, match, wording(key).format(score=score_line(desk, then)))


def _turn_round(desk: Desk, match: MatchId, said: RemarkSaid) -> Reply:
    """The last rally was the other side's, or the call just told was the other side's call."""
    last = last_rally(desk)
    if last is not None:
        turned = last.won_by is not Winner.US
        if said.ours is not None and said.ours is not turned:
            return with_score(desk, match, wording("score.again"))
        return take_rally(desk, RallySaid(text=said.text, won_by_us=turned, corrects=True))
    log = desk.log()
    game = log.match.game
    if not log.is_begun or game.is_over:
        return with_score(desk, match, wording("score.again"))
    other = state_at(
        game.format,
        ours=game.theirs,
        theirs=game.ours,
        we_serve=not game.we_serve,
        server=game.server,
    )
    return set_score(desk, match, other)


def _ask_whose_number(desk: Desk, match: MatchId, number: int) -> Reply:
    """ "Make it 5": ours or theirs, unless one of them stands at it already or can't be."""
    game, expected = desk.log().match.game, desk.log().lines + 1
    readings = [
        (ours, state)
        for ours in (True, False)
        if number != (game.ours if ours else game.theirs)
        and not faults_of_state(state := with_points(game, number, ours=ours))
    ]
    if not readings:
        return with_score(desk, match, wording("score.again"))
    if len(readings) == 1:
        return set_score(desk, match, readings[0][1])
    who = "us" if game.we_serve else "them"
    buttons = [
        Button(
            label=wording("score.for_us" if ours else "score.for_them").format(call=state.call),
            payload=tap(Verb.SCORE, who, state.call, match, expected),
        )
        for ours, state in readings
    ]
    text = wording("score.number_whose").format(number=number)
    return Reply(text=text, buttons=rows(buttons), about=("match", match))
