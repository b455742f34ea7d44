"""Partners who tell one ball differently: it is in (2022 edition, 6.D.9)."""

from __future__ import annotations

import pytest

from knowledge.rulebook.partners_differ import partners_differ

OURS = ("Mira", "Tom")


@pytest.mark.parametrize(
    "words",
    [
        "can i call the ball out if tom saw it in but i saw it out",
        "mira called it out and tom says it was good",
        "i saw it long, Tom thinks it was in, what now",
        "my partner said out i said in",
        "if i clearly saw it out but tom swears it was on the line",
    ],
)
def test_partners_who_differ_are_told(words: str) -> None:
    assert partners_differ(words, OURS)


@pytest.mark.parametrize(
    "words",
    [
        "okafor says in i say out",
        "they called it out but i saw it in",
        "i saw it out and tom saw it out",
        "i said it was in then i said out",
        "tom says stay in the kitchen",
        "can i call the ball out",
    ],
)
def test_others_and_partners_of_one_mind_do_not_differ(words: str) -> None:
    assert not partners_differ(words, OURS)
