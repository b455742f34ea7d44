"""Luck or a leak: the stretch just lost, and how often chance alone gives one like it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from knowledge.chances import EndlessGameError, expected_rallies, stretch_chance
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat, PlayedRally, lost_in_a_row, start, up_to_now
from knowledge.odds_words import of_hundred
from knowledge.situation import Situation
from knowledge.tactics.score_view import rates_before

STRETCHES = ((5, 4), (10, 7))
"""A bad stretch: of the last so many rallies at least so many lost. Common practice, no source."""

RUN_FROM = 3
"""So many lost running are a run. Common practice, no source."""

SAME_ERROR = 3
"""The same error so often is a leak, whatever chance says. Common practice, no source."""

LUCK_FROM = 0.2
"""Chance alone at least this often: no reason to change anything. Our own choice of words."""

GIVEN_RALLIES = 25
"""Rallies that a game as short as one that just began is measured by: a short game to 11."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BadStretch:
    """A stretch: so many lost of so many, and the chance of one like it in a game this long."""

    lost: int
    of: int
    chance: float
    error: str | None = None

    @property
    def is_luck(self) -> bool:
        """Whether chance alone explains it and no error came again and again."""
        return self.chance >= LUCK_FROM and self.error is None

    @property
    def words(self) -> str:
        """ "5 in a row" or "4 of the last 5"."""
        if self.lost == self.of:
            return f"{self.lost} in a row"
        return f"{self.lost} of the last {self.of}"


def bad_stretch(situation: Situation) -> BadStretch | None:
    """The stretch that is said or stands at the end of the log; None if there is none."""
    found = _stretch(situation)
    if found is None:
        return None
    lost, of = found
    try:
        lose = _losing_chances(situation, at_least=of)
    except EndlessGameError:
        return None
    return BadStretch(
        lost=lost,
        of=of,
        chance=stretch_chance(lose, lost=lost, of=of),
        error=_same_error(situation.played, of),
    )


def _stretch(situation: Situation) -> tuple[int, int] | None:
    run = situation.asked.lost_in_a_row or lost_in_a_row(situation.played, situation.match)
    if run >= RUN_FROM:
        return run, run
    known = up_to_now(situation.played, situation.match)
    for of, least in STRETCHES:
        last = known[-of:]
        lost = sum(not rally.won_by_us for rally in last)
        if len(last) == of and lost >= least:
            return lost, of
    return None


def _losing_chances(situation: Situation, *, at_least: int) -> list[float]:
    """Our chance to lose each rally of this game as played, or of a usual one where few are."""
    rates = rates_before(situation).rates
    lose = [1 - rates.of_rally(we_serve=rally.before.we_serve) for rally in situation.played]
    if len(lose) >= max(at_least, GIVEN_RALLIES):
        return lose
    format = situation.format or GameFormat()
    usual = expected_rallies(start(format, we_serve=True), rates.serving, rates.receiving)
    average = 1 - (rates.serving + rates.receiving) / 2
    return [*lose, *[average] * max(0, round(usual) - len(lose))]


def _same_error(played: Sequence[PlayedRally], of: int) -> str | None:
    """What the lost ones were tagged with SAME_ERROR times or more."""
    lost = [rally for rally in played[-of:] if not rally.won_by_us]
    tags = Counter(tag for rally in lost for tag in rally.tags)
    tag, times = next(iter(tags.most_common(1)), ("", 0))
    return tag if times >= SAME_ERROR else None


def luck_or_leak(stretch: BadStretch) -> str:
    """How often chance alone does that, and what follows."""
    share = of_hundred(stretch.chance)
    often = "under 1" if share == "0" else f"over {int(share) - 1}" if share == "100" else share
    said = f"Lost {stretch.words}: luck alone in {often} of 100 games"
    if stretch.error is not None:
        return f"{said}; same error thrice: a leak."
    return f"{said}: {'keep playing' if stretch.is_luck else 'change one thing'}."
