"""A pool through the whole turn: told, next, results, standing, and each of them taken back."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from day_lists import POOL
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from talk import Talk, demo_talk
from voices import EVENING

from bot.chat.answers.listing import pages_of
from bot.chat.pool_said import pool_said
from bot.chat.said import PoolSaid
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from scouting_db.values import MatchRow, MatchState, PlayerRow

MESSY = """pool: okafor/lindqvist 10:40 ct 7
bring water
ruiz & hale 11:20 court 3
parking is behind the hall
vs Nowak and Petrov
lol
one game to 15"""


def in_pool(talk: Talk) -> tuple[MatchRow, ...]:
    event = talk.context.pool
    assert event is not None
    with talk.book() as book:
        return book.matches_in(event)


def roster(talk: Talk) -> tuple[PlayerRow, ...]:
    with talk.book() as book:
        return book.players()


def pairs(talk: Talk) -> list[set[int]]:
    return [set(row.their_pair.players) for row in in_pool(talk) if row.their_pair]


def test_the_matches_stand_in_order_with_time_court_and_format(demo: Talk) -> None:
    reply = demo.say(MESSY)
    assert reply.splitlines()[0] == "Pool: 3 matches, one game to 15."
    okafor, lindqvist = demo.player("Okafor"), demo.player("Lindqvist")
    assert pairs(demo)[0] == {okafor, lindqvist}
    first, second, _ = in_pool(demo)
    assert (first.court, second.court) == ("7", "3")
    assert first.format["target"] == 15
    assert first.format["best_of"] == 1
    assert first.starts_at is not None
    assert second.starts_at is not None
    assert second.starts_at - first.starts_at == 40 * 60 * 1_000_000
    assert datetime.fromtimestamp(first.starts_at / 1e6, UTC).minute == 40


def test_noise_is_said_and_new_names_become_players(demo: Talk) -> None:
    reply = demo.say(MESSY)
    assert "New in the book: Nowak, Petrov." in reply
    assert "bring water" in reply
    with demo.book() as book:
        assert {"Nowak", "Petrov"} <= {row.name for row in book.players()}


def test_one_undo_takes_back_pool_and_players(demo: Talk) -> None:
    with demo.book() as book:
        players = {row.name for row in book.players()}
        matches = {row.match for row in book.matches()}
        events = book.events()
    before = demo.context
    demo.say(MESSY)
    assert demo.say("undo") == "Taken back: the pool."
    with demo.book() as book:
        assert {row.name for row in book.players()} == players
        assert {row.match for row in book.matches()} == matches
        assert book.events() == events
    assert (demo.context.match, demo.context.theirs) == (before.match, before.theirs)
    assert demo.context.pool is None


def test_a_pool_taken_back_is_put_back_as_it_was_told(demo: Talk) -> None:
    """By word and by button: the same matches in the same order, players, times and what is on."""
    demo.say(MESSY)
    told, players = in_pool(demo), {row.name for row in roster(demo)}
    on = (demo.context.match, demo.context.theirs)
    demo.say("undo")
    assert demo.say("redo") == "Put back: the pool."
    assert in_pool(demo) == told
    assert {row.name for row in roster(demo)} == players
    assert (demo.context.match, demo.context.theirs) == on
    demo.say("undo")
    assert demo.tap("put it back").startswith("Put back")
    assert in_pool(demo) == told
    assert demo.say("next").startswith("Next: Okafor/Lindqvist")
    demo.say("undo")
    assert demo.context.pool is None


def test_a_pool_partly_played_is_put_back_around_what_was_played(demo: Talk) -> None:
    demo.say(MESSY)
    undo, told = demo.button("undo").payload, in_pool(demo)
    demo.say("won 15-11")
    assert "what was played of it stays" in demo.press(undo)
    assert len(in_pool(demo)) == 1
    demo.tap("put it back")
    assert [row.match for row in in_pool(demo)] == [row.match for row in told]
    assert [row.state for row in in_pool(demo)][:2] == [MatchState.OVER, MatchState.ANNOUNCED]


def test_next_gives_the_opponents_and_the_plan_in_a_line(demo: Talk) -> None:
    demo.say(POOL)
    lines = demo.say("next").splitlines()
    assert lines[0] == "Next: Okafor/Lindqvist."
    plan = demo.say("plan").splitlines()
    assert lines[1] == plan[0]


def test_results_go_to_the_match_that_is_on_and_the_next_one_follows(demo: Talk) -> None:
    demo.say(POOL)
    assert "Next: Ana Ruiz/Hale" in demo.say("won 15-11")
    assert "That was the pool" in demo.say("lost 8-15")
    assert [row.state for row in in_pool(demo)] == [MatchState.OVER] * 2
    lines = demo.say("pool").splitlines()
    assert lines[0] == "Pool: 1 won, 1 lost, 0 to play."
    assert lines[1:3] == ["1 Okafor/Lindqvist: won 15-11", "2 Ana Ruiz/Hale: lost 8-15"]
    assert lines[3] == "Points 23-26 (-3)."
    assert "event's own rules" in lines[4]


def test_a_result_is_taken_back_and_its_match_is_on_again(demo: Talk) -> None:
    demo.say(POOL)
    first = demo.context.match
    demo.say("won 15-11")
    assert demo.context.match != first
    demo.say("undo")
    assert demo.context.match == first
    assert demo.say("pool").splitlines()[0] == "Pool: 0 won, 0 lost, 2 to play."


def test_two_results_are_taken_back_one_by_one_and_told_again(demo: Talk) -> None:
    demo.say(POOL)
    first = demo.context.match
    demo.say("won 15-11")
    demo.say("lost 8-15")
    demo.say("undo")
    demo.say("undo")
    assert demo.context.match == first
    demo.say("lost 11-15")
    assert demo.say("pool").splitlines()[0] == "Pool: 0 won, 1 lost, 1 to play."


def test_a_pool_that_was_played_in_is_not_thrown_away_by_its_undo_button(demo: Talk) -> None:
    demo.say(POOL)
    undo = demo.button("undo").payload
    demo.say("won 15-11")
    assert "what was played of it stays" in demo.press(undo)
    assert [row.state for row in in_pool(demo)] == [MatchState.OVER]


def test_a_result_that_names_another_pair_of_the_pool_is_theirs(demo: Talk) -> None:
    demo.say(POOL)
    demo.say("beat ruiz and hale 15-9")
    lines = demo.say("pool").splitlines()
    assert lines[1:3] == ["1 Okafor/Lindqvist", "2 Ana Ruiz/Hale: won 15-9"]
    assert demo.say("next").startswith("Next: Okafor/Lindqvist")


def test_naming_a_pair_of_the_pool_as_next_makes_no_second_match(demo: Talk) -> None:
    demo.say(POOL)
    first = demo.context.match
    reply = demo.say("next: ruiz and hale, 11:20, court 3")
    assert "of the pool" in reply
    assert len(in_pool(demo)) == 2
    assert in_pool(demo)[1].court == "3"
    demo.say("undo")
    assert in_pool(demo)[1].court is None
    assert demo.context.match == first


def test_rallies_tapped_to_the_end_move_the_pool_on_too(demo: Talk) -> None:
    demo.say("pool: okafor/lindqvist, ruiz/hale; one game to 1, win by 1")
    demo.tap("we serve")
    reply = demo.tap("our rally")
    assert "Next: Ana Ruiz/Hale" in reply


def test_a_match_under_way_is_not_left_by_next(demo: Talk) -> None:
    demo.say(POOL)
    demo.tap("we serve")
    match = demo.context.match
    demo.tap("our rally")
    reply = demo.say("next")
    assert reply.startswith("1-0-2")
    assert "Okafor/Lindqvist are still on." in reply
    assert demo.context.match == match


def test_a_running_match_goes_on_when_a_pool_is_told(demo: Talk) -> None:
    demo.say("next: ruiz and hale, to 11")
    demo.tap("we serve")
    demo.tap("our rally")
    match = demo.context.match
    demo.say("pool: okafor/lindqvist, brandt/castellano")
    assert demo.context.match == match
    assert "1-0-2" in demo.say("score")


def test_a_match_of_another_event_moves_nothing_on(demo: Talk) -> None:
    with demo.book() as book:
        event = book.add_event("Saltmarsh Autumn Doubles")
        row = book.matches()[0]
        for _ in range(2):
            book.announce(
                our_pair=row.our_pair.pair if row.our_pair else None,
                their_pair=row.their_pair.pair if row.their_pair else None,
                format=row.format,
                event=event,
            )
    demo.say("next: ruiz and hale, one game to 15")
    assert "Next" not in demo.say("won 15-11")


def test_a_match_announced_beside_the_pool_is_the_next_one_until_it_is_over(demo: Talk) -> None:
    demo.say(POOL)
    demo.say("next: brandt and castellano, one game to 15")
    assert "Okafor" not in demo.say("next").splitlines()[0]
    demo.say("won 15-11")
    assert demo.say("next").startswith("Next: Okafor/Lindqvist")


def test_once_its_days_are_over_next_is_the_match_that_is_on(demo: Talk) -> None:
    demo.say(POOL)
    demo.later(days=3)
    demo.say("next: ruiz and hale")
    assert "Okafor" not in demo.say("next")


def test_a_pool_in_a_book_that_knows_nobody(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("we are Mira and Tom")
    reply = fresh_anywhere.say(POOL)
    assert "New in the book: Okafor, Lindqvist, Ruiz, Hale." in reply
    fresh_anywhere.say("won 15-11")
    assert fresh_anywhere.say("pool").startswith("Pool: 1 won, 0 lost, 1 to play.")


def test_a_format_that_nobody_said_is_settled_by_the_first_result(demo: Talk) -> None:
    demo.say("pool: okafor/lindqvist, ruiz/hale")
    assert demo.say("won 15-11").startswith("Won 15-11.")
    assert demo.say("won 11-8 9-11 11-6").startswith("Won 11-8 9-11 11-6.")


def test_a_result_that_cannot_be_is_questioned_and_not_stored(demo: Talk) -> None:
    demo.say(POOL)
    assert "Not stored" in demo.say("won 15-14")
    assert in_pool(demo)[0].state is MatchState.ANNOUNCED


@pytest.mark.parametrize("said", ["next", "pool", "won 15-11"])
def test_without_a_pool_and_a_match_it_is_said_how(fresh_anywhere: Talk, said: str) -> None:
    reply = fresh_anywhere.say(said)
    assert "Say: " in reply


def test_a_pool_with_ourselves_in_it_is_said_kindly(demo: Talk) -> None:
    reply = demo.say("pool: mira/tom, mira/okafor, ruiz/hale")
    assert "Pool: 1 match" in reply
    assert "mira/okafor: one of us" in reply


def test_a_list_without_a_pair_stores_nothing(demo: Talk) -> None:
    stored = demo.stored()
    reply = demo.say("pool: bring water, parking behind the hall; lol")
    assert reply.startswith("No pair in that I could read.")
    assert demo.stored() == stored


def test_alike_names_are_asked_about_and_the_pool_goes_on(demo: Talk) -> None:
    assert demo.say("pool: ruiz/nowak, okafor/lindqvist").startswith("Which ruiz?")
    demo.tap("Ana Ruiz")
    assert demo.player("Ana Ruiz") in pairs(demo)[0]
    assert len(in_pool(demo)) == 2


def test_a_pool_is_over_after_its_days(demo: Talk) -> None:
    demo.say(POOL)
    demo.later(days=3)
    assert "No pool is on" in demo.say("pool")


def test_a_long_pool_fits_the_screen_and_none_of_it_is_lost(demo: Talk) -> None:
    names = [f"Zed{chr(97 + n)}ko/Qor{chr(97 + n)}va" for n in range(20)]
    reply = demo.say("pool: " + ", ".join(names))
    assert wrapped(reply.splitlines()) <= MOST_LIST_LINES
    assert len(in_pool(demo)) == 20
    shown = demo.say("pool")
    while any(one.label == "more" for one in demo.buttons):
        assert wrapped(shown.split("\n\n")[-1].splitlines()) <= MOST_LIST_LINES
        shown += "\n" + demo.say("more")
    assert all(f"\n{n} " in shown for n in range(1, 21))


@settings(
    max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.permutations(["okafor/lindqvist", "ruiz/hale", "nowak/petrov"]),
    st.sampled_from([", ", "\n", "; ", ", vs ", "\n- "]),
    st.sampled_from(["/", " and ", " & ", "+"]),
    st.sampled_from(["pool: ", "Pool\n", "our pool: ", "pool B:\n", "round robin: "]),
)
def test_order_and_pairs_do_not_hang_on_the_spelling(
    order: list[str], between: str, join: str, opens: str
) -> None:
    talk = demo_talk()
    view_said = opens + between.join(one.replace("/", join) for one in order)
    reply = talk.say(view_said)
    wanted = [one.split("/")[1].title() for one in order]
    lines = [line for line in reply.splitlines() if line[:1].isdigit()]
    assert [next(name for name in wanted if name in line) for line in lines] == wanted
    talk.store.close()


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=300))
def test_no_text_after_pool_breaks_the_reader(body: str) -> None:
    found = pool_said(f"pool: {body}", EVENING)
    assert found is None or isinstance(found, PoolSaid)


@given(
    st.lists(
        st.lists(
            st.text(st.characters(codec="ascii", exclude_characters="\n"), max_size=60), max_size=5
        ),
        max_size=12,
    )
)
def test_pages_lose_no_line(blocks: list[list[str]]) -> None:
    pages = pages_of(blocks)
    assert [line for page in pages for line in page] == [line for one in blocks for line in one]
    assert all(wrapped(page) <= MOST_LIST_LINES or len(page) == 1 for page in pages)


@pytest.mark.parametrize(
    ("typed", "format"),
    [
        ("pool: okafor/lindqvist, ruiz/hale, mori/olsen. one game to 15", "one game to 15"),
        ("pool tomorow: okafor/lindqvist, ruiz/hale, mori/olsen to 15", "one game to 15"),
        (
            "pool: okafor/lindqvist, ruiz/hale, kenji mori and pat olsen best of 3",
            "best of 3 to 11",
        ),
        ("pool okafor lindqvist, ruiz hale, mori olsen one game to 15", "one game to 15"),
    ],
)
def test_the_format_typed_behind_the_last_pair_loses_no_pair(
    demo: Talk, typed: str, format: str
) -> None:
    said = demo.say(typed).splitlines()
    assert said[0] == f"Pool: 3 matches, {format}."
    assert "Olsen" in said[3]
    assert len(in_pool(demo)) == 3


def test_a_pair_that_is_not_read_beside_a_format_is_said(demo: Talk) -> None:
    said = demo.say("pool: okafor/lindqvist, ruiz/hale, mori/olsen/petrov one game to 15")
    assert "mori/olsen/petrov" in said
