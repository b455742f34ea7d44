"""Reminders as their users meet them: set by an announcement, moved, cancelled, given, late."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from sqlalchemy import select
from talk import SATURDAY, Talk

from bot.channels.console import open_console, talk
from bot.chat.reminding import plain, remind
from bot.chat.reply import Reply
from bot.chat.wording import wording
from bot.post import Outgoing, Remind, give_reminders
from scouting_db import tables
from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.values import REMINDER, DueReminder, Micros, Sent

MINUTE = 60_000_000


def at(hour: int, minute: int = 0, *, day: int = 21) -> Micros:
    """A moment of 21 June 2025, in UTC; tests begin at ten."""
    return Micros(int(datetime(2025, 6, day, hour, minute, tzinfo=UTC).timestamp() * 1e6))


def given(someone: Talk, now: Micros, *, say: Remind = remind) -> list[str]:
    """What a loop that looks at that time puts in the outbox."""
    with someone.store.writing() as connection:
        account = Directory(connection).account("console", someone.bot)
        give_reminders(connection, account, say, plain=plain, now=now)
    with someone.store.writing() as connection:
        directory = Directory(connection)
        rows = directory.lease(account, now=now, until=Micros(now + MINUTE))
        assert all(row.priority == REMINDER for row in rows)
        directory.mark_sent(
            [Sent(chat=row.chat, outbox=row.outbox, external_message_id=row.outbox) for row in rows]
        )
    return [Outgoing.from_json(row.payload).text for row in rows]


@pytest.fixture
def playing(fresh_anywhere: Talk) -> Talk:
    """Mira and Tom in a place whose clock is told, with two opponents."""
    fresh_anywhere.say("we are Mira and Tom")
    fresh_anywhere.say("timezone UTC")
    for name in ("Chidi Okafor", "Sven Lindqvist", "Ana Ruiz", "Ben Hale"):
        fresh_anywhere.say(f"/add {name}")
    return fresh_anywhere


NEXT = "next: okafor and lindqvist, 11:00, court 7"


def test_an_announcement_with_a_time_says_when_the_plan_comes(playing: Talk) -> None:
    assert "I send the plan at 10:40, 20 min before." in playing.say(NEXT)


def test_a_time_that_is_past_is_said_to_be_and_moves_to_tomorrow(playing: Talk) -> None:
    told = playing.say("next: okafor and lindqvist, 9:40")
    assert "09:40 is past: ask me for the plan now." in told
    assert "I send the plan at 09:20 tomorrow" in playing.say("moved to 9:40 tomorrow")


def test_the_plan_comes_then_once_and_names_the_match(playing: Talk) -> None:
    playing.say(NEXT)
    assert given(playing, at(10, 39)) == []
    told = given(playing, at(10, 40))
    assert len(told) == 1
    lines = told[0].splitlines()
    assert lines[0] == "In 20 min, 11:00: Okafor/Lindqvist, court 7."
    assert len(lines) <= 9
    assert len(lines) > 2, "the plan itself"
    assert given(playing, at(10, 41)) == []


def test_the_chat_then_speaks_of_that_match(playing: Talk) -> None:
    playing.say(NEXT)
    playing.say("next: ruiz and hale, 12:00")
    given(playing, at(10, 40))
    names = {playing.player("Okafor"), playing.player("Lindqvist")}
    assert {*playing.context.theirs} == names


def test_a_match_told_again_has_one_reminder_and_undo_brings_the_other_back(playing: Talk) -> None:
    playing.say(NEXT)
    playing.say("next: okafor and lindqvist, 12:00")
    assert "11:40 for 12:00" in playing.say("reminders")
    assert "10:40" not in playing.say("reminders")
    playing.say("undo")
    assert "10:40 for 11:00" in playing.say("reminders")


@pytest.mark.parametrize(
    ("said", "due"),
    [
        ("match moved to 11:20", (11, 0)),
        ("pushed back 30 min", (11, 10)),
        ("moved up 15 min", (10, 25)),
        ("okafor moved to 11:20", (11, 0)),
        ("11:20 instead", (11, 0)),
    ],
)
def test_a_match_that_moves_takes_its_reminder_along(
    playing: Talk, said: str, due: tuple[int, int]
) -> None:
    playing.say(NEXT)
    playing.say(said)
    assert given(playing, Micros(at(*due) - MINUTE)) == []
    assert len(given(playing, at(*due))) == 1


def test_a_move_is_undone_and_done_again(playing: Talk) -> None:
    playing.say(NEXT)
    playing.say("pushed back 30 min")
    playing.say("undo")
    assert "10:40 for 11:00" in playing.say("reminders")
    playing.say("redo")
    assert "11:10 for 11:30" in playing.say("reminders")


def test_a_reminder_given_comes_again_where_the_match_moves_later(playing: Talk) -> None:
    playing.say(NEXT)
    assert len(given(playing, at(10, 40))) == 1
    playing.now = at(10, 45)
    playing.say("pushed back an hour")
    assert len(given(playing, at(11, 40))) == 1


def test_how_long_before_is_settable_for_one_and_for_all(playing: Talk) -> None:
    playing.say(NEXT)
    assert "at 10:30, 30 min before" in playing.say("remind me half an hour before")
    assert "at 11:40, 20 min" in playing.say("next: ruiz and hale, 12:00")
    playing.say("always remind me 45 min before")
    assert "at 12:15, 45 min" in playing.say("next: hale and lindqvist, 13:00")


def test_how_long_before_is_kept_until_the_match_has_a_time(playing: Talk) -> None:
    playing.say("next: ruiz and hale")
    said = playing.say("remind me 35 min before")
    assert "35 min" in said
    assert wording("reminder.no_time") in said
    assert "at 11:25, 35 min" in playing.say("next: ruiz and hale, 12:00")


def test_a_time_of_day_will_do(playing: Talk) -> None:
    playing.say(NEXT)
    assert "at 10:25, 35 min before" in playing.say("remind me at 10:25")


@pytest.mark.parametrize("said", ["remind me 0 min before", "remind me 2000 min before"])
def test_a_span_nobody_can_mean_is_answered_with_the_range(playing: Talk, said: str) -> None:
    playing.say(NEXT)
    assert "1 minute to 24 hours" in playing.say(said)
    assert "10:40 for 11:00" in playing.say("reminders")


def test_one_is_cancelled_and_the_next_stays(playing: Talk) -> None:
    playing.say("next: ruiz and hale, 12:00")
    playing.say(NEXT)
    assert playing.say("cancel the reminder") == "Cancelled: the reminder for Okafor/Lindqvist."
    assert given(playing, at(10, 40)) == []
    assert len(given(playing, at(11, 40))) == 1


def test_all_are_switched_off_and_on(playing: Talk) -> None:
    playing.say(NEXT)
    playing.say("no more reminders")
    assert given(playing, at(10, 40)) == []
    assert "I send" not in playing.say("next: ruiz and hale, 12:00")
    assert "at 11:40" in playing.say("remind me before the match")
    playing.say("undo")
    assert "off" in playing.say("reminders")


def test_undo_of_a_match_takes_its_reminder_back(playing: Talk) -> None:
    playing.say(NEXT)
    playing.say("undo")
    assert given(playing, at(10, 40)) == []


def test_late_is_said_to_be_late(playing: Talk) -> None:
    playing.say(NEXT)
    playing.say("next: ruiz and hale, 12:00")
    playing.say("next: hale and lindqvist, 13:30")
    assert given(playing, at(10, 55))[0].startswith("Late, sorry. In 5 min, 11:00: Okafor")
    assert given(playing, at(12, 10))[0].startswith("Late, sorry: 12:00 has passed. Ruiz/Hale")
    missed = given(playing, at(16, 0))
    assert missed == ["Missed, sorry: Lindqvist/Hale was at 13:30."]


def test_a_match_under_way_needs_none(playing: Talk) -> None:
    playing.say(NEXT)
    playing.say("we serve")
    playing.say("our point")
    assert given(playing, at(10, 40)) == []
    assert given(playing, at(11, 30)) == []


def test_a_plan_that_fails_still_leaves_a_reminder(playing: Talk) -> None:
    def broken(_connection: object, due: DueReminder, /, *, now: Micros) -> tuple[Reply, ...]:
        raise RuntimeError(f"no plan for {due.row.match} at {now}")

    playing.say(NEXT)
    told = given(playing, at(10, 40), say=broken)
    assert told == ["In 20 min, 11:00: Okafor/Lindqvist, court 7.\nAsk me for the plan."]


def add(someone: Talk, *names: str) -> None:
    for name in names:
        someone.say(f"/add {name}")


def test_an_unknown_clock_is_asked_kindly_and_a_place_settles_it(fresh_anywhere: Talk) -> None:
    add(fresh_anywhere, "Okafor", "Hale")
    assert "That's UTC. Say: we're in Denver" in fresh_anywhere.say("next: okafor and hale, 10:40")
    told = fresh_anywhere.say("timezone smallville")
    assert told.startswith("I don't know the clock of smallville.")
    assert fresh_anywhere.say("we're in Denver").startswith("Clock set: Denver, now 04:00.")
    assert "UTC" not in fresh_anywhere.say("next: okafor and hale, 10:40")


def test_a_zone_told_later_keeps_the_times_as_said(fresh_anywhere: Talk) -> None:
    """At four in the morning in Denver "10:40" is today; in UTC it was too."""
    add(fresh_anywhere, "Okafor", "Hale")
    fresh_anywhere.say("next: okafor and hale, 10:40")
    assert "Matches stay at 10:40, Denver time." in fresh_anywhere.say("we're in Denver")
    assert given(fresh_anywhere, at(10, 20)) == []
    assert len(given(fresh_anywhere, at(16, 20))) == 1


def test_a_near_zone_is_a_button(fresh_anywhere: Talk) -> None:
    told = fresh_anywhere.say("timezone berlingen")
    assert told.startswith("I don't know") or "Berlin" in told
    fresh_anywhere.press("1:zone:Europe/Berlin")
    assert "Berlin (Europe/Berlin)" in fresh_anywhere.say("what timezone")
    assert "earlier time" in fresh_anywhere.press("1:zone:Europe/Atlantis")


@pytest.mark.parametrize(
    ("now", "said", "lines"),
    [
        (
            datetime(2025, 3, 8, 20, tzinfo=UTC),
            "next: okafor and hale, tomorrow 2:30am",
            ["Clocks go forward then: I take 03:30.", "I send the plan at 03:10 tomorrow"],
        ),
        (
            datetime(2025, 11, 1, 20, tzinfo=UTC),
            "next: okafor and hale, tomorrow 1:30am",
            ["Clocks go back: 01:30 comes twice, I take the first."],
        ),
    ],
)
def test_the_nights_of_a_clock_change_are_told(
    fresh_anywhere: Talk, now: datetime, said: str, lines: list[str]
) -> None:
    fresh_anywhere.now = Micros(int(now.timestamp() * 1e6))
    fresh_anywhere.say("we're in Denver")
    add(fresh_anywhere, "Okafor", "Hale")
    told = fresh_anywhere.say(said)
    assert all(line in told for line in lines), told


def test_a_time_or_court_told_alone_is_of_the_match_announced(playing: Talk) -> None:
    playing.say("next: okafor and lindqvist")
    playing.say("match at 11:00, court 3")
    assert given(playing, at(10, 40))[0].startswith("In 20 min, 11:00: Okafor/Lindqvist, court 3.")


def test_before_we_serve_is_the_cue(playing: Talk) -> None:
    playing.say(NEXT)
    playing.say("remind me of the plan before we serve")
    assert playing.heard is not None
    assert playing.heard.trace["topic"] == "cue"


def test_the_console_shows_what_fell_due_at_the_next_prompt(store: Store) -> None:
    clock = [SATURDAY]
    console = open_console(store, user_name="You", clock=lambda: clock[0])

    def typed() -> Iterator[str]:
        yield "timezone UTC"
        yield "/add Okafor"
        yield "/add Hale"
        yield "next: okafor and hale, 11:00"
        clock[0] = at(10, 40)
        yield "hale is tall"

    out = io.StringIO()
    talk(console, typed(), out)
    told = out.getvalue()
    assert told.index("In 20 min, 11:00") < told.index("Noted")


def test_a_reader_may_list_but_not_cancel(playing: Talk) -> None:
    group = replace(playing, chat="group", is_group=True)
    group.bind_new_book()
    group.say("timezone UTC")
    add(group, "Okafor", "Lindqvist")
    group.say("next: okafor and lindqvist, 11:00")
    stranger = group.of("Zed")
    stranger.say("cancel the reminder")
    with group.store.reading() as connection:
        assert connection.execute(select(tables.reminder.c.reminder_id)).all()
