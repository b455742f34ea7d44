"""Reminders are kept, claimed once whoever looks, and fall due by the wall clock of their place.

PostgreSQL documentation, SELECT, "The Locking Clause": with SKIP LOCKED rows that cannot be
locked at once are passed over. Wall times: PEP 495 and the documentation of zoneinfo.
"""

from __future__ import annotations

import threading
from datetime import UTC, datetime

import pytest
from databases import NOON, Team, new_team

from scouting_db.directory import Directory
from scouting_db.directory.reminders import QUIET_MICROS
from scouting_db.session import Store, open_store
from scouting_db.values import EntryKind, MatchId, MatchState, Micros, Winner
from scouting_db.zones import ClockChange, local_time, moment_of

MINUTE = 60_000_000
START = NOON + 60 * MINUTE
DUE = Micros(START - 20 * MINUTE)


def announce(store: Store, team: Team, *, start: int = START) -> MatchId:
    """A match with a reminder 20 minutes before."""
    with store.writing() as connection:
        book = team.book(connection)
        match = book.announce(our_pair=None, their_pair=None, format={}, starts_at=Micros(start))
        book.remind(
            match,
            team.chat,
            minutes_before=20,
            starts_wall="2025-06-15T15:06",
            zone="UTC",
            due=Micros(start - 20 * MINUTE),
        )
        return match


def claim(store: Store, team: Team, now: int) -> list[int]:
    with store.writing() as connection:
        rows = Directory(connection).claim_reminders(team.account, now=Micros(now))
        return [one.row.match for one in rows]


def test_a_reminder_falls_due_once(store: Store) -> None:
    team = new_team(store, "Mira")
    match = announce(store, team)
    assert claim(store, team, DUE - 1) == []
    assert claim(store, team, DUE) == [match]
    assert claim(store, team, DUE + MINUTE) == []


def test_it_is_still_there_after_a_restart(database_url: str) -> None:
    first = open_store(database_url)
    team = new_team(first, "Mira")
    match = announce(first, team)
    first.close()
    second = open_store(database_url)
    assert claim(second, team, DUE) == [match]
    second.close()


def test_a_claim_that_is_rolled_back_is_none(store: Store) -> None:
    team = new_team(store, "Mira")
    match = announce(store, team)
    with store.writing() as connection:
        assert Directory(connection).claim_reminders(team.account, now=DUE)
        connection.rollback()
    assert claim(store, team, DUE) == [match]


