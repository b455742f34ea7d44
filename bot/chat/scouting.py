"""A scout card as a chat remembers it: whom it is about, what was tapped, what comes next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId
from scouting_db.values import NoteId

Place = tuple[PlayerId, str]
"""Of whom, and the id of the question."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tapped:
    """An answer tapped: the question's place, the answer's number from 1, the note it became."""

    place: Place
    answer: int
    note: NoteId

    def to_json(self) -> list[Any]:
        return [*self.place, self.answer, self.note]


@dataclass(frozen=True, slots=True, kw_only=True)
class Scouting:
    """A card that is open. `card` is its number, so that taps on an older one are known as such.

    `queue` is what is still to be asked, the first of it now; `undone` are taps taken back.
    """

    card: int
    day: int
    players: tuple[PlayerId, ...]
    warm_up: bool = False
    queue: tuple[Place, ...] = ()
    taps: tuple[Tapped, ...] = ()
    undone: tuple[Tapped, ...] = ()
    skipped: tuple[Place, ...] = ()

    @property
    def asked(self) -> frozenset[Place]:
        """What was shown so far: a tap on anything else was never offered."""
        taps = (*self.taps, *self.undone)
        return frozenset((*(one.place for one in taps), *self.skipped, *self.queue[:1]))

    @property
    def answered(self) -> frozenset[Place]:
        """What need not be asked again."""
        return frozenset((*(one.place for one in self.taps), *self.skipped))

    def tapped(self, place: Place) -> Tapped | None:
        """The last answer to a question that stands."""
        return next((one for one in reversed(self.taps) if one.place == place), None)

    def with_tap(self, tap: Tapped) -> Scouting:
        return replace(self, taps=(*self.taps, tap), queue=self._without(tap.place))

    def skipping(self, place: Place) -> Scouting:
        return replace(self, skipped=(*self.skipped, place), queue=self._without(place))

    def looking_at(self, player: PlayerId) -> Scouting:
        """That player's questions first, else in the order there is."""
        return replace(self, queue=tuple(sorted(self.queue, key=lambda one: one[0] != player)))

    def without_note(self, note: NoteId) -> Scouting:
        """Its tap was taken back: the question comes first again."""
        gone = [one for one in self.taps if one.note == note]
        if not gone:
            return self
        place = gone[0].place
        return replace(
            self,
            taps=tuple(one for one in self.taps if one.note != note),
            undone=(*self.undone, *gone),
            queue=(place, *self._without(place)),
        )

    def with_note_again(self, note: NoteId) -> Scouting:
        """What was taken back stands again."""
        back = [one for one in self.undone if one.note == note]
        if not back:
            return self
        left = tuple(one for one in self.undone if one.note != note)
        return replace(self, undone=left).with_tap(back[0])

    def _without(self, place: Place) -> tuple[Place, ...]:
        return tuple(one for one in self.queue if one != place)

    def to_json(self) -> dict[str, Any]:
        plain: dict[str, Any] = {
            "card": self.card,
            "day": self.day,
            "players": list(self.players),
            "warm_up": self.warm_up,
            "queue": [list(one) for one in self.queue],
            "taps": [one.to_json() for one in self.taps],
            "undone": [one.to_json() for one in self.undone],
            "skipped": [list(one) for one in self.skipped],
        }
        return {key: value for key, value in plain.items() if value not in ([], False)}

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> Scouting:
        return cls(
            card=stored["card"],
            day=stored["day"],
            players=tuple(stored["players"]),
            warm_up=stored.get("warm_up", False),
            queue=tuple((player, asked) for player, asked in stored.get("queue", ())),
            taps=tuple(map(_tapped, stored.get("taps", ()))),
            undone=tuple(map(_tapped, stored.get("undone", ()))),
            skipped=tuple((player, asked) for player, asked in stored.get("skipped", ())),
        )


def _tapped(stored: list[Any]) -> Tapped:
    player, asked, answer, note = stored
    return Tapped(place=(player, asked), answer=answer, note=note)
