"""A match's log: appended only, its score a fold over it."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.book.scope import Scope


class MatchLog(Scope):
    """The log of a match."""

    def entries(self, match: MatchId) -> tuple[EntryRow, ...]:
        """Every line in order, voided ones and voids included."""
        raise NotImplementedError

    def append(
        self,
        match: MatchId,
        kind: EntryKind,
        *,
        expected: int | None = None,
        game_no: int = 1,
        won_by: Winner | None = None,
        ours: int | None = None,
        theirs: int | None = None,
        server: int | None = None,
        we_serve: bool | None = None,
        detail: Mapping[str, Any] | None = None,
        voids: int | None = None,
        inbox: InboxId | None = None,
    ) -> EntryRow | AlreadyCounted:
        """The next line. `expected` is the number it must get (a scoring tap's): where the log is elsewhere, nothing is written."""
        raise NotImplementedError

    def void(self, match: MatchId, n: int, *, inbox: InboxId | None = None) -> EntryRow:
        """Take line `n` out; voiding a void puts its line back."""
        raise NotImplementedError

    def tell_rally(self, row: RallyRow) -> None:
        """What is known of a logged rally, in place of what was."""
        raise NotImplementedError

    def rallies(self, match: MatchId) -> tuple[RallyRow, ...]:
        """"""
        raise NotImplementedError

    def choose(self, row: ChoiceRow) -> None:
        """What we chose in a logged rally, one choice per topic."""
        raise NotImplementedError

    def choices(self, topic: Topic) -> tuple[ChoiceRow, ...]:
        """Of all matches, in order."""
        raise NotImplementedError
