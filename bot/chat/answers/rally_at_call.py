"""A rally told with the score it was played at or led to: counted, where the log bears that out."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import with_score
from bot.chat.answers.rallies import take_rally
from bot.chat.reply import Reply
from bot.chat.said import RallySaid, ScoreSaid
from bot.chat.wording import wording
from knowledge.game import GameState, ScoreCall, after
from scouting_db.values import MatchId


def rally_at_call(desk: Desk, match: MatchId, said: ScoreSaid, *, ours: bool) -> Reply | None:
    """The rally counted that was told with the call it was played at, or that it led to.

    None where by the log it is neither: then the call is only where the match stands.
    """
    known = desk.match_state()
    call = said.score.call if said.score is not None else None
    if known is None or call is None or known.game.is_over:
        return None
    game, rally = known.game, said.rally or RallySaid(text=said.text, won_by_us=ours)
    if said.scored and call == game.call:
        is_it = game.we_serve is ours
        return with_score(desk, match, wording("score.counted_so")) if is_it else None
    if call in (game.call, after(game, won_by_us=ours).call):
        return take_rally(desk, rally)
    last = desk.log().played[-1:]
    is_last = bool(last) and last[0].won_by_us is ours
    if is_last and (last[0].before.call == call or (said.rally and _are_points_of(call, game))):
        return with_score(desk, match, wording("score.counted_so"))
    if said.rally is not None and _are_points_of(call, after(game, won_by_us=ours)):
        return take_rally(desk, rally)
    return None


def _are_points_of(call: ScoreCall, game: GameState) -> bool:
    """Whether two bare numbers are its points, whichever side they put first."""
    points = (game.ours, game.theirs)
    return call.server is None and (call.serving, call.receiving) in (points, points[::-1])
