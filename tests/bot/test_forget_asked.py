"""A wish to have a player forgotten is asked once more, however it is put, and never kept."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "said",
    [
        "delete everything you know about okafor",
        "remove okafor from the book",
        "can you wipe all data on okafor please?",
    ],
)
def test_a_player_is_forgotten_in_other_words(demo: Talk, said: str) -> None:
    before = demo.stored()
    assert demo.say(said).startswith("Forget Chidi Okafor and ")
    assert demo.stored() == before


@pytest.mark.parametrize(
    "said", ["delete okafor's backhand", "wipe out okafor at the net", "remove tom from the book"]
)
def test_what_is_no_player_to_forget_stays(demo: Talk, said: str) -> None:
    assert "for good?" not in demo.say(said)
