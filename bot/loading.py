"""The garbage collector while a process loads: what is made then is there to stay.

Left alone it looks through all of it again and again, a fifth of what a start costs
(tests/benchmarks/startup.py), and later, in the middle of some turn, at everything once more.
"""

from __future__ import annotations

import atexit
import gc
from collections.abc import Iterator
from contextlib import contextmanager


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
    """From here on rubbish is collected, and what is there now is not looked at again."""
    gc.collect()
    gc.freeze()
    gc.enable()
