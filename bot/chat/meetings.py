"""Rallies as evidence of our rally chances: this match's and those of earlier meetings."""

from __future__ import annotations

from collections.abc import Iterable

from bot.chat.match_log import format_from_json, played_on_known_serve
from knowledge.chances import RallyTally
from knowledge.evidence import HALF_LIFE_DAYS
from knowledge.game import PlayedRally
from scouting_db.values import MatchId, MeetingLog, Micros

MICROS_PER_DAY = 86_400_000_000


def earlier_tallies(
    meetings: Iterable[MeetingLog], *, current: MatchId | None, now: Micros
) -> tuple[RallyTally, ...]:
    """What each meeting but the current one counts: they fade with age as notes do.

    Only rallies whose server somebody told count.
    """
    return tuple(
        tally_of(
            played_on_known_serve(log.entries, format_from_json(log.format)),
            weight=0.5 ** (max(0.0, (now - log.made_at) / MICROS_PER_DAY) / HALF_LIFE_DAYS),
        )
        for log in meetings
        if log.match != current
    )


def tally_of(rallies: Iterable[PlayedRally], *, weight: float) -> RallyTally:
    """Won and lost, serving and receiving."""
    counts = {(serve, won): 0 for serve in (True, False) for won in (True, False)}
    for rally in rallies:
        counts[rally.before.we_serve, rally.won_by_us] += 1
    return RallyTally(
        served_won=counts[True, True],
        served_lost=counts[True, False],
        received_won=counts[False, True],
        received_lost=counts[False, False],
        weight=weight,
    )
