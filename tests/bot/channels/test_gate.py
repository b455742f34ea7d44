"""Who is let in and how fast: bounded, said once, and nothing accepted is lost."""

from __future__ import annotations

from dataclasses import replace

import pytest

from bot.channels.gate import BURST, KEPT_USERS, TOLD_AGAIN_MICROS, Flood, Gate
from bot.chat.wording import wording
from bot.post import Arrival, Incoming, IncomingKind
from scouting_db.values import Micros

NOW = Micros(1_750_000_000_000_000)
SECOND = 1_000_000
MIRA = Incoming(
    kind=IncomingKind.TEXT, chat="11", user_id="11", user_name="Mira", at=NOW, text="hi"
)


def arrivals(incoming: Incoming, count: int, *, apart_micros: int = 0) -> list[Arrival]:
    return [
        Arrival(update_id=n, incoming=replace(incoming, at=Micros(incoming.at + n * apart_micros)))
        for n in range(count)
    ]


def test_without_a_list_everybody_is_let_in() -> None:
    assert len(Gate().admit(arrivals(MIRA, 3), now=NOW).arrivals) == 3


def test_a_stranger_gets_one_polite_line_with_their_number() -> None:
    gate = Gate(allowed=("12",))
    first = gate.admit(arrivals(MIRA, 2), now=NOW)
    assert first.arrivals == ()
    assert [line.text for line in first.lines] == [wording("gate.not_allowed").format(number="11")]
    assert gate.admit(arrivals(MIRA, 1), now=NOW).lines == ()
    later = Micros(NOW + TOLD_AGAIN_MICROS)
    assert len(gate.admit(arrivals(MIRA, 1), now=later).lines) == 1


def test_an_id_on_the_list_is_let_in_under_any_name() -> None:
    gate = Gate(allowed=("11",))
    assert len(gate.admit(arrivals(replace(MIRA, user_name="Other"), 1), now=NOW).arrivals) == 1


def test_anybody_may_ask_in_a_group_on_the_list() -> None:
    gate = Gate(allowed=("-100500",))
    here = replace(MIRA, chat="-100500", is_group=True)
    assert len(gate.admit(arrivals(here, 1), now=NOW).arrivals) == 1
    assert gate.admit(arrivals(MIRA, 1), now=NOW).arrivals == ()


def test_a_burst_is_taken_and_the_rest_said_once() -> None:
    admitted = Gate(flood=Flood()).admit(arrivals(MIRA, BURST + 20), now=NOW)
    assert [one.update_id for one in admitted.arrivals] == list(range(BURST))
    assert [line.text for line in admitted.lines] == [wording("gate.flood")]


def test_another_user_is_not_held_up() -> None:
    gate = Gate(flood=Flood())
    gate.admit(arrivals(MIRA, BURST + 20), now=NOW)
    assert len(gate.admit(arrivals(replace(MIRA, user_id="12"), 1), now=NOW).arrivals) == 1


def test_a_users_pace_comes_back_with_time_and_then_a_new_flood_is_told() -> None:
    gate = Gate(flood=Flood())
    gate.admit(arrivals(MIRA, BURST + 1), now=NOW)
    later = replace(MIRA, at=Micros(NOW + BURST * SECOND))
    again = gate.admit(arrivals(later, BURST + 1), now=NOW)
    assert len(again.arrivals) == BURST
    assert len(again.lines) == 1


def test_what_waited_while_we_were_away_is_no_flood() -> None:
    """A message bears the time it was sent (Bot API: Message.date), whenever it is fetched."""
    waited = arrivals(MIRA, 300, apart_micros=10 * SECOND)
    assert len(Gate(flood=Flood()).admit(waited, now=NOW).arrivals) == 300


def test_an_old_date_gives_nobody_more() -> None:
    gate = Gate(flood=Flood())
    back_and_forth = [
        one
        for n in range(BURST)
        for one in arrivals(replace(MIRA, at=Micros(NOW - (n % 2) * 100 * SECOND)), 2)
    ]
    assert len(gate.admit(back_and_forth, now=NOW).arrivals) == BURST


def test_the_memory_of_users_is_bounded() -> None:
    flood = Flood()
    for n in range(KEPT_USERS + 100):
        flood.takes(str(n), NOW)
    assert flood.known_users == KEPT_USERS


@pytest.mark.parametrize("text", ["gate.flood", "gate.not_allowed"])
def test_the_lines_are_short(text: str) -> None:
    assert len(wording(text)) < 120
