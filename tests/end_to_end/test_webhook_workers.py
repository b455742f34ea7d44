"""Two real workers on one PostgreSQL: nothing lost, nothing doubled, order kept, also past a kill.

Whatever goes wrong: every note once and in the order in which the inbox took it, a reply to each
message, and of each chat at most one reply repeated per kill. Beside the checks: Bot API,
setWebhook (answers that are not 2xx are repeated), and PostgreSQL, "Advisory Locks" (free when
the session ends).
"""

from __future__ import annotations

import signal
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import Any

import pytest
from bot_api import Server, running
from databases import new_postgresql, shown
from sqlalchemy import Engine, create_engine, text
from worker_process import WorkerProcess, worker_process

from scouting_db.session import open_store

CHATS = range(1, 13)
NAMES = ("okafor", "lindqvist", "ruiz", "hale", "brandt")
"""Each gets a note, and so each message its own reply."""

TEXTS = [f"note {name}: pops up dinks" for name in NAMES]
PER_CHAT = len(TEXTS)

pytestmark = pytest.mark.postgres


@pytest.fixture
def database() -> Iterator[Engine]:
    with new_postgresql() as url:
        open_store(shown(url)).close()
        engine = create_engine(url)
        yield engine
        engine.dispose()


def asked(database: Engine, query: str) -> list[tuple[Any, ...]]:
    with database.connect() as connection:
        return [tuple(row) for row in connection.execute(text(query))]


def unsent(database: Engine) -> int:
    """Messages without a sent reply, those not even stored yet included."""
    query = f"""
        SELECT (SELECT count(*) FROM inbox WHERE state = 'open')
             + (SELECT count(*) FROM outbox WHERE state IN ('waiting', 'sending'))
             + {len(CHATS) * PER_CHAT} - (SELECT count(*) FROM inbox)
    """
    return int(asked(database, query)[0][0])


def two_workers(
    stack: ExitStack, api: Server, database: Engine, folder: Path
) -> list[WorkerProcess]:
    url = shown(database.url)
    workers = [stack.enter_context(worker_process(api, url, folder)) for _ in range(2)]
    api.wait_until(lambda _: all(each.is_ready() for each in workers), within_s=40)
    api.wait_until(lambda _: api.called().count("setWebhook") == 2)
    api.ask(lambda state: deliver_to(state, workers))
    return workers


def deliver_to(state: Any, workers: list[WorkerProcess]) -> None:
    """In turn to both, and every fourth twice."""
    state.webhook.set(workers[0].url, state.webhook.secret)
    state.webhook.also[:] = [each.url for each in workers[1:]]
    state.webhook.twice_every = 4


def say_all(api: Server) -> None:
    for text_ in TEXTS:
        for chat in CHATS:
            api.say(chat, text_)


def assert_everything_once_and_in_order(api: Server, database: Engine, *, kills: int) -> None:
    for chat in CHATS:
        of_chat = f"JOIN chat USING (chat_id) WHERE external_chat_id = '{chat}'"
        taken = asked(
            database,
            f"SELECT inbox.payload ->> 'text', inbox.state FROM inbox {of_chat} ORDER BY inbox_id",
        )
        assert taken == [(one, "done") for one in TEXTS]
        notes = asked(database, f"SELECT note.text FROM note {of_chat} ORDER BY note_id")
        assert [one for (one,) in notes] == TEXTS
        posted = asked(
            database,
            f"SELECT outbox.payload ->> 'text' FROM outbox {of_chat} ORDER BY outbox_id",
        )
        assert_sent(
            [one.text for one in api.sent(chat)], [one for (one,) in posted], repeated=kills
        )


def assert_sent(replies: list[str], posted: list[str], *, repeated: int) -> None:
    """Each in order, and at most so many once more right after themselves."""
    assert len(set(posted)) == PER_CHAT, "else a repeated one could hide"
    once = [one for n, one in enumerate(replies) if n == 0 or one != replies[n - 1]]
    assert once == posted
    assert len(replies) - len(posted) <= repeated


def test_two_workers_share_the_work(tmp_path: Path, database: Engine) -> None:
    with running() as api, ExitStack() as stack:
        workers = two_workers(stack, api, database, tmp_path)
        say_all(api)
        api.wait_until(lambda _: unsent(database) == 0, within_s=60)
        pages = [each.page("health")[1] for each in workers]
        assert [page["workers"] for page in pages] == [2, 2]
        assert sum(page["counters"]["handled"] for page in pages) == len(CHATS) * PER_CHAT
        assert all(page["counters"]["handled"] for page in pages), "both took turns"
        assert [each.stop() for each in workers] == [0, 0]
        assert_everything_once_and_in_order(api, database, kills=0)


def test_what_a_killed_worker_had_in_hand_is_taken_over(tmp_path: Path, database: Engine) -> None:
    with running(delay_s=0.01) as api, ExitStack() as stack:
        one, other = two_workers(stack, api, database, tmp_path)
        say_all(api)
        api.wait_until(lambda _: len(api.sent()) >= 15, within_s=60)
        other.stop(signal.SIGKILL)
        api.wait_until(lambda _: unsent(database) == 0, within_s=60)
        assert one.stop() == 0
        assert_everything_once_and_in_order(api, database, kills=1)
