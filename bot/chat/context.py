"""What a chat remembers between messages: one versioned value, stored as JSON with the chat."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from enum import StrEnum
from typing import Any

from bot.chat.asked import (
    Asked,
    SaidCount,
    SaidState,
    counts_from_json,
    counts_to_json,
    maybe,
)
from bot.chat.coached import Coached
from bot.chat.kept_wind import KeptWind, wind_from_json
from bot.chat.pending import Pending
from bot.chat.scouting import Scouting
from bot.chat.shown_list import Listing
from knowledge.dataclass import dataclass
from knowledge.situation import Familiarity, Formation
from knowledge.vocabulary import Mode, PlayerId, Side, Topic
from scouting_db.values import ChangeId, EventId, MatchId, NoteId

__all__ = ["CONTEXT_VERSION", "KEPT_PENDINGS", "Asked", "Context", "Depth", "SaidState"]

CONTEXT_VERSION = 1

KEPT_PENDINGS = 8
"""Questions still open for a tap; older ones have gone stale, but for the match that waits."""


class Depth(StrEnum):
    """How much of the last answer was told; "more" goes one on, "shorter" one back."""

    CALL = "call"
    SHORT = "short"
    FULL = "full"
    REASONS = "reasons"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tagged:
    """What we chose for rally `n`, tapped before it was played."""

    match: MatchId
    n: int
    topic: Topic
    option: str
    against: PlayerId | None = None

    def to_json(self) -> list[Any]:
        return [self.match, self.n, self.topic, self.option, self.against]

    @classmethod
    def from_json(cls, stored: Sequence[Any]) -> Tagged:
        match, n, topic, option, against = stored
        return cls(match=match, n=n, topic=Topic(topic), option=option, against=against)


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedServe:
    """A bare score of which we asked who serves, and the log line that it would become.

    No `call` where we asked who serves first. `then` are the rallies told since, won by us or not,
    with their words (none of a tap): they count once the question is answered.
    """

    match: MatchId
    call: str
    n: int
    then: tuple[tuple[bool, str], ...] = ()

    def to_json(self) -> list[Any]:
        return [self.match, self.call, self.n, [list(one) for one in self.then]]

    @classmethod
    def from_json(cls, stored: Sequence[Any]) -> AskedServe:
        match, call, n, *then = stored
        waiting = tuple((ours, text) for ours, text in (then[0] if then else ()))
        return cls(match=match, call=call, n=n, then=waiting)


@dataclass(frozen=True, slots=True, kw_only=True)
class Context:
    """The chat's memory. Sides and formation are those really played in the current match.

    `rates` are our chances of a rally (serving, receiving) as the user put them for this match,
    `counts` what was counted of it instead: (won, played) of either half. `told` is how far the
    answer to `asked` went, None once we asked back what is meant; `asked_last`: nothing was noted
    or counted since, so that a correction is of the question. `asks_who` is the pending message
    whose name we asked about just now. `tagged` is our choice for the next rally, `asked_serve` the
    score whose server we asked about. `wind` blows until told otherwise. `timeouts`: of ours left
    as told, in which match and game. `pool` is the pool that we play in, `listing` the page of a
    list that was shown last, `scouting` the open scout card, `over` the match that was closed last.
    `called` are those spoken of as he or as she. `noted` is the note that the last message left or
    changed. `coach`: a coach writes, of one pair or several.
    """

    match: MatchId | None = None
    ours: tuple[PlayerId, ...] = ()
    theirs: tuple[PlayerId, ...] = ()
    focus: tuple[PlayerId, ...] = ()
    asker: PlayerId | None = None
    called: tuple[tuple[PlayerId, str], ...] = ()
    mode: Mode = Mode.OPEN
    log_only: bool = False
    sides: tuple[tuple[PlayerId, Side], ...] = ()
    formation: Formation | None = None
    their_formation: Formation | None = None
    familiarity: Familiarity | None = None
    rates: tuple[float | None, float | None] | None = None
    counts: tuple[SaidCount, SaidCount] | None = None
    asked: Asked | None = None
    told: Depth | None = None
    asked_last: bool = False
    pendings: tuple[Pending, ...] = ()
    pending_count: int = 0
    asks_who: int | None = None
    change: ChangeId | None = None
    tagged: Tagged | None = None
    asked_serve: AskedServe | None = None
    wind: KeptWind | None = None
    timeouts: tuple[int, int, int] | None = None
    pool: EventId | None = None
    listing: Listing | None = None
    scouting: Scouting | None = None
    over: MatchId | None = None
    noted: NoteId | None = None
    coach: Coached | None = None

    @property
    def asks_serve_of(self) -> MatchId | None:
        """The match of which we asked who serves, until something of it is logged."""
        return None if self.asked_serve is None else self.asked_serve.match

    def side_of(self, player: PlayerId) -> Side | None:
        return dict(self.sides).get(player)

    def with_side(self, player: PlayerId, side: Side) -> Context:
        """The player plays that side; a partner known to be on it moves over."""
        pair = next((pair for pair in (self.ours, self.theirs) if player in pair), (player,))
        sides = dict(self.sides) | {player: side}
        sides |= {other: side.other for other in pair if other != player}
        return replace(self, sides=tuple(sorted(sides.items())))

    def looking_at(self, *players: PlayerId) -> Context:
        """These are whom "him", "her" or "they" now mean."""
        return replace(self, focus=players) if players else self

    def among(self, known: Collection[PlayerId]) -> Context:
        """The same without players that are no longer in the book."""
        return replace(
            self,
            ours=self.ours if set(self.ours) <= set(known) else (),
            theirs=tuple(player for player in self.theirs if player in known),
            focus=tuple(player for player in self.focus if player in known),
            called=tuple(each for each in self.called if each[0] in known),
            scouting=self.scouting if _all_known(self.scouting, known) else None,
            coach=None if self.coach is None else self.coach.among(known),
        )

    def with_pending(self, pending: Pending) -> Context:
        awaited = [one for one in self.pendings[: 1 - KEPT_PENDINGS] if one.announces][-1:]
        kept = (*awaited, *self.pendings[1 - KEPT_PENDINGS :], pending)
        asks = pending.number if pending.waits_for_name else self.asks_who
        return replace(self, pendings=kept, pending_count=pending.number, asks_who=asks)

    def pending(self, number: int) -> Pending | None:
        return next((one for one in self.pendings if one.number == number), None)

    def without_pending(self, number: int) -> Context:
        left = tuple(one for one in self.pendings if one.number != number)
        return replace(self, pendings=left)

    def with_kept(self, pending: Pending) -> Context:
        """The pending message of that number as it is now."""
        kept = tuple(pending if one.number == pending.number else one for one in self.pendings)
        return replace(self, pendings=kept)

    def without_announced(self) -> Context:
        """No match told of waits for its names any more; the taps on them stay."""
        kept = tuple(replace(one, announces=False) for one in self.pendings)
        return replace(self, pendings=kept)

    def after_result(self) -> Context:
        """A result ends what was said of the match; "they" no longer means that pair."""
        return Context(
            ours=self.ours,
            asker=self.asker,
            called=self.called,
            log_only=self.log_only,
            familiarity=self.familiarity,
            pendings=self.pendings,
            pending_count=self.pending_count,
            change=self.change,
            sides=tuple((player, side) for player, side in self.sides if player in self.ours),
            formation=self.formation,
            pool=self.pool,
            over=self.over,
            coach=self.coach,
        )

    def to_json(self) -> dict[str, Any]:
        """Plain JSON, absent things left out."""
        plain: dict[str, Any] = {
            "match": self.match,
            "ours": list(self.ours),
            "theirs": list(self.theirs),
            "focus": list(self.focus),
            "asker": self.asker,
            "called": [list(each) for each in self.called],
            "mode": self.mode.value,
            "log_only": self.log_only,
            "sides": [[player, side.value] for player, side in self.sides],
            "formation": self.formation,
            "their_formation": self.their_formation,
            "familiarity": self.familiarity,
            "rates": None if self.rates is None else list(self.rates),
            "counts": counts_to_json(self.counts),
            "asked": None if self.asked is None else self.asked.to_json(),
            "told": self.told,
            "asked_last": self.asked_last,
            "pendings": [one.to_json() for one in self.pendings],
            "pending_count": self.pending_count,
            "asks_who": self.asks_who,
            "change": self.change,
            "tagged": None if self.tagged is None else self.tagged.to_json(),
            "asked_serve": None if self.asked_serve is None else self.asked_serve.to_json(),
            "wind": None if self.wind is None else self.wind.to_json(),
            "timeouts": None if self.timeouts is None else list(self.timeouts),
            "pool": self.pool,
            "listing": None if self.listing is None else self.listing.to_json(),
            "scouting": None if self.scouting is None else self.scouting.to_json(),
            "over": self.over,
            "noted": self.noted,
            "coach": None if self.coach is None else self.coach.to_json(),
        }
        stored = {key: value for key, value in plain.items() if value not in (None, [], {}, False)}
        return {"v": CONTEXT_VERSION, **stored}

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> Context:
        """The context as stored; an empty or unknown version gives an empty one."""
        if stored.get("v") != CONTEXT_VERSION:
            return cls()
        return cls(
            match=stored.get("match"),
            ours=tuple(stored.get("ours", ())),
            theirs=tuple(stored.get("theirs", ())),
            focus=tuple(stored.get("focus", ())),
            asker=stored.get("asker"),
            called=tuple((PlayerId(player), called) for player, called in stored.get("called", ())),
            mode=Mode(stored.get("mode", Mode.OPEN)),
            log_only=stored.get("log_only", False),
            sides=tuple((PlayerId(player), Side(side)) for player, side in stored.get("sides", ())),
            formation=maybe(Formation, stored.get("formation")),
            their_formation=maybe(Formation, stored.get("their_formation")),
            familiarity=maybe(Familiarity, stored.get("familiarity")),
            rates=None if stored.get("rates") is None else tuple(stored["rates"]),
            counts=maybe(counts_from_json, stored.get("counts")),
            asked=maybe(Asked.from_json, stored.get("asked")),
            told=maybe(Depth, stored.get("told")),
            asked_last=stored.get("asked_last", False),
            pendings=tuple(Pending.from_json(one) for one in stored.get("pendings", ())),
            pending_count=stored.get("pending_count", 0),
            asks_who=stored.get("asks_who"),
            change=stored.get("change"),
            tagged=maybe(Tagged.from_json, stored.get("tagged")),
            asked_serve=maybe(AskedServe.from_json, stored.get("asked_serve")),
            wind=wind_from_json(stored),
            timeouts=None if stored.get("timeouts") is None else tuple(stored["timeouts"]),
            pool=stored.get("pool"),
            listing=maybe(Listing.from_json, stored.get("listing")),
            scouting=maybe(Scouting.from_json, stored.get("scouting")),
            over=stored.get("over"),
            noted=stored.get("noted"),
            coach=maybe(Coached.from_json, stored.get("coach")),
        )


def _all_known(card: Scouting | None, known: Collection[PlayerId]) -> bool:
    return card is not None and set(card.players) <= set(known)
