"""Input that is no message to us: one kind, specific line each, and nothing stored moves."""

from __future__ import annotations

import random
from collections import Counter
from functools import cache

import pytest
from counted_work import counted_work
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import select
from talk import Talk
from voices import EVENING

from bot.chat.said import Question, Unclear
from bot.chat.understand import understand
from bot.chat.words import LONGEST_WORD, WORDS_READ_AT_MOST, words
from bot.post import IncomingKind
from knowledge.vocabulary import Topic
from scouting_db import tables

LONGEST_MESSAGE = 4_096
"""Characters of a message, after entities parsing (Bot API, sendMessage)."""

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
def test_text_that_breaks_weaker_programs(fresh_anywhere: Talk, text: str) -> None:
    assert fresh_anywhere.say(text).strip()
    assert fresh_anywhere.say("/players").strip()


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


NAMES = ("okafor", "lindqvist", "ruiz", "hale", "mira", "tom", "brandt", "castellano")


def _filled(piece: str) -> str:
    """The piece over and over, as long as a message may be."""
    return (piece * LONGEST_MESSAGE)[:LONGEST_MESSAGE]


BAD_INPUT = {
    "a question over and over": _filled("who has middle? "),
    "questions without marks": _filled("where do i serve okafor and who takes the middle "),
    "400 names": " ".join(NAMES[at % len(NAMES)] for at in range(400)),
    "names and pronouns": _filled("okafor they him "),
    "pronouns": _filled("they "),
    "first names with odd surnames": _filled("ben xqzt "),
    "odd words told of": _filled("xqz poaches "),
    "slips of a name": _filled("okafoor "),
    "odd words": " ".join(f"zq{at:b}x".translate({48: "o", 49: "i"}) for at in range(400))[:4096],
    "letters": _filled("a b "),
    "numbers": _filled("9 "),
    "scores": _filled("6-4-2 "),
    "rates": _filled("45% on serve "),
    "traits": _filled("backhand weak "),
    "negations": _filled("okafor not but and "),
    "choices": _filled("drop or drive "),
    "one very long word": _filled("x"),
    "a long word with accents": _filled("é"),
    "brackets": _filled("("),
    "a regular expression": _filled(r"(a+)+$^[a-z]*.{0,99}(?:okafor|y)\b"),
    "an SQL fragment": _filled("'; DROP TABLE note; --"),
    "HTML": _filled("<b>okafor</b> &amp; "),
    "emoji": _filled("🤣"),
    "punctuation": _filled("?!., "),
    "zero-width signs": _filled("\u200b\u200d\ufeff"),
    "zero-width signs inside words": _filled("o\u200bk\u200ba\u200bf\u200bor "),
    "right-to-left text": _filled("שלום עולם "),
    "marks of direction": _filled("\u202eokafor\u202c "),
    "mixed scripts": _filled("okafor игра שלום 球 "),
    "look-alike letters": _filled("оkаfоr bаngs "),
    "combining marks": _filled("e\u0301\u0301\u0301"),
    "new lines": _filled("okafor\n"),
}
"""Each as long as a message may be, or 400 names of it."""

WORDS_AT_MOST = 8 * WORDS_READ_AT_MOST
"""A message is read once, and its parts again where it may ask several things."""

LIKENESSES_AT_MOST = 4 * WORDS_READ_AT_MOST
"""Of a word: with names, with everyday words, with the lexicon, and of two words as a name."""

PHRASES_AT_MOST = 3 * WORDS_AT_MOST
"""Places at which phrases are looked up: as a note, as a question, in each part."""


@cache
def work_of(text: str) -> Counter[str]:
    """The work of understanding it, counted once: nothing is left of what was read before."""
    with pytest.MonkeyPatch.context() as patch, counted_work(patch) as work:
        understand(text, chat=EVENING)
    return work


@pytest.mark.parametrize("text", BAD_INPUT.values(), ids=BAD_INPUT)
def test_the_longest_message_makes_bounded_work(text: str) -> None:
    work = work_of(text)
    assert work["words"] <= WORDS_AT_MOST
    assert work["tokens"] <= WORDS_AT_MOST
    assert work["names"] <= 2 * WORDS_READ_AT_MOST
    assert work["likenesses"] <= LIKENESSES_AT_MOST
    assert work["letters"] <= LIKENESSES_AT_MOST * LONGEST_WORD
    assert work["phrases"] <= PHRASES_AT_MOST


