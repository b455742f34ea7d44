"""What we chose in matches against a pair: evidence of our pattern, oldest choice first."""

from __future__ import annotations

from collections.abc import Iterable

from knowledge.dataclass import dataclass
from knowledge.vocabulary import BallQuality
from scouting_db.values import ChoiceRow, Winner


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedAims:
    """Our choices at one topic, oldest first, and of each whether that rally was ours."""

    options: tuple[str, ...] = ()
    won: tuple[bool | None, ...] = ()


def aims_in(choices: Iterable[tuple[ChoiceRow, Winner | None]]) -> LoggedAims:
    """The choices that still count, each with who won the rally.

    A stretched ball leaves no choice, so what was played off one says nothing of our pattern.
    Nor does a choice told after the rally unasked: what went well is told more readily.
    """
    counted = [
        (choice.option, winner)
        for choice, winner in choices
        if choice.tagged_before and choice.ball is not BallQuality.STRETCHED
    ]
    return LoggedAims(
        options=tuple(option for option, _ in counted),
        won=tuple(None if winner is None else winner is Winner.US for _, winner in counted),
    )
