"""A line call that the sides differ about gets its rule, counts no rally and is nobody's note.

What the rule says is checked in test_rules_questions; the opponents' end is their call (rulebook:
2022, 6.D.1).
"""

from __future__ import annotations

import pytest
from talk import Talk

CALLED = [
    "they called toms ball out and it was in by a foot",
    "they called our ball out and it was clearly in",
    "mira's drive was on the line but they called it out",
    "they called mira's drop out and it was on the line",
    "they called toms serve long and it was in",
    "they called tom's ball wide it was a foot in",
    "hale called tom's lob out, it was in by a mile",
    "terrible call, toms ball was in",
    "they cheated us",
]


@pytest.mark.parametrize("said", CALLED)
def test_a_disputed_call_is_answered_and_counts_nothing(demo: Talk, said: str) -> None:
    demo.say("next: ruiz and hale to 15")
    demo.say("we serve")
    before = demo.stored()
    assert "you can't overrule it" in demo.say(said)
    assert demo.stored() == before


@pytest.mark.parametrize("said", ["they called tom's lob out, they were wrong", "bad call by hale"])
def test_without_a_rule_of_its_own_it_still_counts_and_notes_nothing(demo: Talk, said: str) -> None:
    demo.say("next: ruiz and hale to 15")
    demo.say("we serve")
    before = demo.stored()
    demo.say(said)
    assert demo.stored() == before


@pytest.mark.parametrize(
    "said",
    ["lost it they called toms ball out and it was in", "they called toms ball out, their point"],
)
def test_whose_rally_it_became_still_counts_it(demo: Talk, said: str) -> None:
    demo.say("next: ruiz and hale to 15")
    demo.say("we serve")
    demo.say(said)
    assert demo.say("score").startswith("0-0-1. They serve")


def test_what_somebody_does_at_all_times_stays_a_note(demo: Talk) -> None:
    demo.say("next: ruiz and hale to 15")
    assert demo.say("hale makes bad calls").startswith("Noted")
