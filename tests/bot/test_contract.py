"""The `--json` contract: fields, types, nulls and full precision; and every button is a tap."""

from __future__ import annotations

from typing import Any

import pytest
from conversations import demo_console
from talk import Talk

from bot.channels.console import Console, open_console
from bot.chat.payload import Tap
from bot.chat.said import Kind
from bot.chat.wording import wording
from knowledge.vocabulary import TRAITS, Topic, Trait, Value
from scouting_db.session import open_store

FIELDS = {
    "text": str,
    "kind": str,
    "topic": str | None,
    "slots": dict | None,
    "observations": list | None,
    "reply": str,
    "call": str | None,
    "reasons": list | None,
    "numbers": dict | None,
    "buttons": list | None,
    "picture": str | None,
}
"""Names and types as the design's section 5 gives them."""

CONVERSATION = [
    "/start",
    "who covers the middle",
    "where do I dink okafor",
    "okafor: lefty, pops up backhand dinks",
    "undo",
    "next: ruiz and hale, 10:40, court 7, to 11",
    "6-4-2",
    "our point",
    "side out",
    "plan",
    "cue",
    "where do i stand",
    "report on ruiz and hale",
    "note zorblatt: lefty",
    "note ana: lobs a lot",
    "we agreed the lefty takes lobs",
    "no, the other one",
    "won 11-8 9-11 11-6",
    "who do we target",
    "should we stack",
    "is it a fault if I touch the net",
    "99-3-7",
    "🤣",
    "",
    "asdf qwer",
    "/mode",
    "/players",
    "/help",
]

SHORTEST_CALL_LINE = 60
"""Characters of a first line, so that a lock screen shows it whole (our own bar)."""


@pytest.fixture(scope="module")
def console() -> Console:
    return demo_console()


@pytest.fixture(scope="module")
def answered(console: Console) -> list[dict[str, Any]]:
    return [console.say_json(text) for text in CONVERSATION]


def test_every_field_every_time(answered: list[dict[str, Any]]) -> None:
    for one in answered:
        assert list(one) == list(FIELDS), one["text"]
        for name, kind in FIELDS.items():
            assert isinstance(one[name], kind), (one["text"], name)


def test_closed_sets(answered: list[dict[str, Any]]) -> None:
    for one in answered:
        assert one["kind"] in {*Kind}
        assert one["topic"] is None or one["topic"] in {*Topic}
        for button in one["buttons"] or ():
            assert set(button) == {"label", "payload", "topic"}
            assert str(Tap.parse(button["payload"])) == button["payload"]
            assert button["topic"] is None or button["topic"] in {*Topic}
        for reason in one["reasons"] or ():
            assert set(reason) == {"text", "source"}
            assert reason["text"]
            assert reason["source"]
        for claim in one["observations"] or ():
            assert Value(claim["value"]) in TRAITS[Trait(claim["trait"])].values


@pytest.mark.parametrize(
    ("text", "kind", "topic"),
    [
        ("who covers the middle", "question", "cover_middle"),
        ("okafor: lefty", "note", None),
        ("next: ruiz and hale, 10:40, court 7, to 11", "match", None),
        ("6-4-2", "score", None),
        ("our point", "rally", None),
        ("we agreed forehand takes the middle", "agreement", None),
        ("undo", "undo", None),
        ("no, the other one", "correction", None),
        ("/players", "book", None),
        ("🤣", "unclear", None),
    ],
)
def test_each_kind(text: str, kind: str, topic: str | None) -> None:
    one = demo_console().say_json(text)
    assert (one["kind"], one["topic"]) == (kind, topic)


def test_absent_things_are_null() -> None:
    one = demo_console().say_json("🤣")
    assert {name for name, value in one.items() if value is None} == {
        "topic", "slots", "observations", "reasons", "numbers", "picture",
    }  # fmt: skip


