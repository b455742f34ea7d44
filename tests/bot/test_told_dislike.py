"""What one of them minds of our play is noted of that one, and of nobody who does not care."""

from __future__ import annotations

import pytest
from talk import Talk

WEAK = ("lob_defense", "weakness", False)


@pytest.mark.parametrize(
    "said",
    [
        "he hates it when we lob him, she doesnt care",
        "he really cant stand it when you lob him, she doesnt mind at all",
        "tobias hates it when we lob him, imani doesnt care",
    ],
)
def test_only_whoever_minds_is_noted(fresh: Talk, said: str) -> None:
    _match(fresh)
    assert "Kern: lob defence weak" in fresh.say(said)
    assert WEAK in fresh.claims("Tobias Kern")
    assert not fresh.claims("Imani Okoye")


@pytest.mark.parametrize(
    "said",
    [
        "he hates it when we lob him, so where do i lob",
        "what if he hates it when we lob him?",
        "where do i lob him",
    ],
)
def test_what_asks_beside_it_is_answered(fresh: Talk, said: str) -> None:
    _match(fresh)
    assert not fresh.say(said).startswith("Noted, all kept as words")


def _match(talk: Talk) -> None:
    talk.say("we are teodora and malin")
    talk.say("next tobias kern and imani okoye")
    talk.say("add both")
