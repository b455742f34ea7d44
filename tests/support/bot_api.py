"""A stand-in for the Bot API: real HTTP, long polling with offsets, faults on demand.

In a test: `with running() as api:` gives a server in a thread of its own and `api.root` for
SEAMWISE_API_BASE. As a process: `python tests/support/bot_api.py [--delay-ms N]` prints its root
and takes orders under `/control/` (bot_api_server).
"""

from __future__ import annotations

import argparse
import asyncio
import contextlib
import json
import sys
import threading
import time
from collections import deque
from collections.abc import Callable, Iterator, Mapping
from typing import Any, TypeVar

from aiohttp import web
from bot_api_server import TOKEN, Fault, SentMessage, State, application, put, too_many_requests
from bot_api_updates import (
    FORWARDED,
    PHOTO,
    STICKER,
    VOICE,
    edit_update,
    message_update,
    tap_update,
)

__all__ = [
    "FORWARDED",
    "PHOTO",
    "STICKER",
    "TOKEN",
    "VOICE",
    "Fault",
    "SentMessage",
    "Server",
    "edit_update",
    "message_update",
    "running",
    "tap_update",
    "too_many_requests",
]

Result = TypeVar("Result")


class Server:
    """A running server, driven from another thread."""

    def __init__(self, state: State, root: str, loop: asyncio.AbstractEventLoop) -> None:
        self.root = root
        self._state = state
        self._loop = loop

    def ask(self, question: Callable[[State], Result]) -> Result:
        """What the question returns, asked in the server's thread."""

        async def asked() -> Result:
            return question(self._state)

        return asyncio.run_coroutine_threadsafe(asked(), self._loop).result(timeout=10)

    def put(self, update: Mapping[str, Any]) -> int:
        """Queue an update; returns its id."""
        return self.ask(lambda state: put(state, update))

    def say(self, chat_id: int, text: str, **more: Any) -> int:
        """Queue a text message; returns the update's id."""
        return self.put(message_update(chat_id=chat_id, text=text, **more))

    def fail(self, method: str, *faults: Fault) -> None:
        """The next calls of the method meet these."""
        self.ask(lambda state: state.faults.setdefault(method, deque()).extend(faults))

    def sent(self, chat_id: int | None = None) -> list[SentMessage]:
        """What the bot sent so far, to one chat or to all."""
        return self.ask(lambda state: [one for one in state.sent if chat_id in (None, one.chat_id)])

    def called(self) -> list[str]:
        """The methods called so far."""
        return self.ask(lambda state: [method for method, _ in state.calls])

    def wait_for_sent(
        self, count: int, chat_id: int | None = None, *, within_s: float = 20.0
    ) -> list[SentMessage]:
        """What was sent, as soon as it is so many; AssertionError where it stays fewer."""
        self.wait_until(lambda _: len(self.sent(chat_id)) >= count, within_s=within_s)
        return self.sent(chat_id)

    def wait_until(self, holds: Callable[[Server], bool], *, within_s: float = 20.0) -> None:
        """Return once it holds; AssertionError where it does not in time."""
        end = time.monotonic() + within_s
        while not holds(self):
            if time.monotonic() > end:
                sent = [(one.chat_id, one.text[:40]) for one in self.sent()]
                raise AssertionError(f"not within {within_s} s; sent so far: {sent}")
            time.sleep(0.02)


@contextlib.contextmanager
def running(*, delay_s: float = 0.0, port: int = 0) -> Iterator[Server]:
    """A server in a thread of its own."""
    loop = asyncio.new_event_loop()
    thread = threading.Thread(target=loop.run_forever, name="bot api", daemon=True)
    thread.start()
    try:
        started = asyncio.run_coroutine_threadsafe(_start(delay_s, port), loop)
        state, runner, root = started.result(timeout=10)
        try:
            yield Server(state, root, loop)
        finally:
            asyncio.run_coroutine_threadsafe(_stop(state, runner), loop).result(timeout=10)
    finally:
        loop.call_soon_threadsafe(loop.stop)
        thread.join(timeout=10)
        loop.close()


async def _start(delay_s: float, port: int) -> tuple[State, web.AppRunner, str]:
    state = State(delay_s=delay_s)
    runner = web.AppRunner(application(state), access_log=None, shutdown_timeout=0.2)
    await runner.setup()
    site = web.TCPSite(runner, "127.0.0.1", port)
    await site.start()
    bound = runner.addresses[0][1]
    return state, runner, f"http://127.0.0.1:{bound}"


async def _stop(state: State, runner: web.AppRunner) -> None:
    await state.webhook.close()
    await runner.cleanup()
    left = [each for each in asyncio.all_tasks() if each is not asyncio.current_task()]
    for each in left:
        each.cancel()
    await asyncio.gather(*left, return_exceptions=True)


async def _serve(delay_s: float, port: int) -> None:
    _, runner, root = await _start(delay_s, port)
    sys.stdout.write(json.dumps({"root": root, "token": TOKEN}) + "\n")
    sys.stdout.flush()
    try:
        await asyncio.Event().wait()
    finally:
        await runner.cleanup()


def main() -> None:
    """Serve until killed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--delay-ms", type=float, default=0.0)
    parser.add_argument("--port", type=int, default=0)
    options = parser.parse_args()
    with contextlib.suppress(KeyboardInterrupt):
        asyncio.run(_serve(options.delay_ms / 1000, options.port))


if __name__ == "__main__":
    main()
