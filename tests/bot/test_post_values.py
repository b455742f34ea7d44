"""What the post stores: every value comes back as it went in, and no message is too long."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from bot.chat.reply import Button, Reply
from bot.post import Incoming, IncomingKind, Limits, Outgoing, messages_of
from bot.post.outgoing import units
from knowledge.advice import ChanceCurve, CurveMark, GameBreak
from knowledge.court_picture import Area, Arrow, CourtPicture, Line, Marker, Zone
from knowledge.vocabulary import Topic
from scouting_db.values import About, Micros, PostKind

NUMBERS = st.integers(min_value=0, max_value=2**52)
TEXTS = st.text(max_size=200)
METRES = st.floats(min_value=-20, max_value=20)

INCOMING = st.builds(
    Incoming,
    kind=st.sampled_from(IncomingKind),
    chat=TEXTS,
    user_id=TEXTS,
    user_name=TEXTS,
    at=NUMBERS.map(Micros),
    is_group=st.booleans(),
    text=TEXTS,
    payload=st.none() | TEXTS,
    external_message_id=st.none() | NUMBERS,
    reply_to=st.none() | NUMBERS,
    forwarded=st.booleans(),
    tap_id=st.none() | TEXTS,
)
BUTTONS = st.builds(
    Button, label=TEXTS, payload=TEXTS, topic=st.none() | st.sampled_from(list(Topic))
)
ROWS = st.lists(st.lists(BUTTONS, max_size=3).map(tuple), max_size=3).map(tuple)
PLACES = st.lists(st.tuples(METRES, METRES), min_size=2, max_size=4).map(tuple)
COURTS = st.builds(
    CourtPicture,
    title=TEXTS,
    alt=TEXTS,
    markers=st.lists(
        st.builds(Marker, x_m=METRES, y_m=METRES, label=TEXTS, ours=st.booleans()), max_size=2
    ).map(tuple),
    arrows=st.lists(
        st.builds(
            Arrow,
            from_x_m=METRES,
            from_y_m=METRES,
            to_x_m=METRES,
            to_y_m=METRES,
            width=METRES,
            label=TEXTS,
        ),
        max_size=2,
    ).map(tuple),
    zones=st.lists(
        st.builds(
            Zone,
            x0_m=METRES,
            y0_m=METRES,
            x1_m=METRES,
            y1_m=METRES,
            label=TEXTS,
            ours=st.booleans(),
        ),
        max_size=2,
    ).map(tuple),
    areas=st.lists(st.builds(Area, corners=PLACES, owner=TEXTS, label=TEXTS), max_size=2).map(
        tuple
    ),
    lines=st.lists(st.builds(Line, points=PLACES, label=TEXTS), max_size=1).map(tuple),
)
CHANCES = st.floats(min_value=0, max_value=1)
CURVES = st.builds(
    ChanceCurve,
    title=TEXTS,
    alt=TEXTS,
    points=st.lists(CHANCES, min_size=3, max_size=9).map(tuple),
    marks=st.lists(
        st.builds(
            CurveMark,
            point=st.integers(0, 2),
            label=TEXTS,
            won_by_us=st.booleans(),
            otherwise=CHANCES,
        ),
        max_size=3,
    ).map(tuple),
    games=st.lists(
        st.builds(
            GameBreak,
            point=st.integers(0, 2),
            label=TEXTS,
            won_by_us=st.none() | st.booleans(),
        ),
        max_size=3,
    ).map(tuple),
    now=TEXTS,
)
PICTURES = COURTS | CURVES
OUTGOING = st.builds(
    Outgoing,
    text=TEXTS,
    buttons=ROWS,
    picture=st.none() | PICTURES,
    about=st.none() | st.builds(About, kind=TEXTS, id=NUMBERS),
    replaces=st.none() | NUMBERS,
    continues=st.booleans(),
)


def through_json(plain: dict[str, Any]) -> dict[str, Any]:
    stored: dict[str, Any] = json.loads(json.dumps(plain))
    return stored


@given(INCOMING)
def test_incoming_round_trip(incoming: Incoming) -> None:
    assert Incoming.from_json(through_json(incoming.to_json())) == incoming


@given(OUTGOING)
def test_outgoing_round_trip(message: Outgoing) -> None:
    assert Outgoing.from_json(through_json(message.to_json())) == message


@given(COURTS)
def test_a_picture_stored_before_there_were_kinds_is_a_court(picture: CourtPicture) -> None:
    stored = through_json(Outgoing(text="x", picture=picture).to_json())
    del stored["picture"]["kind"]
    assert Outgoing.from_json(stored).picture == picture


def test_a_picture_of_a_kind_unknown_here_is_named() -> None:
    stored = Outgoing(text="x", picture=CourtPicture(title="", alt="")).to_json()
    stored["picture"]["kind"] = "heatmap"
    with pytest.raises(ValueError, match="no picture of kind 'heatmap'"):
        Outgoing.from_json(stored)


def test_what_is_absent_takes_no_room() -> None:
    incoming = Incoming(
        kind=IncomingKind.TEXT, chat="1", user_id="1", user_name="Mira", at=Micros(5)
    )
    assert incoming.to_json().keys() == {"kind", "chat", "user_id", "user_name", "at", "text"}


@given(
    st.text(alphabet=st.sampled_from("ab \n\U0001f3d3"), max_size=300),
    st.integers(min_value=4, max_value=40),
    st.integers(min_value=4, max_value=40),
)
@example(text="    aaa\U0001f3d3", caption=4, limit=5)
def test_parts_fit_and_lose_no_word(text: str, caption: int, limit: int) -> None:
    picture = CourtPicture(title="", alt="")
    reply = Reply(text=text, picture=picture)
    parts = messages_of(reply, Limits(text=limit, caption=caption))
    assert units(parts[0].text) <= caption
    assert all(units(part.text) <= limit for part in parts[1:])
    written = "".join(text.split())
    assert "".join("".join(part.text.split()) for part in parts) == written


@given(st.text())
def test_units_are_those_of_utf_16(text: str) -> None:
    assert units(text) == len(text.encode("utf-16-le", "surrogatepass")) // 2


def test_a_long_reply_keeps_its_picture_first_and_its_buttons_last() -> None:
    reply = Reply(
        text="the call\n" + "a reason\n" * 10,
        buttons=((Button(label="why", payload="1:why:lob"),),),
        picture=CourtPicture(title="t", alt="a"),
        about=("note", 64),
    )
    parts = messages_of(reply, Limits(text=60, caption=40))
    assert len(parts) > 1
    assert [part.kind for part in parts] == [PostKind.PHOTO] + [PostKind.SEND] * (len(parts) - 1)
    assert [bool(part.buttons) for part in parts] == [False] * (len(parts) - 1) + [True]
    assert [part.continues for part in parts] == [False] + [True] * (len(parts) - 1)
    assert {part.about for part in parts} == {About(kind="note", id=64)}


def test_a_reply_that_replaces_edits_with_its_first_part_only() -> None:
    parts = messages_of(Reply(text="word " * 10, replaces=7), Limits(text=20, caption=20))
    assert [part.kind for part in parts] == [PostKind.EDIT] + [PostKind.SEND] * (len(parts) - 1)
