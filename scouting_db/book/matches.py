"""Events and matches."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.book.scope import Scope


class Matches(Scope):
    """Events and matches."""

    def add_event(self, name: str, *, starts_at: Micros | None = None) -> EventId:
        """"""
        raise NotImplementedError

    def events(self) -> tuple[EventRow, ...]:
        """Newest first."""
        raise NotImplementedError

    def announce(
        self,
        *,
        our_pair: PairId | None,
        their_pair: PairId | None,
        format: Mapping[str, Any],
        starts_at: Micros | None = None,
        court: str | None = None,
        event: EventId | None = None,
        state: MatchState = MatchState.ANNOUNCED,
    ) -> MatchId:
        """A new match."""
        raise NotImplementedError

    def replace_match(self, row: MatchRow) -> None:
        """Everything about the match but its log becomes as in `row` (its `made_at` stays)."""
        raise NotImplementedError

    def set_state(self, match: MatchId, state: MatchState) -> None:
        """"""
        raise NotImplementedError

    def match(self, match: MatchId) -> MatchRow | None:
        """"""
        raise NotImplementedError

    def current_match(self) -> MatchRow | None:
        """The newest running match, else the newest announced one."""
        raise NotImplementedError

    def matches(self, *, limit: int = 50) -> tuple[MatchRow, ...]:
        """Newest first."""
        raise NotImplementedError

    def matches_against(self, their_pair: PairId) -> tuple[MatchRow, ...]:
        """Newest first."""
        raise NotImplementedError

    def remove_match(self, match: MatchId) -> None:
        """Take back an announcement; ValueError once something is logged."""
        raise NotImplementedError
