"""How much work something does, in function calls: the same on a busy machine as on an idle one."""

from __future__ import annotations

import sys
from collections.abc import Callable
from types import FrameType


def calls_of(work: Callable[[], object]) -> int:
    """Functions called while it runs, Python's and those written in C alike.

    What a single C function does inside is not seen, so this bounds loops of ours and of
    libraries in Python; a regular expression's own backtracking it does not.
    """
    calls = 0

    def count(_frame: FrameType, event: str, _argument: object) -> None:
        nonlocal calls
        calls += event in ("call", "c_call")

    before = sys.getprofile()
    sys.setprofile(count)
    try:
        work()
    finally:
        sys.setprofile(before)
    return calls
