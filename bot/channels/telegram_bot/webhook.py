"""The webhook's door: who may knock, how much they may bring, and what they are answered.

Bot API, "setWebhook": an update comes as an HTTPS POST with the JSON of one Update; our secret
stands in a header; where the answer is not 2xx "we will repeat the request and give up after a
reasonable amount of attempts". The server has one request of a chat in flight at a time, so an
update that is never answered with 2xx holds up its chat. Hence: 200 once the update is in the
inbox, and also where it will never be taken (nobody can read it, the gate refuses it, we had it
before); an error only for what is not from the server at all, or where trying again helps.
"""

from __future__ import annotations

import asyncio
import hmac
import json
import logging
from collections.abc import Callable
from typing import Any

from starlette.requests import ClientDisconnect, Request
from starlette.responses import PlainTextResponse, Response

from bot.channels.telegram_bot.counters import Counters
from bot.channels.telegram_bot.incoming import LARGEST_NUMBER
from bot.channels.telegram_bot.intake import Intake

log = logging.getLogger(__name__)

SECRET_HEADER = "X-Telegram-Bot-Api-Secret-Token"

LARGEST_BODY_BYTES = 1 << 20
"""An update is a message of at most 4,096 characters, with entities and the message that it
answers: some 100 KB of escaped JSON at the very most. A guess of ours with room to spare."""

BODY_WITHIN_S = 15.0
"""A body that takes longer is none of the server's; a guess of ours."""

COME_BACK_S = "2"


class RefusedError(Exception):
    """A request that is not an update: the status it gets and why, in words of ours alone."""

    def __init__(self, status: int, why: str) -> None:
        super().__init__(why)
        self.status = status


class Door:
    """Takes requests for the intake; until there is one, they are asked to come again."""

    def __init__(
        self, *, secret: str, counters: Counters, intake: Callable[[], Intake | None]
    ) -> None:
        self._secret = secret.encode()
        self._counters = counters
        self._intake = intake

    async def receive(self, request: Request) -> Response:
        """One delivery."""
        try:
            self._check_secret(request)
            intake = self._intake()
            if intake is None:
                return _again("not ready yet")
            update = await _update_of(request)
        except RefusedError as error:
            self._counters.refused += 1
            log.warning("a request is refused: %s", error, extra=_numbers(status=error.status))
            return PlainTextResponse(f"{error}\n", error.status)
        return await self._take(intake, update)

    async def _take(self, intake: Intake, update: dict[str, Any]) -> Response:
        number = update["update_id"]
        admitted = await intake.admit([update])
        try:
            rows = await intake.store(admitted)
        except Exception:
            log.exception("an update could not be stored", extra=_numbers(update=number))
            return _again("not stored")
        self._counters.accepted += len(rows)
        self._counters.repeated += len(admitted.arrivals) - len(rows)
        for row in rows:
            log.debug("accepted", extra=_numbers(update=number, inbox=row))
        return Response(status_code=200)

    def _check_secret(self, request: Request) -> None:
        """In constant time (Python, hmac.compare_digest), and before anything else is read."""
        given = request.headers.get(SECRET_HEADER, "")
        if not hmac.compare_digest(given.encode("latin-1", "replace"), self._secret):
            raise RefusedError(403, "the secret token is missing or wrong")


def _again(why: str) -> Response:
    return PlainTextResponse(f"{why}\n", 503, headers={"Retry-After": COME_BACK_S})


async def _update_of(request: Request) -> dict[str, Any]:
    """The update in the body; RefusedError where there is none."""
    body = await _body_of(request)
    try:
        update = json.loads(body)
    except (ValueError, RecursionError):
        raise RefusedError(400, "the body is not JSON") from None
    number = update.get("update_id") if isinstance(update, dict) else None
    if isinstance(number, bool) or not isinstance(number, int) or abs(number) > LARGEST_NUMBER:
        raise RefusedError(400, "the body is no update: it has no update_id")
    return dict(update)


async def _body_of(request: Request) -> bytes:
    told = request.headers.get("content-length", "0")
    if not told.isdecimal() or int(told[:20]) > LARGEST_BODY_BYTES:
        raise RefusedError(413, f"more than {LARGEST_BODY_BYTES} bytes")
    body = bytearray()
    try:
        async with asyncio.timeout(BODY_WITHIN_S):
            async for part in request.stream():
                body += part
                if len(body) > LARGEST_BODY_BYTES:
                    raise RefusedError(413, f"more than {LARGEST_BODY_BYTES} bytes")
    except TimeoutError:
        raise RefusedError(408, "the body took too long") from None
    except ClientDisconnect:
        raise RefusedError(400, "the connection ended before the body") from None
    return bytes(body)


def _numbers(**numbers: int) -> dict[str, dict[str, int]]:
    return {"numbers": numbers}
