"""What costs us is what the log says, as the review counts it, with the change against it.

The change against each leak is knowledge/tactics/changes.toml's (common practice, no source).
"""

from __future__ import annotations

import pytest
from talk import Talk

ASKED = [
    "what is costing us",
    "what's costing us most",
    "what hurts us",
    "what is hurting us",
    "where are we losing points",
    "whats killing us",
    "what are we missing",
    "so what do we lose on most",
]


def thirds_lost(talk: Talk) -> None:
    talk.say("next: ruiz and hale to 15")
    talk.say("we serve")
    for line in ("into the net", "into the net", "long"):
        talk.say(f"lost it tom drove the third {line}")


@pytest.mark.parametrize("asked", ASKED)
def test_it_is_the_stroke_that_the_review_counts(demo: Talk, asked: str) -> None:
    thirds_lost(demo)
    said = demo.say(asked)
    assert said.startswith("Cost us: thirds, 3 of our 3 errors.\nSmall counts: luck moves them.")
    assert "Drop thirds to the middle" in said
    assert "Cost us: thirds, 3 of our 3 errors." in demo.say("review")


def test_why_goes_on_from_that_change(demo: Talk) -> None:
    thirds_lost(demo)
    demo.say("what is costing us")
    assert demo.say("why").startswith("Drop thirds to the middle")


@pytest.mark.parametrize("asked", ASKED)
def test_without_a_log_it_is_what_to_change_and_never_a_sore_body(demo: Talk, asked: str) -> None:
    demo.say("next: ruiz and hale to 15")
    said = demo.say(asked)
    assert "Works if" in said
    assert "medical" not in said


@pytest.mark.parametrize("said", ["my back hurts", "what hurts", "what hurts me"])
def test_a_body_that_hurts_stays_one(demo: Talk, said: str) -> None:
    thirds_lost(demo)
    assert "medical" in demo.say(said)
