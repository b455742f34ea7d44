"""A game told and put right in the same breath: one game, or none, and never two."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("twelve ten we won that no eleven twelve they won sorry", "12-11-1. They serve."),
        ("lost 12-10 no sorry we won 12-10", "Game 1 ours, 12-10."),
        ("won 11-7 wait no 10-7-1 they serve", "10-7-1. They serve."),
        ("won the first 11-9 no wait lost the second 9-11", "Game 2 theirs, 9-11."),
    ],
)
def test_what_is_told_last_stands(demo: Talk, said: str, then: str) -> None:
    demo.say("next: ruiz and hale")
    demo.say("11-10-2 us")
    assert demo.say(said).startswith(then)
