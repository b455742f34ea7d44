"""Which unsent messages are ours to send: all of them, or those of the chats that we hold."""

from __future__ import annotations

from collections.abc import Callable, Collection
from typing import Protocol

from bot.post import LEASE_MICROS
from knowledge.dataclass import dataclass
from scouting_db.directory import Directory
from scouting_db.holds import ChatHolds
from scouting_db.sole import StillAlone
from scouting_db.values import AccountId, ChatId, Micros, OutboxRow

NOBODY_ELSE_LOOK_S = 30.0
"""Alone, we look after this long even if nobody called; a guess that costs nothing."""

AMONG_OTHERS_LOOK_S = 1.0
"""Beside other workers: how soon what a dead one left is taken over. A guess; a look is a handful
of small statements."""

MARKS_WAIT_S = 0.05
"""Alone, how long what was sent may wait to be stored as sent with the next message's turn, so
that a message costs one commit and not two. A crash meanwhile repeats it, as it does without the
wait; among others a chat would stay in our hands for as long."""

CHATS_HELD = 128
"""Chats that a worker sends to at a time; others are left to other workers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Leased:
    """What is to be sent now; `busy` says that there is more, in the hands of other workers, and
    `held_up` that there is more once what is being sent is stored as sent.
    """

    rows: tuple[OutboxRow, ...]
    busy: bool = False
    held_up: bool = False


class Hands(Protocol):
    """What a sender may take from the outbox. Called in the writer's thread, but for the last."""

    @property
    def look_every_s(self) -> float:
        """How long nobody's call is waited for."""

    @property
    def marks_wait_s(self) -> float:
        """How long what was sent may wait to be stored as sent."""

    @property
    def marks_alone(self) -> bool:
        """Whether what was sent is stored as sent without a round: where no other worker waits."""

    @property
    def all_ours(self) -> bool:
        """Whether every chat is ours to send to, so that a reply is leased as it is posted."""

    def check(self) -> None:
        """HoldsLostError where what we had in hand may be in others' hands by now."""

    def lease(
        self, directory: Directory, account: AccountId, *, now: Micros, in_hand: Collection[ChatId]
    ) -> Leased:
        """Rows due now. `in_hand`: chats of which something is unsent or not yet committed as
        sent; what is held of others is let go first."""

    def next_due(self, directory: Directory, account: AccountId, *, now: Micros) -> Micros | None:
        """When something is due that nobody will call for."""

    def holds_more_than(self, in_hand: Collection[ChatId]) -> bool:
        """Whether a look is due only to let go of chats."""

    def recover(self) -> None:
        """Whoever was told of the loss has nothing in hand any more."""


class Alone:
    """Nobody else works for this account, of which `still_alone` of `sole_worker` makes sure."""

    look_every_s = NOBODY_ELSE_LOOK_S
    marks_wait_s = MARKS_WAIT_S
    marks_alone = True
    all_ours = True

    def __init__(self, still_alone: StillAlone = lambda: None) -> None:
        self._still_alone = still_alone

    def check(self) -> None:
        self._still_alone()

    def lease(
        self,
        directory: Directory,
        account: AccountId,
        *,
        now: Micros,
        in_hand: Collection[ChatId],  # noqa: ARG002
    ) -> Leased:
        if not directory.any_due(account, now=now):
            return Leased(rows=())
        rows = directory.lease(account, now=now, until=Micros(now + LEASE_MICROS))
        return Leased(rows=rows, held_up=directory.any_held_up(account, now=now))

    def next_due(self, directory: Directory, account: AccountId, *, now: Micros) -> Micros | None:
        waiting = (directory.next_due(account), directory.next_reminder(account, now=now))
        return min((one for one in waiting if one is not None), default=None)

    def holds_more_than(self, in_hand: Collection[ChatId]) -> bool:  # noqa: ARG002
        return False

    def recover(self) -> None:
        return


class AmongOthers:
    """Beside other workers: a chat's messages are sent by whoever holds the chat.

    1. Let go of chats with nothing in hand. 2. Try to hold those that have something due, and,
    once in a while, those that a dead worker was sending to. 3. Lease, only now: what another
    sent before it let go is committed. `on_workers` is told how many we are.
    """

    look_every_s = AMONG_OTHERS_LOOK_S
    marks_wait_s = 0.0
    marks_alone = False
    all_ours = False

    def __init__(
        self, holds: ChatHolds, *, clock: Callable[[], float], on_workers: Callable[[int], None]
    ) -> None:
        self._holds = holds
        self._clock = clock
        self._on_workers = on_workers
        self._looked_around = -AMONG_OTHERS_LOOK_S

    def check(self) -> None:
        self._holds.check()

    def lease(
        self, directory: Directory, account: AccountId, *, now: Micros, in_hand: Collection[ChatId]
    ) -> Leased:
        self._holds.release(self._holds.held.difference(in_hand))
        self._look_around(directory, account)
        due = directory.chats_due(account, now=now, limit=CHATS_HELD)
        self._hold(directory, due)
        ours = self._holds.held.intersection(due)
        busy = len(ours) < len(due)
        if not ours:
            return Leased(rows=(), busy=busy)
        until = Micros(now + LEASE_MICROS)
        return Leased(rows=directory.lease(account, now=now, until=until, chats=ours), busy=busy)

    def next_due(
        self,
        directory: Directory,  # noqa: ARG002
        account: AccountId,  # noqa: ARG002
        *,
        now: Micros,  # noqa: ARG002
    ) -> Micros | None:
        """We look often enough."""
        return None

    def holds_more_than(self, in_hand: Collection[ChatId]) -> bool:
        return not self._holds.held.issubset(in_hand)

    def recover(self) -> None:
        self._holds.recover()

    def _look_around(self, directory: Directory, account: AccountId) -> None:
        if self._clock() - self._looked_around < AMONG_OTHERS_LOOK_S:
            return
        self._looked_around = self._clock()
        self._on_workers(self._holds.workers())
        self._hold(directory, directory.chats_being_sent(account))

    def _hold(self, directory: Directory, chats: Collection[ChatId]) -> None:
        room = max(0, CHATS_HELD - len(self._holds.held))
        others = [one for one in chats if one not in self._holds.held]
        # Being sent, and nobody held it: whoever was sending is dead.
        directory.release_chats(self._holds.take(others[:room]))
