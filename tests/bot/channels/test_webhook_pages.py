"""What operators see: numbers that are true, and never a word, a name or a token."""

from __future__ import annotations

import asyncio
import json
import logging
import sys
from collections.abc import Iterator
from typing import Any

import httpx
import pytest
from bot_api_updates import message_update
from sqlalchemy import text
from starlette.applications import Starlette
from starlette.routing import Route
from webhook_door import NOW, DoorAjar, door_ajar

from bot.channels.telegram_bot.pages import STUCK_AFTER_S, Pages, Pulse
from bot.channels.telegram_bot.quiet import log_to_stderr
from bot.settings import Settings
from scouting_db.session import Store, open_store
from scouting_db.values import Micros

TOKEN = "99:token-of-the-tests"
LATER = Micros(NOW + 90_000_000)


@pytest.fixture
def store() -> Iterator[Store]:
    opened = open_store("sqlite://")
    yield opened
    opened.close()


async def page(door: DoorAjar, pulse: Pulse, name: str) -> tuple[int, dict[str, Any]]:
    pages = Pages(
        counters=door.counters, pulse=pulse, store=lambda: door.store, clock=lambda: LATER
    )
    routes = [Route("/health", pages.health), Route("/ready", pages.ready)]
    transport = httpx.ASGITransport(app=Starlette(routes=routes))
    async with httpx.AsyncClient(transport=transport, base_url="http://pages") as client:
        answer = await client.get(name)
    return answer.status_code, answer.json()


def beating(door: DoorAjar) -> Pulse:
    pulse = Pulse(account=door.account)
    pulse.beat()
    return pulse


def test_the_health_page_counts_and_names_nobody(store: Store) -> None:
    async def look() -> None:
        async with door_ajar(store) as door:
            for number in (1, 2, 2):
                update = message_update(
                    chat_id=4711, text="okafor hates xylophones", message_id=number
                )
                await door.deliver({"update_id": number, **update})
            status, told = await page(door, beating(door), "/health")
        assert (status, told["status"]) == (200, "ok")
        counted = {name: number for name, number in told["counters"].items() if number}
        assert counted == {"accepted": 2, "repeated": 1}
        assert told["queue"] == {
            "inbox": 2, "inbox_oldest_s": 90.0, "outbox": 0, "outbox_oldest_s": 0.0
        }  # fmt: skip
        for secret in ("okafor", "xylophones", "4711", "User"):
            assert secret not in json.dumps(told)

    asyncio.run(look())


def test_ready_says_why_not(store: Store) -> None:
    async def look() -> None:
        async with door_ajar(store) as door:
            pulse = beating(door)
            assert await page(door, pulse, "/ready") == (200, {"ready": True, "why": None})
            pulse.round_at -= STUCK_AFTER_S + 1
            assert await page(door, pulse, "/ready") == (503, {"ready": False, "why": "stuck"})
            assert (await page(door, pulse, "/health"))[0] == 503
            pulse.stopping = True
            assert await page(door, pulse, "/ready") == (503, {"ready": False, "why": "stopping"})
            starting = (503, {"ready": False, "why": "starting"})
            assert await page(door, Pulse(), "/ready") == starting
            assert (await page(door, Pulse(), "/health"))[0] == 200
            pulse = beating(door)
            gone = open_store("sqlite://")
            with gone.writing() as connection:
                connection.execute(text("DROP TABLE outbox"))
            door.store = gone
            no_database = (503, {"ready": False, "why": "no database"})
            assert await page(door, pulse, "/ready") == no_database
            gone.close()

    asyncio.run(look())


def test_a_log_line_is_json_without_secrets_or_what_an_error_quotes(
    capsys: pytest.CaptureFixture[str],
) -> None:
    settings = Settings(token=TOKEN)
    root = logging.getLogger()
    before, level = root.handlers[:], root.level
    try:
        log_to_stderr(level="info", secrets=(TOKEN, settings.secret_for_webhook), as_json=True)
        log = logging.getLogger("bot.somewhere")
        try:
            raise ValueError("okafor hates xylophones")
        except ValueError:
            log.exception(
                "it broke at %s with %s", TOKEN, settings.secret_for_webhook,
                extra={"numbers": {"update": 5}},
            )  # fmt: skip
        sys.stderr.flush()
        line = capsys.readouterr().err
    finally:
        root.handlers[:] = before
        root.setLevel(level)
    told = json.loads(line)
    assert told["message"] == "it broke at <token> with <token>"
    assert (told["level"], told["update"], told["error"]) == ("error", 5, "ValueError")
    assert "xylophones" not in line
    assert "test_webhook_pages.py" in told["where"][0]


def test_the_secret_is_the_same_each_time_and_gives_no_token_away() -> None:
    first, second = (Settings(token=TOKEN).secret_for_webhook for _ in range(2))
    assert first == second != Settings(token=TOKEN + "x").secret_for_webhook
    assert len(first) == 64
    assert set(first) <= set("0123456789abcdef"), "Bot API: A-Z a-z 0-9 _ -, at most 256"
    assert TOKEN not in first
    assert first not in repr(Settings(token=TOKEN, webhook_secret="s" * 20))
