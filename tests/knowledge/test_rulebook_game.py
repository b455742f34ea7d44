"""Rules in words never disagree with the state machine, the court, or the time-outs we count.

Both sides restate the national rulebook, 2025 edition: 4.B.6, 5.A, 5.B, 10.A, 12.B, 2.A to 2.E
(read). Conversions: 1 in = 2.54 cm, 1 oz = 28.3495 g (definitions).
"""

from __future__ import annotations

import re

import pytest

from knowledge.court import (
    HALF_LENGTH_M,
    HALF_WIDTH_M,
    KITCHEN_DEPTH_M,
    METRES_PER_FOOT,
    METRES_PER_INCH,
    NET_HEIGHT_CENTRE_M,
    NET_HEIGHT_SIDELINE_M,
)
from knowledge.game import GameFormat, GameState, MatchState, after, places, start
from knowledge.game.formats import Discipline, Scoring
from knowledge.rulebook import find_rule
from knowledge.vocabulary import Side

GRAMS_PER_OUNCE = 28.3495
CENTIMETRES_PER_INCH = 2.54


def _said(words: str) -> str:
    rule = find_rule(words).rule
    assert rule is not None
    reasons = [reason.text for reason in rule.ruling.reasons]
    return " ".join([rule.ruling.call, *reasons, rule.ruling.now, rule.unless or ""])


def _numbers(text: str) -> list[float]:
    return [float(one) for one in re.findall(r"\d+(?:\.\d+)?", text)]


def _play(state: GameState, *won_by_us: bool) -> GameState:
    for won in won_by_us:
        state = after(state, won_by_us=won)
    return state


START = start(GameFormat(), we_serve=True)


def test_the_start_call_is_the_engines() -> None:
    assert str(START.call) == "0-0-2"
    assert str(START.call) in _said("why does the game start 0-0-2")
    assert not after(
        START, won_by_us=False
    ).we_serve  # one server: the first rally lost is a side-out
    assert "one server" in _said("why does the game start 0-0-2")


def test_the_first_server_stands_right_and_after_a_side_out_the_right_player_serves() -> None:
    for state in (START, _play(START, False), _play(START, True, False)):
        assert state.serving_court is Side.RIGHT
    said = _said("who serves after a side out")
    assert "right-court player serves first" in said
    assert "from the right" in _said("0-0-2 start which box do i serve from")


def test_a_point_swaps_the_servers_and_never_the_receivers() -> None:
    before, scored = START, after(START, won_by_us=True)
    assert scored.server_is_starter == before.server_is_starter
    assert scored.serving_court is not before.serving_court
    assert scored.starter_court(ours=False) is before.starter_court(ours=False)
    said = _said("who serves next")
    assert "server and partner swap courts" in said
    assert "Receivers never swap" in said


def test_server_one_loses_and_the_partner_serves_without_a_swap() -> None:
    theirs = _play(START, False)  # our only server of the start lost: side-out
    second = _play(theirs, True)  # and so did their server 1
    assert (theirs.we_serve, theirs.server) == (False, 1)
    assert (second.we_serve, second.server) == (False, 2)
    assert second.starter_court(ours=False) is theirs.starter_court(ours=False)
    assert "partner serves, no swap" in _said("who serves next")


def test_even_score_right_odd_score_left() -> None:
    state = START
    for _ in range(8):
        wanted = Side.RIGHT if state.ours % 2 == 0 else Side.LEFT
        assert state.starter_court(ours=True) is wanted
        state = after(state, won_by_us=True)
    assert "Even score: starting server right. Odd: left." in _said("even court odd court")


def test_the_receiver_is_diagonal() -> None:
    for state in (START, after(START, won_by_us=True)):
        where = places(state)
        assert where is not None
        # Each side counts its courts facing the net, so that diagonal is the same name.
        assert where.receiving.bound_court is where.serving.bound_court
    assert "whoever is diagonal" in _said("who receives the serve")


def test_only_the_serving_side_scores() -> None:
    lost = after(START, won_by_us=False)
    assert lost.points == START.points
    assert "only on your own serve" in _said("can we score when we receive")
    rally = start(GameFormat(scoring=Scoring.RALLY), we_serve=True)
    assert after(rally, won_by_us=False).points != rally.points
    assert "every rally counts" in _said("does the receiving side score")


def test_singles_serves_right_when_even_and_has_one_server() -> None:
    state = start(GameFormat(discipline=Discipline.SINGLES), we_serve=True)
    assert state.serving_court is Side.RIGHT
    assert after(state, won_by_us=True).serving_court is Side.LEFT
    assert not after(state, won_by_us=False).we_serve
    said = _said("singles serve rules")
    assert "serve right when even, left when odd" in said
    assert "One server" in said


