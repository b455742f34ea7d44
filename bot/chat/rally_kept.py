"""What is kept of a rally beyond who won it, as one value: merged, and as JSON for undo."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.said import RallyDetails
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Ending, PlayerId, Rate, Stroke, Topic, Wing
from scouting_db.values import ChoiceRow, MatchId, RallyRow, RateRow

_LINES = "\n"
"""Between the messages that told of one rally; a message's own breaks become blanks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptRally:
    """A rally's rows: what is told of it, what we chose, what it says of rates."""

    row: RallyRow
    choices: tuple[ChoiceRow, ...] = ()
    rates: tuple[RateRow, ...] = ()

    @property
    def lines(self) -> tuple[str, ...]:
        """The messages that told of it, oldest first."""
        return tuple((self.row.words or "").split(_LINES)) if self.row.words else ()

    def with_line(self, text: str) -> KeptRally:
        """The same with one message more; nothing typed is thrown away."""
        line = " ".join(text.split())
        return replace(self, row=replace(self.row, words=_LINES.join((*self.lines, line))))

    def to_json(self) -> dict[str, Any]:
        """Plain JSON."""
        row = self.row
        return {
            "ending": row.ending,
            "by": row.by_player,
            "stroke": row.stroke,
            "wing": row.wing,
            "words": row.words,
            "choices": [
                [one.topic, one.option, one.against, one.tagged_before] for one in self.choices
            ],
            "rates": [[one.player, one.rate, one.made] for one in self.rates],
        }

    @classmethod
    def from_json(cls, match: MatchId, n: int, stored: Mapping[str, Any]) -> KeptRally:
        """The rows as they were stored for undo."""
        ending, stroke, wing = stored["ending"], stored["stroke"], stored["wing"]
        return cls(
            row=RallyRow(
                match=match,
                n=n,
                ending=None if ending is None else Ending(ending),
                by_player=stored["by"],
                stroke=None if stroke is None else Stroke(stroke),
                wing=None if wing is None else Wing(wing),
                words=stored["words"],
            ),
            choices=tuple(
                ChoiceRow(
                    match=match,
                    n=n,
                    topic=Topic(topic),
                    option=option,
                    against=against,
                    tagged_before=before,
                )
                for topic, option, against, before in stored["choices"]
            ),
            rates=tuple(
                RateRow(match=match, n=n, player=player, rate=Rate(rate), made=made)
                for player, rate, made in stored["rates"]
            ),
        )


def merged(
    row: RallyRow, told: RallyDetails, *, won_by_us: bool, ours: Sequence[PlayerId]
) -> RallyRow:
    """The row with what is told now in place of what it contradicts; the rest stays.

    Who lost the rally made the error and who won it hit the winner, so that naming somebody says
    which of the two it was. A winner that turns out an error was somebody else's, off another
    stroke, and forgets both.
    """
    by_us = told.by in ours if told.by is not None else told.by_us
    ending = told.ending
    if ending is None and by_us is not None:
        if by_us is won_by_us:
            ending = Ending.WINNER
        elif row.ending is None or not row.ending.is_error:
            ending = Ending.UNFORCED_ERROR
    if told.ending is not None and not told.is_called and row.ending is not None:
        # An error alone does not say again whether it was forced.
        ending = row.ending if told.ending.is_error and row.ending.is_error else told.ending
    if ending is not None and row.ending is not None and ending.is_error is not row.ending.is_error:
        row = replace(row, by_player=None, stroke=None, wing=None)
    return replace(
        row,
        ending=ending or row.ending,
        by_player=told.by or row.by_player,
        stroke=told.stroke or row.stroke,
        wing=told.wing or row.wing,
    )
