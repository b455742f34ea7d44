"""Game plans as given, and the book's own settings."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.book.scope import Scope


class Plans(Scope):
    """Plans and preferences."""

    def store_plan(
        self,
        *,
        our_pair: PairId | None,
        their_pair: PairId | None,
        variant: str,
        lines: Sequence[str],
    ) -> PlanId:
        """"""
        raise NotImplementedError

    def latest_plan(
        self, their_pair: PairId | None, *, variant: str | None = None
    ) -> PlanRow | None:
        """The newest plan against that pair, of any variant unless said."""
        raise NotImplementedError

    def preferences(self) -> Mapping[str, str]:
        """"""
        raise NotImplementedError

    def prefer(self, key: str, value: str) -> None:
        """"""
        raise NotImplementedError