def test_many_workers_claim_each_reminder_once(store: Store) -> None:
    teams = [new_team(store, f"team {number}") for number in range(8)]
    wanted = sorted((team.chat, announce(store, team)) for team in teams)
    found: list[tuple[int, int]] = []
    guard = threading.Lock()
    together = threading.Barrier(4)

    def work() -> None:
        together.wait()
        while True:
            with store.writing() as connection:
                rows = Directory(connection).claim_reminders(teams[0].account, now=DUE)
            if not rows:
                return
            with guard:
                found.extend((one.row.chat, one.row.match) for one in rows)

    threads = [threading.Thread(target=work) for _ in range(4)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    # A worker passes over a chat that another has in hand; whoever has it takes all of it.
    assert sorted(found) == wanted


def test_a_worker_passes_over_what_another_has_in_hand(store: Store) -> None:
    if store.engine.dialect.name != "postgresql":
        pytest.skip("SQLite has one writer at a time: nothing can be in another's hand")
    first, second = new_team(store, "Mira"), new_team(store, "Tom")
    matches = {announce(store, first), announce(store, second)}
    with store.writing() as one, store.writing() as other:
        taken = Directory(one).claim_reminders(first.account, now=DUE)
        rest = Directory(other).claim_reminders(first.account, now=DUE)
        none = Directory(other).claim_reminders(first.account, now=DUE)
    assert {each.row.match for each in (*taken, *rest)} == matches
    assert none == ()


def test_the_next_one_is_told_so_that_a_loop_can_sleep(store: Store) -> None:
    team = new_team(store, "Mira")
    announce(store, team)
    announce(store, team, start=START + 30 * MINUTE)
    with store.reading() as connection:
        directory = Directory(connection)
        assert directory.next_reminder(team.account, now=Micros(NOON)) == DUE
        assert directory.next_reminder(team.account, now=DUE) == DUE + 30 * MINUTE


def test_nobody_is_reminded_while_another_match_is_played(store: Store) -> None:
    team = new_team(store, "Mira")
    match = announce(store, team)
    with store.writing() as connection:
        book = team.book(connection, now=DUE - MINUTE)
        running = book.announce(our_pair=None, their_pair=None, format={}, state=MatchState.RUNNING)
        book.append(running, EntryKind.RALLY, won_by=Winner.US)
    assert claim(store, team, DUE) == []
    assert claim(store, team, DUE - MINUTE + QUIET_MICROS) == [match]


def test_a_chat_that_shut_us_out_is_reminded_when_it_is_back(store: Store) -> None:
    team = new_team(store, "Mira")
    match = announce(store, team)
    with store.writing() as connection:
        Directory(connection).block(team.chat, now=DUE)
    assert claim(store, team, DUE) == []
    with store.writing() as connection:
        Directory(connection).unblock(team.chat)
    assert claim(store, team, DUE) == [match]


def test_a_removed_match_takes_its_reminders_along(store: Store) -> None:
    team = new_team(store, "Mira")
    match = announce(store, team)
    with store.writing() as connection:
        team.book(connection).remove_match(match)
    assert claim(store, team, DUE) == []


def test_a_book_sees_and_changes_only_its_own(store: Store) -> None:
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    match = announce(store, mira)
    with store.writing() as connection:
        book = tom.book(connection)
        assert book.reminders() == ()
        book.cancel_reminders(match)
    assert claim(store, mira, DUE) == [match]


def shown(at: Micros, zone: str) -> str:
    return f"{local_time(at, zone):%d %H:%M}"


def test_a_usual_time_is_one_moment() -> None:
    found = moment_of(datetime(2025, 6, 21, 10, 40), "America/Denver")
    assert found.at == datetime(2025, 6, 21, 16, 40, tzinfo=UTC).timestamp() * 1e6
    assert (found.wall, found.change) == (datetime(2025, 6, 21, 10, 40), None)


@pytest.mark.parametrize(
    ("zone", "skipped", "taken"),
    [
        # Clocks go from 2:00 to 3:00 on 9 March 2025 in Denver, on 30 March in Berlin (tz
        # database, northamerica and europe); in Lord Howe by half an hour on 5 October.
        ("America/Denver", datetime(2025, 3, 9, 2, 30), datetime(2025, 3, 9, 3, 30)),
        ("Europe/Berlin", datetime(2025, 3, 30, 2, 10), datetime(2025, 3, 30, 3, 10)),
        ("Australia/Lord_Howe", datetime(2025, 10, 5, 2, 10), datetime(2025, 10, 5, 2, 40)),
    ],
)
def test_a_skipped_time_is_moved_on_by_what_was_skipped(
    zone: str, skipped: datetime, taken: datetime
) -> None:
    """PEP 495: in a gap `fold=0` uses the offset before the change."""
    found = moment_of(skipped, zone)
    assert (found.wall, found.change) == (taken, ClockChange.SKIPPED)
    assert local_time(found.at, zone).replace(tzinfo=None) == taken


@pytest.mark.parametrize(
    ("zone", "twice", "first"),
    [
        ("America/Denver", datetime(2025, 11, 2, 1, 30), datetime(2025, 11, 2, 7, 30)),
        ("Europe/Berlin", datetime(2025, 10, 26, 2, 30), datetime(2025, 10, 26, 0, 30)),
    ],
)
def test_a_time_shown_twice_is_the_first(zone: str, twice: datetime, first: datetime) -> None:
    """PEP 495: in a fold `fold=0` is the earlier moment."""
    found = moment_of(twice, zone)
    assert (found.wall, found.change) == (twice, ClockChange.TWICE)
    assert found.at == first.replace(tzinfo=UTC).timestamp() * 1e6


def test_minutes_before_are_minutes_that_pass_over_a_change_too() -> None:
    """3:10 after the clocks went forward is 20 minutes after 1:50 by the clock."""
    start = moment_of(datetime(2025, 3, 9, 3, 10), "America/Denver").at
    assert shown(Micros(start - 20 * MINUTE), "America/Denver") == "09 01:50"
