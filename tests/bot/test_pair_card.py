"""The card of a new pair in a chat: eight taps, undo, late taps, and pairs that cannot be."""

from __future__ import annotations

import pytest
from talk import Talk, demo_talk

from bot.chat.payload import Verb, tap
from bot.chat.wording import wording
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from knowledge.vocabulary import AgreementKey, PlayerId
from scouting_db.values import AgreementRow


@pytest.fixture
def talk() -> Talk:
    return demo_talk()


def _agreed(talk: Talk, *names: str) -> dict[AgreementKey, AgreementRow]:
    one, other = (PlayerId(talk.player(name)) for name in names)
    with talk.book() as book:
        rows = book.agreements_of(book.pair_of(one, other))
    return {row.key: row for row in rows}


def test_eight_taps_end_in_five_agreed_lines(talk: Talk) -> None:
    talk.say("we are Mira and Joris")
    first = talk.say("new partner, what do we agree on?")
    assert first.splitlines()[0] == "Agree these five lines before you start."
    assert first.count("· ") == 5
    assert "✓" not in first
    for number in range(1, 9):
        assert f"Tap {number} of 8" in talk.sent[-1]
        talk.press(talk.buttons[0].payload)
    assert "Play as agreed: all eight are settled." in talk.sent[-1]
    assert talk.sent[-1].count("✓") == 5
    assert "Forward it to Joris" in talk.sent[-1]
    assert set(_agreed(talk, "Mira", "Joris")) == {*AgreementKey}
    assert talk.say("what did we agree?").count("✓") == 5


def test_a_tap_stores_what_the_same_words_would(talk: Talk) -> None:
    talk.say("what did we agree")
    talk.tap("Mira")
    row = _agreed(talk, "Mira", "Tom")[AgreementKey.SIDES]
    assert row.value == "Mira left, Tom right"
    assert talk.heard is not None
    assert talk.heard.trace["agreement"] == {"key": "sides", "value": "Mira left, Tom right"}
    other = demo_talk()
    other.say("agreed Mira plays left")
    assert other.heard is not None
    assert other.heard.kind is talk.heard.kind
    assert other.heard.trace["agreement"]["key"] == "sides"


def test_undo_brings_back_what_stood_before(talk: Talk) -> None:
    before = _agreed(talk, "Mira", "Tom")[AgreementKey.MIDDLE].value
    mira, tom = talk.player("Mira"), talk.player("Tom")
    talk.press(tap(Verb.AGREE, AgreementKey.MIDDLE, "other", mira, tom))
    assert _agreed(talk, "Mira", "Tom")[AgreementKey.MIDDLE].value == "Tom takes the middle"
    talk.tap("undo")
    assert _agreed(talk, "Mira", "Tom")[AgreementKey.MIDDLE].value == before


def test_a_word_agreed_by_text_shows_on_the_card(talk: Talk) -> None:
    talk.say("we agreed both shout out balls at the kitchen on the left side")
    talk.say("we agreed Tom takes all lobs")
    assert "Lobs: tom takes all lobs ✓" in talk.say("what did we agree?")


def test_an_old_card_of_another_pair_is_answered_kindly(talk: Talk) -> None:
    talk.say("we are Mira and Joris")
    talk.say("new partner, what do we agree on?")
    old = talk.buttons[0].payload
    talk.say("we are Mira and Tom")
    before = talk.stored()
    said = talk.press(old)
    assert said == (
        "That card was for Mira and Joris: nothing changed. You play as Mira and Tom now."
    )
    assert talk.stored() == before
    assert "Play as agreed" in talk.tap("new partner")


@pytest.mark.parametrize(
    "args",
    [
        ("sides", "three", "{mira}", "{tom}"),
        ("sides", "one", "{mira}", "999999"),
        ("weather", "one", "{mira}", "{tom}"),
        ("sides", "one", "{mira}"),
        ("sides", "one", "x", "{tom}"),
    ],
)
def test_a_forged_tap_changes_nothing(talk: Talk, args: tuple[str, ...]) -> None:
    talk.say("what did we agree")
    before = talk.stored()
    people = {"mira": str(talk.player("Mira")), "tom": str(talk.player("Tom"))}
    said = talk.press(":".join(["1", "agree", *(arg.format(**people) for arg in args)]))
    assert said == wording("unclear.too_old")
    assert talk.stored() == before


def test_who_may_only_read_agrees_on_nothing(talk: Talk) -> None:
    talk.say("what did we agree")
    payload = talk.buttons[0].payload
    group = talk.of("Joris")
    group.is_group = True
    before = talk.stored()
    group.press(payload)
    assert talk.stored() == before


@pytest.mark.parametrize("words", ["new partner, what do we agree on?", "what did we agree?"])
def test_the_card_is_read_on_one_screen(talk: Talk, words: str) -> None:
    assert wrapped(talk.say(words).splitlines()) <= MOST_LIST_LINES


def test_a_pair_of_one_is_asked_for_again(talk: Talk) -> None:
    talk.say("we are Mira and Mira")
    assert talk.sent[-1] == wording("book.ask_pair")


def test_a_partner_who_was_an_opponent_is_no_longer_theirs(talk: Talk) -> None:
    talk.say("we are Mira and Okafor")
    okafor = talk.player("Okafor")
    assert okafor in talk.context.ours
    assert okafor not in talk.context.theirs
    assert "Mira left, Chidi right" in talk.say("what should we agree on, new partner")
