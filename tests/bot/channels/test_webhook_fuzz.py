"""Whatever is sent to the webhook: a known answer, nothing stored that a turn cannot read, nothing
stored twice, and the door still open afterwards.

Beside the checks: RFC 9110 for what the statuses mean; Bot API, setWebhook, for what is repeated
(anything but 2xx), so that no answer to the server's own updates may be another one for ever.
"""

from __future__ import annotations

import asyncio
import copy
import json
from collections.abc import Iterator
from itertools import count
from typing import Any

import pytest
from bot_api_updates import (
    FORWARDED,
    PHOTO,
    STICKER,
    VOICE,
    document,
    edit_update,
    message_update,
    tap_update,
)
from databases import BOTH, new_postgresql, shown
from hypothesis import HealthCheck, event, given, settings
from hypothesis import strategies as st
from webhook_door import NOW, SECRET, DoorAjar, door_ajar

from bot.channels.telegram_bot.webhook import SECRET_HEADER
from bot.channels.telegram_bot.writer import Writer
from bot.chat.turn import take_turn
from bot.post import run_batch
from scouting_db.session import Store, open_store

GROUP, MIRA = -77, 11
NUMBERS = count(10**6)

LEAVES = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(),
    st.integers(min_value=2**62, max_value=2**70),
    st.floats(),
    st.text(st.characters(exclude_categories=())),
    st.sampled_from(["\0", "\ud83d", "/plan@stand_in_bot", "private", "supergroup", " "]),
)
JSON = st.recursive(
    LEAVES,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)
ANSWERED = {"reply_to_message": message_update(chat_id=GROUP, text="before")["message"]}
WHOLE = [
    message_update(chat_id=MIRA, text="okafor pops up dinks", message_id=1),
    message_update(chat_id=GROUP, text="/plan@stand_in_bot", user_id=5, message_id=1, **ANSWERED),
    message_update(chat_id=GROUP, user_id=5, message_id=1, migrate_to_chat_id=-1_000_000_000_077),
    edit_update(chat_id=MIRA, message_id=1, text="okafor is a lefty"),
    tap_update(chat_id=MIRA, message_id=1, data="1:undo"),
    *(
        message_update(chat_id=MIRA, message_id=1, **kind)
        for kind in (PHOTO, STICKER, VOICE, FORWARDED, document("draw.csv", "f", 10))
    ),
]


@st.composite
def updates(draw: st.DrawFn) -> Any:
    """One of the server's, as it is or with up to three of its values changed or gone."""
    update = {"update_id": draw(st.integers(1, 5)), **copy.deepcopy(draw(st.sampled_from(WHOLE)))}
    for _ in range(draw(st.integers(0, 3))):
        place, key = draw(st.sampled_from([*_places(update)] or [({}, "none")]))
        if draw(st.booleans()):
            place.pop(key, None)
        else:
            place[key] = draw(JSON)
    return update


def _places(value: Any) -> Iterator[tuple[dict[str, Any], str]]:
    for key, inner in value.items() if isinstance(value, dict) else ():
        yield value, key
        yield from _places(inner)


BODIES = st.one_of(
    updates().map(lambda update: json.dumps(update).encode()),
    JSON.map(lambda value: json.dumps(value).encode()),
    st.binary(max_size=200),
)
SECRETS = st.sampled_from([SECRET, SECRET, SECRET, SECRET, "", "wrong", "\u00e9", None])


@pytest.fixture(scope="module", params=BOTH)
def store(request: pytest.FixtureRequest) -> Iterator[Store]:
    if request.param == "sqlite":
        opened = open_store("sqlite://")
        yield opened
        opened.close()
        return
    with new_postgresql() as url:
        opened = open_store(shown(url))
        yield opened
        opened.close()


@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
@given(body=BODIES, secret=SECRETS)
def test_whatever_is_sent_the_door_stands(store: Store, body: bytes, secret: str | None) -> None:
    async def visit() -> None:
        async with door_ajar(store) as door:
            await knock(door, body, secret)

    asyncio.run(visit())


async def knock(door: DoorAjar, body: bytes, secret: str | None) -> None:
    headers: dict[str, str | bytes] = {}
    if secret is not None:
        headers[SECRET_HEADER] = secret.encode("latin-1")
    before = door.waiting()
    status = await door.knock(body, headers)
    event(f"answered {status}")
    if secret != SECRET:
        assert status == 403
    elif status == 200:
        assert is_update(body)
    else:
        assert status == 400
        assert not is_update(body)
    stored = door.waiting() - before
    assert stored in ((0, 1) if status == 200 else (0,))
    assert await door.knock(body, headers) == status
    assert door.waiting() - before == stored, "again, and nothing changes"
    await read_all(door)
    plain = {"update_id": next(NUMBERS), **WHOLE[0]}
    assert await door.deliver(plain) == 200
    assert door.waiting() == 1
    await read_all(door)
    assert door.waiting() == 0


def is_update(body: bytes) -> bool:
    """Whether it is a JSON object with a number as update_id, as Bot API's Update has one."""
    try:
        value = json.loads(body)
    except ValueError:
        return False
    number = value.get("update_id") if isinstance(value, dict) else None
    return type(number) is int and abs(number) < 2**63


async def read_all(door: DoorAjar) -> None:
    """Every row is one that a turn can read, and goes away: no poison in the queue."""
    writer = Writer(door.store)
    try:
        while door.waiting():
            batch = await writer.run(
                lambda connection: run_batch(connection, door.account, take_turn, now=NOW)
            )
            assert batch.handled
            assert not batch.failed
    finally:
        await writer.close()
