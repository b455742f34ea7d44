"""The user's own rally chances: kept for the match, dropped, undone, and the book's usual ones."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.wording import wording
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
