"""One rally of a match's log as it was played."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.match_log import read_log, unvoided
from knowledge.game import GameFormat, PlayedRally
from scouting_db.values import EntryKind, EntryRow


def rally_at(
    entries: Sequence[EntryRow], format: GameFormat, n: int
) -> tuple[PlayedRally, bool] | None:
    """Rally `n` as it was played, and whether it is known who served; None if it doesn't count."""
    upto = [one for one in unvoided(entries) if one.n <= n]
    if not upto or upto[-1].n != n or upto[-1].kind is not EntryKind.RALLY:
        return None
    log, before = read_log(upto, format), read_log(upto[:-1], format)
    if len(log.played) == len(before.played):
        return None  # after the end of a match nothing is played
    return log.played[-1], len(log.on_known_serve) > len(before.on_known_serve)
