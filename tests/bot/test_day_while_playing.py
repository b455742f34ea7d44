"""The day asked for while a match is on has that match; what to keep for tomorrow is a review."""

from __future__ import annotations

from talk import Talk


def test_the_match_that_is_on_belongs_to_the_day(fresh: Talk) -> None:
    for said in ("we are mira and tom", "add gell and rudd", "next: gell and rudd", "we serve"):
        fresh.say(said)
    told = fresh.say("who did we play today").splitlines()
    assert told[:2] == ["Today: 0 won, 0 lost.", "On now, vs Gell/Rudd:"]
    assert told[2].startswith("0-0-2. We serve")
    fresh.say("won 11-7 11-9")
    for asked in ("what do we keep for tomorrow", "review mira and tom"):
        assert fresh.say(asked).startswith("Last match: won 11-7 11-9.")
