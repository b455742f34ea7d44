"""A bare call whose side we read from the course of the game, and that was the other side's.

Until something else is logged, "no, we serve" speaks of that call: its digits stay as typed, and
with who serves it changes whose they are. "We serve" alone tells what came after it.
"""

from __future__ import annotations

from typing import Any

from bot.chat.answers.desk import Desk
from bot.chat.match_log import fold, unvoided
from bot.chat.said import SaidScore, ScoreSaid
from bot.chat.score_reading import state_said
from bot.chat.score_words import AHEAD, BEHIND
from bot.chat.slip_words import CORRECTS
from bot.chat.words import folded_line, words
from knowledge.game import GameState, ScoreCall
from knowledge.regex import regex

_CALL = "call_read"
_SIDED = regex(rf"{AHEAD.pattern}|{BEHIND.pattern}|\b(?:us|ours|theirs|them)\b(?! serv)")
_DENIES = regex(r"\bnot (?:ours?|us|we|theirs?|them|they)$")


def call_read(said: ScoreSaid) -> dict[str, Any]:
    """What the log keeps of a call whose numbers are told apart by nothing but who serves."""
    score = said.score
    if score is None or score.call is None or said.side_out or said.rally_ours is not None:
        return {}
    line = folded_line(words(said.text))
    if score.ours is not None and (score.call.server is None or _SIDED.search(line)):
        return {}
    return {_CALL: str(score.call)}


def call_turned(desk: Desk, said: ScoreSaid) -> GameState | None:
    """The state after the call told last, read as the other side's; None where the message does
    not say so, or nobody can have come to such points since the call before.

    Of two numbers our own comes first, whoever serves.
    """
    lines = unvoided(desk.entries())
    typed = (lines[-1].detail or {}).get(_CALL) if lines else None
    if typed is None or said.score is None:
        return None
    game, call = desk.log().match.game, ScoreCall.parse(typed)
    if not _says_turned(said, said.score, game):
        return None
    before, points = fold(lines[:-1], desk.format()).game, (game.theirs, game.ours)
    if call.server is None and game.ours == call.serving:
        return None
    if _falls(points, before) and not _falls(points[::-1], before):
        return None
    ours, theirs = points
    server = said.score.server or call.server
    turned = SaidScore(ours=ours, theirs=theirs, server=server, we_serve=not game.we_serve)
    state = state_said(ScoreSaid(text="", score=turned), game, desk.format())
    return None if state is None else state.game


def _says_turned(said: ScoreSaid, score: SaidScore, game: GameState) -> bool:
    """ "No, we serve", or "we have the 5" where the call's 5 was read as theirs."""
    if score.we_serve is not None:
        line = folded_line(words(said.text))
        return (
            bool(CORRECTS.match(line) or _DENIES.search(line))
            and score.we_serve is not game.we_serve
        )
    if game.ours == game.theirs:
        return False
    if score.theirs is None:
        return score.ours == game.theirs
    return score.ours is None and score.theirs == game.ours


def _falls(points: tuple[int, int], before: GameState) -> bool:
    return points[0] < before.ours or points[1] < before.theirs
