"""The report: most useful first, with counts and age, contradictions and what is not known."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from noted_players import match, often_noted, player

from knowledge.advice import Advice
from knowledge.planning import report
from knowledge.planning.aged import age
from knowledge.planning.probes import PROBES
from knowledge.planning.worth import FACTS, HABITS, SKILLS
from knowledge.situation import Asked, OnCourt
from knowledge.tactics import advise
from knowledge.vocabulary import TRAITS, PlayerId, Side, Topic, TraitKind


def _report(*theirs: OnCourt, about: int | None = None, ours: tuple[OnCourt, ...] = ()) -> Advice:
    situation = match(Topic.OPPONENT_REPORT, *theirs, ours=ours)
    if about is not None:
        situation = replace(situation, asked=Asked(about=(PlayerId(about),)))
    return report.advise(situation)


def test_count_and_age_stand_beside_each_line() -> None:
    okafor = player(3, "Okafor", None, "backhand_dink weakness 9 days ago")
    line = _report(okafor).lines[0]
    assert line.text == "Okafor: weak backhand dink"
    assert str(line.source) == "book: 1 note, 9 days old"


def test_two_say_quick_one_says_slow() -> None:
    hale = player(
        5,
        "Hale",
        None,
        "foot_speed strength by mira",
        "foot_speed strength by tom",
        "foot_speed weakness by lena",
    )
    assert _report(hale).lines[0].text == "Hale: 2 say quick feet, 1 says slow feet"


def test_the_one_with_more_and_more_useful_notes_comes_first() -> None:
    okafor = player(3, "Okafor", None, *often_noted("backhand_dink weakness"), "lob often")
    texts = [line.text for line in _report(okafor).lines]
    assert texts.index("Okafor: weak backhand dink") < texts.index("Okafor: lobs a lot")


def test_useful_is_useful_for_our_pair() -> None:
    """Their weak backhand dink is worth less to a pair that cannot dink there."""
    okafor = player(3, "Okafor", None, "backhand_dink weakness")
    able = player(1, "Mira", None, *often_noted("backhand_dink strength"))
    unable = player(1, "Mira", None, *often_noted("backhand_dink weakness"))
    key = "Okafor.backhand_dink_per_100"
    assert _report(okafor, ours=(able,)).numbers[key] > _report(okafor, ours=(unable,)).numbers[key]


def test_at_most_five_lines_and_the_last_says_what_is_not_known() -> None:
    okafor = player(
        3, "Okafor", Side.LEFT, "hand left", "poaching often", "crash often", "serve strength",
        "counter weakness", "foot_speed weakness",
    )  # fmt: skip
    lines = _report(okafor).lines
    assert len(lines) == 5
    assert lines[-1].text.startswith("Not known: ")


def test_what_is_noted_is_not_among_the_unknown() -> None:
    bare = player(3, "Okafor", Side.LEFT, "lob often")
    asked_for = _report(bare).lines[-1].text
    assert "hand" in asked_for
    noted = player(3, "Okafor", Side.LEFT, "lob often", "hand left")
    assert "Okafor's hand" not in _report(noted).lines[-1].text


def test_nothing_noted_gives_three_things_to_look_for() -> None:
    advice = _report(player(5, "Hale", None), player(6, "Brandt", None))
    assert advice.lines == PROBES
    assert advice.call == "Watch them first: no notes on Hale/Brandt."


def test_one_player_asked_about() -> None:
    okafor = player(3, "Okafor", None, "hand left")
    lindqvist = player(4, "Lindqvist", None, "crash often")
    texts = [line.text for line in _report(okafor, lindqvist, about=4).lines]
    assert all("Okafor" not in text for text in texts)


def test_the_call_says_what_to_do_with_it() -> None:
    okafor = player(3, "Okafor", None, "hand left", "third_shot_drop weakness")
    assert _report(okafor).call == "Return at Okafor."


@pytest.mark.parametrize(
    ("days", "said"),
    [
        (0, "today"),
        (1, "1 day old"),
        (13, "13 days old"),
        (30, "4 weeks old"),
        (90, "3 months old"),
    ],
)
def test_age_as_people_say_it(days: int, said: str) -> None:
    assert age(days) == said


def test_our_own_player_is_nobodys_target() -> None:
    mira = player(1, "Mira", Side.RIGHT, "third_shot_drop strength")
    advice = _report(player(3, "Okafor", None), about=1, ours=(mira,))
    assert advice.call == "Know of Mira: strong third shot."


def test_one_for_and_one_against_are_shown_but_not_acted_on() -> None:
    hale = player(5, "Hale", None, "foot_speed strength by mira", "foot_speed weakness by tom")
    advice = _report(hale)
    assert "Move Hale" not in advice.call
    assert "1 says slow feet" in advice.lines[0].text


def test_every_trait_has_a_place_in_a_report() -> None:
    for trait, row in TRAITS.items():
        if row.kind is TraitKind.FACT:
            assert trait in FACTS
        if row.kind in (TraitKind.SKILL, TraitKind.SKILL_AND_HABIT):
            assert trait in SKILLS
        if row.kind in (TraitKind.HABIT, TraitKind.SKILL_AND_HABIT):
            assert trait in HABITS


_CLAIMS = [f"{trait} {value}" for trait, row in TRAITS.items() for value in row.values]


@given(claims=st.lists(st.sampled_from(_CLAIMS), max_size=12))
def test_any_notes_fit_a_phone(claims: list[str]) -> None:
    advice = _report(player(3, "Nguyen-Brandt", None, *claims), player(4, "van der Meer", None))
    assert len(advice.lines) <= 5
    assert all(len(line.text) <= 90 for line in advice.lines)


@pytest.mark.parametrize("hand", ["hand left", "hand right", None])
def test_a_weak_counter_is_attacked_where_the_speed_up_page_says(hand: str | None) -> None:
    """A wing is no place to aim at: both answers name the hip that meets it."""
    notes = [*([hand] if hand else []), "counter_backhand weakness"]
    one = player(3, "Okafor", Side.RIGHT, *notes)
    report, attack = (
        advise(match(topic, one, player(4, "Lindqvist", Side.LEFT)))
        for topic in (Topic.OPPONENT_REPORT, Topic.AIM_ATTACK)
    )
    assert "hip" in report.call
    assert report.call == attack.call
