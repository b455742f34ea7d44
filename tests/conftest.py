"""No test is judged by the clock, the long ones go first, and a worker keeps to its own core."""

from __future__ import annotations

import gc
import os

import pytest
from hypothesis import settings

# There is a worker to each core already: several threads of linear algebra in each only wait for
# one another, at a third of the time of whatever reads messages. Workers and the processes that
# tests start have it from here; a numpy that a plug-in loaded before, where there are no workers,
# stays as it is.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

settings.register_profile("short", deadline=None, max_examples=25)
settings.register_profile("long", deadline=None, max_examples=500)
settings.load_profile("short")


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Files that take minutes are handed out first, after whatever shuffles the others."""
    items.sort(key=lambda item: item.get_closest_marker("minutes") is None)


def pytest_collection_finish() -> None:
    """What was collected lives to the end: no later round of the collector looks at it again."""
    gc.collect()
    gc.freeze()
