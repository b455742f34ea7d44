"""What the book's notes and rallies say of players now: profiles and their evidence.

Kept between turns by version; of what was kept only what changed is read again.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from functools import partial
from types import MappingProxyType

from bot.chat.answers.desk import Desk
from bot.chat.book_evidence import BookEvidence, note_of
from bot.chat.book_view import BookView
from bot.chat.profiles import Stamp, profiles_of
from bot.chat.stances import Stances, peers_known, stances_of
from knowledge.evidence import Observation, Peers, Profile, RateCount
from knowledge.vocabulary import PlayerId
from scouting_db.match_rates import tallies_of
from scouting_db.values import MatchId, NoteId, Part


def with_profiles(desk: Desk, players: Sequence[PlayerId]) -> BookView:
    """The view with the profiles of these players."""
    people = tuple(dict.fromkeys(players))
    if desk.book.has_written:
        found = _read_profiles(desk, people)
    else:
        written = desk.stamps.of(Part.PEOPLE, Part.NOTES, Part.MATCHES, Part.LOG)
        stamp = Stamp(written, desk.day, _between_games(desk), desk.zone)
        kept = desk.views.profiles
        found = kept.get(desk.book_id, stamp, people, partial(_read_profiles, desk))
    return replace(desk.view, profiles=MappingProxyType(found))


def profiles_without(
    desk: Desk,
    players: Sequence[PlayerId],
    *,
    notes: Collection[NoteId],
    matches: Collection[MatchId],
) -> dict[PlayerId, Profile]:
    """The profiles as they would be today without these notes and matches."""
    evidence = evidence_of(desk, players)
    told = (one for match, one in (evidence.matches or {}).items() if match not in matches)
    return profiles_of(
        {player: desk.view.short_name(player) for player in players},
        {
            player: tuple(one for one in said if note_of(one) not in notes)
            for player, said in evidence.notes.items()
        },
        tallies_of(told, players),
        today=desk.day,
    )


def evidence_of(
    desk: Desk, players: Sequence[PlayerId] = (), *, with_stances: bool = False
) -> BookEvidence:
    """These players' notes and every match's rates, as they stand now."""
    now = desk.version + desk.book.has_written
    kept = desk.views.evidence(desk.book_id)
    if kept is None or kept.zone != desk.zone:
        found = BookEvidence(version=now, zone=desk.zone)
    else:
        found = _brought_to(desk, now, kept)
    if players:
        found = found.knowing(players, desk.book)
    if with_stances:
        found = found.knowing_stances(desk.book)
    if not desk.book.has_written and found is not kept:
        desk.views.keep_evidence(desk.book_id, found)
    return found


def said_of(desk: Desk, player: PlayerId) -> tuple[Observation, ...]:
    """What the notes say of somebody, this turn's own among them."""
    return evidence_of(desk, (player,)).notes[player]


def stances_known(desk: Desk) -> Stances:
    """The hand and the side of everybody of whom notes tell either."""
    said = evidence_of(desk, with_stances=True).stances or ()
    memory = desk.views.memories.of(desk.book_id)
    return memory.recall("stances", (said, desk.day), lambda: stances_of(said, today=desk.day))


def _read_profiles(desk: Desk, players: Sequence[PlayerId]) -> dict[PlayerId, Profile]:
    evidence = evidence_of(desk, players)
    tallies = tallies_of(
        (evidence.matches or {}).values(), players, between_games=_between_games(desk)
    )
    memories = desk.views.memories
    return profiles_of(
        {player: desk.view.short_name(player) for player in players},
        evidence.notes,
        tallies,
        today=desk.day,
        peers=lambda: _peers(desk, evidence.counts),
        recall_of=lambda player: memories.of(desk.book_id, player).recall,
    )


def _brought_to(desk: Desk, now: int, kept: BookEvidence) -> BookEvidence:
    """What this turn wrote is read again whatever it was."""
    if now == kept.version or desk.book.has_written:
        return kept.brought_to(now, desk.book)
    return kept.brought_to(
        now,
        desk.book,
        notes_changed=desk.stamps.of(Part.NOTES) > kept.version,
        matches_changed=desk.stamps.of(Part.MATCHES, Part.LOG) > kept.version,
    )


def _peers(desk: Desk, counts: tuple[RateCount, ...]) -> Peers:
    """What others' rallies say."""
    known = stances_known(desk) if len({one.player for one in counts}) > 1 else {}
    inputs = (counts, known, desk.day)
    memory = desk.views.memories.of(desk.book_id)
    return memory.recall("peers", inputs, lambda: peers_known(counts, known, today=desk.day))


def _between_games(desk: Desk) -> MatchId | None:
    """The current match while none of its games is on: then all its rallies are settled."""
    match = desk.context.match
    return match if match is not None and desk.log().match.game.is_over else None
