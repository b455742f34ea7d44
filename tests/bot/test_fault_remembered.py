"""A fault of theirs remembered behind a rally gets its rule; "wait" else still puts right.

Nobody calls another's touch of the net without a referee (common practice, no source).
"""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "said",
    [
        "wait he touched the net on that erne",
        "hang on okafor touched the net there",
        "hold on i think she stepped on the kitchen line",
        "no wait his paddle touched the net",
        "wait lindqvist foot faulted on that serve",
        "wait they hit it on the second bounce",
    ],
)
def test_it_is_asked_of_the_rules_and_counts_nothing(demo: Talk, said: str) -> None:
    demo.say("6-4-2 us")
    demo.say("other court ball rolled in behind me mid rally, can we get it back")
    demo.say("lost it, okafor erne")
    before = demo.stored()
    reply = demo.say(said)
    assert demo.heard is not None
    assert reply.startswith("Fault")
    assert demo.stored() == before


def test_theirs_is_not_called_on_oneself_and_may_turn_the_rally(demo: Talk) -> None:
    demo.say("6-4-2 us")
    demo.say("lost it, okafor erne")
    reply = demo.say("wait he touched the net on that erne")
    assert "Call it on yourself" not in reply
    assert '"no, our rally"' in reply
    assert demo.say("no, our rally").startswith("7-4-2")


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("wait tom netted it", "4-6-1"),
        ("wait we won it", "7-4-2"),
        ("no wait their point", "4-6-1"),
    ],
)
def test_what_puts_a_rally_right_still_does(demo: Talk, said: str, stands: str) -> None:
    demo.say("6-4-2 us")
    demo.say("lost it")
    assert stands in demo.say(said)


def test_our_own_fault_is_left_to_the_other_readers(demo: Talk) -> None:
    demo.say("6-4-2 us")
    demo.say("we won that one")
    assert '"no, our rally"' not in demo.say("wait tom touched the net on that one")
