"""What went in, what the database holds and what came out; and every promise that it breaks.

The promises (README, design): every note exists exactly once, in the order in which the inbox
accepted them; every message got its reply at least once; at most one reply per chat is repeated
per crash or broken connection. All is checked against what the stand-in server saw, which no
crash of ours can change.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from typing import Protocol, TypeVar


@dataclass(frozen=True, slots=True, kw_only=True)
class Injected:
    """A message put in: the update's number, the chat, the words, and whether they are a note."""

    update_id: int
    chat: int
    text: str
    is_note: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Accepted:
    """A row of the inbox."""

    inbox: int
    update_id: int
    chat: int
    text: str
    state: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Noted:
    """A note as it stands in the book."""

    chat: int
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Posted:
    """A row of the outbox. `key` tells a reply from the ones beside it."""

    chat: int
    inbox: int | None
    key: Hashable
    state: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrived:
    """A reply that the server took: from which process, and whether its answer got back there."""

    chat: int
    key: Hashable
    by: str
    was_heard: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """All of a run: `accepted` and `posted` in the order of their numbers, `noted` of the notes'
    numbers, `arrived` as it came. `killed` names the processes ended by kill -9; `cut_off` counts
    how often the database ended the sessions of workers that share it, who then cannot know what
    another has taken over."""

    injected: tuple[Injected, ...]
    accepted: tuple[Accepted, ...]
    noted: tuple[Noted, ...]
    posted: tuple[Posted, ...]
    arrived: tuple[Arrived, ...]
    killed: frozenset[str]
    cut_off: int = 0


def faults_of(ledger: Ledger) -> list[str]:
    """Every broken promise in a line, the chat named."""
    return [
        *_inbox_faults(ledger),
        *_note_faults(ledger),
        *_reply_faults(ledger),
        *_arrival_faults(ledger),
        *_repeat_faults(ledger),
    ]


def _inbox_faults(ledger: Ledger) -> Iterator[str]:
    put_in = {(one.update_id, one.chat, one.text) for one in ledger.injected}
    taken = Counter((one.update_id, one.chat, one.text) for one in ledger.accepted)
    for update_id, chat, text in sorted(put_in - taken.keys()):
        yield f"chat {chat}: update {update_id} is not in the inbox: {text!r}"
    for update_id, chat, text in sorted(taken.keys() - put_in):
        yield f"chat {chat}: update {update_id} was never put in: {text!r}"
    for (update_id, chat, _), count in taken.items():
        if count > 1:
            yield f"chat {chat}: update {update_id} is {count} times in the inbox"
    for one in ledger.accepted:
        if one.state != "done":
            yield f"chat {one.chat}: {one.text!r} is {one.state} in the inbox"


def _note_faults(ledger: Ledger) -> Iterator[str]:
    """The notes of a chat are its accepted notes, one for one and in order."""
    are_notes = {one.update_id for one in ledger.injected if one.is_note}
    accepted = _by_chat(one for one in ledger.accepted if one.update_id in are_notes)
    noted = _by_chat(ledger.noted)
    for chat in sorted(accepted.keys() | noted.keys()):
        wanted = list(dict.fromkeys(one.text for one in accepted.get(chat, ())))
        found = [one.text for one in noted.get(chat, ())]
        yield from (f"chat {chat}: note {text!r} {what}" for text, what in _unlike(wanted, found))


def _unlike(wanted: Sequence[str], found: Sequence[str]) -> Iterator[tuple[str, str]]:
    counts, known = Counter(found), set(wanted)
    yield from ((text, "is lost") for text in wanted if not counts[text])
    yield from ((text, f"exists {count} times") for text, count in counts.items() if count > 1)
    yield from ((text, "was never written") for text in counts if text not in known)
    both = known & counts.keys()
    in_order = [text for text in wanted if text in both]
    as_found = [text for text in dict.fromkeys(found) if text in both]
    for right, wrong in zip(in_order, as_found, strict=True):
        if right != wrong:
            yield wrong, f"stands where {right!r} belongs"
            return


