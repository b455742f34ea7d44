"""Whoever wants longer between rallies themselves is told of their time-out. Our own wordings."""

from __future__ import annotations

from knowledge.rulebook.entry import rule_named
from knowledge.rulebook.our_pause import OURS, TEN_SECONDS, as_our_pause

WE = (
    "can i take longer time between the rallies",
    "may we take more time between points",
    "i need a bit more time between the points, is that ok",
)
THEY = (
    "they are stalling between points",
    "can they take more time between points, i want to play on",
    "how long may one take between points",
)


def test_who_wants_longer_has_a_time_out_for_it() -> None:
    rule = rule_named(TEN_SECONDS)
    assert rule is not None
    found = {words: as_our_pause(rule, words).ruling.now for words in (*WE, *THEY)}
    assert found == dict.fromkeys(WE, OURS) | dict.fromkeys(THEY, rule.ruling.now)
