"""What we would do about a body is no observation: nothing of such a message is kept."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.meant_to_do import is_our_plan
from bot.chat.wording import wording


@pytest.mark.parametrize(
    "said",
    [
        "okafor's wife is pregnant so lets lob him",
        "lindqvist is pregnant so lets lob her",
        "okafor has a sore shoulder so lets make him hit overheads",
        "okafor has a torn acl, let's drop short on him",
        "okafor is on medication. i'd lob him all day",
        "okafor has asthma so overheads",
        "okafor is a diabetic so make him run",
        "okafor had surgery on his shoulder so im going to lob him",
    ],
)
def test_a_plan_beside_a_diagnosis_is_handed_back_whole(demo: Talk, said: str) -> None:
    before = demo.stored()
    reply = demo.say(said)
    assert wording("note.body") in reply
    assert said in reply
    assert demo.stored() == before


@pytest.mark.parametrize(
    "said",
    [
        "so hes slow to his left",
        "so slow to the left",
        "and drives everything at us",
        "so he lobs a lot",
        "because her overhead is weak",
        "and makes us move",
        "so cant get to drops",
        "they play up the middle",
    ],
)
def test_what_they_do_is_no_plan(said: str) -> None:
    assert not is_our_plan(said)


@pytest.mark.parametrize(
    "said",
    [
        "okafor has asthma so he is slow coming forward",
        "okafor has a sore shoulder so his overhead is weak",
    ],
)
def test_what_was_seen_beside_a_diagnosis_is_kept(demo: Talk, said: str) -> None:
    reply = demo.say(said)
    assert reply.startswith("Noted. Okafor: ")
    assert wording("note.only_play") in reply
