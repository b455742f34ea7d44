"""A match that starts, and who serves told behind it. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("start, we serve first", "0-0-2. Mira serves from the right."),
        ("ok lets start, they serve", "0-0-2. They serve from the right to Mira."),
        ("starting now we serve", "0-0-2. Mira serves from the right."),
        ("match starts, their serve", "0-0-2. They serve from the right to Mira."),
        ("we start, okafor serves", "0-0-2. Okafor serves from the right to Mira."),
    ],
)
def test_who_serves_behind_the_start_starts_the_match(demo: Talk, said: str, stands: str) -> None:
    assert demo.say(said) == stands


@pytest.mark.parametrize("said", ["start", "start now", "lets start the match"])
def test_a_bare_start_asks_who_serves(fresh: Talk, said: str) -> None:
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    assert fresh.say(said) == "Who serves first?"
    assert fresh.tap("they serve").startswith("0-0-2. They serve")


@pytest.mark.parametrize(
    "said",
    ["who should start, we serve first or they", "start with the serve or the end", "we start"],
)
def test_who_ought_to_start_is_a_question(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith("Take the worse end first")
    assert not demo.context.asks_serve_of


def test_a_start_changes_no_match_that_runs(demo: Talk) -> None:
    demo.say("we serve first")
    demo.say("our point")
    demo.say("start")
    assert demo.say("score").startswith("1-0-2")
