"""From a question and the book to a situation: everything known that an answer may use."""

from __future__ import annotations

import re
from collections import OrderedDict
from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import field
from types import MappingProxyType
from typing import TypeVar

from bot.chat.asked import SaidCount
from bot.chat.book_evidence import BookEvidence
from bot.chat.context import Asked as AskedOf
from bot.chat.context import Context
from bot.chat.meetings import KeptTallies, Meetings
from bot.chat.profiles import KeptProfiles, Memories
from bot.chat.recent import Recent
from knowledge.ball_facts import NOTHING_SAID
from knowledge.chances import RallyTally
from knowledge.dataclass import dataclass
from knowledge.evidence import Profile
from knowledge.game import GameFormat, GameState, MatchState, PlayedRally
from knowledge.situation import Agreement, Asked, OnCourt, Situation
from knowledge.tactics.agreed_places import with_agreed_places
from knowledge.vocabulary import PlayerId, Side, Trait
from scouting_db.values import AgreementRow, PairId, PlayerRow

Read = TypeVar("Read")

CACHED_BOOKS = 64
"""Rosters kept in memory, the least recently used book leaving first."""

KEPT_CLAIMS = 80_000
"""What notes say, as far as it is kept of all those books together: some 20 MB. The book asked
about last is kept whatever its size."""

KEPT_TEXTS = 512
"""Messages whose reading is kept, of all books together."""

KEPT_ADVICE = 256
"""Questions whose advice and reply are kept, of all books together."""


def _parts(name: str) -> frozenset[str]:
    """Every part somebody may be called by: Nguyen and Brandt of Nguyen-Brandt."""
    return frozenset((surname(name), *re.split(r"[\s-]+", name)))


@dataclass(frozen=True, slots=True, kw_only=True)
class BookView:
    """A book as it reads: roster, known pairs, and profiles of whom one asked for.

    `version` is the first of those in which the same people were in it. A question reads the
    profiles of those on court only (bot.chat.profiles).
    """

    version: int
    roster: tuple[PlayerRow, ...]
    pairs: tuple[tuple[PairId, tuple[PlayerId, PlayerId]], ...]
    profiles: Mapping[PlayerId, Profile] = field(default_factory=lambda: MappingProxyType({}))

    def has_same_people_as(self, other: BookView) -> bool:
        return (self.roster, self.pairs) == (other.roster, other.pairs)

    def name_of(self, player: PlayerId) -> str:
        row = self.player(player)
        return row.name if row else "?"

    def player(self, player: PlayerId) -> PlayerRow | None:
        return next((row for row in self.roster if row.player == player), None)

    def short_name(self, player: PlayerId) -> str:
        """The surname, or the whole name where a part of somebody else's is the same."""
        name = self.name_of(player)
        last = surname(name)
        shared = sum(last in _parts(row.name) for row in self.roster) > 1
        row = self.player(player)
        if row is not None and row.ours:
            return name.split()[0]
        return name if shared else last

    def profile_of(self, player: PlayerId) -> Profile:
        known = self.profiles.get(player)
        return known or Profile(player=player, name=self.short_name(player))

    def ours(self) -> tuple[PlayerId, ...]:
        return tuple(row.player for row in self.roster if row.ours)

    def partner_of(self, player: PlayerId) -> PlayerId | None:
        """The one known partner; None without one or with several."""
        partners = {a if b == player else b for _, (a, b) in self.pairs if player in (a, b)}
        return partners.pop() if len(partners) == 1 else None

    def pair_id(self, players: Sequence[PlayerId]) -> PairId | None:
        """The number of a pair that the book knows."""
        wanted = set(players)
        return next((pair for pair, both in self.pairs if set(both) == wanted), None)


def surname(name: str) -> str:
    """The last word and the small ones before it: `van der Meer` of `Joost van der Meer`."""
    words = name.split()
    start = len(words) - 1
    while start > 1 and words[start - 1].islower():
        start -= 1
    return " ".join(words[start:]) if words else name


KEPT_READ = 32
"""What else was read of one book (a match, its log, what was agreed): so much is kept of it."""


