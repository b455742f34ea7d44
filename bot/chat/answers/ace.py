"""An ace told without whose it was."""

from __future__ import annotations

import re

from bot.chat.answers.desk import Desk
from bot.chat.answers.rallies import take_rally
from bot.chat.reply import Reply
from bot.chat.said import RallyDetails, RallySaid, RemarkSaid
from knowledge.regex import regex
from knowledge.vocabulary import Ending, Stroke

_ACE = regex(r"\bace\b", re.IGNORECASE)


def ace(desk: Desk, said: RemarkSaid) -> Reply | None:
    """The serving side's rally, which the serve ended; None where it is not known who serves."""
    log = desk.log()
    if not (_ACE.search(said.text) and log.serve_known) or log.match.game.is_over:
        return None
    we_serve = log.match.game.we_serve
    details = RallyDetails(ending=Ending.WINNER, by_us=we_serve, stroke=Stroke.SERVE)
    rally = RallySaid(text=said.text, won_by_us=we_serve, says_whose=False, details=details)
    return take_rally(desk, rally)
