"""A coach of two pairs: what is told under the name of one is of that pair's match."""

from __future__ import annotations

import pytest
from talk import Talk

COACH = (
    "im coaching danka and petra",
    "next: Ingrid Vass and Corinne Tull",
    "yes",
    "im coaching lotte and brody",
    "next: Anton Rell and Bibi Okono",
    "yes",
)


@pytest.fixture
def coach(fresh: Talk) -> Talk:
    for said in COACH:
        fresh.say(said)
    return fresh


@pytest.mark.parametrize(
    "told",
    [
        "womens now. danka petra score 8-9-1",
        "danka/petra lost 9-11",
        "we lost 7-11, petra was nervous",
    ],
)
def test_a_score_of_the_other_pair_goes_into_its_match(coach: Talk, told: str) -> None:
    coach.say("we serve")
    assert "For Danka/Petra." in coach.say(told)
    coach.say("other pair")
    assert coach.say("score?").startswith("0-0-2. We serve")


def test_a_draw_that_nobody_was_said_to_play_is_asked_about(coach: Talk) -> None:
    assert coach.say("we lost womens 7-11") == "Who plays womens? Not booked yet."
    assert "For Danka/Petra." in coach.tap("Danka/Petra")
    assert "Now for Lotte and Brody." in coach.say("mixed pair now")
    assert "For Danka/Petra." in coach.say("womens: 5-6-2")


def test_the_other_of_two_pairs_is_certain(coach: Talk) -> None:
    for told, pair in (
        ("now the other pair", "Danka and Petra"),
        ("lotte and brody", "Lotte and Brody"),
        ("lotte and brody", "Lotte and Brody"),
        ("switch pairs", "Danka and Petra"),
        ("other pair", "Lotte and Brody"),
    ):
        assert f"Now for {pair}." in coach.say(told)


def test_what_names_nobody_else_stays_with_the_pair_that_speaks(coach: Talk) -> None:
    for told in ("5-3-1", "brody serves, 5-3-1", "i mixed up the score, 3-5-1"):
        assert "For Lotte/Brody." in coach.say(told)
