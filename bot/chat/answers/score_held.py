"""The score as we have it, where it is asked about or somebody else counts otherwise."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import with_score
from bot.chat.answers.score_faults import faults_of_state
from bot.chat.payload import Verb, tap
from bot.chat.render import with_buttons
from bot.chat.reply import Button, Reply
from bot.chat.said import SaidScore, ScoreSaid
from bot.chat.score_reading import state_said
from bot.chat.wording import wording
from knowledge.game import GameState, ScoreCall
from scouting_db.values import MatchId


def score_held(desk: Desk, match: MatchId, *, other: str) -> Reply:
    """Our score, unchanged; with a tap for the other count, as "3-1-2", where one is told."""
    held = desk.log().match.game
    state = _counted(desk, held, other)
    if state is None:
        return with_score(desk, match, wording("score.as_i_have_it"))
    if state.call == held.call and state.we_serve is held.we_serve:
        return with_score(desk, match, wording("score.counted_so"))
    key = "score.we_serve_at" if state.we_serve else "score.they_serve_at"
    who = "us" if state.we_serve else "them"
    button = Button(
        label=wording(key).format(call=state.call),
        payload=tap(Verb.SCORE, who, state.call, match, desk.log().lines + 1),
    )
    return with_buttons(with_score(desk, match, wording("score.two_counts")), [button])


def _counted(desk: Desk, held: GameState, other: str) -> GameState | None:
    """The state that the other count tells; None without one, or where no game stands so."""
    if not other:
        return None
    numbers = [int(number) for number in other.split("-")]
    call = ScoreCall(
        serving=numbers[0], receiving=numbers[1], server=numbers[2] if numbers[2:] else None
    )
    said = ScoreSaid(text=other, score=SaidScore(call=call, server=call.server))
    read = state_said(said, held, desk.format())
    return None if read is None or faults_of_state(read.game) else read.game
