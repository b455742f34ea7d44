"""A pool taken back and put back: its matches, the players made for it, and what is on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from bot.chat.answers.desk import Desk
from bot.chat.answers.pool_order import POOL, Pool, take_up
from bot.chat.answers.reminder_times import times_as_stored
from bot.chat.answers.undo_entries import remember_before
from bot.chat.match_log import unvoided
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId
from scouting_db.values import EventId, EventRow, MatchId, MatchRow, MatchState, PairId


def as_kept(row: MatchRow) -> Mapping[str, Any]:
    """What a change remembers of a match of a pool, to put it back as it was told."""
    return {
        "match": row.match,
        "ours": None if row.our_pair is None else row.our_pair.pair,
        "theirs": None if row.their_pair is None else row.their_pair.pair,
        "format": dict(row.format),
        "starts_at": row.starts_at,
        "court": row.court,
        "made_at": row.made_at,
    }


def pool_before(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    """Take the pool out with the players made for it; matches with something logged stay."""
    logs = {MatchId(match): desk.book.entries(MatchId(match)) for match in targets["matches"]}
    kept = [match for match, entries in logs.items() if unvoided(entries)]
    for match, entries in logs.items():
        if match not in kept:
            _take_out(desk, match, has_log=bool(entries))
    if not kept:
        desk.book.remove_event(EventId(targets["event"]))
        for player in targets["players"]:
            desk.book.remove_player(PlayerId(player))
    if desk.context.match not in kept:
        remember_before(desk, before)
    if kept:
        desk.context = replace(desk.context, pool=EventId(targets["event"]))
    return wording("pool.undone" if not kept else "pool.undone_partly")


def _take_out(desk: Desk, match: MatchId, *, has_log: bool) -> None:
    """A match without a log goes; one whose lines were all taken back only leaves the pool."""
    row = desk.book.match(match)
    if not has_log:
        desk.book.remove_match(match)
    elif row is not None:
        desk.book.replace_match(replace(row, event=None, state=MatchState.OVER))


def pool_match_before(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    """Another match of the pool was named as the next: as it was before."""
    row = desk.book.match(MatchId(targets["match"]))
    if row is not None:
        desk.book.replace_match(replace(row, **before["row"]))
        times_as_stored(desk, before["times"])
    remember_before(desk, before)
    return wording("pool.order")


def pool_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """Put the pool back with the same numbers; the first match left is on if none is under way.

    A match whose pair was forgotten meanwhile stays out.
    """
    event = EventId(targets["event"])
    for player in targets["players"]:
        desk.book.restore_player(PlayerId(player))
    desk.book.put_back_event(EventRow(event=event, name=POOL))
    for kept in targets["rows"]:
        _put_back(desk, kept, event)
    pool = Pool(event=event, matches=desk.book.matches_in(event))
    running = desk.match_row()
    if running is not None and running.state is MatchState.RUNNING:
        desk.context = replace(desk.context, pool=event)
    elif pool.left:
        take_up(desk, pool.left[0])
    return wording("pool.undone")


def can_come_again(targets: Mapping[str, Any]) -> bool:
    """Whether the change remembers its matches; one of an older book does not."""
    return "rows" in targets


def _put_back(desk: Desk, kept: Mapping[str, Any], event: EventId) -> None:
    match = MatchId(kept["match"])
    there = desk.book.match(match)
    if there is not None:
        is_played = any(unvoided(desk.book.entries(match)))
        state = there.state if is_played else MatchState.ANNOUNCED
        desk.book.replace_match(replace(there, event=event, state=state))
        return
    ours, theirs = (
        None if kept[side] is None else desk.book.pair(PairId(kept[side]))
        for side in ("ours", "theirs")
    )
    if theirs is None or (ours is None and kept["ours"] is not None):
        return
    desk.book.put_back_match(
        MatchRow(
            match=match,
            our_pair=ours,
            their_pair=theirs,
            format=kept["format"],
            state=MatchState.ANNOUNCED,
            made_at=kept["made_at"],
            starts_at=kept["starts_at"],
            court=kept["court"],
            event=event,
        )
    )
