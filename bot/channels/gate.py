"""Who may use the bot at all, and how fast: what a channel asks before it accepts a message.

What is refused here is neither stored nor answered but by one line; what was accepted is never
lost afterwards.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Collection, Sequence

from bot.chat.wording import wording
from bot.post import Arrival, Incoming
from knowledge.dataclass import dataclass
from scouting_db.values import Micros

BURST = 60
"""Messages at once: a draw's notes forwarded together, or a match tapped in. A guess of ours."""

PER_SECOND = 1.0
"""Messages a second in the long run; nobody types or taps faster for minutes. A guess of ours."""

KEPT_USERS = 4096
"""Users remembered; whoever wrote longest ago is forgotten first, and begins with a full burst."""

TOLD_AGAIN_MICROS = 3_600_000_000
"""A stranger hears once an hour in a chat that the bot is not theirs."""

MICROS_PER_S = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line to say in a chat, outside the outbox."""

    chat: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Admitted:
    """What may be accepted, and what to say to who may not."""

    arrivals: tuple[Arrival, ...]
    lines: tuple[Line, ...]


@dataclass(slots=True)
class _Bucket:
    left: float
    at: Micros
    was_told: bool = False


class Flood:
    """Per user, a burst and then a steady pace, by when messages were sent and not by when they
    came: a day's notes that waited while we were away are no flood."""

    def __init__(self, *, burst: int = BURST, per_second: float = PER_SECOND) -> None:
        self._burst = burst
        self._per_second = per_second
        self._buckets: OrderedDict[str, _Bucket] = OrderedDict()

    def takes(self, user: str, at: Micros) -> bool:
        """Whether one more message of the user keeps to the pace; it is counted then."""
        bucket = self._bucket(user, at)
        if bucket.left < 1:
            return False
        bucket.left -= 1
        return True

    def tells(self, user: str) -> bool:
        """Whether the user is to be told; once, until they have kept still for a while."""
        bucket = self._buckets[user]
        was_told, bucket.was_told = bucket.was_told, True
        return not was_told

    @property
    def known_users(self) -> int:
        """How many users are remembered."""
        return len(self._buckets)

    def _bucket(self, user: str, at: Micros) -> _Bucket:
        known = self._buckets.get(user)
        if known is None:
            known = self._buckets[user] = _Bucket(left=self._burst, at=at)
            if len(self._buckets) > KEPT_USERS:
                self._buckets.popitem(last=False)
        self._buckets.move_to_end(user)
        gained = max(0, at - known.at) / MICROS_PER_S * self._per_second
        known.left = min(self._burst, known.left + gained)
        known.at = Micros(max(at, known.at))
        if known.left >= self._burst / 2:
            known.was_told = False
        return known


class Gate:
    """`allowed` are ids of users, or of groups in which everybody may ask; empty lets in all.

    Ids, since the messenger keeps them for good; a @name can be given up and taken by another.
    """

    def __init__(self, *, allowed: Collection[str] = (), flood: Flood | None = None) -> None:
        self._allowed = frozenset(allowed)
        self._flood = flood
        self._told: OrderedDict[tuple[str, str], Micros] = OrderedDict()

    def admit(self, arrivals: Sequence[Arrival], *, now: Micros) -> Admitted:
        """What of it may be accepted."""
        taken: list[Arrival] = []
        lines: list[Line] = []
        for arrival in arrivals:
            refusal = self._refusal(arrival.incoming, now)
            if refusal is None:
                taken.append(arrival)
            elif refusal:
                lines.append(Line(chat=arrival.incoming.chat, text=refusal))
        return Admitted(arrivals=tuple(taken), lines=tuple(lines))

    def _refusal(self, incoming: Incoming, now: Micros) -> str | None:
        """Why it is refused, empty where that was said before; None where it is taken."""
        if self._allowed and self._allowed.isdisjoint((incoming.user_id, incoming.chat)):
            return self._stranger(incoming, now)
        if self._flood is None or self._flood.takes(incoming.user_id, incoming.at):
            return None
        return wording("gate.flood") if self._flood.tells(incoming.user_id) else ""

    def _stranger(self, incoming: Incoming, now: Micros) -> str:
        key = (incoming.chat, incoming.user_id)
        told = self._told.get(key)
        if told is not None and now - told < TOLD_AGAIN_MICROS:
            return ""
        self._told[key] = now
        self._told.move_to_end(key)
        if len(self._told) > KEPT_USERS:
            self._told.popitem(last=False)
        return wording("gate.not_allowed").format(number=incoming.user_id)
