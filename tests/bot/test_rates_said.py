"""Rally chances said by the user: whose they are, on whose serve, and what is none."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from voices import EVENING

from bot.chat.message import read_message
from bot.chat.rates_said import FoundRates, find_rates
from bot.chat.said import BookSaid, BookVerb, NoteSaid, Question, SaidRates, ScoreSaid
from bot.chat.stated_rates import rates_from_text, rates_to_text
from bot.chat.understand import understand
from bot.chat.words import words
from knowledge.vocabulary import Topic

CASES = tomllib.loads(
    (Path(__file__).parent.parent / "cases" / "rates_said.toml").read_text("utf-8")
)["said"]


def found_in(text: str) -> FoundRates | None:
    return read_message(text, EVENING).told.rates


def of_hundred(chance: float | None) -> Any:
    return None if chance is None else pytest.approx(100 * chance)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["text"])
def test_case(case: dict[str, Any]) -> None:
    found = found_in(case["text"])
    if case.get("none"):
        assert found is None
        return
    assert found is not None
    assert case.get("serving") == of_hundred(found.rates.serving)
    assert case.get("receiving") == of_hundred(found.rates.receiving)
    assert found.is_usual is case.get("usual", False)
    assert (found.rates.fault is None) is ("fault" not in case)
    assert case.get("fault", "") in (found.rates.fault or "")


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        ("we had 3 of 10 on serve so far, 5 of 8 returning", ((3, 10), (5, 8))),
        ("won 6 of our last 15 serves", ((6, 15), None)),
        ("they won 6 of 10 on our serve this game", ((4, 10), None)),
        ("today we took 7 out of 12 on their serve", (None, (7, 12))),
        ("we're winning 4 in 10 on serve", (None, None)),
        ("we won 4 in 10 on serve so far", (None, None)),
        ("we get 4 out of 10 on our serve and 6 out of 10 on theirs", (None, None)),
        ("we won 42% on serve so far", (None, None)),
    ],
)
def test_counted_rallies_are_no_chances(text: str, counts: tuple[Any, Any]) -> None:
    found = found_in(text)
    assert found is not None
    assert (found.rates.serving_count, found.rates.receiving_count) == counts
    if counts != (None, None):
        assert (found.rates.serving, found.rates.receiving) == (None, None)


@given(serving=st.integers(0, 100), receiving=st.integers(0, 100))
def test_every_percentage_is_read_on_its_serve(serving: int, receiving: int) -> None:
    for text in (
        f"we win {serving}% on serve, {receiving}% returning",
        f"when they serve we win {receiving}%, when we serve {serving}%",
        f"we win {serving / 100} serving and {receiving / 100} receiving",
        f"they win {100 - serving}% when we serve and {100 - receiving}% on their serve",
    ):
        found = find_rates(text, words(text))
        assert found is not None, text
        assert found.rates.fault is None
        assert serving == of_hundred(found.rates.serving)
        assert receiving == of_hundred(found.rates.receiving)


@given(percent=st.integers(101, 99_999))
def test_more_than_all_is_a_fault_that_names_it(percent: int) -> None:
    text = f"we win {percent}% on serve"
    found = find_rates(text, words(text))
    assert found is not None
    assert found.rates.serving is None
    assert f"{percent}%" in (found.rates.fault or "")


@given(
    st.integers(0, 25),
    st.integers(0, 25),
    st.sampled_from([None, 1, 2]),
    st.sampled_from(["", "we're serving ", "they serve ", "we win from "]),
)
def test_a_score_is_never_a_rate(ours: int, theirs: int, server: int | None, before: str) -> None:
    call = "-".join(str(one) for one in (ours, theirs, server) if one is not None)
    assert found_in(f"{before}{call}") is None


@given(st.integers(0, 25), st.integers(0, 25), st.integers(1, 2), st.integers(22, 100))
def test_a_score_beside_rates_stays_the_score(
    ours: int, theirs: int, server: int, percent: int
) -> None:
    (said,) = understand(f"at {ours}-{theirs}-{server}, {percent}% serving", chat=EVENING)
    assert isinstance(said, Question)
    assert said.slots.rates is not None
    assert percent == of_hundred(said.slots.rates.serving)
    assert said.slots.score is not None
    call = said.slots.score.call
    assert call is not None
    assert (call.serving, call.receiving, call.server) == (ours, theirs, server)


@given(st.text(alphabet="0123456789%./- winserveturnofhalf,tyu", max_size=60))
def test_nothing_typed_makes_it_fail(text: str) -> None:
    found = find_rates(text, words(text))
    known = () if found is None else (found.rates.serving, found.rates.receiving)
    assert all(one is None or 0 <= one <= 1 for one in known)


@pytest.mark.parametrize(
    "text", ["we win 42% on serve, 63% returning", "42/63", "assume 50-50", "at 9-8-2, 42% serving"]
)
def test_who_only_says_rates_asks_for_the_win_chance(text: str) -> None:
    (said,) = understand(text, chat=EVENING)
    assert isinstance(said, Question)
    assert said.topic is Topic.WIN_CHANCE


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("we win 6 of 10 on return, should we take a time-out", Topic.TIMEOUT_NOW),
        (
            "we win 42% on serve, 63% returning: how big is this rally at 9-8-2",
            Topic.RISK_AT_SCORE,
        ),
    ],
)
def test_rates_beside_another_question_leave_its_topic(text: str, topic: Topic) -> None:
    (said,) = understand(text, chat=EVENING)
    assert isinstance(said, Question)
    assert said.topic is topic
    assert said.slots.rates is not None


def test_what_is_usual_is_the_book_s() -> None:
    (said,) = understand("usually we win 45% on serve and 57% on return", chat=EVENING)
    assert isinstance(said, BookSaid)
    assert (said.verb, said.words) == (BookVerb.BASE_RATES, "0.45 0.57")


@pytest.mark.parametrize(
    "text", ["forget our numbers", "use the log", "drop my rates", "go by the log instead"]
)
def test_said_numbers_can_be_dropped_in_words(text: str) -> None:
    (said,) = understand(text, chat=EVENING)
    assert isinstance(said, BookSaid)
    assert said.verb is BookVerb.OWN_RATES


def test_ratios_of_somebody_are_notes_and_scores_are_scores() -> None:
    assert isinstance(understand("Hale drives 9 of 10", chat=EVENING)[0], NoteSaid)
    assert isinstance(understand("okafor wins 60% of his serves", chat=EVENING)[0], NoteSaid)
    assert isinstance(understand("9-8-2", chat=EVENING)[0], ScoreSaid)


@pytest.mark.parametrize(
    "text", ["hale 60% drop 40% drive on thirds", "hale 60/40 drop drive", "hale 7 of 9 drops in"]
)
def test_shares_of_one_of_them_are_kept_and_ask_nothing(text: str) -> None:
    (said,) = understand(text, chat=EVENING)
    assert isinstance(said, NoteSaid)


@pytest.mark.parametrize("counted", ["3 of 5 returns short", "3/5 serves in", "60% serves wide"])
def test_balls_counted_beside_a_question_are_no_rallies_of_ours(counted: str) -> None:
    *_, asked = understand(f"hale {counted}, where do i stand", chat=EVENING)
    assert isinstance(asked, Question)
    assert asked.slots.rates is None


@given(st.none() | st.floats(0, 1, allow_nan=False), st.none() | st.floats(0, 1, allow_nan=False))
def test_stored_rates_read_back(serving: float | None, receiving: float | None) -> None:
    text = rates_to_text(SaidRates(serving=serving, receiving=receiving))
    both_unsaid = serving is None and receiving is None
    assert rates_from_text(text) == (None if both_unsaid else (serving, receiving))


@pytest.mark.parametrize("text", ["", "0.4", "0.4 0.5 0.6", "a b", "1.4 0.5", "- -", "nan 0.5"])
def test_what_holds_no_rates_reads_as_none(text: str) -> None:
    assert rates_from_text(text) is None
