"""A bare call that is as near as ours and as theirs: the reading not taken is a tap away."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.score_faults import faults_of_state
from bot.chat.payload import Verb, tap
from bot.chat.reply import Button, Reply
from bot.chat.said import ScoreSaid
from bot.chat.wording import wording
from knowledge.game import GameState, ScoreCall, state_at
from scouting_db.values import MatchId


def with_other_reading(
    desk: Desk, match: MatchId, reply: Reply, said: ScoreSaid, *, before: GameState
) -> Reply:
    """The reply to a call just stored, with the other side's tap where that fits as well.

    "3-4-1" after their 3-2-1: we scored two and lost the serve, or each side scored.
    """
    call = None if said.score is None or said.side_out else said.score.call
    if call is None or call.server is None or call.serving == call.receiving:
        return reply
    if said.score is None or said.score.we_serve is not None or said.score.ours is not None:
        return reply
    now = desk.log().match.game
    other = state_at(
        now.format, ours=now.theirs, theirs=now.ours, we_serve=not now.we_serve, server=now.server
    )
    is_near = _distance(now, before) == _distance(other, before) and not _falls(other, before)
    if not is_near or now.is_over or faults_of_state(other):
        return reply
    button = _button(desk, match, other.call, ours=other.we_serve)
    return replace(reply, buttons=((button,), *reply.buttons))


def _button(desk: Desk, match: MatchId, call: ScoreCall, *, ours: bool) -> Button:
    key, who = ("score.we_serve_at", "us") if ours else ("score.they_serve_at", "them")
    payload = tap(Verb.SCORE, who, call, match, desk.log().lines + 1)
    return Button(label=wording(key).format(call=call), payload=payload)


def _distance(game: GameState, before: GameState) -> int:
    return abs(game.ours - before.ours) + abs(game.theirs - before.theirs)


def _falls(game: GameState, before: GameState) -> bool:
    return game.ours < before.ours or game.theirs < before.theirs