class BookViews:
    """Views of books by the stamp of what they were read of (scouting_db.values.Stamps): what was
    written since is simply another stamp.

    `readings` holds what was understood of texts, `advice` what the engine said, `replies` how that
    was put: each is kept by all that it depends on.
    """

    def __init__(self) -> None:
        self._kept: OrderedDict[int, tuple[int, BookView]] = OrderedDict()
        self._recalled: OrderedDict[int, Recent] = OrderedDict()
        self._evidence: OrderedDict[int, BookEvidence] = OrderedDict()
        self._claims = 0
        self.profiles = KeptProfiles()
        self.memories = Memories()
        self.tallies = KeptTallies()
        self.readings = Recent(KEPT_TEXTS)
        self.advice = Recent(KEPT_ADVICE)
        self.replies = Recent(KEPT_ADVICE)

    def get(self, book: int, stamp: int, read: Callable[[], BookView]) -> BookView:
        """The view if it has this stamp of the book's people, else read and kept.

        Where roster and pairs are what they were it is the earlier view: what was built on it,
        an index of its names for one, still holds.
        """
        kept = self._kept.get(book)
        if kept is None or kept[0] != stamp:
            fresh = read()
            same = kept is not None and kept[1].has_same_people_as(fresh)
            kept = self._kept[book] = (stamp, kept[1] if kept is not None and same else fresh)
        self._kept.move_to_end(book)
        while len(self._kept) > CACHED_BOOKS:
            self._kept.popitem(last=False)
        return kept[1]

    def evidence(self, book: int) -> BookEvidence | None:
        """What was last kept of the book's evidence, of whatever version."""
        return self._evidence.get(book)

    def keep_evidence(self, book: int, evidence: BookEvidence) -> None:
        """Only of a turn that has not written: what it read stands in the database for good."""
        known = self._evidence.pop(book, None)
        self._claims -= 0 if known is None else known.claims
        self._evidence[book] = evidence
        self._claims += evidence.claims
        while len(self._evidence) > CACHED_BOOKS or (
            self._claims > KEPT_CLAIMS and len(self._evidence) > 1
        ):
            _, left = self._evidence.popitem(last=False)
            self._claims -= left.claims

    def recall(self, book: int, stamp: int, key: Hashable, read: Callable[[], Read]) -> Read:
        """Something else of the book (a match, its log) with this stamp of its parts, else read."""
        kept = self._recalled.setdefault(book, Recent(KEPT_READ))
        self._recalled.move_to_end(book)
        while len(self._recalled) > CACHED_BOOKS:
            self._recalled.popitem(last=False)
        return kept.recall(key, (stamp,), read)


def people_of(asked: AskedOf, context: Context, view: BookView) -> tuple[PlayerId, ...]:
    """Our pair and the pair that a question is about."""
    return *_ours(context, view), *_theirs(asked, context, view)


def _ours(context: Context, view: BookView) -> tuple[PlayerId, ...]:
    return context.ours or view.ours()[:2]


def gather(
    asked: AskedOf,
    context: Context,
    view: BookView,
    *,
    game: GameState | None,
    agreements: Sequence[AgreementRow],
    format: GameFormat | None = None,
    match: MatchState | None = None,
    played: tuple[PlayedRally, ...] = (),
    score_said: bool = False,
    base_rates: tuple[float | None, float | None] | None = None,
    rallies_today: RallyTally | None = None,
    meetings: Meetings | None = None,
    today: int | None = None,
) -> Situation:
    """The situation of one question; whatever nobody said stays None."""
    ours = _ours(context, view)
    theirs = _theirs(asked, context, view)
    asker = next((one for one in (asked.asker, context.asker) if one in ours), None)
    situation = Situation(
        topic=asked.topic,
        asked=_asked(asked, context, score_said=score_said),
        ours=_on_court(ours, context, view),
        theirs=_on_court(theirs, context, view),
        asker=asker,
        striker=asker,
        game=game,
        format=format,
        match=match,
        played=played,
        base_rates=base_rates,
        rallies_today=rallies_today,
        earlier_rallies=meetings.earlier if meetings else (),
        other_rallies=meetings.others if meetings else (),
        formation=context.formation,
        their_formation=context.their_formation,
        familiarity=context.familiarity,
        agreements=MappingProxyType(
            {
                row.key: Agreement(key=row.key, value=row.value, words=row.words)
                for row in agreements
            }
        ),
        wind=asked.wind,
        today=today,
    )
    sides_said = any(context.side_of(player) is not None for player in ours)
    return with_agreed_places(situation, sides_said=sides_said)


