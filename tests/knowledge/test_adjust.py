"""What to change: one trouble is enough, three lost rallies turn nothing round, the leak adds up.

Sizes of changes are common practice, no source; what a missed ball costs is checked against the
published chances of the serving and the receiving side.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

import pytest
from noted_players import MIRA, TOM, match, often_noted, player
from scipy import stats

from knowledge.advice import CALL_LIMIT, Confidence
from knowledge.game import GameFormat, PlayedRally, start
from knowledge.general_rule import LINE_LIMIT
from knowledge.rally_ends import STROKES, end_tag
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics import adjust
from knowledge.tactics.adjust_answer import PRIOR_RALLIES, Adjustment, adjustment_of, trouble_said
from knowledge.tactics.changes import changes, troubles
from knowledge.vocabulary import Ending, Side, Stroke, Topic

TAGS = sorted({tag for one in changes() for tag in one.ends})
ASKED = ["", *(one.id.replace("_", " ") for one in troubles())]


def situation(
    words: str = "",
    *,
    ours: Sequence[OnCourt] = (MIRA, TOM),
    played: tuple[PlayedRally, ...] = (),
) -> Situation:
    asked = match(Topic.ADJUST, player(3, "Okafor", Side.LEFT), player(4, "Hale", Side.RIGHT))
    return replace(asked, asked=Asked(words=words), ours=tuple(ours), played=played)


def lost(*tags: str, won: int = 0) -> tuple[PlayedRally, ...]:
    """Rallies of one game: so many won, then one lost for each tag."""
    state, played = start(GameFormat(target=21), we_serve=True), []
    for tag in (*[None] * won, *tags):
        rally = PlayedRally(before=state, won_by_us=tag is None, tags=(tag,) if tag else ())
        played.append(rally)
        state = rally.next
    return tuple(played)


def best(found: Adjustment) -> str:
    return found.best.change.id


@pytest.mark.parametrize(
    ("words", "trouble"),
    [
        ("too many unforced errors from us", "our_misses"),
        ("we keep missing returns", "our_misses"),
        ("everything goes into the net", "our_misses"),
        ("giving points away like candy", "our_misses"),
        ("beating ourselves out there", "our_misses"),
        ("they just hit winners past us", "their_winners"),
        ("cant hold up in the hands battles", "their_winners"),
        ("getting passed all day", "their_winners"),
        ("stuck at the baseline all game", "stuck_back"),
        ("we never get to the kitchen", "stuck_back"),
        ("they keep us back", "stuck_back"),
        ("our dinks float and get smashed", "popping_up"),
        ("keep popping it up", "popping_up"),
        ("everything sits up for them", "popping_up"),
        ("our drops come out too high", "popping_up"),
    ],
)
def test_words_name_the_trouble(words: str, trouble: str) -> None:
    found = trouble_said(situation(words))
    assert found is not None
    assert found.id == trouble


@pytest.mark.parametrize("words", ["what do we change", "4-7, ideas?", "they never miss", ""])
def test_words_that_name_none(words: str) -> None:
    assert trouble_said(situation(words)) is None


@pytest.mark.parametrize(
    ("words", "change"),
    [
        ("too many missed returns", "misses_returns"),
        ("we keep missing serves", "misses_serves"),
        ("too many errors, thirds into the net", "misses_thirds"),
        ("too many errors on speedups", "misses_speed_ups"),
        ("they hit winners down the middle", "winners_middle"),
        ("losing hands battles", "winners_hands"),
        ("stuck back after our return", "back_returning"),
        ("stuck back, thirds too good to drop", "back_thirds"),
        ("our dinks pop up", "pops_dinks"),
        ("our thirds float", "pops_thirds"),
    ],
)
def test_a_leak_that_is_named_gets_its_own_change(words: str, change: str) -> None:
    assert best(adjustment_of(situation(words))) == change


@pytest.mark.parametrize("words", ASKED)
def test_an_answer_never_waits_for_another_word(words: str) -> None:
    advice = adjust.advise(situation(words))
    assert len(advice.call) <= CALL_LIMIT
    assert all(len(one.text) <= LINE_LIMIT for one in advice.reasons)
    assert advice.unless is not None
    offered = {choice.value for choice in advice.choices}
    named = {one.id for one in troubles() if one.id == words.replace(" ", "_")}
    assert offered == {one.id for one in troubles()} - named


@pytest.mark.parametrize("words", ASKED)
def test_three_lost_rallies_turn_nothing_round(words: str) -> None:
    """Coaching rule: three rallies later the same question gets the same call."""
    call = best(adjustment_of(situation(words)))
    for tag in TAGS:
        assert best(adjustment_of(situation(words, played=lost(tag, tag, tag)))) == call, tag


def test_a_long_log_decides() -> None:
    """A dozen missed thirds are no chance: the change follows them, and says how many."""
    before = adjustment_of(situation("our misses"))
    assert best(before) == "misses_returns"
    after = situation("our misses", played=lost(*["our missed thirds"] * 14))
    assert best(adjustment_of(after)) == "misses_thirds"
    advice = adjust.advise(after)
    assert advice.reasons[0].text == "It lost 14 of the 14 you tagged"
    assert str(advice.reasons[0].source) == "book: 14 lost rallies today"


def test_won_rallies_say_nothing_of_a_leak() -> None:
    won = replace(lost(won=1)[0], tags=("our missed thirds",))
    assert adjustment_of(situation(played=(won,) * 20)).tagged == 0


def test_the_chance_of_a_leak_is_the_mean_of_a_dirichlet() -> None:
    """Against scipy: prior shares times PRIOR_RALLIES, and the tagged rallies on top."""
    plain = adjustment_of(situation("our misses"))
    tags = ["our missed dinks"] * 6 + ["our missed serves"] * 3
    logged = adjustment_of(situation("our misses", played=lost(*tags)))
    counts = Counter({"misses_dinks": 6, "misses_serves": 3})
    ids = [one.change.id for one in plain.ranked]
    prior = {one.change.id: one.chance for one in plain.ranked}
    expected = stats.dirichlet.mean([PRIOR_RALLIES * prior[id] + counts[id] for id in ids])
    got = {one.change.id: one.chance for one in logged.ranked}
    assert [got[id] for id in ids] == pytest.approx(list(expected), abs=1e-12)


def test_a_weakness_of_ours_in_the_book_makes_its_leak_likelier() -> None:
    weak = player(2, "Tom", Side.LEFT, *often_noted("serve weakness"))
    plain = {one.change.id: one.chance for one in adjustment_of(situation("our misses")).ranked}
    noted_weak = adjustment_of(situation("our misses", ours=(MIRA, weak))).ranked
    now = {one.change.id: one.chance for one in noted_weak}
    assert now["misses_serves"] > plain["misses_serves"]
    assert all(now[id] <= plain[id] for id in plain if id != "misses_serves")


def test_the_one_of_us_who_is_noted_is_named() -> None:
    weak = player(2, "Tom", Side.LEFT, *often_noted("return weakness"))
    advice = adjust.advise(situation("our misses", ours=(MIRA, weak)))
    assert advice.call.startswith("Tom: return higher")
    assert advice.reasons[0].text == "Tom: weak return"
    assert str(advice.reasons[0].source).startswith("book")


def test_no_change_takes_a_shot_that_neither_of_us_owns() -> None:
    """Coaching: no call needs a shot that the user's own profile marks as a weakness."""
    ours = [
        player(one, name, side, *often_noted("third_shot_drop weakness"))
        for one, name, side in ((1, "Mira", Side.RIGHT), (2, "Tom", Side.LEFT))
    ]
    found = adjustment_of(situation("stuck back, thirds", ours=ours))
    assert "back_thirds" not in {one.change.id for one in found.ranked}
    one_owns_it = adjustment_of(situation("stuck back, thirds", ours=(MIRA, ours[1])))
    assert "back_thirds" in {one.change.id for one in one_owns_it.ranked}


