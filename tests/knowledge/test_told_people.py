"""Who speaks to whom, and whose call it is, decides the rule.

Only a partner advises in play: 2025 edition, section 13; talk across the net: 2020-24, 11.J; the
other end's call: 2022 edition, 6.D.1.
"""

from __future__ import annotations

import pytest

from knowledge.rulebook.finding import find_rule
from knowledge.rulebook.their_call import called_in_by_them

OF_PEOPLE = {
    "coaching": [
        "is it allowed that i talk to them beetween points",
        "im the coach, may i talk to them between rallies",
        "am i allowed to give my girls a hint between points",
        "may i tell my team where to serve while they play",
    ],
    "coach in breaks": ["can i talk to them between games", "can i coach them in the timeout"],
    "talk to partner": ["can i talk to my partner between points"],
    "distraction": [
        "doug keeps saying stuff to marguerite across the net is that legal",
        "he keeps talking to my partner over the net is that allowed",
        "she laughs at us over the net after every point. can we do something",
    ],
    "follow through": ["can i follow through across the net"],
    "bad call": [
        "can they get it reversed||they called it out and it was in",
        "can we make her change her call",
        "can the call be overturned",
        "hale called it out and it was in",
        "they called it out and it was in, do we replay",
    ],
    "changed call": [
        "can i change my line call",
        "they changed their call",
        "they called it out and then said it was in",
    ],
}


@pytest.mark.parametrize("name", OF_PEOPLE)
def test_who_speaks_to_whom_decides(name: str) -> None:
    for said in OF_PEOPLE[name]:
        words, _, before = said.partition("||")
        found = find_rule(words, before=before).rule
        assert found is not None, said
        assert found.name == name, said


def test_whose_point_it_is_tells_nothing_of_what_happened() -> None:
    assert find_rule("is that our point").rule is None
    before = "okafor stepped in the kitchen on his volley, fault?"
    assert find_rule("is that our point", before=before) == find_rule(before)


def test_they_call_in_what_was_out_and_nobody_of_us_does() -> None:
    ours = ["Mira", "Tom"]
    for said in (
        "ball was out but okafor called it in",
        "my drive went long but they said its good",
    ):
        assert called_in_by_them(said, ours)
    for said in (
        "it was out but tom called it in",
        "it was out but he called it in",
        "okafor called it out but it was in",
        "the ball was out but we called it in",
    ):
        assert not called_in_by_them(said, ours)
