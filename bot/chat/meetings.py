"""Rallies as evidence of our rally chances: this match's, earlier meetings', other opponents'."""

from __future__ import annotations

import json
from collections import Counter, OrderedDict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from bot.chat.match_log import format_from_json, played_on_known_serve
from knowledge.chances import RallyTally, RingTally
from knowledge.dataclass import dataclass
from knowledge.evidence import Ring, age_factor
from knowledge.game import PlayedRally
from knowledge.vocabulary import EvidenceId, Hand, PlayerId
from scouting_db.values import LoggedMatch, MatchId, MeetingLog
from scouting_db.zones import local_day

CACHED_TALLIES = 4096
"""Matches whose counted rallies are kept in memory, the least recently used leaving first."""

Hands = Mapping[PlayerId, Hand]
"""The playing hands that are known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Meetings:
    """What earlier matches of our pair say: those against this pair, and against others."""

    earlier: tuple[RallyTally, ...] = ()
    others: tuple[RingTally, ...] = ()


class KeptTallies:
    """What each match's log counts, by all that the log depends on: match, format and length."""

    def __init__(self) -> None:
        self._kept: OrderedDict[tuple[int, MatchId, str, int], RallyTally] = OrderedDict()

    def __len__(self) -> int:
        return len(self._kept)

    def of(
        self,
        book: int,
        matches: Sequence[LoggedMatch],
        read: Callable[[Sequence[MatchId]], Iterable[MeetingLog]],
    ) -> dict[MatchId, RallyTally]:
        """Each match's tally, undated; logs that grew or were never read are read together."""
        keys = {one.match: _key(book, one) for one in matches}
        missing = [match for match, key in keys.items() if key not in self._kept]
        for log in read(missing):
            self._kept[keys[log.match]] = _tally(log)
        found = {}
        for match, key in keys.items():
            self._kept.move_to_end(key)
            found[match] = self._kept[key]
        while len(self._kept) > CACHED_TALLIES:
            self._kept.popitem(last=False)
        return found


def _key(book: int, one: LoggedMatch) -> tuple[int, MatchId, str, int]:
    return book, one.match, json.dumps(one.format, sort_keys=True), one.lines


def _tally(log: MeetingLog) -> RallyTally:
    """Only rallies whose server somebody told count."""
    return tally_of(log.match, played_on_known_serve(log.entries, format_from_json(log.format)))


def meetings_of(
    matches: Sequence[LoggedMatch],
    tallies: Mapping[MatchId, RallyTally],
    *,
    theirs: Sequence[PlayerId],
    hands: Hands,
    today: int,
    zone: str = "UTC",
) -> Meetings:
    """The matches by how near their pair is to this one; all fade with age as notes do.

    `today` is a day's ordinal in the zone (Desk.day).
    """
    earlier: list[RallyTally] = []
    others: list[RingTally] = []
    for one in reversed(matches):
        day = local_day(one.made_at, zone)
        tally = replace(tallies[one.match], weight=age_factor(day, today=today))
        if not tally.rallies:
            continue
        if set(one.their_pair.players) == set(theirs):
            earlier.append(tally)
        else:
            is_alike = are_alike(theirs, one.their_pair.players, hands)
            others.append(RingTally(ring=Ring.ALIKE if is_alike else Ring.OTHERS, tally=tally))
    return Meetings(earlier=tuple(earlier), others=tuple(others))


def are_alike(pair: Sequence[PlayerId], other: Sequence[PlayerId], hands: Hands) -> bool:
    """Whether two pairs share a player, or have the same hands with a left one among them.

    Two right-handers are what most pairs are, and make no pair alike.
    """
    if set(pair) & set(other):
        return True
    first, second = (Counter(hands.get(player) for player in each) for each in (pair, other))
    return first == second and None not in first and first[Hand.LEFT] > 0


def same_discipline(matches: Iterable[LoggedMatch], like: str) -> tuple[LoggedMatch, ...]:
    """Those of the discipline: what is usual in doubles is not in singles."""
    return tuple(one for one in matches if format_from_json(one.format).discipline.value == like)


def tally_of(match: MatchId, rallies: Sequence[PlayedRally]) -> RallyTally:
    """Won and lost in a match, serving and receiving."""
    counts = {(serve, won): 0 for serve in (True, False) for won in (True, False)}
    for rally in rallies:
        counts[rally.before.we_serve, rally.won_by_us] += 1
    return RallyTally(
        served_won=counts[True, True],
        served_lost=counts[True, False],
        received_won=counts[False, True],
        received_lost=counts[False, False],
        evidence=(EvidenceId(f"match:{match}"),) if rallies else (),
    )
