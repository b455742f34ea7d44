"""Chances through a chat: what tapped rallies teach, where the picture shows, what --json holds."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from sqlalchemy import delete
from talk import Talk

from knowledge.advice import ChanceCurve
from knowledge.chances import game_table
from knowledge.game import GameFormat, GameState
from scouting_db import tables

SERVING, RECEIVING = "serving_rally_chance", "receiving_rally_chance"
PRIOR_RALLIES = 100
DAY = 86_400_000_000


def numbers(talk: Talk, text: str) -> Mapping[str, float]:
    talk.say(text)
    assert talk.heard is not None
    found: Mapping[str, float] = talk.heard.trace["advice"].numbers
    return found


@pytest.fixture
def evening(demo: Talk) -> Talk:
    """A match against a pair never met before, in a book that holds no other match's rallies."""
    with demo.store.writing() as connection:
        connection.execute(delete(tables.entry))
    demo.say("next: ruiz and hale, to 11")
    return demo


def tap(talk: Talk, rallies: str) -> None:
    for letter in rallies:
        talk.say("our rally" if letter == "u" else "their rally")


def test_tapped_rallies_teach_by_who_served(evening: Talk) -> None:
    """Beta and binomial: the usual .44 and .56 weigh 100 rallies each (common practice)."""
    evening.say("we serve")
    tap(evening, "uut" + "ut")  # we serve, win 2, lose 1; they serve, we win 1, lose 1
    found = numbers(evening, "what are our chances")
    assert found[SERVING] == pytest.approx((44 + 2) / (PRIOR_RALLIES + 3))
    assert found[RECEIVING] == pytest.approx((56 + 1) / (PRIOR_RALLIES + 2))


def test_rallies_whose_server_nobody_told_teach_nothing(evening: Talk) -> None:
    tap(evening, "utu")
    assert numbers(evening, "what are our chances")[SERVING] == pytest.approx(0.44)


def test_an_earlier_meeting_counts_for_less_with_time(evening: Talk) -> None:
    """Half after 180 days, as notes do (common practice, no source)."""
    evening.say("we serve")
    tap(evening, "u" * 11)
    evening.say("won 11-0 11-3")
    evening.now = type(evening.now)(evening.now + 180 * DAY)
    evening.say("next: ruiz and hale, to 11")
    found = numbers(evening, "what are our chances")
    assert found[SERVING] == pytest.approx((44 + 11 / 2) / (PRIOR_RALLIES + 11 / 2), abs=1e-3)
    evening.say("next: brandt and castellano, to 11")
    others = 0.15 * 11 / 2  # what eleven rallies won against others count for these two
    found = numbers(evening, "what are our chances")
    assert found[SERVING] == pytest.approx((44 + others) / (100 + others), abs=1e-3)


def test_all_through_a_day_an_earlier_meeting_counts_the_same(evening: Talk) -> None:
    """By the day, as notes do: what is kept for the day and what is read anew agree."""
    evening.say("we serve")
    tap(evening, "u" * 11)
    evening.say("won 11-0 11-3")
    evening.later(days=180)
    evening.say("next: ruiz and hale, to 11")
    first = numbers(evening, "what are our chances")[SERVING]
    assert first == pytest.approx((44 + 11 / 2) / (PRIOR_RALLIES + 11 / 2), abs=1e-12)
    evening.now = type(evening.now)(evening.now + DAY // 24)
    evening.say("hale is slow")
    assert numbers(evening, "what are our chances")[SERVING] == first


def test_a_pair_alike_counts_for_more_than_everybody_else(evening: Talk) -> None:
    """Rings: a pair that shares a player counts 40 in 100, any other 15 (common practice)."""
    evening.say("we serve")
    tap(evening, "u" * 11)
    evening.say("won 11-0 11-3")
    for theirs, part in (("hale and brandt", 0.4), ("brandt and castellano", 0.15)):
        evening.say(f"next: {theirs}, to 11")
        found = numbers(evening, "what are our chances")
        assert found[SERVING] == pytest.approx((44 + part * 11) / (100 + part * 11), abs=1e-4)
        assert found[RECEIVING] == pytest.approx(0.56)
    assert "everybody else: 6 more of 11 than expected, counted 15%" in evening.say("why?")


def test_the_win_chance_is_that_of_the_running_score(evening: Talk) -> None:
    evening.say("we serve")
    tap(evening, "uuut")
    found = numbers(evening, "what are our chances")
    format = GameFormat()
    state = GameState(format=format, ours=3, theirs=0, we_serve=False, server=1, we_started=True)
    table = game_table(format, found[SERVING], found[RECEIVING])
    assert found["win_chance"] == pytest.approx(table.win_chance(state), abs=1e-12)
    assert found["rally_weight"] == pytest.approx(table.rally_weight(state), abs=1e-12)
    assert {"expected_rallies", "serve_first_worth", "match_chance"} <= found.keys()


def test_own_numbers_override_until_the_match_ends(evening: Talk) -> None:
    evening.say("we serve")
    tap(evening, "uuu")
    said = numbers(evening, "we win 42% on serve, 63% returning")
    assert (said[SERVING], said[RECEIVING]) == (0.42, 0.63)
    assert numbers(evening, "what are our chances at 0-0-2")["win_chance"] == pytest.approx(
        0.650741728903, abs=1e-12
    )
    evening.say("won 11-3 11-3")
    evening.say("next: ruiz and hale, to 11")
    assert numbers(evening, "what are our chances")[SERVING] > 0.44


def pictures(talk: Talk) -> list[ChanceCurve]:
    return [one.picture for one in talk.last if isinstance(one.picture, ChanceCurve)]


def test_the_curve_shows_between_games_and_at_the_end_and_when_asked_for(evening: Talk) -> None:
    evening.say("we serve")
    tap(evening, "u" * 10)
    assert not pictures(evening)
    evening.say("what are our chances")
    assert not pictures(evening), "in a match answers are short"
    evening.say("win chance graph")
    assert len(pictures(evening)[0].points) == 11
    tap(evening, "u")
    (after_game,) = pictures(evening)
    assert after_game.points[0] < after_game.points[-1]
    evening.say("we serve first")
    tap(evening, "u" * 11)
    (after_match,) = pictures(evening)
    assert after_match.points[-1] == 1
    assert len(after_match.games) == 2


def test_undo_takes_a_rally_out_of_the_evidence(evening: Talk) -> None:
    evening.say("we serve")
    tap(evening, "uu")
    evening.say("undo")
    assert numbers(evening, "what are our chances")[SERVING] == pytest.approx(45 / 101)
