"""Groups and other books: who may ask, who may write, and what never crosses over."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk

from bot.chat.wording import wording
from bot.post import IncomingKind

ASKED = "who covers the middle"


@pytest.fixture
def mira(fresh_anywhere: Talk) -> Talk:
    """An editor in a group to which she bound a new book."""
    mira = replace(fresh_anywhere, chat="group", is_group=True)
    mira.bind_new_book()
    mira.say("/add Okafor")
    mira.say("okafor is tall")
    return mira


def test_who_is_no_member_may_ask(mira: Talk) -> None:
    stranger = mira.of("sam")
    before = mira.stored()
    stranger.say(ASKED)
    assert stranger.heard is not None
    assert stranger.heard.kind == "question"
    assert mira.stored() == before


@pytest.mark.parametrize(
    "text",
    [
        "okafor: lefty", "note okafor lobs", "/add Hale", "next: okafor and hale, to 11", "undo",
        "we agreed forehand takes the middle", "/mode match", "we are Sam and Kim", "our point",
        "won 11-2 11-3", "no, it was Hale", "/rename okafor to Bo", "/log",
    ],
)  # fmt: skip
def test_who_is_no_member_may_not_write(mira: Talk, text: str) -> None:
    stranger = mira.of("sam")
    before, context = mira.stored(), mira.context
    reply = stranger.say(text)
    assert mira.stored() == before
    assert mira.context == context
    assert reply == wording("unclear.members_only")


def test_numbers_of_who_is_no_member_hold_for_their_question(mira: Talk) -> None:
    stranger = mira.of("sam")
    assert "42 of 100 serving" in stranger.say("we win 42% on serve, 63% returning")
    assert mira.context.rates is None
    assert mira.say("undo") == "Taken back: “okafor is tall”."


@pytest.mark.parametrize("text", ["/start", "/help", "/players"])
def test_who_is_no_member_is_helped_all_the_same(mira: Talk, text: str) -> None:
    assert mira.of("sam").say(text) == mira.say(text)


def test_somebody_elses_button(mira: Talk) -> None:
    stranger = mira.of("sam")
    mira.say("/add Hale")
    undo = mira.button("undo").payload
    before = mira.stored()
    assert stranger.press(undo) == wording("unclear.not_yours")
    assert mira.stored() == before
    assert mira.press(undo).startswith("Taken back")


@pytest.mark.parametrize("verb", ["mode:match", "prof:64:hand:left", "set:cover_middle:ball:easy"])
def test_a_strangers_tap_writes_nothing(mira: Talk, verb: str) -> None:
    before, context = mira.stored(), mira.context
    mira.of("sam").press(f"1:{verb}")
    assert mira.stored() == before
    assert mira.context == context


def test_a_strangers_edit_and_reply_change_no_note(mira: Talk) -> None:
    stranger = mira.of("sam")
    mira.say("okafor: lefty", external_message_id=9)
    number, before = mira.reply_number, mira.stored()
    stranger.send(IncomingKind.EDIT, text="okafor: righty", external_message_id=9)
    stranger.say("delete", reply_to=number)
    stranger.say("righty", reply_to=number)
    assert mira.stored() == before


def test_a_member_writes(mira: Talk) -> None:
    tom = mira.of("tom")
    tom.join()
    assert tom.say("okafor: lefty").startswith("Noted.")
    assert ("hand", "left", False) in mira.claims("Okafor")


def test_an_anonymous_admin_is_no_member(mira: Talk) -> None:
    """Bot API: an anonymous admin writes as the group itself."""
    anonymous = mira.of("group")
    before = mira.stored()
    assert anonymous.say("okafor: lefty") == wording("unclear.members_only")
    anonymous.say(ASKED)
    assert mira.stored() == before


def test_nothing_of_one_book_appears_in_anothers_replies(fresh_anywhere: Talk) -> None:
    kim = fresh_anywhere.of("kim", chat="kim's")
    fresh_anywhere.say("/add Quillfeather")
    fresh_anywhere.say("quillfeather: lefty, pops up backhand dinks")
    fresh_anywhere.say("we are Xanthe and Yorick")
    kim.say("/add Plainname")
    for text in (
        "/players", "plan", "cue", ASKED, "where do I dink quillfeather", "report on quillfeather",
        "quillfeather: righty", "show notes on quillfeather", "undo", "undo", "undo",
    ):  # fmt: skip
        reply = kim.say(text)
        shown = reply + " ".join(one.label for one in kim.buttons)
        for secret in ("Quillfeather", "left-handed", "Xanthe", "Yorick", "pops up"):
            assert secret not in shown.replace("add Quillfeather", ""), (text, shown)
    assert ("hand", "left", False) in fresh_anywhere.claims("Quillfeather")
    assert ("hand", "right", False) not in fresh_anywhere.claims("Quillfeather")


def test_two_stores_with_equal_numbers_keep_apart(demo: Talk, fresh_anywhere: Talk) -> None:
    """Rosters and profiles are kept in memory: never those of another store."""
    fresh_anywhere.say("/add Hale")
    assert "Okafor" in demo.say("/players")
    assert "Okafor" not in fresh_anywhere.say("/players")
