"""Who stands where, told behind a score that says who serves, serves nothing."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("said", "score"),
    [
        ("we're up 5-3 oskar serving, imani is at net", "5-3-"),
        ("were up 6-4 malin serving, okoye is at the net", "6-4-"),
        ("we lead 8-6 jens serving, tobias stays back", "8-6-"),
    ],
)
def test_whoever_is_named_behind_the_serve_does_not_serve(
    fresh: Talk, said: str, score: str
) -> None:
    _match(fresh)
    reply = fresh.say(said)
    assert reply.startswith(score)
    assert "They serve" not in reply


@pytest.mark.parametrize(
    "said",
    [
        "4-7, imani serving, tobias is at the net",
        "4-7 tobias serving, okoye is at the net",
        "7-4 serving, they are",
    ],
)
def test_what_tells_of_their_serve_still_does(fresh: Talk, said: str) -> None:
    _match(fresh)
    reply = fresh.say(said)
    assert "They serve" in reply or "Kern serves" in reply or "Okoye serves" in reply


def _match(talk: Talk) -> None:
    talk.say("we are teodora and malin")
    talk.say("next tobias kern and imani okoye")
    talk.say("add both")
