"""When and whom we play, the answer to a stack, and what puts back: asked in other words."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "asked",
    [
        "how long until we play",
        "how long till our match",
        "how much time until we start",
        "how many minutes until our match",
        "when is it",
        "whens it",
        "what time do we play tomorrow",
        "when do we play today",
        "who is next and when",
        "who do we play tomorrow",
        "when and where do we play",
        "where do we play",
        "where is our match",
        "when next",
        "ok when are we next",
        "when is next",
        "next when",
        "what court next",
    ],
)
def test_the_day_is_told_as_announced(demo: Talk, asked: str) -> None:
    demo.say("next: ruiz and hale to 15 at 15:40 court 3")
    assert "Ana Ruiz/Hale, 15:40, court 3." in demo.say(asked)


@pytest.mark.parametrize("asked_before", ["lob who", "speed up who", "drive who"])
def test_when_next_is_no_more_of_the_call_before(demo: Talk, asked_before: str) -> None:
    demo.say("next: ruiz and hale to 15 at 15:40 court 3")
    demo.say(asked_before)
    assert "Ana Ruiz/Hale, 15:40, court 3." in demo.say("when next")
    assert "15:40" not in demo.say("when next to lob")


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("how long is a timeout", "a minute each"),
        ("how long do we have between games", "between games"),
    ],
)
def test_how_long_a_break_is_stays_a_rule(demo: Talk, asked: str, told: str) -> None:
    demo.say("next: ruiz and hale to 15 at 15:40 court 3")
    assert told in demo.say(asked)


@pytest.mark.parametrize("asked", ["where do i start", "where do i play", "where do we stand"])
def test_where_somebody_stands_is_no_question_of_the_day(demo: Talk, asked: str) -> None:
    demo.say("next: ruiz and hale to 15 at 15:40 court 3")
    assert "15:40" not in demo.say(asked)


@pytest.mark.parametrize(
    "asked",
    ["how do we attack the stack", "how do we beat their stack", "what do we do about the stack"],
)
def test_the_answer_to_their_stack_is_no_stack_of_ours(demo: Talk, asked: str) -> None:
    assert demo.say(asked).startswith("Return at the one who crosses.")


@pytest.mark.parametrize(
    "said",
    [
        "did i lose anything put it back",
        "did i just delete that, bring it back",
        "oops i did not want that, put it back",
        "put it back please",
        "no wait redo that",
    ],
)
def test_what_was_taken_back_is_put_back_however_it_is_asked(demo: Talk, said: str) -> None:
    demo.say("note hale: lefty")
    notes = demo.notes()
    demo.say("undo")
    assert demo.say(said).startswith("Put back")
    assert demo.notes() == notes


def test_after_a_plan_hide_asks_what_if_they_do(demo: Talk) -> None:
    demo.say("next: ruiz and hale to 15")
    notes = demo.notes()
    demo.say("game plan")
    hidden = demo.say("hide hale")
    assert hidden == demo.say("what if they hide hale")
    assert demo.notes() == notes
