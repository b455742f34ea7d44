"""Keys of PostgreSQL's advisory locks, so that no two of ours mean different things."""

from __future__ import annotations

from enum import IntEnum

KIND_SHIFT = 56
"""The kind stands above every number that a row of ours will have."""


class LockKind(IntEnum):
    """What is locked. Upgrades and sole workers have keys of their own (upgrade, sole)."""

    ACCEPTING = 1
    SENDING = 2


def lock_key(kind: LockKind, number: int) -> int:
    """The key of a lock on that row; ValueError where the number leaves no room for its kind."""
    if not 0 <= number < 1 << KIND_SHIFT:
        raise ValueError(f"no lock of {kind.name} has the number {number}")
    return (kind << KIND_SHIFT) | number
