"""Which estimates an answer looked at, so that its numbers lead back to notes and rallies."""

from __future__ import annotations

from collections.abc import ItemsView, Mapping, ValuesView
from dataclasses import replace
from typing import Any, Protocol, TypeVar

from knowledge.evidence.profile import Profile
from knowledge.vocabulary import EvidenceId


class Grounded(Protocol):
    """An estimate with the evidence behind it."""

    @property
    def evidence(self) -> tuple[EvidenceId, ...]: ...


Key = TypeVar("Key")
Found = TypeVar("Found", bound=Grounded)


class Looked:
    """The evidence of every estimate that was looked at, in the order of the first look."""

    def __init__(self) -> None:
        self._seen: dict[int, tuple[EvidenceId, ...]] = {}

    def at(self, estimate: Grounded) -> None:
        """Remember it; the same estimate counts once however often it is read."""
        if estimate.evidence:
            self._seen[id(estimate.evidence)] = estimate.evidence

    @property
    def evidence(self) -> tuple[tuple[EvidenceId, ...], ...]:
        """One tuple per estimate."""
        return tuple(self._seen.values())


class _Watched(dict[Key, Found]):
    """A mapping of estimates that tells which of them are read."""

    __slots__ = ("_looked",)

    def __init__(self, estimates: Mapping[Key, Found], looked: Looked) -> None:
        super().__init__(estimates)
        self._looked = looked

    def __getitem__(self, key: Key) -> Found:
        found = super().__getitem__(key)
        self._looked.at(found)
        return found

    def get(self, key: Key, default: Any = None) -> Any:
        found = super().get(key, default)
        if found is not default:
            self._looked.at(found)
        return found

    def values(self) -> ValuesView[Found]:  # type: ignore[override]  # dict_values, read only
        self._look_at_all()
        return super().values()

    def items(self) -> ItemsView[Key, Found]:  # type: ignore[override]  # dict_items, read only
        self._look_at_all()
        return super().items()

    def _look_at_all(self) -> None:
        for found in super().values():
            self._looked.at(found)


def watched(one: Profile, looked: Looked) -> Profile:
    """The same profile, whose estimates tell `looked` when they are read."""
    return replace(
        one,
        skills=_Watched(one.skills, looked),
        facts=_Watched(one.facts, looked),
        rates=_Watched(one.rates, looked),
        settled=_Watched(one.settled, looked),
    )