WORDY = [text for text in BAD_INPUT.values() if len(words(text[: len(text) // 2])) >= 256]


def test_what_stands_behind_the_cut_costs_nothing() -> None:
    assert len(WORDY) >= 15
    for text in WORDY[::3]:
        assert work_of(text) == work_of(text[: len(text) // 2]), text[:20]


def test_the_counters_count(monkeypatch: pytest.MonkeyPatch) -> None:
    """A bound on nothing would hold always: each kind of work is seen where it must be done."""
    with counted_work(monkeypatch) as work:
        understand("okafoor bangz, wher do i sreve him zqwx", chat=EVENING)
    assert set(work) == {"words", "tokens", "names", "likenesses", "letters", "phrases"}
    with counted_work(monkeypatch) as more:
        understand("okafoor bangz, wher do i sreve him zqwx and hael lobbz", chat=EVENING)
    assert all(more[kind] > work[kind] for kind in work), (work, more)


@pytest.mark.parametrize("text", BAD_INPUT.values(), ids=BAD_INPUT)
def test_the_longest_message_is_answered_shortly_and_kept_whole(demo: Talk, text: str) -> None:
    before, noted = demo.stored(), {row.note for row in demo.notes()}
    reply = demo.say(text)
    assert reply.strip()
    assert len(reply) < 600, "it is not read back"
    with demo.store.reading() as connection:
        kept = connection.execute(select(tables.inbox.c.payload)).scalars().all()
    assert kept[-1]["text"] == text
    assert {row.text for row in demo.notes() if row.note not in noted} <= {text}
    for table in ("player", "alias", "pair", "agreement", "match"):
        assert demo.stored()[table] == before[table], table


PLAIN = "who covers the middle?"


@pytest.mark.parametrize(
    "typed",
    [
        "who co\u200bvers the mid\u200bdle?",
        "who\u200b covers\ufeff the\u2060 middle?",
        "\u202ewho covers the middle?\u202c",
        "wh\u00ado cov\u00aders the middle?",
        "whо соvеrs thе middlе?",
        "ｗｈｏ　ｃｏｖｅｒｓ　ｔｈｅ　ｍｉｄｄｌｅ？",
        "<b>who covers the middle?</b>",
        "WHO COVERS THE MIDDLE???",
        "🏓 who covers the middle? 🏓",
        "who covers the middle? שלום",
        "who covers the middle? " + "x" * 4000,
    ],
)
def test_what_the_eye_reads_is_understood(demo: Talk, typed: str) -> None:
    wanted = demo.say(PLAIN)
    assert demo.say(typed) == wanted


@pytest.mark.parametrize(
    "typed", ["oka\u200bfor: lefty", "оkаfоr: lеftу", "ｏｋａｆｏｒ: lefty", "okafor\u202c: lefty"]
)
def test_a_name_is_known_however_it_is_pasted(demo: Talk, typed: str) -> None:
    assert demo.say(typed).startswith("Noted. Okafor: left-handed.")
    assert demo.notes()[0].text == typed


@pytest.mark.parametrize("typed", ["12345", "99999999999999999999", "3.14159", "-1", "½", "①②③"])
def test_numbers_that_are_no_score_are_asked_back(demo: Talk, typed: str) -> None:
    before = demo.stored()
    assert demo.say(typed).startswith("A score reads like 6-4-2")
    assert demo.stored() == before


@pytest.mark.parametrize("typed", ["zqxw", "zqxw vbnk", "<script>alert(1)</script>", "x=[]; y={}"])
def test_what_says_nothing_is_asked_back(demo: Talk, typed: str) -> None:
    before = demo.stored()
    demo.say(typed)
    assert demo.buttons
    assert demo.heard is not None
    said = demo.heard.understood
    is_talk = isinstance(said, Question) and said.topic is Topic.SMALLTALK_OR_UNKNOWN
    assert is_talk or isinstance(said, Unclear)
    assert demo.stored() == before


def test_a_note_is_read_as_far_as_the_cut_and_kept_beyond_it(demo: Talk) -> None:
    filler = "and some more of the same old story " * 40
    text = f"note okafor: lefty, poaches a lot {filler} lindqvist never lobs"
    assert len(words(text)) == WORDS_READ_AT_MOST
    demo.say(text)
    assert ("hand", "left", False) in demo.claims("Okafor")
    assert demo.notes()[0].text == text
