"""Names alone in the middle of a game: a new match would close its score, so it is asked about."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.announcements import begins_as_match
from bot.chat.answers.desk import Desk
from bot.chat.answers.scoreboard import score_text
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import MatchSaid
from bot.chat.wording import wording
from bot.chat.words import words
from knowledge.game import is_opening
from knowledge.vocabulary import PlayerId


def asked_midgame(desk: Desk, said: MatchSaid, theirs: Sequence[PlayerId]) -> Reply | None:
    """Whether the game goes on; None between games, and where more than names is told.

    "Next: ..." says so itself, as a time, a court, a format or who serves does.
    """
    told = (said.at, said.court, said.format, said.we_serve)
    if not theirs or any(one is not None for one in told) or begins_as_match(words(said.text)):
        return None
    log = desk.log()
    if desk.context.match is None or not log.is_begun:
        return None
    if log.match.game.is_over or is_opening(log.match.game):
        return None
    again = f"next: {' and '.join(desk.view.name_of(one) for one in theirs)}"
    number = desk.context.pending_count + 1
    waits = Pending(number=number, typed="", text=again, candidates=())
    desk.context = desk.context.with_pending(waits)
    names = "/".join(desk.names(desk.context.theirs))
    text = wording("match.in_midgame").format(score=score_text(desk, log), names=names, again=again)
    button = Button(label=wording("match.new_match"), payload=tap(Verb.LATER, number))
    return Reply(text=text, buttons=rows([button]))
