"""A yes-or-no question about somebody gets yes, no or "not noted" first, then the report.

The demo book: Lindqvist right-handed, plays left and poaches; Okafor's backhand dink is weak; Ana
Ruiz is a lefty; of Hale's feet two notes disagree. What is wanted first: common practice,
no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

HEADLINE = "Return at Lindqvist."


@pytest.mark.parametrize(
    ("said", "first"),
    [
        ("lindqvist is a lefty, right?", "No. Lindqvist: right-handed."),
        ("is lindqvist lefty", "No. Lindqvist: right-handed."),
        ("lindqvist is right handed, no?", "Yes. Lindqvist: right-handed."),
        ("isnt hale the lefty", "No. Hale: right-handed."),
        ("is hale left or right handed", "Hale: right-handed."),
        ("is ruiz the lefty or hale", "Ana Ruiz: lefty. Hale: right-handed."),
        ("does lindqvist play left", "Yes. Lindqvist: plays left."),
        ("what side does lindqvist play", "Lindqvist: plays left."),
        ("does lindqvist poach", "Yes. Lindqvist: poaches a lot."),
        ("is okafor's backhand weak", "Yes. Okafor: weak backhand dink."),
        ("is okafor tall", "Not noted: Okafor's height."),
        ("does okafor lob a lot", "Not noted: Okafor's lob."),
        ("is hale fast", "Hale: 1 says slow feet, 1 says quick feet."),
        ("is tom a lefty", "Yes. Tom: lefty."),
    ],
)
def test_the_answer_comes_first(demo: Talk, said: str, first: str) -> None:
    before = demo.notes()
    call, *rest = demo.say(said).splitlines()
    assert call == first
    assert len([line for line in rest if line.startswith("·")]) > 1
    assert len(set(rest)) == len(rest), "nothing is said twice"
    assert demo.notes() == before, "a question is no note"


@pytest.mark.parametrize(
    ("said", "first"),
    [
        (
            "is okafor better than lindqvist on the backhand?",
            "Okafor: weak backhand dink.",
        ),
        ("is okafor weaker than lindqvist at overheads", "Not noted of either: overhead."),
        ("is lindqvist better or worse than okafor in the fast game", "counter"),
        ("is okafor as good as lindqvist in hands battles", "counter"),
    ],
)
def test_two_compared_in_one_skill_are_told_in_that_skill(
    demo: Talk, said: str, first: str
) -> None:
    before = demo.notes()
    call = demo.say(said).splitlines()[0]
    assert first in call
    assert "foot" not in call
    assert demo.notes() == before


@pytest.mark.parametrize("said", ["is okafor better than lindqvist", "is okafor better at the net"])
def test_a_comparison_without_a_skill_is_a_report(demo: Talk, said: str) -> None:
    assert "Not noted" not in demo.say(said).splitlines()[0]


def test_which_of_several_alike_is_asked_first(demo: Talk) -> None:
    assert demo.say("is ruiz a lefty?").startswith("Which ruiz?")
    assert demo.tap("Ana Ruiz").startswith("Yes. Ana Ruiz: lefty.")
    assert demo.say("why").startswith("Yes. Ana Ruiz: lefty.")


@pytest.mark.parametrize(
    "said",
    ["tell me about lindqvist", "is lindqvist good", "what do you know of lindqvist the lefty",
     "scouting report lindqvist"],
)  # fmt: skip
def test_a_report_that_asks_after_no_trait_is_as_it_was(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith(HEADLINE)


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("hows okaf hands", "Not noted: Okafor's counter."),
        ("okaf hands?", "Not noted: Okafor's counter."),
        ("how is okafor's backhand", "Okafor: weak backhand dink."),
        ("whats okafors bh like", "Okafor: weak backhand dink."),
        ("how good is okafor's bh dink", "Okafor: weak backhand dink."),
        ("hows lindq bh", "Not noted: Lindqvist's backhand dink."),
        ("how is okafors serve", "Not noted: Okafor's serve."),
    ],
)
def test_what_is_named_of_somebody_is_told_first(demo: Talk, said: str, told: str) -> None:
    assert demo.say(said).splitlines()[0] == told


@pytest.mark.parametrize(
    ("said", "call"),
    [
        ("hows okafor", "Dink Okafor's backhand."),
        ("how do i handle okafors hands", "Dink Okafor's backhand."),
        ("dink okafor bh?", "Dink Okafor's backhand: straight, inside foot."),
        ("okaf lob?", "Lob cross off a dead dink, over Okafor's left shoulder."),
    ],
)
def test_of_him_altogether_or_of_our_shots_something_else_is_told(
    demo: Talk, said: str, call: str
) -> None:
    assert demo.say(said).splitlines()[0] == call