def test_a_habit_of_ours_counts_too() -> None:
    """Who rarely leaves a ball that flies out is where that leak is."""
    weak = player(2, "Tom", Side.LEFT, *often_noted("leaves_out_balls rarely"))
    found = adjustment_of(situation("their winners", ours=(MIRA, weak)))
    of_it = next(one for one in found.ranked if one.change.id == "winners_out_balls")
    assert of_it.culprit is not None
    assert of_it.culprit.player.name == "Tom"


def test_close_changes_are_said_to_be_close() -> None:
    assert adjust.advise(situation()).confidence is Confidence.TOSS_UP


def test_luck_is_told_from_a_leak() -> None:
    unlucky = adjust.advise(situation("our misses", played=lost(*[""] * 3, won=12)))
    assert unlucky.number is not None
    assert "keep playing" in unlucky.number
    leaking = adjust.advise(situation(played=lost(*["our missed returns"] * 3, won=12)))
    assert leaking.number is not None
    assert "same error thrice: a leak" in leaking.number


def test_where_our_chance_went_adds_up() -> None:
    """The identity of engineering note 1.9: the parts' swings and what was not logged are all."""
    numbers = adjust.advise(situation(played=lost(*["our misses"] * 5, won=4))).numbers
    parts = numbers["leak_serving"] + numbers["leak_receiving"] + numbers["leak_unlogged"]
    assert parts == pytest.approx(numbers["match_chance_change"], abs=1e-12)


def test_every_tag_of_the_data_can_come_from_a_log() -> None:
    possible = {
        end_tag(won_by_us=False, ending=ending, stroke=stroke)
        for ending in Ending
        for stroke in (None, *Stroke)
    }
    assert set(TAGS) <= possible


def test_whose_it_was_follows_from_who_won() -> None:
    """A winner is the winning side's, an error the losing side's: the words' own meaning."""
    assert set(STROKES) == set(Stroke)
    ours = end_tag(won_by_us=False, ending=Ending.FORCED_ERROR, stroke=Stroke.DINK)
    theirs = end_tag(won_by_us=True, ending=Ending.UNFORCED_ERROR, stroke=Stroke.DINK)
    assert (ours, theirs) == ("our missed dinks", "their missed dinks")
    assert end_tag(won_by_us=True, ending=Ending.WINNER, stroke=None) == "our winners"
    assert end_tag(won_by_us=False, ending=Ending.WINNER, stroke=Stroke.LOB) == (
        "their winners with lobs"
    )


def test_why_tells_what_else_and_how_much_was_logged() -> None:
    more = adjust.advise(situation("our misses", played=lost("our missed dinks", ""))).more
    assert any(line.startswith("Else: ") for line in more)
    assert "Log: 1 of 2 lost rallies today tagged; too few to count." in more
    many = adjust.advise(situation("our misses", played=lost(*["our missed dinks"] * 8))).more
    assert "Log: 8 of 8 lost rallies today tagged; they break ties." in many
    assert not [line for line in adjust.advise(situation("our misses")).more if "Log" in line]
