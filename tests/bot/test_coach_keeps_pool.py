"""Telling whom one coaches leaves what was on before anybody spoke: pool, match and score."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "told", ["im coaching rosalind keane and dev marchetti", "coaching rosalind and dev"]
)
def test_the_pool_told_first_goes_on(fresh_anywhere: Talk, told: str) -> None:
    for said in ("pool tran and oduya then mcnab and farkas", "they serve", "four two us"):
        fresh_anywhere.say(said)
    before = fresh_anywhere.say("score").splitlines()[0]
    assert "vs Tran/Oduya" in fresh_anywhere.say(told)
    assert fresh_anywhere.say("score").splitlines()[0] == before
    assert "1 Tran/Oduya: on now" in fresh_anywhere.say("pool")


def test_another_pair_starts_from_its_own(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("im coaching rosalind keane and dev marchetti")
    fresh_anywhere.say("pool tran and oduya then mcnab and farkas")
    fresh_anywhere.say("im coaching greta lund and ivo marsh")
    assert "Tran/Oduya" not in fresh_anywhere.say("pool")
