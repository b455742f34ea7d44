"""The score as it is shown: the call, who serves from where, and the taps that count on."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.match_log import fold, unvoided
from bot.chat.payload import Verb, tap
from bot.chat.reply import Button
from bot.chat.wording import wording
from knowledge.game import GameState
from scouting_db.values import MatchId


def scoreboard(desk: Desk, match: MatchId) -> tuple[str, list[Button]]:
    """The score of the current match now, and the taps that count on from here.

    Every reply that leaves a match running carries them: a tap under an older message expects
    a line that the log already has.
    """
    entries = desk.book.entries(match)
    if not unvoided(entries):
        return wording("match.who_serves"), serve_buttons(match)
    state = fold(entries, desk.format())
    return score_line(state.game), score_buttons(match, len(entries) + 1)


def serve_buttons(match: MatchId) -> list[Button]:
    """Who serves first."""
    return [
        Button(label=wording("match.we_serve"), payload=tap(Verb.SERVE, "us", match)),
        Button(label=wording("match.they_serve"), payload=tap(Verb.SERVE, "them", match)),
    ]


def score_buttons(match: MatchId, expected: int) -> list[Button]:
    """The taps of a running match; each carries the log number it expects."""
    return [
        Button(label=wording("match.our_rally"), payload=tap(Verb.RALLY, "us", match, expected)),
        Button(
            label=wording("match.their_rally"), payload=tap(Verb.RALLY, "them", match, expected)
        ),
        Button(label=wording("match.timeout"), payload=tap(Verb.TIMEOUT, "us", match, expected)),
    ]


def score_line(game: GameState) -> str:
    """The call, and which side serves from where."""
    court = game.serving_court
    who = wording("score.we" if game.we_serve else "score.they")
    who += f" from the {court}" if court else ""
    return wording("score.line").format(call=game.call, who=who)