@pytest.mark.parametrize("target", [11, 15, 21])
def test_games_are_won_by_two_without_a_cap(target: int) -> None:
    format = GameFormat(target=target)
    assert not format.is_won(target, target - 1)
    assert format.is_won(target + 1, target - 1)
    assert not format.is_won(target + 20, target + 19)
    said = _said("do we win by two")
    assert "no cap" in said
    assert target in _numbers(said)


def test_a_match_is_best_of_three_to_eleven() -> None:
    assert (GameFormat().best_of, GameFormat().target) == (3, 11)
    assert "best of three to 11" in _said("best of three")


@pytest.mark.parametrize("target", [11, 15, 21])
def test_ends_change_where_the_engine_changes_them(target: int) -> None:
    at = GameFormat(target=target).end_change_at
    assert re.search(rf"\b{at} \(to {target}\)", _said("when do we change ends"), re.IGNORECASE)


def test_ends_change_in_the_deciding_game_only() -> None:
    five = start(GameFormat(), we_serve=True)
    for _ in range(5):
        five = after(five, won_by_us=True)
    six = after(five, won_by_us=True)
    assert MatchState(game=six, games_ours=1, games_theirs=1).changes_ends_after(five)
    assert not MatchState(game=six).changes_ends_after(five)
    assert "Deciding or single game" in _said("when do we change ends")


@pytest.mark.parametrize(("target", "words"), [(11, "two"), (15, "two"), (21, "three")])
def test_time_outs_are_those_we_count(target: int, words: str) -> None:
    allowed = {"two": 2, "three": 3}[words]
    assert GameFormat(target=target).timeouts == allowed
    said = _said("how many timeouts do we get")
    assert "two a game to 11 or 15, three to 21" in said
    assert "one minute" in said


def test_the_court_is_the_one_we_draw() -> None:
    wide, long = _numbers(_said("court dimensions"))[:2]
    assert wide * METRES_PER_FOOT == pytest.approx(2 * HALF_WIDTH_M)
    assert long * METRES_PER_FOOT == pytest.approx(2 * HALF_LENGTH_M)
    metres = re.search(r"([\d.]+) by ([\d.]+) m", _said("court dimensions"))
    assert metres is not None
    assert float(metres[1]) == pytest.approx(2 * HALF_WIDTH_M, abs=0.005)
    assert float(metres[2]) == pytest.approx(2 * HALF_LENGTH_M, abs=0.005)


def test_service_court_and_kitchen_make_up_a_half() -> None:
    service = re.search(r"(\d+) by (\d+) ft", _said("how big is the service box"))
    kitchen = re.search(r"(\d+) ft \(([\d.]+) m\)", _said("how wide is the kitchen"))
    assert service is not None
    assert kitchen is not None
    assert float(service[1]) * METRES_PER_FOOT == pytest.approx(HALF_WIDTH_M)
    assert float(kitchen[1]) * METRES_PER_FOOT == pytest.approx(KITCHEN_DEPTH_M)
    assert float(kitchen[2]) == pytest.approx(KITCHEN_DEPTH_M, abs=0.005)
    half = (float(service[2]) + float(kitchen[1])) * METRES_PER_FOOT
    assert half == pytest.approx(HALF_LENGTH_M)


def test_the_net_is_the_one_we_draw() -> None:
    side, centre = _numbers(_said("how high is the net"))[:2]
    assert side * METRES_PER_INCH == pytest.approx(NET_HEIGHT_SIDELINE_M)
    assert centre * METRES_PER_INCH == pytest.approx(NET_HEIGHT_CENTRE_M)
    assert "About 91 and 86 cm" in _said("how high is the net")
    assert [round(one * CENTIMETRES_PER_INCH) for one in (side, centre)] == [91, 86]


def test_ounces_and_inches_are_converted_right() -> None:
    ball = _said("how heavy is the ball")
    light, heavy = _numbers(ball)[:2]
    assert (light, heavy) == (0.78, 0.935)
    grams = re.search(r"([\d.]+) to ([\d.]+) g", ball)
    assert grams is not None
    assert float(grams[1]) == pytest.approx(light * GRAMS_PER_OUNCE, abs=0.05)
    assert float(grams[2]) == pytest.approx(heavy * GRAMS_PER_OUNCE, abs=0.05)
    paddle = _said("how long can a paddle be")
    assert f"{round(24 * CENTIMETRES_PER_INCH)} cm" in paddle
    assert f"{17 * CENTIMETRES_PER_INCH:.1f} cm" in paddle
    posts = _said("how far apart are the net posts")
    assert f"{22 * METRES_PER_FOOT:.2f} m" in posts
