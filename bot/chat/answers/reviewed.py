"""What a review is of: the match that is on or closed last, its log, and what came in with it."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import evidence_of, said_of, with_profiles
from bot.chat.book_evidence import note_of
from bot.chat.match_log import MatchLog, counted_rallies, format_from_json, read_log, unvoided
from knowledge.dataclass import dataclass
from knowledge.evidence import Profile, profile
from knowledge.planning.review_counts import Chosen, Ended
from knowledge.vocabulary import PlayerId
from scouting_db.match_rates import tallies_of
from scouting_db.values import EntryRow, MatchId, MatchRow, Micros, Winner

NOTES_LOOKED_AT = 60
"""Newest notes of a player: more are not written during one match."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reviewed:
    """A match with its log; `began` is its first entry's time."""

    row: MatchRow
    entries: tuple[EntryRow, ...]
    log: MatchLog
    began: Micros

    @property
    def match(self) -> MatchId:
        return self.row.match

    @property
    def theirs(self) -> tuple[PlayerId, ...]:
        return () if self.row.their_pair is None else self.row.their_pair.players

    @property
    def ours(self) -> tuple[PlayerId, ...]:
        return () if self.row.our_pair is None else self.row.our_pair.players


def reviewed(desk: Desk) -> Reviewed | None:
    """The match that is on, else the one that this chat closed last; None before any entry."""
    match = desk.context.match
    if match is None or not desk.entries():
        change = desk.book.last_change(desk.chat.chat, verb="entry")
        match = None if change is None else MatchId(change.targets["match"])
    row = None if match is None else desk.book.match(match)
    entries = () if row is None else desk.book.entries(row.match)
    counted = unvoided(entries)
    if row is None or not counted:
        return None
    return Reviewed(
        row=row,
        entries=entries,
        log=read_log(entries, format_from_json(row.format)),
        began=counted[0].at,
    )


def choices_of(desk: Desk, match: Reviewed) -> tuple[Chosen, ...]:
    """Our choices in rallies that count, each with whose rally it became."""
    won = _won_by_line(match)
    return tuple(
        Chosen(topic=one.topic, option=one.option, against=one.against, won=won[one.n])
        for one in desk.book.choices_in(match.match)
        if one.n in won
    )


def endings_of(desk: Desk, match: Reviewed) -> tuple[Ended, ...]:
    """How rallies that count ended, as far as it was told."""
    won = _won_by_line(match)
    return tuple(
        Ended(ending=one.ending, stroke=one.stroke, won=won[one.n])
        for one in desk.book.rallies(match.match)
        if one.ending is not None and one.n in won
    )


def _won_by_line(match: Reviewed) -> dict[int, bool]:
    counted = counted_rallies(match.entries)
    return {one.n: one.won_by is Winner.US for one in match.entries if one.n in counted}


def before_and_after(
    desk: Desk, match: Reviewed, players: Sequence[PlayerId]
) -> tuple[list[Profile], list[Profile]]:
    """What was believed of these without the match and the notes since it began, and now."""
    view = with_profiles(desk, players)
    after = [view.profile_of(player) for player in players]
    matches = evidence_of(desk, players).matches or {}
    tallies = tallies_of((one for one in matches.values() if one.match != match.match), players)
    before = []
    for one in after:
        since = {
            note.note
            for note in desk.book.notes_of(one.player, limit=NOTES_LOOKED_AT)
            if note.at >= match.began
        }
        told = [each for each in said_of(desk, one.player) if note_of(each) not in since]
        before.append(
            profile(one.player, one.name, told, today=desk.day, tallies=tallies, others=one.others)
        )
    return before, after
