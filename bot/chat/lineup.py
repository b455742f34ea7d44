"""Who of a pair starts a game on the right, as far as it is known before anybody says so."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bot.chat.book_view import BookView
from bot.chat.match_log import sides_to_json
from knowledge.game import Discipline, GameFormat
from knowledge.tactics.standing_names import starter_agreed
from knowledge.vocabulary import AgreementKey, PlayerId
from scouting_db.values import AgreementRow


def usual_sides(
    format: GameFormat,
    *,
    ours: Sequence[PlayerId],
    theirs: Sequence[PlayerId],
    view: BookView,
    agreements: Sequence[AgreementRow],
) -> Mapping[str, Any] | None:
    """For the log: our starter as agreed; in singles whoever plays alone; None if not known."""
    if format.discipline is Discipline.SINGLES:
        alone = [
            (pair[0], side) for side, pair in ((True, ours), (False, theirs)) if len(pair) == 1
        ]
        told = [sides_to_json(player, None, ours=side) for player, side in alone]
        return {key: player for one in told for key, player in one.items()} or None
    starter = _agreed(ours, view, agreements)
    if starter is None:
        return None
    partner = next(player for player in ours if player != starter)
    return sides_to_json(starter, partner, ours=True)


def _agreed(
    ours: Sequence[PlayerId], view: BookView, agreements: Sequence[AgreementRow]
) -> PlayerId | None:
    said = next((row for row in agreements if row.key is AgreementKey.FIRST_SERVER), None)
    if said is None:
        return None
    named = [(player, view.short_name(player)) for player in ours]
    return starter_agreed(f"{said.value} {said.words}", named)
