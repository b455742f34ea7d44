"""Buttons under the score that record our choice of the rally about to be played."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.match_log import MatchLog
from bot.chat.payload import Verb, tap
from bot.chat.reply import Button
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId
from scouting_db.values import MatchId

TAGS_RALLIES = "tag_rallies"
"""The book's preference: choices are recorded for every rally, and so regardless of its end."""

SERVE_AIMS = ("wide", "t", "body")
MIDDLE = "middle"


def tags_rallies(desk: Desk) -> bool:
    """Whether choices are recorded for every rally."""
    return desk.preferences().get(TAGS_RALLIES) == "on"


def tag_buttons(desk: Desk, match: MatchId, log: MatchLog) -> list[Button]:
    """Serve aims while we serve, return targets while they do; none unless tagging is on."""
    game = log.match.game
    if game.is_over or not log.serve_known or not tags_rallies(desk):
        return []
    n = log.lines + 1
    if game.we_serve:
        return [
            Button(
                label=wording("rally.tag_serve").format(option="T" if aim == "t" else aim),
                payload=tap(Verb.TAG, "serve", aim, match, n),
            )
            for aim in SERVE_AIMS
        ]
    named = [(desk.view.short_name(one), str(one)) for one in opponents(desk)]
    return [
        Button(
            label=wording("rally.tag_return").format(option=name),
            payload=tap(Verb.TAG, "return", option, match, n),
        )
        for name, option in (*named, (MIDDLE, MIDDLE))
    ]


def opponents(desk: Desk) -> tuple[PlayerId, ...]:
    """Who of them the book knows."""
    return tuple(one for one in desk.context.theirs if desk.view.player(one) is not None)
