"""What a process does about its memory while it loads: what is made then is there to stay.

Left alone, the garbage collector looks through all of it again and again, a fifth of what a start
costs (tests/benchmarks/startup.py), and later, in the middle of some turn, at everything once more.
"""

from __future__ import annotations

import atexit
import ctypes
import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress


@contextmanager
def loading() -> Iterator[None]:
    """Nothing is collected inside, unless `loaded` is called. Nor at the end of the process: its
    memory goes back as a whole.
    """
    was_on = gc.isenabled()
    gc.disable()
    atexit.register(gc.freeze)
    try:
        yield
    finally:
        if was_on:
            gc.enable()


def loaded() -> None:
    """For what goes on serving, before its threads start: from here on rubbish is collected, and
    what is there now is not looked at again.
    """
    _share_one_heap()
    gc.collect()
    gc.freeze()
    gc.enable()


_M_ARENA_MAX = -8
"""malloc.h of the GNU C library; mallopt(3)."""


def _share_one_heap() -> None:
    """The GNU C library gives each thread a heap of its own, none of which uses what is free in
    another: 2 MB more with our few threads, and more with every hour. They rarely allocate at once,
    as Python lets one run at a time. Elsewhere nothing is done.
    """
    if sys.platform == "linux":
        with suppress(AttributeError, OSError):
            ctypes.CDLL(None).mallopt(_M_ARENA_MAX, 1)
