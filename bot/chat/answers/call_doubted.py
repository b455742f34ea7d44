"""A call of theirs that would take a point from somebody, and fits with our number first.

Points never fall within a game (2025 rulebook, side-out scoring): who says "6-5-1 them" after 6-4
has most likely said ours first, as players do who don't serve. It is asked, and nothing is stored.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.match_log import unvoided
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import ScoreSaid
from bot.chat.score_words import AHEAD, BEHIND
from bot.chat.wording import wording
from bot.chat.words import folded_line, words
from knowledge.game import GameState, ScoreCall
from knowledge.regex import regex
from scouting_db.values import EntryKind, MatchId


def asked_whose_points(
    desk: Desk, match: MatchId, said: ScoreSaid, game: GameState
) -> Reply | None:
    """The question whose points are whose; None where the call stands as it was said."""
    log, call = desk.log(), None if said.score is None else said.score.call
    held = log.match.game
    is_open = log.is_begun and log.serve_known and not held.is_over and not game.is_over
    if call is None or call.server is None or game.we_serve or said.side_out or not is_open:
        return None
    line = folded_line(words(said.text))
    if said.leads or AHEAD.search(line) or BEHIND.search(line):
        return None
    turned = replace(call, serving=call.receiving, receiving=call.serving)
    falls = _falls(game.ours, game.theirs, held) and not _falls(game.theirs, game.ours, held)
    if not falls and not (_THEIR_POINT.search(line) and _is_our_point(game, held)):
        return None
    if _turns_call(desk, held, game):
        return None
    buttons = [_button(one, match, log.lines + 1) for one in (turned, call)]
    text = wording("score.falls").format(ours=held.ours, theirs=held.theirs)
    return Reply(text=text, buttons=rows(buttons), about=("match", match))


def _falls(ours: int, theirs: int, held: GameState) -> bool:
    return ours < held.ours or theirs < held.theirs


_THEIR_POINT = regex(r"\b(?:their|they (?:got|get|won|win) (?:the|that|a)) (?:pt|point)\b")


def _is_our_point(game: GameState, held: GameState) -> bool:
    """Whether only our points rose: a call told with "their pt" that gives it to us."""
    return game.theirs == held.theirs and game.ours > held.ours


def _turns_call(desk: Desk, held: GameState, game: GameState) -> bool:
    """Whether their call told last is said the other way round: that puts it right."""
    lines = unvoided(desk.entries())
    is_call = bool(lines) and lines[-1].kind is EntryKind.SCORE and not held.we_serve
    return is_call and (game.theirs, game.ours) == (held.ours, held.theirs)


def _button(call: ScoreCall, match: MatchId, expected: int) -> Button:
    label = wording("score.they_call").format(call=call, ours=call.receiving, theirs=call.serving)
    return Button(label=label, payload=tap(Verb.SCORE, "them", call, match, expected))
