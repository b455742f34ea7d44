"""The campaign's check can fail: a doctored ledger of each kind of fault is found out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

import pytest
from fault_ledger import (
    BROKEN,
    CRASH,
    CUT_OFF,
    Accepted,
    Arrived,
    Injected,
    Ledger,
    Noted,
    Posted,
    faults_of,
    repeats_of,
)

CHATS, PER_CHAT = (1, 2), 4


def sound() -> Ledger:
    """A run without a fault: two chats by turns, the third message of each a question."""
    order = [(n, chat) for n in range(PER_CHAT) for chat in CHATS]
    numbered = [(100 + at, chat, f"{chat}: note {n}", n != 2) for at, (n, chat) in enumerate(order)]
    accepted = tuple(
        Accepted(inbox=number - 50, update_id=number, chat=chat, text=text, state="done")
        for number, chat, text, _ in numbered
    )
    return Ledger(
        injected=tuple(
            Injected(update_id=number, chat=chat, text=text, is_note=is_note)
            for number, chat, text, is_note in numbered
        ),
        accepted=accepted,
        noted=tuple(Noted(chat=chat, text=text) for _, chat, text, is_note in numbered if is_note),
        posted=tuple(
            Posted(chat=one.chat, inbox=one.inbox, key=one.inbox, state="sent") for one in accepted
        ),
        arrived=tuple(Arrived(chat=one.chat, key=one.inbox, by="p1") for one in accepted),
        killed=frozenset(),
    )


def test_a_run_without_a_fault_has_none() -> None:
    assert faults_of(sound()) == []
    assert repeats_of(sound()) == []


def repeated(ledger: Ledger, *, by: str, was_heard: bool = True, times: int = 1) -> Ledger:
    """The last reply came again from another process."""
    last = ledger.arrived[-1]
    again = (replace(last, by=by),) * times
    first = replace(last, was_heard=was_heard)
    return replace(ledger, arrived=(*ledger.arrived[:-1], first, *again))


def test_a_reply_repeated_after_a_kill_is_excused() -> None:
    ledger = replace(repeated(sound(), by="p2"), killed=frozenset({"p1"}))
    assert faults_of(ledger) == []
    assert [one.because for one in repeats_of(ledger)] == [CRASH]


def test_a_reply_whose_answer_was_lost_may_come_again() -> None:
    ledger = repeated(sound(), by="p1", was_heard=False)
    assert faults_of(ledger) == []
    assert [one.because for one in repeats_of(ledger)] == [BROKEN]


Row = TypeVar("Row")


def swapped(rows: tuple[Row, ...], one: int, other: int) -> tuple[Row, ...]:
    """The same with two rows in each other's place."""
    copy = list(rows)
    copy[one], copy[other] = copy[other], copy[one]
    return tuple(copy)


def with_two_repeats_for_one_kill(ledger: Ledger) -> Ledger:
    """The third and fourth reply of chat 2 came from p1, which was killed once, and again."""
    third, fourth = (one for one in ledger.arrived[-3:] if one.chat == 2)
    arrived = (
        *(one for one in ledger.arrived if one not in (third, fourth)),
        *(third, replace(third, by="p2"), fourth, replace(fourth, by="p2")),
    )
    return replace(ledger, arrived=arrived, killed=frozenset({"p1"}))


def test_a_worker_whom_the_database_let_go_may_repeat_once_a_chat() -> None:
    ledger = replace(repeated(sound(), by="p2"), cut_off=1)
    assert faults_of(ledger) == []
    assert [one.because for one in repeats_of(ledger)] == [CUT_OFF]


