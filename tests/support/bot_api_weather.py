"""Bad weather for the stand-in server: calls that fail by chance, updates twice and out of order.

Source of what a real server does: tdlib/telegram-bot-api (500 and 502 while it restarts, 429 with
retry_after) and the Bot API's documentation, getUpdates and "Making requests"; from memory. That
a confirmed update comes again, or a batch out of order, is harsher than what it promises.
"""

from __future__ import annotations

import random
from collections import Counter, deque
from dataclasses import dataclass
from typing import Any

from bot_api_server import Fault, too_many_requests

REMEMBERED = 100
"""Updates handed over lately, of which some come again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Climate:
    """Chances, 0 to 1: that a call of a kind fails; that updates come again or out of order; that
    a webhook's answer is lost."""

    sending: float = 0.12
    fetching: float = 0.3
    starting: float = 0.05
    again: float = 0.3
    shuffled: float = 0.5
    lost: float = 0.05


CALM = Climate(sending=0.0, fetching=0.0, starting=0.0, again=0.0, shuffled=0.0, lost=0.0)

SENDING = frozenset(("sendMessage", "sendPhoto", "sendDocument", "editMessageText"))
FETCHING = frozenset(("getUpdates",))

FAULTS = {
    "429": too_many_requests(1),
    "500": Fault(status=500),
    "dropped before the effect": Fault(drop=True),
    "dropped after the effect": Fault(drop=True, after=True),
}


class StormyWeather:
    """Throws the dice of one climate (a bot_api_server.Weather) and counts what it did."""

    def __init__(self, climate: Climate, *, seed: int) -> None:
        self.climate = climate
        self.counts: Counter[str] = Counter()
        self._dice = random.Random(seed)
        self._lately: deque[dict[str, Any]] = deque(maxlen=REMEMBERED)

    def fault_for(self, method: str) -> Fault | None:
        """One of FAULTS, each as likely as the others, or mostly none."""
        if self._dice.random() >= self._chance(method):
            return None
        name = self._dice.choice(list(FAULTS))
        self.counts[f"{_kind(method)}: {name}"] += 1
        return FAULTS[name]

    def _chance(self, method: str) -> float:
        if method in SENDING:
            return self.climate.sending
        return self.climate.fetching if method in FETCHING else self.climate.starting

    def delivered(self, updates: list[dict[str, Any]]) -> list[dict[str, Any]]:
        """All that are due, some twice in the batch, some of earlier batches again, shuffled.

        No update is kept back: the highest number confirms all below it, also at the real server.
        """
        batch = [*updates, *self._again(updates)]
        if len(batch) > 1 and self._dice.random() < self.climate.shuffled:
            self._dice.shuffle(batch)
            numbers = [each["update_id"] for each in batch]
            self.counts["batches out of order"] += numbers != sorted(numbers)
        known = {each["update_id"] for each in self._lately}
        self._lately.extend(each for each in updates if each["update_id"] not in known)
        return batch

    def place(self, waiting: int) -> int:
        """Deliveries to a webhook: mostly last, at times before some that wait."""
        if not waiting or self._dice.random() >= self.climate.shuffled:
            return waiting
        place = self._dice.randrange(waiting)
        self.counts["deliveries out of order"] += 1
        return place

    def loses_answer(self) -> bool:
        """Deliveries to a webhook: the answer is lost and the update delivered again."""
        is_lost = self._is_due("deliveries whose answer was lost", self.climate.lost)
        self.counts["deliveries whose answer was lost"] += is_lost
        return is_lost

    def _is_due(self, name: str, chance: float) -> bool:
        """By chance; the first time surely, so that no run is without."""
        return chance > 0 and (not self.counts[name] or self._dice.random() < chance)

    def _again(self, updates: list[dict[str, Any]]) -> list[dict[str, Any]]:
        if not updates or not self._is_due("updates delivered again", self.climate.again):
            return []
        choice = [*updates, *self._lately]
        again = self._dice.sample(choice, k=min(len(choice), 3))
        self.counts["updates delivered again"] += len(again)
        return again


def _kind(method: str) -> str:
    if method in SENDING:
        return "send"
    return "fetch" if method in FETCHING else "other calls"