def _reply_faults(ledger: Ledger) -> Iterator[str]:
    """Every message has its reply in the outbox, and none was given up."""
    answered = {one.inbox for one in ledger.posted}
    for one in ledger.accepted:
        if one.inbox not in answered:
            yield f"chat {one.chat}: {one.text!r} has no reply"
    for posted in ledger.posted:
        if posted.state != "sent":
            yield f"chat {posted.chat}: a reply to inbox row {posted.inbox} is {posted.state}"


def _arrival_faults(ledger: Ledger) -> Iterator[str]:
    """What arrived, one of each repeated reply, is what was posted, in order."""
    posted, arrived = _by_chat(ledger.posted), _by_chat(ledger.arrived)
    for chat in sorted(posted.keys() | arrived.keys()):
        wanted = [one.key for one in posted.get(chat, ())]
        if any(one == other for one, other in pairwise(wanted)):
            # The check could not tell a repeated reply from the next: the load is at fault.
            yield f"chat {chat}: two replies beside each other are alike"
        found = [key for key, _ in groupby(one.key for one in arrived.get(chat, ()))]
        if found != wanted:
            yield f"chat {chat}: {_first_unlike(wanted, found)}"


def _first_unlike(wanted: Sequence[Hashable], found: Sequence[Hashable]) -> str:
    known, there = set(wanted), set(found)
    missing = [key for key in wanted if key not in there]
    if missing:
        return f"reply {_shown(missing[0])} never arrived"
    unknown = [key for key in found if key not in known]
    if unknown:
        return f"reply {_shown(unknown[0])} arrived and was never posted"
    for number, (right, wrong) in enumerate(zip(wanted, found, strict=False)):
        if right != wrong:
            return f"reply {number} was to be {_shown(right)} and was {_shown(wrong)}"
    return f"{len(found)} replies arrived where {len(wanted)} were posted"


def _shown(key: Hashable) -> str:
    return repr(key)[:80]


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeat:
    """A reply that arrived again, and why it had to: `because` is None where nothing excuses it."""

    chat: int
    key: Hashable
    because: str | None


CRASH, BROKEN = "crash", "broken connection"
CUT_OFF = "broken connection to the database"


def repeats_of(ledger: Ledger) -> list[Repeat]:
    """Every reply that came again.

    Excused where its earlier sender was killed since, once per chat for each kill; or where the
    server's answer to it was lost on the way; or where another worker sent it again, once per
    chat for each time that the database let go of them.
    """
    found: list[Repeat] = []
    used: set[tuple[int, str]] = set()
    cut_off: Counter[int] = Counter()
    for chat, arrived in _by_chat(ledger.arrived).items():
        for earlier, later in pairwise(arrived):
            if earlier.key != later.key:
                continue
            because = None
            if not earlier.was_heard:
                because = BROKEN
            elif earlier.by != later.by and earlier.by in ledger.killed - _used(used, chat):
                because = CRASH
                used.add((chat, earlier.by))
            elif earlier.by != later.by and cut_off[chat] < ledger.cut_off:
                because = CUT_OFF
                cut_off[chat] += 1
            found.append(Repeat(chat=chat, key=later.key, because=because))
    return found


def _used(used: Iterable[tuple[int, str]], chat: int) -> set[str]:
    return {by for where, by in used if where == chat}


def _repeat_faults(ledger: Ledger) -> Iterator[str]:
    for one in repeats_of(ledger):
        if one.because is None:
            yield f"chat {one.chat}: reply {_shown(one.key)} was repeated for no reason"


class _InChat(Protocol):
    @property
    def chat(self) -> int: ...


Row = TypeVar("Row", bound=_InChat)


def _by_chat(rows: Iterable[Row]) -> Mapping[int, list[Row]]:
    found: dict[int, list[Row]] = defaultdict(list)
    for row in rows:
        found[row.chat].append(row)
    return found
