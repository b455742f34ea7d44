"""How much work something does, in function calls: the same on a busy machine as on an idle one."""

from __future__ import annotations

import gc
import sys
from collections.abc import Callable
from types import FrameType

from knowledge.dataclass import _Unwritten
from knowledge.regex import _Uncompiled


def calls_of(work: Callable[[], object]) -> int:
    """Functions called while it runs, Python's and those written in C alike.

    What a single C function does inside is not seen, so this bounds loops of ours and of
    libraries in Python; a regular expression's own backtracking it does not. Expressions that are
    compiled at their first use are compiled before, and what makes values is written, since that is
    work of no message.
    """
    compile_all()
    write_all()
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


def compile_all() -> list[_Uncompiled]:
    """Every expression of the modules loaded, compiled now."""
    gc.unfreeze()  # what a test in this process had loaded for serving (bot.loading) is not listed
    found = [one for one in gc.get_objects() if type(one) is _Uncompiled]
    for one in found:
        one.compile()
    return found


def write_all() -> int:
    """`__init__` of every dataclass loaded, written now; how many were not yet."""
    found = [one for one in gc.get_objects() if isinstance(one, type)]
    waiting = [one for one in found if isinstance(vars(one).get("__init__"), _Unwritten)]
    for one in waiting:
        vars(one)["__init__"].__get__(None)
    return len(waiting)
