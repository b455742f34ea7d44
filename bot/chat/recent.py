"""What was worked out of late, kept by what it was worked out from: never by the time of day."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from typing import Any, TypeVar

Found = TypeVar("Found")


class Recent:
    """The last finding under each key, and from what: equal inputs give it again.

    For functions of their inputs alone. `most` findings are kept, the one used longest ago
    leaving; inputs that are the same objects are told at a glance.
    """

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: OrderedDict[Hashable, tuple[tuple[object, ...], Any]] = OrderedDict()

    def __len__(self) -> int:
        return len(self._kept)

    def recall(self, key: Hashable, inputs: tuple[object, ...], find: Callable[[], Found]) -> Found:
        """What `find` gave of these inputs, or gives now."""
        known = self._kept.get(key)
        if known is None or known[0] != inputs:
            known = self._kept[key] = (inputs, find())
        self._kept.move_to_end(key)
        if len(self._kept) > self._most:
            self._kept.popitem(last=False)
        found: Found = known[1]
        return found

    def forget(self) -> None:
        """Keep nothing."""
        self._kept.clear()
