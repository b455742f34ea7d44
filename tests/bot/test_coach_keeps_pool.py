"""Telling whom one coaches leaves what was on before anybody spoke: pool, match and score."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "told", ["im coaching rosalind keane and dev marchetti", "coaching rosalind and dev"]
)
def test_the_pool_told_first_goes_on(fresh: Talk, told: str) -> None:
    for said in ("pool tran and oduya then mcnab and farkas", "they serve", "four two us"):
        fresh.say(said)
    before = fresh.say("score").splitlines()[0]
    assert "vs Tran/Oduya" in fresh.say(told)
    assert fresh.say("score").splitlines()[0] == before
    assert "1 Tran/Oduya: on now" in fresh.say("pool")


def test_another_pair_starts_from_its_own(fresh: Talk) -> None:
    fresh.say("im coaching rosalind keane and dev marchetti")
    fresh.say("pool tran and oduya then mcnab and farkas")
    fresh.say("im coaching greta lund and ivo marsh")
    assert "Tran/Oduya" not in fresh.say("pool")
