"""What one is to tell one's partner, after an answer that both must know, is the call as a line.

What is wanted then: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

MIDDLE, STACK = "who has the middle", "should we stack"


@pytest.mark.parametrize("asked", [MIDDLE, STACK])
@pytest.mark.parametrize(
    "said",
    [
        "what should i tell her",
        "what should i tell her, shes the one who hesitates",
        "no i mean one sentence i can say to her",
        "what do i tell my partner",
        "give me one short line to tell him",
    ],
)
def test_the_call_is_the_line(demo: Talk, asked: str, said: str) -> None:
    call = demo.say(asked).splitlines()[0]
    assert demo.say(said) == f"Say: “{call}”"
    assert len(demo.say("more").splitlines()) > 2


@pytest.mark.parametrize(
    ("asked", "said", "first"),
    [
        ("who should we target", "what should i tell tom", "Tom: "),
        (MIDDLE, "what should i tell tom", "Tom: "),
        (MIDDLE, "how do i tell him nicely", "Ask off court"),
        ("where do i serve lindqvist", "what should i tell her", "Return deep"),
    ],
)
def test_a_cue_or_a_talk_between_partners_stays_one(
    demo: Talk, asked: str, said: str, first: str
) -> None:
    demo.say(asked)
    assert demo.say(said).startswith(first)
