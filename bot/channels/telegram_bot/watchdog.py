"""When we last heard from the server, and a word in the log when that is long ago."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable

log = logging.getLogger(__name__)

LOOK_EVERY_S = 30.0
SILENT_AFTER_S = 120.0
"""Several long polls without one answer."""


class Watchdog:
    """The time of the last successful fetch."""

    def __init__(self, *, clock: Callable[[], float]) -> None:
        self._clock = clock
        self._last = clock()

    def fetched(self) -> None:
        self._last = self._clock()

    @property
    def silent_s(self) -> float:
        """Seconds since the last successful fetch."""
        return self._clock() - self._last

    async def run(self) -> None:
        """Look now and then, and complain."""
        while True:
            await asyncio.sleep(LOOK_EVERY_S)
            if self.silent_s > SILENT_AFTER_S:
                log.error("no fetch has succeeded for %.0f s", self.silent_s)
