"""Rounds rest when nothing comes in, and go on when something does."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Callable

from bot.channels.telegram_bot.deliver import Delivered, Outcome
from bot.channels.telegram_bot.limiter import Limiter
from bot.channels.telegram_bot.rounds import Rounds
from bot.channels.telegram_bot.sender import Sender
from bot.channels.telegram_bot.works import now_micros
from bot.channels.telegram_bot.writer import Writer
from bot.post import NO_LIMITS, Outgoing
from scouting_db.directory import Directory
from scouting_db.session import Store, open_store
from scouting_db.values import AccountId

SOON_S = 20.0


async def until(holds: Callable[[], bool]) -> None:
    async with asyncio.timeout(SOON_S):
        while not holds():
            await asyncio.sleep(0.02)


def no_turn(*_given: object, **_named: object) -> tuple[()]:
    raise AssertionError("no turn is due")


def post(store: Store, account: AccountId) -> None:
    with store.writing() as connection:
        directory = Directory(connection)
        chat = directory.chat(account, "chat").chat
        directory.post(chat, None, [Outgoing(text="line").to_post()], now=now_micros())


async def rest_work_rest(store: Store) -> None:
    with store.writing() as connection:
        account = Directory(connection).account("console", "console:rest")
    rests: list[int] = []
    sent: list[str] = []

    async def deliver(_chat: str, message: Outgoing) -> Outcome:
        sent.append(message.text)
        return Delivered(external_message_id=len(sent))

    called, writer = asyncio.Event(), Writer(store)
    sender = Sender(
        deliver=deliver,
        writer=writer,
        limiter=Limiter(clock=time.monotonic, paced=False),
        clock=now_micros,
        on_mark=called.set,
    )
    rounds = Rounds(
        account=account,
        turn=no_turn,
        limits=NO_LIMITS,
        writer=writer,
        sender=sender,
        clock=now_micros,
        called=called,
        at_rest=lambda: rests.append(len(sent)),
    )
    task = asyncio.create_task(rounds.run())
    await until(lambda: rests == [0])
    await asyncio.to_thread(post, store, account)
    called.set()
    await until(lambda: rests[-1] == 1)
    assert sent == ["line"]
    rounds.stop()
    await task
    await sender.close()
    await rounds.store_marks()
    await writer.close()


def test_a_rest_comes_after_work_and_ends_with_more(tmp_path: object) -> None:
    store = open_store(f"sqlite:///{tmp_path}/rest.sqlite")
    try:
        asyncio.run(rest_work_rest(store))
    finally:
        store.close()
