"""The four score topics: what they call, and that their figures are those of the exact chain.

Published and computed values: facts of the game, section 3 (0.739083370233 and 0.449856258219 at
10-9-2 with .42/.58; 0.650741728903 from the start with .42/.63); first serve by DeFord and
Ethier 2023, arXiv 2303.02942. Sizes of a rest, a change and an end are common practice, no source.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.advice import Advice
from knowledge.chances import RallyTally, game_table
from knowledge.game import (
    Discipline,
    GameFormat,
    GameState,
    MatchState,
    PlayedRally,
    Scoring,
    after,
    start,
)
from knowledge.situation import Asked, Situation, TossChoice, Wind
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics.risk_at_score import misses_per_winner
from knowledge.tactics.score_view import view_of
from knowledge.vocabulary import Level, Topic

FORMAT = GameFormat()
SCORE_TOPICS = (
    Topic.WIN_CHANCE,
    Topic.RISK_AT_SCORE,
    Topic.TIMEOUT_NOW,
    Topic.CHOOSE_END_OR_SERVE,
)
REASON_LIMIT = 52
"""Characters of a reason before its source: a line and a bit on a phone."""


def state(ours: int, theirs: int, *, we_serve: bool = True, server: int = 1) -> GameState:
    return GameState(format=FORMAT, ours=ours, theirs=theirs, we_serve=we_serve, server=server)


def ask(topic: Topic, game: GameState | None = None, **settled: object) -> Advice:
    return advise(Situation(topic=topic, game=game, asked=Asked(**settled)))  # type: ignore[arg-type]


def lines_of(advice: Advice) -> list[str]:
    return [advice.call, *(reason.text for reason in advice.reasons)]


@st.composite
def reached(draw: st.DrawFn) -> GameState:
    """A state of a game that is on, by rallies."""
    game = start(FORMAT, we_serve=draw(st.booleans()))
    for won in draw(st.lists(st.booleans(), max_size=60)):
        following = after(game, won_by_us=won)
        if following.is_over:
            break
        game = following
    return game


@given(reached(), st.sampled_from(SCORE_TOPICS))
@settings(deadline=None)
def test_every_score_gets_an_answer_that_fits_a_phone(game: GameState, topic: Topic) -> None:
    advice = ask(topic, game)
    assert all(len(line) <= REASON_LIMIT for line in lines_of(advice)[1:]), lines_of(advice)
    assert all("nan" not in line and "%" not in line for line in lines_of(advice))
    assert advice.numbers


@given(reached(), st.floats(0.05, 0.95), st.floats(0.01, 0.04))
@settings(deadline=None)
def test_the_shot_is_the_same_at_every_score(game: GameState, chance: float, better: float) -> None:
    """What we say, and why: whoever wins this rally more often wins the game more often."""
    assert ask(Topic.RISK_AT_SCORE, game).call == "Play the same shot as at 2-2."
    table = game_table(FORMAT, 0.44, 0.56)
    won, lost = (table.win_chance(after(game, won_by_us=one)) for one in (True, False))
    worth = [x * won + (1 - x) * lost for x in (chance, chance + better)]
    assert worth[1] > worth[0]


@pytest.mark.parametrize(
    "words", ["how big is this rally", "what's this point worth", "how important is it"]
)
def test_the_weight_leads_where_it_is_asked_for(words: str) -> None:
    advice = ask(Topic.RISK_AT_SCORE, state(10, 9, server=2), words=words, rates=(0.42, 0.58))
    assert advice.call == "This rally swings the game by 45 in 100. Same shot."
    assert advice.number is None


def test_the_weight_is_the_published_one() -> None:
    numbers = ask(Topic.RISK_AT_SCORE, state(10, 9, server=2), rates=(0.42, 0.58)).numbers
    assert numbers["rally_weight"] == pytest.approx(0.449856258219, abs=1e-12)
    assert numbers["win_chance"] == pytest.approx(0.739083370233, abs=1e-12)
    assert numbers["miss_cost_game"] == pytest.approx(0.42 * 0.449856258219, abs=1e-12)


@given(reached())
def test_a_winner_pays_for_its_misses_exactly(game: GameState) -> None:
    """A shot that wins w and errs e leaves v otherwise: worth v again at e = w (1 - v)/v."""
    view = view_of(Situation(topic=Topic.RISK_AT_SCORE, game=game))
    v, w = view.rally_chance, 0.1
    e = w * misses_per_winner(view)
    assert w + (1 - w - e) * v == pytest.approx(v)


def test_an_unproven_read_is_tried_while_rallies_weigh_little() -> None:
    def said(ours: int, theirs: int, games: tuple[int, int]) -> Advice:
        game = state(ours, theirs, we_serve=False)
        match = MatchState(game=game, games_ours=games[0], games_theirs=games[1])
        return advise(Situation(topic=Topic.RISK_AT_SCORE, game=game, match=match))

    early, late, last = said(1, 1, (0, 0)), said(10, 10, (0, 0)), said(8, 6, (1, 1))
    assert early.numbers["read_test_worth"] > early.numbers["read_test_cost"]
    assert late.numbers["read_test_worth"] < late.numbers["read_test_cost"]
    assert "Cheap to test" in (early.unless or "")
    assert "lighter rally" in (late.unless or "")
    assert "too little left" in (last.unless or "")


def test_stated_rates_override_and_are_shown() -> None:
    seen = RallyTally(served_won=30, served_lost=2, received_won=30, received_lost=2)
    advice = advise(
        Situation(topic=Topic.WIN_CHANCE, asked=Asked(rates=(0.42, 0.63)), rallies_today=seen)
    )
    assert advice.numbers["win_chance"] == pytest.approx(0.650741728903, abs=1e-12)
    assert advice.call == "Game: about 7 in 10."
    shown = [one for one in advice.reasons if one.source.kind is SourceKind.SAID]
    assert [one.text for one in shown] == ["You win 42 of 100 serving, 63 receiving"]


def test_one_stated_rate_leaves_the_other_to_the_rallies() -> None:
    seen = RallyTally(received_won=80)
    advice = advise(
        Situation(topic=Topic.WIN_CHANCE, asked=Asked(rates=(0.42, None)), rallies_today=seen)
    )
    assert advice.numbers["serving_rally_chance"] == 0.42
    assert advice.numbers["receiving_rally_chance"] == pytest.approx((0.56 * 100 + 80) / 180)


def test_logged_rallies_move_the_usual_rates_and_narrow_the_range() -> None:
    seen = RallyTally(served_won=60, served_lost=40, received_won=60, received_lost=40)
    usual, learned = (
        advise(Situation(topic=Topic.WIN_CHANCE, game=state(4, 4), rallies_today=tally))
        for tally in (None, seen)
    )
    assert "I know little" in usual.call
    assert "I know little" not in learned.call
    assert "200 rallies and the usual" in {one.source.citation for one in learned.reasons}
    assert learned.numbers["win_chance"] > usual.numbers["win_chance"]


def test_the_usual_rates_go_by_level_and_book() -> None:
    """Receiving sides win 53 to 57 of 100 by level, mixed 1 less: common practice, no source."""
    beginners = Situation(topic=Topic.WIN_CHANCE, level=Level.L3_0, mixed=True)
    assert advise(beginners).numbers["receiving_rally_chance"] == pytest.approx(0.52)
    own = Situation(topic=Topic.WIN_CHANCE, base_rates=(0.45, None))
    numbers = advise(own).numbers
    assert numbers["serving_rally_chance"] == pytest.approx(0.45)
    assert numbers["receiving_rally_chance"] == pytest.approx(0.56)


@pytest.mark.parametrize("topic", SCORE_TOPICS)
def test_rates_with_which_no_game_ends_are_named(topic: Topic) -> None:
    assert ask(topic, rates=(0.0, 1.0)).call == "With those numbers no game ever ends."


def test_a_game_that_is_over_is_said_to_be() -> None:
    assert ask(Topic.WIN_CHANCE, state(11, 7)).call == "That game is ours, 11-7."
    lost = MatchState(game=state(7, 11, we_serve=False), games_theirs=1)
    advice = advise(Situation(topic=Topic.WIN_CHANCE, match=lost, game=lost.game))
    assert advice.call == "Lost: that match is over."
    assert advice.numbers["match_chance"] == 0


def played(outcomes: str) -> tuple[PlayedRally, ...]:
    """Rallies from the start, `u` ours and `t` theirs."""
    game, rallies = start(FORMAT, we_serve=True), []
    for letter in outcomes:
        rallies.append(PlayedRally(before=game, won_by_us=letter == "u"))
        game = rallies[-1].next
    return tuple(rallies)


def test_the_leak_splits_the_whole_change_of_the_match_chance() -> None:
    rallies = played("tuutttuututtt")
    now = rallies[-1].next
    situation = Situation(topic=Topic.WIN_CHANCE, game=now, played=rallies)
    numbers = advise(situation).numbers
    parts = numbers["leak_serving"] + numbers["leak_receiving"] + numbers["leak_unlogged"]
    assert parts == pytest.approx(numbers["match_chance_change"], abs=1e-12)
    assert numbers["leak_unlogged"] == pytest.approx(0, abs=1e-12)
    before = advise(Situation(topic=Topic.WIN_CHANCE, game=rallies[0].before)).numbers
    change = numbers["match_chance"] - before["match_chance"]
    assert change == pytest.approx(numbers["match_chance_change"], abs=1e-12)


def test_the_curve_shows_every_rally_of_this_match_but_not_for_another_score() -> None:
    rallies = played("tuutttu")
    situation = Situation(topic=Topic.WIN_CHANCE, game=rallies[-1].next, played=rallies)
    picture = advise(situation).picture
    assert picture is not None
    assert len(picture.points) == len(rallies) + 1  # type: ignore[union-attr]
    other = Situation(
        topic=Topic.WIN_CHANCE, game=state(9, 9), played=rallies, asked=Asked(score_said=True)
    )
    assert advise(other).picture is None


def test_a_time_out_with_a_change_is_taken() -> None:
    advice = ask(Topic.TIMEOUT_NOW, state(4, 7, we_serve=False), has_change=True)
    assert advice.call.startswith("Take it now")
    # +2 on every rally from 4-7 is worth 5.9 in 100: `chances_coach.toml`, computed separately.
    assert advice.numbers["gain_if_kept"] == pytest.approx(0.059, abs=0.0005)


def test_four_lost_in_a_row_call_for_a_change() -> None:
    """Common practice, no source: "yes, if you change one thing" at 4-7 after four lost."""
    said = ask(Topic.TIMEOUT_NOW, state(4, 7, we_serve=False), lost_in_a_row=4)
    assert said.call == "Take it, if you change one thing."
    rallies = played("tuuutttt")
    logged = advise(Situation(topic=Topic.TIMEOUT_NOW, game=rallies[-1].next, played=rallies))
    assert logged.numbers["lost_in_a_row"] == 4
    assert logged.call == said.call


def test_a_pause_alone_is_kept_early_and_no_worse_late() -> None:
    early = ask(Topic.TIMEOUT_NOW, state(2, 8), has_change=False, timeouts_left=1)
    late = ask(Topic.TIMEOUT_NOW, state(8, 8), has_change=False, timeouts_left=1)
    last = ask(Topic.TIMEOUT_NOW, state(10, 8), has_change=False, timeouts_left=1)
    assert early.numbers["timeout_kept_worth"] > early.numbers["timeout_now_worth"]
    assert early.call.startswith("Keep it")
    assert late.numbers["timeout_now_worth"] > early.numbers["timeout_now_worth"]
    assert late.call.startswith("Now or later is the same")
    assert last.call.startswith("Take it")


def test_a_run_of_lost_rallies_makes_now_the_moment() -> None:
    advice = ask(Topic.TIMEOUT_NOW, state(6, 6), has_change=False, lost_in_a_row=4)
    assert advice.call == "Take it: a pause is worth most just now."
    assert "now," in advice.reasons[1].text


def test_on_a_run_of_our_own_nobody_calls_one() -> None:
    assert ask(Topic.TIMEOUT_NOW, state(6, 2), lost_in_a_row=0).call.startswith("No:")


@pytest.mark.parametrize("known", [{"tired": True}, {"hot": True}])
def test_breath_and_heat_bring_a_caution(known: dict[str, bool]) -> None:
    fresh = ask(Topic.TIMEOUT_NOW, state(5, 5))
    advice = ask(Topic.TIMEOUT_NOW, state(5, 5), **known)
    assert advice.caution is not None
    assert fresh.caution is None
    assert advice.numbers["pause_points"] > fresh.numbers["pause_points"]


def test_without_a_time_out_left_it_says_what_is_left() -> None:
    advice = ask(Topic.TIMEOUT_NOW, state(5, 5), timeouts_left=0)
    assert advice.call.startswith("None left")


@pytest.mark.parametrize(("target", "sign"), [(11, -1), (15, 1)])
def test_the_first_serve_in_doubles_is_worth_next_to_nothing(target: int, sign: int) -> None:
    """DeFord and Ethier 2023: very slightly worse to 11, very slightly better to 15."""
    situation = Situation(
        topic=Topic.CHOOSE_END_OR_SERVE,
        format=GameFormat(target=target, best_of=1),
        asked=Asked(rates=(0.5, 0.5)),
    )
    advice = advise(situation)
    worth = advice.numbers["serve_first_worth"]
    assert 0 < sign * worth < 1e-6
    assert any("worth next to nothing" in one.text for one in advice.reasons)
    assert advice.call == "Take the worse end first: finish on the good one."


def test_singles_serve_and_rally_scoring_receives() -> None:
    """One server: who serves first wins 0.531 of even games to 11 (facts, 3: exact fraction)."""
    singles = GameFormat(discipline=Discipline.SINGLES, best_of=1)
    table = game_table(singles, 0.5, 0.5)
    assert table.win_chance(start(singles, we_serve=True)) == pytest.approx(1029410239 / 1937102445)
    said = advise(Situation(topic=Topic.CHOOSE_END_OR_SERVE, format=singles))
    assert said.call == "Serve first."
    rally = GameFormat(target=21, scoring=Scoring.RALLY, best_of=1)
    assert advise(Situation(topic=Topic.CHOOSE_END_OR_SERVE, format=rally)).call == "Receive first."


def test_what_is_left_after_their_choice() -> None:
    def left(chose: TossChoice) -> str:
        return advise(
            Situation(
                topic=Topic.CHOOSE_END_OR_SERVE,
                format=GameFormat(target=15, best_of=1),
                wind=Wind.SOME,
                asked=Asked(they_chose=chose),
            )
        ).call

    assert left(TossChoice.END) == "Serve or receive, as you like: it's next to nothing."
    assert left(TossChoice.SERVE) == "Take the worse end first: finish on the good one."


def test_the_sun_brings_a_caution_for_the_eyes() -> None:
    advice = ask(Topic.CHOOSE_END_OR_SERVE, sun=True)
    assert advice.call == "Start facing the sun: finish with it behind you."
    assert advice.caution is not None
    assert "eyewear" in advice.caution


def test_a_miss_does_not_cost_the_same_at_any_score() -> None:
    """Its rally chance is the same, but the game that hangs on it is not (by hand)."""
    early, late = (
        ask(Topic.RISK_AT_SCORE, state(points, points), words="play safe?") for points in (2, 9)
    )
    assert early.numbers["miss_cost_rally"] == late.numbers["miss_cost_rally"]
    assert early.numbers["miss_cost_game"] < late.numbers["miss_cost_game"] / 2
    assert "same chance" not in " ".join(lines_of(late))
