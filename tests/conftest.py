"""No test is judged by the clock, and the long ones go first."""

from __future__ import annotations

import pytest
from hypothesis import settings

settings.register_profile("no clock", deadline=None)
settings.load_profile("no clock")


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Files that take minutes are handed out first, after whatever shuffles the others."""
    items.sort(key=lambda item: item.get_closest_marker("minutes") is None)
