"""Benchmarks of arithmetic run on one thread, so that their figures compare."""

from __future__ import annotations

import os
import sys


def on_one_thread() -> None:
    """Start again with the linear algebra on one thread, which must be settled before numpy."""
    threads = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")
    if any(os.environ.get(name) != "1" for name in threads):
        os.environ.update(dict.fromkeys(threads, "1"))
        os.execv(sys.executable, [sys.executable, *sys.argv])
