"""The picture of a match: our chance after every rally that was logged."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.own_rates import base_rates
from bot.chat.answers.record_read import meetings_before, rallies_today
from bot.chat.gather import said_tally
from knowledge.advice import ChanceCurve
from knowledge.chances import EndlessGameError
from knowledge.situation import Asked, Situation
from knowledge.tactics.win_chance import curve_of
from knowledge.vocabulary import Topic


def match_picture(desk: Desk) -> ChanceCurve | None:
    """The current match's, where the log leads up to the score as it stands.

    None before the first rally, where points were told since the last one (the curve would stop
    short of them), or at rates with which no game ends.
    """
    log = desk.log()
    if not log.played or log.played[-1].next.points != log.match.game.points:
        return None
    counts = desk.context.counts
    meetings = meetings_before(desk)
    situation = Situation(
        topic=Topic.WIN_CHANCE,
        asked=Asked(
            rates=desk.context.rates, tally=None if counts is None else said_tally(*counts)
        ),
        played=log.played,
        rallies_today=rallies_today(desk),
        earlier_rallies=meetings.earlier,
        other_rallies=meetings.others,
        base_rates=base_rates(desk),
    )
    try:
        return curve_of(situation)
    except EndlessGameError:
        return None
