"""Several pairs of a coach in one message, each with the draw that it plays."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("told", "pairs"),
    [
        (
            "im coaching two pairs today, womens is Danka and Petra, mixed is Lotte and Brody",
            "Danka/Petra (womens), Lotte/Brody (mixed).",
        ),
        ("i coach danka and petra, and lotte and brody later", "Danka/Petra, Lotte/Brody."),
        (
            "im coaching danka n petra (womens); lotte and brody in mixed",
            "Danka/Petra (womens), Lotte/Brody (mixed).",
        ),
    ],
)
def test_they_are_own_pairs_and_nobodys_opponents(fresh: Talk, told: str, pairs: str) -> None:
    assert f"Your pairs: {pairs}" in fresh.say(told)
    assert "Now for Lotte and Brody." in fresh.say("other pair")
