"""Two players together, and what a pair of ours settled."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.book.scope import Scope


class Pairs(Scope):
    """Pairs and agreements."""

    def pair_of(self, a: PlayerId, b: PlayerId) -> PairId:
        """The pair, made at the first call; in any order."""
        raise NotImplementedError

    def pair(self, pair: PairId) -> PairRow | None:
        """"""
        raise NotImplementedError

    def pairs(self) -> tuple[PairRow, ...]:
        """"""
        raise NotImplementedError

    def agree(self, pair: PairId, key: AgreementKey, value: str, words: str) -> None:
        """From now on this counts for the pair; what stood before is kept."""
        raise NotImplementedError

    def withdraw(self, pair: PairId, key: AgreementKey) -> None:
        """Take back the newest agreement of that key: the one before counts again."""
        raise NotImplementedError

    def agreements_of(self, pair: PairId) -> tuple[AgreementRow, ...]:
        """The newest of each key."""
        raise NotImplementedError
