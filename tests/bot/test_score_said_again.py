"""Numbers of a call put right leave who serves as it was told."""

from __future__ import annotations

from talk import Talk


def test_who_serves_stays_when_numbers_are_put_right(fresh: Talk) -> None:
    fresh.say("we are ana and bo")
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    for said, stands in (
        ("they serve 0-3-2", "0-3-2. They serve"),
        ("no wait its 3-0-1", "3-0-1. They serve"),
        ("5-8-1 they serve", "5-8-1. They serve"),
        ("6-8-2 us no wait 6-8-1", "6-8-1. We serve"),
        ("they serve 8-7-1 no wait 8-6-1", "8-6-1. They serve"),
        ("6-8-1 us no wait they serve 8-6-1", "8-6-1. They serve"),
        ("6-8-2", "6-8-2. We serve"),  # no slip is told: the same points as we call them
    ):
        assert fresh.say(said).startswith(stands), said
