"""When the next message may go: per chat, per group and in all."""

from __future__ import annotations

import asyncio
from collections import deque
from collections.abc import Awaitable, Callable
from dataclasses import field

from knowledge.dataclass import dataclass
from scouting_db.values import ChatId


@dataclass(frozen=True, slots=True, kw_only=True)
class Quota:
    """At most `count` messages in any `period_s` seconds."""

    count: int
    period_s: float


CHAT_QUOTA = Quota(count=3, period_s=3.0)
"""Bot API FAQ: about one message a second in a chat, with short bursts allowed."""

GROUP_QUOTA = Quota(count=20, period_s=60.0)
"""Bot API FAQ: at most 20 messages a minute in a group."""

OVERALL_QUOTA = Quota(count=30, period_s=1.0)
"""Bot API FAQ: about 30 messages a second in all."""

KEPT_CHATS = 4096
"""Chats remembered before idle ones are forgotten."""


class Window:
    """The times of the latest messages under one quota."""

    def __init__(self, quota: Quota) -> None:
        self.quota = quota
        self._times: deque[float] = deque(maxlen=quota.count)

    def free_at(self, now: float) -> float:
        """The earliest time at which one more message keeps to the quota."""
        if len(self._times) < self.quota.count:
            return now
        return max(now, self._times[0] + self.quota.period_s)

    def take(self, at: float) -> None:
        """Count a message at that time; times must not run backwards."""
        self._times.append(at)

    def is_idle(self, now: float) -> bool:
        return not self._times or self._times[-1] + self.quota.period_s < now


@dataclass(slots=True)
class _Chat:
    windows: tuple[Window, ...]
    paused_until: float = field(default=0.0)

    def free_at(self, now: float) -> float:
        return max(self.paused_until, *(window.free_at(now) for window in self.windows))

    def is_idle(self, now: float) -> bool:
        return self.paused_until < now and all(window.is_idle(now) for window in self.windows)


class Limiter:
    """Waits until a chat may get its next message. One lane per chat asks at a time.

    `paced` False keeps to the server's own 429 answers only.
    """

    def __init__(
        self,
        *,
        clock: Callable[[], float],
        sleep: Callable[[float], Awaitable[None]] = asyncio.sleep,
        paced: bool = True,
    ) -> None:
        self._clock = clock
        self._sleep = sleep
        self._paced = paced
        self._overall = Window(OVERALL_QUOTA)
        self._chats: dict[ChatId, _Chat] = {}

    async def wait(self, chat: ChatId, *, is_group: bool) -> None:
        """Return when the message may go; it is counted as sent now."""
        known = self._chat(chat, is_group=is_group)
        while (delay := known.free_at(self._clock()) - self._clock()) > 0:
            await self._sleep(delay)
        if not self._paced:
            return
        now = self._clock()
        for window in known.windows:
            window.take(now)
        at = self._overall.free_at(now)
        self._overall.take(at)
        if at > now:
            await self._sleep(at - now)

    def pause(self, chat: ChatId, *, seconds: float, is_group: bool = False) -> None:
        """The server asked this chat to wait."""
        self._chat(chat, is_group=is_group).paused_until = self._clock() + seconds

    def share(self, senders: int) -> None:
        """So many processes send for this bot: each keeps to its part of the overall quota."""
        count = max(1, OVERALL_QUOTA.count // max(1, senders))
        if self._overall.quota.count != count:
            self._overall = Window(Quota(count=count, period_s=OVERALL_QUOTA.period_s))

    @property
    def known_chats(self) -> int:
        """How many chats are remembered."""
        return len(self._chats)

    def _chat(self, chat: ChatId, *, is_group: bool) -> _Chat:
        known = self._chats.get(chat)
        if known is None:
            if len(self._chats) >= KEPT_CHATS:
                self._forget_idle()
            known = self._chats[chat] = _Chat(windows=self._windows(is_group=is_group))
        return known

    def _windows(self, *, is_group: bool) -> tuple[Window, ...]:
        quotas = [CHAT_QUOTA, *([GROUP_QUOTA] if is_group else [])]
        return tuple(Window(quota) for quota in quotas)

    def _forget_idle(self) -> None:
        now = self._clock()
        self._chats = {chat: each for chat, each in self._chats.items() if not each.is_idle(now)}
