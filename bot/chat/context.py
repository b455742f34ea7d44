"""What a chat remembers between messages: one versioned value, stored as JSON with the chat."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from typing import Any, NamedTuple

from knowledge.situation import Familiarity, Formation
from knowledge.vocabulary import (
    BallKind,
    BallQuality,
    Mode,
    PlayerId,
    Side,
    Topic,
    Wing,
)
from scouting_db.values import ChangeId, MatchId

CONTEXT_VERSION = 1

KEPT_PENDINGS = 4
"""Questions of ours still open for a tap; older ones have gone stale."""


class SaidState(NamedTuple):
    """A score said inside a question: for this question only, never the match's."""

    ours: int
    theirs: int
    server: int | None
    we_serve: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """The last question, so that a button can put it again with one thing settled."""

    topic: Topic
    text: str
    about: tuple[PlayerId, ...] = ()
    wing: Wing | None = None
    ball: BallQuality | None = None
    ball_kind: BallKind | None = None
    hitter_side: Side | None = None
    striker_side: Side | None = None
    pulled_wide: PlayerId | None = None
    we_serve: bool | None = None
    score: SaidState | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pending:
    """A message that waits for a name: whom `typed` means, and the words to take up again."""

    number: int
    typed: str
    text: str
    candidates: tuple[PlayerId, ...]
    note: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Context:
    """The chat's memory. Sides and formation are those really played in the current match."""

    match: MatchId | None = None
    ours: tuple[PlayerId, ...] = ()
    theirs: tuple[PlayerId, ...] = ()
    focus: tuple[PlayerId, ...] = ()
    asker: PlayerId | None = None
    mode: Mode = Mode.OPEN
    log_only: bool = False
    sides: tuple[tuple[PlayerId, Side], ...] = ()
    formation: Formation | None = None
    their_formation: Formation | None = None
    familiarity: Familiarity | None = None
    asked: Asked | None = None
    pendings: tuple[Pending, ...] = ()
    pending_count: int = 0
    change: ChangeId | None = None

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
        )

    def with_pending(self, pending: Pending) -> Context:
        kept = (*self.pendings, pending)[-KEPT_PENDINGS:]
        return replace(self, pendings=kept, pending_count=pending.number)

    def pending(self, number: int) -> Pending | None:
        return next((one for one in self.pendings if one.number == number), None)

    def without_pending(self, number: int) -> Context:
        left = tuple(one for one in self.pendings if one.number != number)
        return replace(self, pendings=left)

    def after_result(self) -> Context:
        """A result ends what was said of the match; "they" no longer means that pair."""
        return Context(
            ours=self.ours,
            asker=self.asker,
            log_only=self.log_only,
            familiarity=self.familiarity,
            pendings=self.pendings,
            pending_count=self.pending_count,
            change=self.change,
            sides=tuple((player, side) for player, side in self.sides if player in self.ours),
            formation=self.formation,
        )

    def to_json(self) -> dict[str, Any]:
        """Plain JSON, absent things left out."""
        plain: dict[str, Any] = {
            "match": self.match,
            "ours": list(self.ours),
            "theirs": list(self.theirs),
            "focus": list(self.focus),
            "asker": self.asker,
            "mode": self.mode.value,
            "log_only": self.log_only,
            "sides": [[player, side.value] for player, side in self.sides],
            "formation": self.formation,
            "their_formation": self.their_formation,
            "familiarity": self.familiarity,
            "asked": _asked_to_json(self.asked),
            "pendings": [_pending_to_json(one) for one in self.pendings],
            "pending_count": self.pending_count,
            "change": self.change,
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
            mode=Mode(stored.get("mode", Mode.OPEN)),
            log_only=stored.get("log_only", False),
            sides=tuple((PlayerId(player), Side(side)) for player, side in stored.get("sides", ())),
            formation=_maybe(Formation, stored.get("formation")),
            their_formation=_maybe(Formation, stored.get("their_formation")),
            familiarity=_maybe(Familiarity, stored.get("familiarity")),
            asked=_asked_from_json(stored.get("asked")),
            pendings=tuple(_pending_from_json(one) for one in stored.get("pendings", ())),
            pending_count=stored.get("pending_count", 0),
            change=stored.get("change"),
        )


def _maybe(kind: Any, value: Any) -> Any:
    return None if value is None else kind(value)


def _asked_to_json(asked: Asked | None) -> dict[str, Any] | None:
    if asked is None:
        return None
    plain = {
        "topic": asked.topic.value,
        "text": asked.text,
        "about": list(asked.about),
        "wing": asked.wing,
        "ball": asked.ball,
        "ball_kind": asked.ball_kind,
        "hitter_side": asked.hitter_side,
        "striker_side": asked.striker_side,
        "pulled_wide": asked.pulled_wide,
        "we_serve": asked.we_serve,
        "score": None if asked.score is None else list(asked.score),
    }
    return {key: value for key, value in plain.items() if value is not None and value != []}


def _asked_from_json(stored: Mapping[str, Any] | None) -> Asked | None:
    if stored is None:
        return None
    return Asked(
        topic=Topic(stored["topic"]),
        text=stored["text"],
        about=tuple(stored.get("about", ())),
        wing=_maybe(Wing, stored.get("wing")),
        ball=_maybe(BallQuality, stored.get("ball")),
        ball_kind=_maybe(BallKind, stored.get("ball_kind")),
        hitter_side=_maybe(Side, stored.get("hitter_side")),
        striker_side=_maybe(Side, stored.get("striker_side")),
        pulled_wide=stored.get("pulled_wide"),
        we_serve=stored.get("we_serve"),
        score=None if stored.get("score") is None else SaidState(*stored["score"]),
    )


def _pending_to_json(one: Pending) -> dict[str, Any]:
    return {
        "number": one.number,
        "typed": one.typed,
        "text": one.text,
        "candidates": list(one.candidates),
        "note": one.note,
    }


def _pending_from_json(stored: Mapping[str, Any]) -> Pending:
    return Pending(
        number=stored["number"],
        typed=stored["typed"],
        text=stored["text"],
        candidates=tuple(stored["candidates"]),
        note=stored.get("note"),
    )