DOCTORED: dict[str, tuple[Callable[[Ledger], Ledger], str]] = {
    "a note lost": (
        lambda ledger: replace(ledger, noted=ledger.noted[:-1]),
        "chat 2: note '2: note 3' is lost",
    ),
    "a note doubled": (
        lambda ledger: replace(ledger, noted=(*ledger.noted, ledger.noted[-1])),
        "chat 2: note '2: note 3' exists 2 times",
    ),
    "a note in another's place": (
        lambda ledger: replace(ledger, noted=swapped(ledger.noted, 0, 2)),
        "chat 1: note '1: note 1' stands where '1: note 0' belongs",
    ),
    "a note that nobody wrote": (
        lambda ledger: replace(ledger, noted=(*ledger.noted, Noted(chat=1, text="x"))),
        "chat 1: note 'x' was never written",
    ),
    "a note in another chat": (
        lambda ledger: replace(ledger, noted=(replace(ledger.noted[0], chat=2), *ledger.noted[1:])),
        "chat 1: note '1: note 0' is lost",
    ),
    "an update not accepted": (
        lambda ledger: replace(ledger, accepted=ledger.accepted[:-1]),
        "chat 2: update 107 is not in the inbox: '2: note 3'",
    ),
    "an update accepted twice": (
        lambda ledger: replace(
            ledger, accepted=(*ledger.accepted, replace(ledger.accepted[-1], inbox=99))
        ),
        "chat 2: update 107 is 2 times in the inbox",
    ),
    "an update that nobody sent": (
        lambda ledger: replace(
            ledger, accepted=(*ledger.accepted, replace(ledger.accepted[-1], update_id=7))
        ),
        "chat 2: update 7 was never put in: '2: note 3'",
    ),
    "a message given up": (
        lambda ledger: replace(
            ledger, accepted=(*ledger.accepted[:-1], replace(ledger.accepted[-1], state="failed"))
        ),
        "chat 2: '2: note 3' is failed in the inbox",
    ),
    "a message without a reply": (
        lambda ledger: replace(ledger, posted=ledger.posted[:-1], arrived=ledger.arrived[:-1]),
        "chat 2: '2: note 3' has no reply",
    ),
    "a reply dropped": (
        lambda ledger: replace(
            ledger, posted=(*ledger.posted[:-1], replace(ledger.posted[-1], state="dropped"))
        ),
        "chat 2: a reply to inbox row 57 is dropped",
    ),
    "a reply marked as sent that never arrived": (
        lambda ledger: replace(ledger, arrived=ledger.arrived[:-1]),
        "chat 2: reply 57 never arrived",
    ),
    "a reply that was never posted": (
        lambda ledger: replace(ledger, arrived=(*ledger.arrived, Arrived(chat=2, key=9, by="p1"))),
        "chat 2: reply 9 arrived and was never posted",
    ),
    "replies in another order": (
        lambda ledger: replace(ledger, arrived=swapped(ledger.arrived, 0, 2)),
        "chat 1: reply 0 was to be 50 and was 52",
    ),
    "an earlier reply again after a later one": (
        lambda ledger: replace(ledger, arrived=(*ledger.arrived, ledger.arrived[0])),
        "chat 1: 5 replies arrived where 4 were posted",
    ),
    "a reply repeated by a process that goes on": (
        lambda ledger: repeated(ledger, by="p1"),
        "chat 2: reply 57 was repeated for no reason",
    ),
    "a reply repeated by another while the first lives": (
        lambda ledger: repeated(ledger, by="p2"),
        "chat 2: reply 57 was repeated for no reason",
    ),
    "a reply repeated twice for one kill": (
        lambda ledger: replace(repeated(ledger, by="p2", times=2), killed=frozenset({"p1"})),
        "chat 2: reply 57 was repeated for no reason",
    ),
    "a reply repeated twice where the database let go once": (
        lambda ledger: replace(
            ledger,
            arrived=(
                *ledger.arrived,
                replace(ledger.arrived[-1], by="p2"),
                replace(ledger.arrived[-1], by="p3"),
            ),
            cut_off=1,
        ),
        "chat 2: reply 57 was repeated for no reason",
    ),
    "two replies of a chat repeated for one kill": (
        with_two_repeats_for_one_kill,
        "chat 2: reply 57 was repeated for no reason",
    ),
    "replies that the check could not tell apart": (
        lambda ledger: replace(
            ledger, posted=(*ledger.posted, replace(ledger.posted[-1], inbox=57))
        ),
        "chat 2: two replies beside each other are alike",
    ),
}


@pytest.mark.parametrize("name", DOCTORED)
def test_each_fault_is_found(name: str) -> None:
    doctor, found = DOCTORED[name]
    assert found in faults_of(doctor(sound()))