def test_slots_and_observations() -> None:
    console = demo_console()
    note = console.say_json("okafor: lefty, backhand dink is NOT weak")
    assert note["slots"] == {"players": ["Chidi Okafor"]}
    found = {
        (one["player"], one["trait"], one["value"], one["denied"]) for one in note["observations"]
    }
    assert ("Chidi Okafor", "hand", "left", False) in found
    for one in note["observations"]:
        start, stop = one["span"]
        assert note["text"][start:stop].strip()
    match = console.say_json("next: ruiz and hale, 10:40, court 7, to 11")
    assert match["slots"]["opponents"] == ["Ana Ruiz", "Ben Hale"] or match["slots"][
        "opponents"
    ] == ["ruiz", "Ben Hale"]
    assert (match["slots"]["time"], match["slots"]["court"]) == ("10:40", "7")
    asked = console.say_json("where do I dink okafor's backhand when stretched")
    assert asked["slots"]["opponents"] == ["Chidi Okafor"]
    assert (asked["slots"]["wing"], asked["slots"]["ball"]) == ("backhand", "stretched")
    said = console.say_json("we're up 9-8 receiving")
    assert said["slots"]["serving"] is False


def test_state_carries_from_line_to_line() -> None:
    console = demo_console()
    console.say_json("next: ruiz and hale, to 11")
    console.say_json("6-4-2")
    console.say_json("1")
    one = console.say_json("our point")
    assert one["numbers"] == {"ours": 7, "theirs": 4, "server": 2}
    assert "Ruiz" in console.say_json("report")["reply"]


def test_numbers_keep_their_full_precision() -> None:
    numbers = demo_console().say_json("where do I dink okafor")["numbers"]
    assert numbers
    assert any(round(value, 4) != value for value in numbers.values())
    assert all(isinstance(value, int | float) for value in numbers.values())


def test_a_number_typed_presses_that_button() -> None:
    console = demo_console()
    first = console.say_json("who covers the middle")
    why = next(n for n, one in enumerate(first["buttons"], 1) if one["label"] == "why")
    assert console.say_json(str(why))["reply"].startswith(first["call"])


def every_button(talk: Talk, *, deep: int) -> list[str]:
    """Press every button of the last reply, and of the replies to those, from the same state."""
    pressed: list[str] = []
    for button in talk.buttons:
        reply = talk.press(button.payload)
        assert reply.strip(), button
        assert reply != wording("apology"), button
        pressed.append(reply)
        if deep:
            pressed += every_button(talk, deep=deep - 1)
    return pressed


@pytest.mark.parametrize(
    "text",
    ["/start", "who covers the middle", "where do I dink okafor", "plan", "cue", "where do i stand",
     "report on ruiz and hale", "/mode", "asdf qwer zxcv"],
)  # fmt: skip
def test_every_button_of_an_answer_works_and_so_do_its_answers_buttons(
    demo: Talk, text: str
) -> None:
    demo.say(text)
    assert demo.buttons
    for reply in every_button(demo, deep=1):
        assert reply != wording("unclear.too_old")


def test_every_button_of_a_long_conversation_can_be_pressed_at_any_time(demo: Talk) -> None:
    payloads: list[str] = []
    for text in CONVERSATION:
        demo.say(text)
        payloads += [one.payload for one in demo.buttons]
    assert len(payloads) > 40
    for payload in payloads:
        assert demo.press(payload).strip(), payload


COMPLETE = [
    "who covers the middle",
    "who covers the middle when they speed up",
    "where do I dink okafor",
    "where do I dink lindqvist when stretched",
    "where do i stand at 6-4-2",
    "report on okafor and lindqvist",
    "report on ruiz and hale",
    "report on ana ruiz-peña",
    "plan",
    "plan for brandt and castellano",
    "cue",
    "cue, we are receiving at 4-6-1",
]


@pytest.mark.parametrize("text", COMPLETE)
@pytest.mark.parametrize("book", ["demo", "empty"])
def test_a_complete_answer_fits_a_phone(text: str, book: str) -> None:
    console = (
        demo_console() if book == "demo" else open_console(open_store("sqlite://"), user_name="You")
    )
    reply = str(console.say_json(text)["reply"])
    lines = reply.splitlines()
    assert len(lines[0]) <= SHORTEST_CALL_LINE, lines[0]
    assert len(lines) <= 8, reply
    assert "None" not in reply
    assert "?/" not in reply


def test_every_first_line_fits_a_lock_screen(answered: list[dict[str, Any]]) -> None:
    shown = [one["call"] for one in answered if one["kind"] == "question"]
    assert shown
    assert [call for call in shown if len(call) > SHORTEST_CALL_LINE] == []
