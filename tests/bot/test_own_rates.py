"""The user's own rally chances: kept for the match, dropped, undone, and the book's usual ones."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.wording import wording
from knowledge.chances import RallyTally
from knowledge.situation import Situation


def told(talk: Talk) -> Situation:
    assert talk.heard is not None
    found = talk.heard.trace["situation"]
    assert isinstance(found, Situation)
    return found


def usual(talk: Talk) -> str:
    with talk.book() as book:
        return book.preferences().get("base_rates", "")


def test_they_hold_for_the_match_and_a_question_sets_them_anew(demo: Talk) -> None:
    demo.say("we win 42% on serve, 63% returning")
    assert told(demo).asked.rates == (0.42, 0.63)
    demo.say("what are our chances at 9-8-2")
    assert told(demo).asked.rates == (0.42, 0.63)
    demo.say("what are our chances at 9-8-2 if we win half on serve")
    assert told(demo).asked.rates == (0.5, 0.63)


@pytest.mark.parametrize(
    "text", ["say we win 47% on serve, 61% receiving", "ok lets say 47/61", "assume 47/61"]
)
def test_numbers_given_to_reckon_with_hold_until_taken_back(demo: Talk, text: str) -> None:
    demo.say(text)
    assert demo.context.rates == (0.47, 0.61)
    demo.tap("undo")
    assert demo.context.rates is None


def test_the_same_numbers_are_those_supposed_before(demo: Talk) -> None:
    demo.say("what if we win 47% on serve, 61% receiving")
    demo.say("same numbers, chance at 8-8-1 we serve")
    assert told(demo).asked.rates == (0.47, 0.61)
    demo.say("win chance at 9-8-2")
    assert told(demo).asked.rates is None


@pytest.mark.parametrize(
    ("text", "rates"),
    [
        ("say we win 47% on serve, chances at 5-5-1?", (0.47, None)),
        ("if we won 50% on serve what are our chances at 5-5-1", (0.5, None)),
        ("what if we win 50% on serve, 60% returning", (0.5, 0.6)),
        ("win chance with 50/50", (0.5, 0.5)),
        ("suppose we win 4 in 10 on serve", (0.4, None)),
        ("do we need 50% on serve at 5-5-1 to win this", (0.5, None)),
        ("is winning 42% on serve, 60% returning enough?", (0.42, 0.6)),
        ("i want 70% to win, what are our chances at 5-5-1", None),
    ],
)
def test_what_is_only_supposed_holds_for_that_question(
    demo: Talk, text: str, rates: tuple[float | None, float | None] | None
) -> None:
    before = demo.stored()
    demo.say(text)
    assert told(demo).asked.rates == rates
    assert demo.context.rates is None
    assert demo.stored() == before
    assert demo.say("undo") == wording("nothing_to_undo")


def test_a_question_s_numbers_go_with_its_buttons_and_then_out(demo: Talk) -> None:
    demo.say("we win 42% on serve")
    demo.say("win chance at 9-8-2 if we win 60% returning")
    assert told(demo).asked.rates == (0.42, 0.6)
    demo.tap("this rally")
    assert told(demo).asked.rates == (0.42, 0.6)
    demo.say("win chance at 9-8-2")
    assert told(demo).asked.rates == (0.42, None)


def test_a_statement_beside_a_question_stays(demo: Talk) -> None:
    demo.say("we win 42% on serve, 63% returning. what are our chances at 9-8-2?")
    assert demo.context.rates == (0.42, 0.63)


def test_telling_them_is_undone_and_done_again(demo: Talk) -> None:
    demo.say("we win 0% on serve and 0% returning")
    demo.tap("undo")
    assert demo.context.rates is None
    demo.say("redo")
    assert demo.context.rates == (0.0, 0.0)
    demo.say("we're winning 4 in 10 on serve")
    demo.say("undo")
    assert demo.context.rates == (0.0, 0.0)


def test_the_log_counts_again_by_a_button(demo: Talk) -> None:
    demo.say("we win 42% on serve, 63% returning")
    assert demo.tap("use the log") == wording("own_rates.dropped")
    assert demo.context.rates is None
    demo.tap("undo")
    assert demo.context.rates == (0.42, 0.63)
    assert demo.press("1:rates:book") == wording("unclear.too_old")
    assert demo.context.rates == (0.42, 0.63)


def test_a_few_rallies_counted_are_a_tally(demo: Talk) -> None:
    demo.say("we had 3 of 10 on serve so far, 5 of 8 returning")
    assert demo.context.rates is None
    assert demo.context.to_json()["counts"] == [[3, 10], [5, 8]]
    assert told(demo).asked.rates is None
    assert told(demo).asked.tally == RallyTally(
        served_won=3, served_lost=7, received_won=5, received_lost=3
    )
    demo.say("we're winning 4 in 10 on serve")
    assert demo.context.rates == (0.4, None)
    assert demo.context.to_json()["counts"] == [None, [5, 8]]
    demo.say("undo")
    assert demo.context.rates is None
    assert demo.context.counts == ((3, 10), (5, 8))
    assert demo.say("forget our numbers").startswith(wording("own_rates.dropped"))
    assert demo.context.counts is None
    demo.say("undo")
    assert demo.context.counts == ((3, 10), (5, 8))


def test_half_of_them_is_enough(demo: Talk) -> None:
    demo.say("they win 40 percent on serve")
    assert demo.context.rates == (None, 0.6)
    assert told(demo).asked.rates == (None, 0.6)


@pytest.mark.parametrize("result", ["lost 9-11 8-11", "next: ruiz and hale, to 11"])
def test_a_result_or_another_match_ends_them(demo: Talk, result: str) -> None:
    demo.say("we serve first")
    demo.say("we win 42% on serve, 63% returning")
    assert demo.context.rates == (0.42, 0.63)
    demo.say(result)
    assert demo.context.rates is None


def test_they_can_be_dropped_and_brought_back(demo: Talk) -> None:
    demo.say("we win 42% on serve, 63% returning")
    assert demo.say("forget our numbers").startswith(wording("own_rates.dropped"))
    assert demo.context.rates is None
    demo.say("undo")
    assert demo.context.rates == (0.42, 0.63)
    demo.say("redo")
    assert demo.context.rates is None


def test_nothing_to_drop_is_said(demo: Talk) -> None:
    assert demo.say("use the log") == wording("own_rates.none")
    assert demo.say("forget our usual numbers") == wording("own_rates.none")


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("we win 142% on serve", "142% is over 100%"),
        ("we win 12 of 10 on return", "12 of 10 is over 100%"),
        ("we win 42% on serve and 50% on serve", "42% and 50%"),
    ],
)
def test_what_cannot_be_is_named_and_how_to_say_it(demo: Talk, text: str, named: str) -> None:
    reply = demo.say(text)
    assert named in reply
    assert reply.startswith(wording("own_rates.check"))
    assert wording("own_rates.form") in reply
    assert len(reply.splitlines()[0]) <= 60


def test_the_half_that_can_be_is_kept(demo: Talk) -> None:
    reply = demo.say("we win 142% on serve and 60% on return")
    assert "60 of 100 receiving" in reply
    assert demo.context.rates == (None, 0.6)


def test_the_limits_are_allowed(demo: Talk) -> None:
    demo.say("100% and 0%")
    assert demo.context.rates == (1.0, 0.0)


def test_usual_ones_are_the_book_s_and_undoable(demo: Talk) -> None:
    reply = demo.say("usually we win 45% on serve and 57% on return")
    assert "45 of 100 serving, 57 receiving" in reply
    assert usual(demo) == "0.45 0.57"
    assert demo.context.rates is None
    demo.say("what are our chances at 5-5")
    assert told(demo).base_rates == (0.45, 0.57)
    assert told(demo).asked.rates is None
    demo.say("undo")
    demo.say("what are our chances at 5-5")
    assert told(demo).base_rates is None
    demo.say("redo")
    assert usual(demo) == "0.45 0.57"


def test_half_of_the_usual_ones_leaves_the_other(demo: Talk) -> None:
    demo.say("usually we win 45% on serve")
    assert usual(demo) == "0.45 -"
    demo.say("as a rule we win 57% on return")
    assert usual(demo) == "0.45 0.57"
    demo.say("undo")
    assert usual(demo) == "0.45 -"


def test_usual_ones_can_be_forgotten(demo: Talk) -> None:
    demo.say("usually we win 45% on serve")
    assert demo.say("forget our usual numbers") == wording("own_rates.no_usual")
    demo.say("what are our chances at 5-5")
    assert told(demo).base_rates is None
    demo.say("undo")
    assert usual(demo) == "0.45 -"
