"""The writer thread: jobs together in a commit, each alone where one of them fails."""

from __future__ import annotations

import asyncio
import threading
from collections.abc import Callable, Coroutine, Iterator
from pathlib import Path
from typing import Any, TypeVar

import pytest
from sqlalchemy import Connection

from bot.channels.telegram_bot.writer import JOBS_PER_COMMIT, Writer
from scouting_db.directory import Directory
from scouting_db.session import Store, open_store
from scouting_db.values import AccountId


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(f"sqlite:///{tmp_path / 'post.sqlite'}")
    yield opened
    opened.close()


def add(name: str) -> Callable[[Connection], AccountId]:
    return lambda connection: Directory(connection).account("telegram", name)


def fail(connection: Connection) -> None:
    Directory(connection).account("telegram", "never")
    raise RuntimeError("as planned")


def accounts(store: Store) -> set[str]:
    with store.reading() as connection:
        return set(connection.exec_driver_sql("SELECT bot_ref FROM account").scalars())


Result = TypeVar("Result")


def with_writer(store: Store, use: Callable[[Writer], Coroutine[Any, Any, Result]]) -> Result:
    async def run() -> Result:
        writer = Writer(store)
        try:
            return await use(writer)
        finally:
            await writer.close()

    return asyncio.run(run())


def test_a_result_arrives_after_its_commit(store: Store) -> None:
    async def use(writer: Writer) -> None:
        await writer.run(add("one"))
        assert accounts(store) == {"one"}

    with_writer(store, use)


def test_jobs_run_in_order_and_share_commits(store: Store) -> None:
    began: list[object] = []

    def job(n: int) -> Callable[[Connection], int]:
        def work(connection: Connection) -> int:
            began.append(connection.get_transaction())
            return n

        return work

    async def use(writer: Writer) -> list[int]:
        return await asyncio.gather(*(writer.run(job(n)) for n in range(200)))

    assert with_writer(store, use) == list(range(200))
    assert 200 / JOBS_PER_COMMIT <= len(set(map(id, began))) < 200


def test_a_job_that_comes_in_meanwhile_joins_the_commit(store: Store) -> None:
    began: list[object] = []

    async def use(writer: Writer) -> list[None]:
        handed: list[asyncio.Future[None]] = []
        loop = asyncio.get_running_loop()
        both = threading.Event()

        def second(connection: Connection) -> None:
            began.append(connection.get_transaction())

        def hand_in() -> None:
            handed.append(writer.hand_in(second))
            both.set()

        def first(connection: Connection) -> None:
            began.append(connection.get_transaction())
            loop.call_soon_threadsafe(hand_in)
            assert both.wait(5)

        await writer.run(first)
        return list(await asyncio.gather(*handed))

    assert with_writer(store, use) == [None]
    assert began[0] is began[1]


def test_a_failing_job_takes_nobody_along(store: Store) -> None:
    async def use(writer: Writer) -> list[object]:
        jobs = [writer.run(job) for job in (add("a"), fail, add("b"))]
        return list(await asyncio.gather(*jobs, return_exceptions=True))

    _, failed, _ = with_writer(store, use)
    assert isinstance(failed, RuntimeError)
    assert accounts(store) == {"a", "b"}


def test_jobs_run_off_the_event_loop_s_thread(store: Store) -> None:
    async def use(writer: Writer) -> str:
        return await writer.run(lambda _connection: threading.current_thread().name)

    assert with_writer(store, use) != threading.current_thread().name


def test_closing_finishes_what_was_handed_in(store: Store) -> None:
    async def use(writer: Writer) -> None:
        waiting = [asyncio.ensure_future(writer.run(add(str(n)))) for n in range(10)]
        await asyncio.sleep(0)
        await writer.close()
        await asyncio.gather(*waiting)

    async def run() -> None:
        await use(Writer(store))

    asyncio.run(run())
    assert accounts(store) == {str(n) for n in range(10)}
