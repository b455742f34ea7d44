"""Whose middle balls an agreement makes them, slow and fast, however it is worded."""

from __future__ import annotations

import pytest
from noted_players import player

from knowledge.situation import Agreement
from knowledge.tactics.middle_answer import Owner, agreed_owner
from knowledge.tactics.middle_effects import Seat
from knowledge.vocabulary import AgreementKey, BallKind, Side

DEV, ROSALIND = Owner.LEFT, Owner.RIGHT
SEATS = (
    Seat(who=player(1, "Dev", Side.LEFT), side=Side.LEFT, named=True),
    Seat(who=player(2, "Rosalind", Side.RIGHT), side=Side.RIGHT, named=True),
)


@pytest.mark.parametrize(
    ("words", "slow", "fast"),
    [
        ("dev takes the middle", DEV, DEV),
        ("middle balls are devs", DEV, DEV),
        ("middle balls are dev's", DEV, DEV),
        ("dev takes the fast middle balls", None, DEV),
        ("rosalind has slow middle balls", ROSALIND, None),
        ("dev takes the middle unless its slow then whoever is across from it", Owner.CROSS, DEV),
        ("dev takes the middle but rosalind the soft ones", ROSALIND, DEV),
        ("slow middle balls whoever is cross fast ones dev", Owner.CROSS, DEV),
        ("slow cross and fast dev", Owner.CROSS, DEV),
        ("fast and slow in the middle is devs", DEV, DEV),
        ("middle is for whoever shouts", None, None),
        ("i take slow middle dev takes fast", None, None),
    ],
)
def test_whose_it_is(words: str, slow: Owner | None, fast: Owner | None) -> None:
    agreement = Agreement(key=AgreementKey.MIDDLE, value=words, words=f"agreed {words}")
    assert agreed_owner(agreement, SEATS, BallKind.DINK) == slow
    assert agreed_owner(agreement, SEATS, BallKind.DRIVE) == fast
