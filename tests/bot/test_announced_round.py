"""A match told by its round is announced with both of its names, even while another one is on."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "said",
    [
        "last match final its the banger pair lou tanner and kit ferris four thirty centre court",
        "final is lou tanner and kit ferris four thirty centre court",
        "ok our semi is now against lou tanner and kit ferris, court 3",
    ],
)
def test_both_names_of_a_round_are_met(fresh: Talk, said: str) -> None:
    assert "lou tanner and kit ferris" in fresh.say(said)


@pytest.mark.parametrize("said", ["final is at noon", "final was lost 11-4 4-11 9-11"])
def test_a_round_without_two_names_is_read_as_before(fresh: Talk, said: str) -> None:
    assert "in your book yet" not in fresh.say(said)
