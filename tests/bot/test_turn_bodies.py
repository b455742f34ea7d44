"""Bodies that hurt, on every path: cautioned, deferred to medical staff, and never kept."""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.cautions import DEFERS

BUTTON = "weather, body"

TOLD = [
    "my elbow hurts on drives",
    "my knee hurts",
    "tom has a sore shoulder",
    "my wrist is killing me",
    "im diabetic",
    "tom has asthma",
]


@pytest.mark.parametrize("said", TOLD)
def test_a_complaint_told_as_a_note_is_cautioned_and_not_kept(demo: Talk, said: str) -> None:
    before = demo.notes()
    text = demo.say(said)
    assert DEFERS in text
    assert said in text
    assert demo.notes() == before
    assert BUTTON in [one.label for one in demo.buttons]


def test_the_button_answers_the_complaint_itself(demo: Talk) -> None:
    first = demo.say("my elbow hurts on drives").splitlines()[0]
    assert demo.tap(BUTTON).splitlines()[0] == first
    assert first.startswith("Leave out what hurts")


@pytest.mark.parametrize("said", ["note: tom pulled his calf", "mira's back is acting up"])
def test_a_complaint_kept_as_words_is_cautioned_too(demo: Talk, said: str) -> None:
    assert DEFERS in demo.say(said)
    assert BUTTON in [one.label for one in demo.buttons]


def test_a_complaint_of_nobody_in_particular_is_cautioned(demo: Talk) -> None:
    assert DEFERS in demo.say("note: back is acting up again")


def test_opponents_have_their_own_medical_staff(demo: Talk) -> None:
    assert demo.say("okafor has a bad knee").splitlines()[0] == DEFERS


@pytest.mark.parametrize("said", ["/note tom fainted", "/n chest pain", "note: tom fainted"])
def test_an_emergency_called_a_note_is_answered_as_one(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith("Stop")


@pytest.mark.parametrize(
    "said",
    [
        "my elbow is sore so countering hurts, block only?",
        "bad knees, i cant get low. how do i get through the transition zone",
    ],
)
def test_a_question_about_something_else_keeps_its_caution(demo: Talk, said: str) -> None:
    assert "medical staff" in demo.say(said)
    assert [one.label for one in demo.buttons].count(BUTTON) == 1


@pytest.mark.parametrize(
    "said",
    [
        "they attack my right hip, reset or counter?",
        "who takes the middle",
        "both of them way back, drop shot or keep pounding",
    ],
)
def test_a_body_that_is_only_a_target_is_not_cautioned(demo: Talk, said: str) -> None:
    assert "medical" not in demo.say(said)


@pytest.mark.parametrize(
    ("then", "told"),
    [
        ("what about against us", "18 mph against"),
        ("and the other end?", "18 mph against"),
        ("what about across, with the wind from the left", "18 mph across"),
    ],
)
def test_a_wind_keeps_its_speed_in_a_follow_up(demo: Talk, then: str, told: str) -> None:
    demo.say("wind is 18 mph at our backs, what changes")
    assert told in demo.say(then)


def test_a_shot_after_a_wind_is_answered_for_that_wind(demo: Talk) -> None:
    demo.say("wind is 18 mph at our backs, what changes")
    assert demo.say("and my lobs?").startswith("Leave the lob: it flies 12 ft longer")
    demo.say("what about against us")
    assert demo.say("and my lobs?").startswith("Leave the lob: it falls 22 ft short")
