"""What a delivery is answered, and what is stored by then.

Beside the checks: Bot API (its documentation), "setWebhook" and "Update", read in third parties'
copies of the page: "In case of an unsuccessful request (a request with response HTTP status code
different from 2XY), we will repeat the request and give up after a reasonable amount of attempts";
the secret is "1-256 characters" of A-Z, a-z, 0-9, _ and -, in X-Telegram-Bot-Api-Secret-Token.
RFC 9110: 403 refused whoever asks with these credentials, 413 content too large, 405 for another
method.
"""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable, Iterator
from typing import Any

import pytest
from bot_api_updates import edit_update, message_update, tap_update
from sqlalchemy import text
from webhook_door import SECRET, DoorAjar, door_ajar

from bot.channels.gate import Flood, Gate
from bot.channels.telegram_bot.webhook import LARGEST_BODY_BYTES, SECRET_HEADER
from scouting_db.session import Store, open_store

MIRA = 11


@pytest.fixture
def store() -> Iterator[Store]:
    opened = open_store("sqlite://")
    yield opened
    opened.close()


def at_the_door(
    store: Store, visit: Callable[[DoorAjar], Awaitable[None]], *, gate: Gate | None = None
) -> None:
    async def inside() -> None:
        async with door_ajar(store, gate=gate) as door:
            await visit(door)

    asyncio.run(inside())


def note(number: int, words: str = "okafor pops up dinks", **more: Any) -> dict[str, Any]:
    return {
        "update_id": number,
        **message_update(chat_id=MIRA, text=words, message_id=number, **more),
    }


def test_an_update_is_in_the_inbox_before_it_is_confirmed(store: Store) -> None:
    async def visit(door: DoorAjar) -> None:
        assert await door.deliver(note(1)) == 200
        assert [one.text for one in door.stored()] == ["okafor pops up dinks"]
        assert door.accepted, "and whoever takes turns was called"
        assert door.counters.accepted == 1

    at_the_door(store, visit)


@pytest.mark.parametrize(
    "headers",
    [
        {},
        {SECRET_HEADER: ""},
        {SECRET_HEADER: SECRET[:-1]},
        {SECRET_HEADER: SECRET + "x"},
        {SECRET_HEADER: SECRET.upper()},
        {SECRET_HEADER: "\u00e9".encode("latin-1")},
        {"Authorization": SECRET},
    ],
)
def test_without_the_secret_nothing_is_stored(
    store: Store, headers: dict[str, str | bytes]
) -> None:
    async def body() -> AsyncIterator[bytes]:
        raise AssertionError("read")
        yield b""

    async def visit(door: DoorAjar) -> None:
        assert await door.knock(body(), headers) == 403
        assert await door.knock(b'{"update_id": 1}', headers) == 403
        assert door.waiting() == 0
        assert door.counters.refused == 2

    at_the_door(store, visit)


@pytest.mark.parametrize(
    "body",
    [
        *(b"", b"{", b"\xff\xfe\xfd", b"[" * 200_000, b"9" * 5_000, b"null", b"[]", b"{}", b'"x"'),
        *(b'{"update_id": %s}' % each for each in (b"null", b"true", b'"1"', b"1.5", b"1e400")),
        b'{"update_id": 9223372036854775808}',
    ],
    ids=lambda body: body[:20].decode("latin-1"),
)
def test_what_is_no_update_is_refused(store: Store, body: bytes) -> None:
    async def visit(door: DoorAjar) -> None:
        assert await door.knock(body, {SECRET_HEADER: SECRET}) == 400
        assert door.waiting() == 0

    at_the_door(store, visit)


def test_a_body_too_large_is_refused_told_or_not(store: Store) -> None:
    given = 0

    async def without_length() -> AsyncIterator[bytes]:
        nonlocal given
        for _ in range(1000):
            given += 1 << 16
            yield b" " * (1 << 16)

    async def visit(door: DoorAjar) -> None:
        secret = {SECRET_HEADER: SECRET}
        assert await door.knock(b" " * (LARGEST_BODY_BYTES + 1), secret) == 413
        assert await door.knock(without_length(), secret) == 413
        assert (
            await door.knock(b" " * (LARGEST_BODY_BYTES - 13) + b'{"update_id":1}', secret) == 413
        )
        full = b" " * (LARGEST_BODY_BYTES - 15) + b'{"update_id":1}'
        assert len(full) == LARGEST_BODY_BYTES
        assert await door.knock(full, secret) == 200

    at_the_door(store, visit)


def test_the_largest_message_of_the_server_fits(store: Store) -> None:
    """Bot API: a text has at most 4,096 characters; each may be escaped to twelve bytes."""

    async def visit(door: DoorAjar) -> None:
        words = "\U0001f3d3" * 4096
        entities = [{"type": "bold", "offset": n, "length": 1} for n in range(100)]
        answered = note(1, words, entities=entities)["message"]
        update = note(2, words, entities=entities, reply_to_message=answered)
        assert await door.deliver(update) == 200
        assert [one.text for one in door.stored()] == [words]

    at_the_door(store, visit)


def test_a_delivery_that_comes_again_changes_nothing(store: Store) -> None:
    async def visit(door: DoorAjar) -> None:
        for number in (1, 1, 2, 1, 2):
            assert await door.deliver(note(number, f"message {number}")) == 200
        assert [one.text for one in door.stored()] == ["message 1", "message 2"]
        assert (door.counters.accepted, door.counters.repeated) == (2, 3)

    at_the_door(store, visit)


def test_an_older_update_is_taken_after_a_newer_one(store: Store) -> None:
    """Ids say which are the same, not which were first: order is as the inbox took them."""

    async def visit(door: DoorAjar) -> None:
        for number in (5, 3, 4):
            assert await door.deliver(note(number, f"message {number}")) == 200
        assert [one.text for one in door.stored()] == ["message 5", "message 3", "message 4"]

    at_the_door(store, visit)


