"""What meetings of two pairs leave as evidence: rallies won and lost, and what we chose."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from bot.chat.match_log import format_from_json, played_on_known_serve, unvoided
from knowledge.chances import RallyTally
from knowledge.evidence import HALF_LIFE_DAYS
from knowledge.game import PlayedRally
from knowledge.vocabulary import BallQuality
from scouting_db.values import ChoiceRow, MatchId, MeetingLog, Micros, Winner

MICROS_PER_DAY = 86_400_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedAims:
    """Our choices at one topic, oldest first, and of each whether that rally was ours."""

    options: tuple[str, ...] = ()
    won: tuple[bool | None, ...] = ()


def aims_in(choices: Iterable[ChoiceRow], meetings: Iterable[MeetingLog]) -> LoggedAims:
    """The choices of these meetings' rallies that still count.

    A stretched ball leaves no choice, so what was played off one says nothing of our pattern.
    """
    won_by = {
        (log.match, entry.n): entry.won_by for log in meetings for entry in unvoided(log.entries)
    }
    counted = [
        (choice.option, won_by[choice.match, choice.n])
        for choice in choices
        if (choice.match, choice.n) in won_by and choice.ball is not BallQuality.STRETCHED
    ]
    return LoggedAims(
        options=tuple(option for option, _ in counted),
        won=tuple(None if winner is None else winner is Winner.US for _, winner in counted),
    )


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
