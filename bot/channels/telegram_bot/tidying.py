"""The database's log, emptied beside the messages and not in the middle of one."""

from __future__ import annotations

import asyncio
import logging

from sqlalchemy.exc import SQLAlchemyError

from scouting_db.session import Store

log = logging.getLogger(__name__)

TIDY_EVERY_S = 5.0
"""At 40 messages a second the log grows by 10 MB meanwhile (measured); a guess."""


async def keep_tidy(store: Store, *, every_s: float = TIDY_EVERY_S) -> None:
    """Until cancelled; in a thread, since it waits for a disk. What cannot be done is left: the
    log is not lost, and a commit moves it where it gets long.
    """
    while True:
        await asyncio.sleep(every_s)
        try:
            await asyncio.to_thread(store.tidy)
        except SQLAlchemyError as error:
            log.info("the log of the database stays as it is: %s", type(error).__name__)
