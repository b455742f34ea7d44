"""Touch as notes tell it: a soft dink is a good one, one that is too soft is not."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.vocabulary import Trait

DINKS = frozenset({Trait.FOREHAND_DINK, Trait.BACKHAND_DINK})

_SOFT = frozenset(["soft", "softly", "softer"])
_TOO = frozenset(["too", "2", "overly"])


def is_soft_alone(words: Sequence[str], before: Sequence[str]) -> bool:
    """Whether words say soft and nothing else, and not that it is "too soft" (`before` them)."""
    return bool(words) and set(words) <= _SOFT and not _TOO & set(before[-1:])
