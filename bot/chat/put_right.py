"""What is said again after a slip: "ten fifty no wait ten forty" means the second."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from knowledge.regex import regex

_SLIP = regex(
    r"\b(?:no|nope|wait|sorry|oops|i mean|i meant|actually|correction|make that|rather)\b[\s,.:-]*",
)

Read = TypeVar("Read")


def put_right(text: str, read: Callable[[str], Read | None]) -> Read | None:
    """What is read after the last slip that it is read after, or else from the whole text."""
    for slip in reversed([*_SLIP.finditer(text.lower())]):
        found = read(text[slip.end() :])
        if found is not None:
            return found
    return read(text)
