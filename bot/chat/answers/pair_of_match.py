"""Who of us plays the match that is announced: whoever we were told last before it begins."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.desk import Desk
from bot.chat.match_log import unvoided
from knowledge.vocabulary import PlayerId
from scouting_db.values import EntryKind, MatchId, PairId, PairRow

_PLAYED = frozenset({EntryKind.RALLY, EntryKind.SCORE, EntryKind.RESULT})
"""Who serves first may be told long before a match begins."""


def played_by(desk: Desk, pair: PairId, players: Sequence[PlayerId]) -> Mapping[str, Any]:
    """The match to come is this pair's from now on; what a change must remember of it.

    One that is being played stays whose it was, unless it was announced before we were known; a
    pool's matches stay with the pair whose pool it is.
    """
    row = desk.match_row()
    if row is None or row.event is not None:
        return {}
    stood = row.our_pair
    if stood is not None and (stood.pair == pair or _is_played(desk)):
        return {}
    one, other = players
    desk.book.replace_match(replace(row, our_pair=PairRow(pair=pair, players=(one, other))))
    desk.match_changed()
    ours = None if stood is None else [stood.pair, *stood.players]
    return {"match": {"match": row.match, "ours": ours}}


def _is_played(desk: Desk) -> bool:
    return any(one.kind in _PLAYED for one in unvoided(desk.entries()))


def pair_before(desk: Desk, before: Mapping[str, Any]) -> None:
    """The match is whose it was before such a change."""
    kept = before.get("match")
    row = None if kept is None else desk.book.match(MatchId(kept["match"]))
    if kept is None or row is None:
        return
    pair = None
    if kept["ours"] is not None:
        number, one, other = kept["ours"]
        pair = PairRow(pair=PairId(number), players=(PlayerId(one), PlayerId(other)))
    desk.book.replace_match(replace(row, our_pair=pair))
    desk.match_changed()