def _asked(asked: AskedOf, context: Context, *, score_said: bool) -> Asked:
    """What the question settles; numbers told earlier in the match hold beneath its own."""
    rates = asked.rates if asked.rates or asked.counts else context.rates
    counts = asked.counts if asked.rates or asked.counts else context.counts
    return Asked(
        about=asked.about,
        wing=asked.wing,
        ball=asked.ball,
        ball_kind=asked.ball_kind,
        hitter_side=asked.hitter_side,
        striker_side=asked.striker_side,
        pulled_wide=asked.pulled_wide,
        we_serve=asked.we_serve,
        words=asked.text,
        rates=rates,
        tally=None if counts is None else said_tally(*counts),
        score_said=score_said,
        lost_in_a_row=asked.lost_in_a_row,
        timeouts_left=asked.timeouts_left,
        tired=asked.tired,
        hot=asked.hot,
        has_change=asked.has_change,
        toss_won=asked.toss_won,
        they_chose=asked.they_chose,
        background=asked.background,
        sun=asked.sun,
        games=asked.games,
        officiated=asked.officiated,
        rule=asked.rule,
        before=asked.before or "",
        facts=asked.facts or NOTHING_SAID,
    )


def said_tally(serving: SaidCount, receiving: SaidCount) -> RallyTally:
    """Rallies counted as said, (won, played) of either half."""
    served, received = serving or (0, 0), receiving or (0, 0)
    return RallyTally(
        served_won=served[0],
        served_lost=served[1] - served[0],
        received_won=received[0],
        received_lost=received[1] - received[0],
    )


def _theirs(asked: AskedOf, context: Context, view: BookView) -> tuple[PlayerId, ...]:
    """The pair the question is about: two named opponents, or one and the known partner."""
    named = tuple(
        player
        for player in asked.about
        if (row := view.player(player)) is not None and not row.ours
    )
    if len(named) >= 2:
        return named[:2]
    if not named:
        return _another_pair_of_ours(asked, context, view) or context.theirs
    if named[0] in context.theirs:
        return context.theirs
    partner = view.partner_of(named[0])
    return named if partner is None else (named[0], partner)


def _another_pair_of_ours(asked: AskedOf, context: Context, view: BookView) -> tuple[PlayerId, ...]:
    """Two of a coach's own players across the net, where both are named; else nobody."""
    ours = _ours(context, view)
    others = tuple(one for one in asked.about if view.player(one) and one not in ours)
    return others[:2] if len(others) >= 2 else ()


def _on_court(players: Sequence[PlayerId], context: Context, view: BookView) -> tuple[OnCourt, ...]:
    sides = [_side(player, context, view) for player in players]
    if len(sides) == 2:
        sides = _settled_pair(sides)
    return tuple(
        OnCourt(profile=view.profile_of(player), side=side)
        for player, side in zip(players, sides, strict=True)
    )


def _side(player: PlayerId, context: Context, view: BookView) -> Side | None:
    said = context.side_of(player)
    if said is not None:
        return said
    noted = view.profile_of(player).fact(Trait.SIDE_PLAYED)
    return None if noted is None else Side(noted.value)


def _settled_pair(sides: list[Side | None]) -> list[Side | None]:
    """One partner's side gives the other's; two that clash (both noted left) settle nothing."""
    first, second = sides
    if first is not None and first is second:
        return [None, None]
    return [
        first or (second.other if second else None),
        second or (first.other if first else None),
    ]
