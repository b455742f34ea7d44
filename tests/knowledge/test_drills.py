"""Drills and the leaks they answer: one each, with reason, length and cue; cautions where due."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.rally_ends import end_tag
from knowledge.sources import SourceKind
from knowledge.tactics.changes import changes
from knowledge.tactics.drills import drills
from knowledge.tactics.leaks import OTHER, by_leak, leak_of
from knowledge.vocabulary import Ending, Stroke

LEAKS = {one.id for one in changes()}


def test_every_leak_has_one_drill_with_all_that_a_drill_needs() -> None:
    assert set(drills()) == LEAKS
    for one in drills().values():
        assert one.drill
        assert one.cue
        assert one.how
        assert one.why.text
        assert one.why.source.kind in SourceKind
        assert 5 <= one.minutes <= 20


def test_no_two_leaks_or_drills_are_called_alike() -> None:
    assert len({one.leak for one in drills().values()}) == len(drills())
    assert len({one.drill for one in drills().values()}) == len(drills())


@pytest.mark.parametrize(
    "leak", ["winners_hands", "winners_out_balls", "misses_speed_ups", "pops_resets", "pops_thirds"]
)
def test_balls_hit_at_the_body_ask_for_eye_protection(leak: str) -> None:
    caution = drills()[leak].caution
    assert caution is not None
    assert "eye protection" in caution


def test_running_back_is_warned_of() -> None:
    caution = drills()["back_early"].caution
    assert caution is not None
    assert "Never run backwards" in caution


@pytest.mark.parametrize(
    ("words", "ending", "stroke", "leak"),
    [
        ("lost it, my dink popped up", Ending.UNFORCED_ERROR, Stroke.DINK, "pops_dinks"),
        ("my third floated, they crushed it", Ending.WINNER, Stroke.THIRD, "pops_thirds"),
        ("they drove, i popped it up", Ending.FORCED_ERROR, None, "pops_resets"),
        ("okafor popped up, tom missed the put away", Ending.UNFORCED_ERROR, Stroke.OVERHEAD,
         "misses_speed_ups"),
        ("tom missed the return", Ending.UNFORCED_ERROR, Stroke.RETURN, "misses_returns"),
        ("my serve out", Ending.UNFORCED_ERROR, Stroke.SERVE, "misses_serves"),
        ("tom's third in the net", Ending.UNFORCED_ERROR, Stroke.THIRD, "misses_thirds"),
        ("lindqvist sped up, winner", Ending.WINNER, Stroke.SPEED_UP, "winners_hands"),
        ("theirs", None, None, OTHER),
        ("unforced", Ending.UNFORCED_ERROR, None, OTHER),
    ],
)  # fmt: skip
def test_a_lost_rally_is_the_leak_that_its_words_and_its_end_say(
    words: str, ending: Ending | None, stroke: Stroke | None, leak: str
) -> None:
    assert leak_of(ending=ending, stroke=stroke, words=words) == leak


@given(st.sampled_from(Ending), st.none() | st.sampled_from(Stroke))
def test_an_ending_goes_to_a_leak_that_the_change_names_for_it(
    ending: Ending, stroke: Stroke | None
) -> None:
    tag = end_tag(won_by_us=False, ending=ending, stroke=stroke)
    explains = {one.id for one in changes() if tag in one.ends}
    assert leak_of(ending=ending, stroke=stroke) in (explains or {OTHER})


@given(st.lists(st.sampled_from([*sorted(LEAKS), OTHER]), max_size=60))
def test_the_groups_split_the_lost_rallies_without_a_rest(lost: list[str]) -> None:
    numbered = list(enumerate(lost))
    groups = by_leak(numbered, lambda one: one[1])
    assert Counter({one.leak: len(one.rallies) for one in groups}) == Counter(lost)
    assert sorted(one for group in groups for one in group.rallies) == numbered
    sizes = [len(one.rallies) for one in groups if one.leak != OTHER]
    assert sizes == sorted(sizes, reverse=True)
    assert OTHER not in [one.leak for one in groups[:-1]]
