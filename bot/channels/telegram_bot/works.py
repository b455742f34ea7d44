"""What every way in shares: rounds of turns, the sender, the intake, and how they end."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Callable

from telegram import Bot
from telegram.request import BaseRequest

from bot.channels.gate import Flood, Gate
from bot.channels.telegram_bot.counters import Counters
from bot.channels.telegram_bot.courtesy import Courtesy
from bot.channels.telegram_bot.deliver import Pictures, deliver
from bot.channels.telegram_bot.form import LIMITS
from bot.channels.telegram_bot.hands import Hands
from bot.channels.telegram_bot.incoming import Ourselves
from bot.channels.telegram_bot.intake import Intake
from bot.channels.telegram_bot.limiter import Limiter
from bot.channels.telegram_bot.rounds import Rounds
from bot.channels.telegram_bot.sender import Sender
from bot.channels.telegram_bot.writer import Writer
from bot.chat.pictures.apart import DrawnApart
from bot.loading import loaded
from bot.post import Turn
from bot.settings import Settings
from knowledge.dataclass import dataclass
from knowledge.reading.stored import let_go
from scouting_db.values import AccountId, Micros


def _nothing() -> None:
    return


DRAIN_S = 5.0
"""How long a stop waits for unsent replies; service managers kill after some 10 seconds."""


def now_micros() -> Micros:
    return Micros(time.time_ns() // 1000)


def own_turn() -> Turn:
    """The conversation's. Imported late: it takes a moment to load, and is the last to."""
    from bot.chat.turn import take_turn

    loaded()
    return take_turn


@dataclass(frozen=True, slots=True, kw_only=True)
class Works:
    """The parts that run beside each other while we serve."""

    intake: Intake
    rounds: Rounds
    sender: Sender
    courtesy: Courtesy
    drawing: DrawnApart

    async def finish(self, rounds: asyncio.Task[None]) -> None:
        """After the end of the intake: 1. turns for what was accepted, 2. send what is ready, for
        a while, 3. store the marks, 4. close. `rounds` is the task that runs them.
        """
        self.rounds.stop()
        await asyncio.gather(rounds, return_exceptions=True)
        await self.rounds.finish(within_s=DRAIN_S)
        await self.sender.close()
        await self.rounds.store_marks()
        await self.courtesy.close()
        await asyncio.to_thread(self.drawing.close)


def assemble(
    settings: Settings,
    bot: Bot,
    *,
    account: AccountId,
    turn: Turn,
    writer: Writer,
    accepting: Writer,
    files: BaseRequest,
    hands: Callable[[Limiter], Hands],
    counters: Counters,
    on_round: Callable[[], None] = lambda: None,
) -> Works:
    """The parts, put together. `accepting` writes to the inbox: `writer` itself where one writes
    at a time anyway, a second one where accepting need not wait for a turn. `on_round` is called
    after each round.
    """
    called = asyncio.Event()
    drawing = DrawnApart()
    pictures = Pictures(draw=drawing.draw)
    limiter = Limiter(clock=time.monotonic, paced=settings.paced)
    held = hands(limiter)
    sender = Sender(
        deliver=lambda chat, message: deliver(bot, chat, message, pictures=pictures),
        writer=writer,
        limiter=limiter,
        clock=now_micros,
        on_mark=lambda: rounds.store_soon() if held.marks_alone else called.set(),
        on_change=called.set,
        marks_wait_s=held.marks_wait_s,
    )
    courtesy = Courtesy(bot=bot, clock=time.monotonic)
    rounds = Rounds(
        account=account,
        turn=turn,
        limits=LIMITS,
        writer=writer,
        sender=sender,
        clock=now_micros,
        called=called,
        hands=held,
        counters=counters,
        on_round=on_round,
        say_busy=courtesy.say_busy,
        at_rest=let_go,
    )
    intake = Intake(
        bot=bot,
        request=files,
        me=Ourselves(user_id=bot.id, name=bot.username),
        account=account,
        writer=accepting,
        courtesy=courtesy,
        clock=now_micros,
        # The one writer takes jobs in order: a round begun behind the updates sees them, and shares
        # their commit. Another writer's updates are to be seen only once committed.
        on_hand_in=rounds.begin if accepting is writer else _nothing,
        on_accept=_nothing if accepting is writer else called.set,
        gate=Gate(allowed=settings.allowed, flood=Flood() if settings.paced else None),
    )
    return Works(intake=intake, rounds=rounds, sender=sender, courtesy=courtesy, drawing=drawing)
