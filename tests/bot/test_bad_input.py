"""Input that is no message to us: one kind, specific line each, and nothing stored moves."""

from __future__ import annotations

import random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from talk import Talk

from bot.post import IncomingKind

NOISE = "".join(random.Random(2).choice("qwxzjkvb ,.;#9~") for _ in range(4096))
"""As long as the Bot API lets a message be (4,096 characters after entities parsing)."""


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("", "I got an empty message"),
        ("  \n\t ", "I got an empty message"),
        ("\u200b\u200d\ufe0f", "I can't find words"),
        ("🤣🔥🏓", "I can't find words"),
        ("!?!?", "I can't find words"),
        ("99-3-7", "The server is 1 or 2"),
    ],
)
def test_each_gets_its_own_line(demo: Talk, text: str, begins: str) -> None:
    before = demo.stored()
    reply = demo.say(text)
    assert reply.startswith(begins) or "Not stored" in reply, reply
    assert len(reply.splitlines()) == 1
    assert demo.stored() == before


@pytest.mark.parametrize(
    ("kind", "word"),
    [
        (IncomingKind.PHOTO, "pictures"),
        (IncomingKind.STICKER, "Nice one"),
        (IncomingKind.VOICE, "listen"),
        (IncomingKind.OTHER, "text"),
        (IncomingKind.EDIT, "edit"),
    ],
)
def test_what_we_cannot_read_is_said_kindly(demo: Talk, kind: IncomingKind, word: str) -> None:
    before = demo.stored()
    reply = demo.send(kind, external_message_id=77)
    assert word in reply
    assert len(reply.splitlines()) == 1
    assert len(reply) <= 60
    assert demo.stored() == before


@pytest.mark.parametrize(
    "text", [NOISE, "x" * 4096, "(" * 4096, "é" * 4096, "🤣" * 2048, "9 " * 2048]
)
def test_noise_as_long_as_a_message_may_be(demo: Talk, text: str) -> None:
    players = demo.stored()["player"]
    reply = demo.say(text)
    assert reply.strip()
    assert len(reply) < 600, "noise is not read back"
    assert demo.stored()["player"] == players
    assert demo.stored()["observation"]


@pytest.mark.parametrize(
    "text",
    ["\x00", "okafor\x00: lefty", "\ud800", "'; DROP TABLE note; --", "<b>okafor</b> &amp; {0} %s"],
)
def test_text_that_breaks_weaker_programs(fresh: Talk, text: str) -> None:
    assert fresh.say(text).strip()
    assert fresh.say("/players").strip()


@settings(
    max_examples=30, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(text=st.text(max_size=200))
def test_any_text_gets_a_reply_and_loses_nothing(demo: Talk, text: str) -> None:
    observed = demo.stored()["observation"]
    assert demo.say(text).strip()
    assert [row for row in observed if row not in demo.stored()["observation"]] == []


def test_a_tap_on_an_old_button(demo: Talk) -> None:
    demo.say("next: brandt and castellano")
    old = demo.button("we serve").payload
    demo.say("next: ruiz and hale")
    before = demo.stored()
    assert demo.press(old) == "That button is from an earlier time. Ask me again."
    assert demo.stored() == before


def test_a_forwarded_message_is_a_note_and_never_a_command(demo: Talk) -> None:
    before = demo.context
    demo.say("11-3 11-4 we won", forwarded=True)
    assert demo.context.match == before.match
    assert demo.notes()[0].text == "11-3 11-4 we won"