def test_many_deliveries_at_once_are_each_stored_once(store: Store) -> None:
    async def visit(door: DoorAjar) -> None:
        answers = await asyncio.gather(*(door.deliver(note(1 + n % 20)) for n in range(60)))
        assert set(answers) == {200}
        assert len(door.stored()) == 20

    at_the_door(store, visit)


TAP = tap_update(chat_id=MIRA, message_id=1, data="x")
EDIT = edit_update(chat_id=MIRA, message_id=1, text="x")


@pytest.mark.parametrize(
    "update",
    [
        {"poll": {"id": "1"}},
        {"message": None},
        {"message": {"message_id": 1}},
        {"message": {**note(1)["message"], "chat": {"id": "mira", "type": "private"}}},
        {"message": {**note(1)["message"], "message_id": 2**64}},
        {"message": {**note(1)["message"], "date": 10**17}},
        {"message": {**note(1)["message"], "text": ["no", "text"]}},
        {"callback_query": {**TAP["callback_query"], "data": 5}},
        {"edited_message": {**EDIT["edited_message"], "edit_date": None}},
    ],
)
def test_an_update_that_nobody_can_read_does_not_come_again(
    store: Store, update: dict[str, Any]
) -> None:
    """Else the server would hold back everything else of that chat."""

    async def visit(door: DoorAjar) -> None:
        assert await door.deliver({"update_id": 7, **update}) == 200
        assert door.waiting() == 0
        assert await door.deliver(note(8)) == 200
        assert door.waiting() == 1

    at_the_door(store, visit)


def test_text_that_a_database_would_refuse_is_stored_without_it(store: Store) -> None:
    async def visit(door: DoorAjar) -> None:
        assert await door.deliver(note(1, "okafor\0 pops \ud83d up")) == 200
        assert [one.text for one in door.stored()] == ["okafor pops ? up"]

    at_the_door(store, visit)


def test_whoever_is_not_let_in_is_told_once_and_not_delivered_again(store: Store) -> None:
    async def visit(door: DoorAjar) -> None:
        assert [await door.deliver(note(number)) for number in (1, 2)] == [200, 200]
        assert door.waiting() == 0
        await asyncio.sleep(0)
        assert [chat for chat, _ in door.bot.said] == [MIRA]

    at_the_door(store, visit, gate=Gate(allowed=("99",)))


def test_a_message_delivered_often_counts_once_for_its_writer(store: Store) -> None:
    """Else one that the disk refused for a while would be taken for a flood, and dropped."""

    async def visit(door: DoorAjar) -> None:
        for _ in range(10):
            assert await door.deliver(note(1)) == 200
        assert await door.deliver(note(2)) == 200
        assert await door.deliver(note(3)) == 200
        assert len(door.stored()) == 2, "the third is too many"

    at_the_door(store, visit, gate=Gate(flood=Flood(burst=2, per_second=0.0)))


def test_what_cannot_be_stored_is_to_come_again(store: Store) -> None:
    """A disk that is full, as the inbox sees it: the user is told, the server asked to wait."""

    async def visit(door: DoorAjar) -> None:
        with store.writing() as connection:
            connection.execute(
                text(
                    "CREATE TRIGGER full BEFORE INSERT ON inbox BEGIN "
                    "SELECT RAISE(ABORT, 'database or disk is full'); END"
                )
            )
        assert await door.deliver(note(1)) == 503
        await asyncio.sleep(0)
        assert [chat for chat, _ in door.bot.said] == [MIRA]
        with store.writing() as connection:
            connection.execute(text("DROP TRIGGER full"))
        assert await door.deliver(note(1)) == 200
        assert [one.text for one in door.stored()] == ["okafor pops up dinks"]

    at_the_door(store, visit)


def test_what_a_power_cut_could_take_is_not_confirmed(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its turn need not wait for the disk: whoever takes turns was called already."""
    refusals = [OSError("the disk does not answer")]

    def sync(_store: Store) -> None:
        held.append(len(door_seen[0].stored()))
        if refusals:
            raise refusals.pop()

    held: list[int] = []
    door_seen: list[DoorAjar] = []
    monkeypatch.setattr(Store, "is_late", True)
    monkeypatch.setattr(Store, "sync", sync)

    async def visit(door: DoorAjar) -> None:
        door_seen.append(door)
        assert await door.deliver(note(1)) == 503
        assert len(door.accepted) == 1
        await asyncio.sleep(0)
        assert [chat for chat, _ in door.bot.said] == [MIRA]
        assert await door.deliver(note(1)) == 200
        assert door.waiting() == 1

    at_the_door(store, visit)
    assert held == [1, 1], "committed, and then synced"


def test_a_tap_is_answered_and_stored(store: Store) -> None:
    async def visit(door: DoorAjar) -> None:
        update = tap_update(chat_id=MIRA, message_id=5, data="1:undo", tap_id="of mira")
        assert await door.deliver({"update_id": 1, **update}) == 200
        await asyncio.sleep(0)
        assert door.bot.answered == ["of mira"]
        assert [one.payload for one in door.stored()] == ["1:undo"]

    at_the_door(store, visit)


@pytest.mark.parametrize("method", ["GET", "PUT", "DELETE", "HEAD"])
def test_other_methods_are_not_for_the_webhook(store: Store, method: str) -> None:
    async def visit(door: DoorAjar) -> None:
        answer = await door.client.request(method, "/telegram", headers={SECRET_HEADER: SECRET})
        assert answer.status_code == 405

    at_the_door(store, visit)
