"""The limiter keeps the quotas of the Bot API's FAQ ("How can I message all my subscribers...").

From memory: about one message a second in a chat, 20 a minute in a group, 30 a second in all.
"""

from __future__ import annotations

import asyncio
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from bot.channels.telegram_bot.limiter import (
    CHAT_QUOTA,
    GROUP_QUOTA,
    KEPT_CHATS,
    OVERALL_QUOTA,
    Limiter,
    Quota,
    Window,
)
from scouting_db.values import ChatId

MIRA, TOM = ChatId(1), ChatId(2)


class FakeTime:
    """A clock that sleeping moves, so that minutes pass at once."""

    def __init__(self) -> None:
        self.now = 0.0

    def __call__(self) -> float:
        return self.now

    async def sleep(self, seconds: float) -> None:
        self.now += seconds


def sends(limiter: Limiter, time: FakeTime, chats: list[ChatId], *, group: bool) -> list[float]:
    async def run() -> list[float]:
        times = []
        for chat in chats:
            await limiter.wait(chat, is_group=group)
            times.append(time())
        return times

    return asyncio.run(run())


def most_in(times: list[float], quota: Quota) -> int:
    """The most messages in any period of the quota's length."""
    return max(sum(start <= at < start + quota.period_s - 1e-9 for at in times) for start in times)


def limiter(time: FakeTime, *, paced: bool = True) -> Limiter:
    return Limiter(clock=time, sleep=time.sleep, paced=paced)


def test_a_short_burst_goes_at_once_and_a_long_one_at_a_second_each() -> None:
    time = FakeTime()
    times = sends(limiter(time), time, [MIRA] * 12, group=False)
    assert times[: CHAT_QUOTA.count] == [0.0] * CHAT_QUOTA.count
    assert most_in(times, CHAT_QUOTA) == CHAT_QUOTA.count


def test_a_group_gets_twenty_a_minute() -> None:
    time = FakeTime()
    times = sends(limiter(time), time, [MIRA] * 50, group=True)
    assert most_in(times, GROUP_QUOTA) == GROUP_QUOTA.count == 20


def test_all_chats_together_get_thirty_a_second() -> None:
    time = FakeTime()
    times = sends(limiter(time), time, [ChatId(n) for n in range(100)], group=False)
    assert most_in(times, OVERALL_QUOTA) == OVERALL_QUOTA.count == 30
    assert times[-1] < 4.0


def test_a_pause_holds_one_chat_only() -> None:
    time = FakeTime()
    limits = limiter(time)
    limits.pause(MIRA, seconds=30.0)
    assert sends(limits, time, [TOM], group=False) == [0.0]
    assert sends(limits, time, [MIRA], group=False) == [30.0]


def test_without_pace_only_pauses_count() -> None:
    time = FakeTime()
    limits = limiter(time, paced=False)
    assert set(sends(limits, time, [MIRA] * 500, group=False)) == {0.0}
    limits.pause(MIRA, seconds=5.0)
    assert sends(limits, time, [MIRA], group=False) == [5.0]


def test_idle_chats_are_forgotten() -> None:
    time = FakeTime()
    limits = limiter(time)
    sends(limits, time, [ChatId(n) for n in range(KEPT_CHATS)], group=False)
    time.now += 3600
    sends(limits, time, [ChatId(KEPT_CHATS)], group=False)
    assert limits.known_chats == 1


@given(st.lists(st.floats(min_value=0, max_value=3), min_size=2, max_size=60))
def test_a_window_never_lets_more_than_its_count_through(gaps: list[float]) -> None:
    quota = Quota(count=4, period_s=5.0)
    window, now, taken = Window(quota), 0.0, []
    for gap in gaps:
        now = max(now + gap, window.free_at(now + gap))
        window.take(now)
        taken.append(now)
    assert all(earlier <= later for earlier, later in pairwise(taken))
    assert most_in(taken, quota) <= quota.count


def test_several_workers_keep_the_overall_quota_together() -> None:
    for workers in (2, 3, 40):
        time = FakeTime()
        one = limiter(time)
        one.share(workers)
        times = sends(one, time, [ChatId(n) for n in range(70)], group=False)
        most = most_in(times, OVERALL_QUOTA)
        assert most == max(1, OVERALL_QUOTA.count // workers)
        one.share(1)
        times = sends(one, time, [ChatId(100 + n) for n in range(70)], group=False)
        assert most_in(times, OVERALL_QUOTA) == OVERALL_QUOTA.count
