"""The one thread that writes to the database, several jobs to a commit."""

from __future__ import annotations

import asyncio
import contextlib
import threading
from collections.abc import Callable, Iterator
from queue import Empty, SimpleQueue
from typing import Any, TypeVar

from sqlalchemy import Connection

from knowledge.dataclass import dataclass
from scouting_db.passing import is_passing
from scouting_db.session import Store

Result = TypeVar("Result")

JOBS_PER_COMMIT = 64
"""Jobs that share one commit; a guess that keeps a commit within a few tens of milliseconds."""


@dataclass(frozen=True, slots=True)
class _Job:
    work: Callable[[Connection], Any]
    done: asyncio.Future[Any]


class Writer:
    """Runs jobs on a connection of its own thread, so that the event loop never waits for a disk.

    Jobs that wait together are committed together, with those that come in while they are at
    work: an update and its turn are one commit where the turn is asked for at once. A job must
    leave nothing but its writes behind: where one of a group raises, all are rolled back and each
    is run again alone. Where the database refuses, each raises that at once: alone they would wait
    for it one by one.
    """

    def __init__(self, store: Store) -> None:
        self._store = store
        self._loop = asyncio.get_running_loop()
        self._queue: SimpleQueue[_Job | None] = SimpleQueue()
        self._closing = False
        self._thread = threading.Thread(target=self._serve, name="writer", daemon=True)
        self._thread.start()

    async def run(self, work: Callable[[Connection], Result]) -> Result:
        """What the job returned, once it is committed; or what it raised, nothing being stored."""
        return await self.hand_in(work)

    def hand_in(self, work: Callable[[Connection], Result]) -> asyncio.Future[Result]:
        """The same, waited for later; jobs are done in the order in which they were handed in."""
        done: asyncio.Future[Result] = self._loop.create_future()
        self._queue.put(_Job(work, done))
        return done

    async def read(self, work: Callable[[Connection], Result]) -> Result:
        """What it read, beside whatever is being written: also while nothing can be written."""

        def reading() -> Result:
            with self._store.reading() as connection:
                return work(connection)

        return await asyncio.to_thread(reading)

    async def settle(self) -> None:
        """What was committed until now is left by a power cut too; OSError where it cannot be."""
        if self._store.is_late:
            await asyncio.to_thread(self._store.sync)

    async def close(self) -> None:
        """Finish the jobs handed in so far and end the thread."""
        self._queue.put(None)
        await asyncio.to_thread(self._thread.join)

    def _serve(self) -> None:
        while not self._closing and (job := self._queue.get()) is not None:
            self._commit([job], joined=True)

    def _commit(self, jobs: list[_Job], *, joined: bool) -> None:
        """Of these jobs, and of those that come in meanwhile where they may join."""
        try:
            with self._store.writing() as connection:
                results = [
                    job.work(connection) for job in (self._with_joining(jobs) if joined else jobs)
                ]
        except BaseException as error:
            if len(jobs) > 1 and not is_passing(error):
                for job in jobs:
                    self._commit([job], joined=False)
                return
            self._loop.call_soon_threadsafe(_raise, jobs, error)
            return
        self._loop.call_soon_threadsafe(_resolve, jobs, results)

    def _with_joining(self, jobs: list[_Job]) -> Iterator[_Job]:
        """Each of the jobs; where all are done, those that came in, which become jobs of it."""
        done = 0
        while done < len(jobs):
            yield jobs[done]
            done += 1
            if done == len(jobs) < JOBS_PER_COMMIT:
                self._take_next(jobs)

    def _take_next(self, jobs: list[_Job]) -> None:
        with contextlib.suppress(Empty):
            job = self._queue.get_nowait()
            if job is None:
                self._closing = True
            else:
                jobs.append(job)


def _resolve(jobs: list[_Job], results: list[Any]) -> None:
    for job, result in zip(jobs, results, strict=True):
        if not job.done.done():
            job.done.set_result(result)


def _raise(jobs: list[_Job], error: BaseException) -> None:
    for job in jobs:
        if not job.done.done():
            job.done.set_exception(error)
