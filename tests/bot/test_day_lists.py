"""Many ways of typing a pool, a coach's pair, a review and a video: each arrives, others do not."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from day_lists import OTHERS, heard_as, lines, talk_for

from knowledge.phone_screen import MOST_LIST_LINES, wrapped

_SHOWS = {
    "pool": ("1 Okafor/Lindqvist", "Hale"),
    "next": ("Next: Okafor/Lindqvist",),
    "standing": ("to play.", "Ties"),
    "result": ("Next: ", "closed"),
    "coach": ("Jo", "Priya"),
    "video": ("Rallies: ",),
}


@pytest.mark.parametrize(("group", "kind", "said"), [*lines()])
def test_it_is_read_as_what_it_is(group: str, kind: str, said: str) -> None:
    found, reply = heard_as(talk_for(group), said)
    assert found == kind
    assert all(words in reply for words in _SHOWS.get(group, ()))
    assert len(reply.splitlines()[0]) < 60
    assert wrapped(reply.splitlines()) <= MOST_LIST_LINES


@pytest.mark.parametrize("case", OTHERS, ids=lambda case: case["said"][:40])
def test_others_are_none_of_these(case: Mapping[str, str]) -> None:
    assert heard_as(talk_for("coach"), case["said"])[0] != case["not"]


def test_a_question_does_not_tell_a_pool() -> None:
    found, _ = heard_as(talk_for("pool"), "pool: okafor/lindqvist, ruiz/hale?")
    assert found != "PoolSaid"
