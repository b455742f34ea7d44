"""Taps that nobody was offered: forged, cut, of another book, of another time."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from talk import Talk, demo_talk

from bot.chat.payload import LIMIT_BYTES, Tap, Verb
from bot.chat.wording import wording
from knowledge.advice import MatchFact
from knowledge.vocabulary import Topic, Trait, Value

HUGE = str(10**40)
"""Beyond what a database column holds."""

BEYOND_BY_ONE = str(2**63)

BAD_NUMBERS = ["0", "-1", "987654321", BEYOND_BY_ONE, HUGE, "x", "1.5", "٣", "1 ", "nan", "us"]

TOO_OLD = wording("unclear.too_old")


def changes_nothing(talk: Talk, payload: str) -> str:
    stored, context = talk.stored(), talk.context
    reply = talk.press(payload)
    assert talk.stored() == stored, payload
    assert talk.context == context, payload
    return reply


@pytest.fixture(scope="module")
def shared() -> Talk:
    """A demo talk that no test here may change, so one serves them all."""
    talk = demo_talk()
    talk.say("next: ruiz and hale, to 11")
    talk.tap("we serve")
    talk.tap("our rally")
    return talk


def forged(verb: Verb, talk: Talk) -> list[str]:
    """Payloads of a verb that no reply to this chat ever carried."""
    player, match = str(talk.player("Okafor")), str(talk.context.match)
    hale, mira = str(talk.player("Ben Hale")), str(talk.player("Mira"))
    wrong = {
        Verb.ASK: [["dink"], ["cover_middle", "9999"], ["cover_middle", "x"]]
        + [["cover_middle", bad] for bad in BAD_NUMBERS],
        Verb.SETTLE: [
            ["cover_middle", "ball", "huge"],
            ["cover_middle", "colour", "red"],
            ["nowhere", "ball", "easy"],
            ["cover_middle", "side", "left"],
            ["cover_middle", "side", "up", player],
            ["cover_middle", "we_serve", "maybe"],
            ["cover_middle", "pulled_wide", "yes"],
            ["cover_middle", "about", "yes"],
            ["cover_middle", "hand", "left"],
            ["cover_middle", "hand", "often", player],
            ["cover_middle", "hand", "left", "9999"],
            ["cover_middle", "hand", "left", player, "extra"],
        ]
        + [["cover_middle", fact, "nonsense", player] for fact in MatchFact if fact not in (
            MatchFact.PULLED_WIDE, MatchFact.ABOUT)]
        + [["cover_middle", trait, "nonsense", player] for trait in Trait],
        Verb.WHY: [["dink"], ["cover_middle", "again"]],
        Verb.MIX: [["dink"], ["aim_attack", "again"], *([bad] for bad in BAD_NUMBERS)],
        Verb.PICK: [["dink"], ["aim_attack", "again"], *([bad] for bad in BAD_NUMBERS)],
        Verb.WHO: [["7", player], ["1", "9999"], *([bad, player] for bad in BAD_NUMBERS)],
        Verb.ADD: [["7"], *([bad] for bad in BAD_NUMBERS)],
        Verb.UNDO: [[bad] for bad in BAD_NUMBERS],
        Verb.REDO: [[bad] for bad in BAD_NUMBERS],
        Verb.CLAIM: [["1", "1"], [player, "1"], ["1", "lob"], ["1", "1", "often"]]
        + [["1", bad] for bad in BAD_NUMBERS]
        + [[bad, "1"] for bad in BAD_NUMBERS],
        Verb.NOTE: [["show", "1"], ["burn", "1"], *(["delete", bad] for bad in BAD_NUMBERS)],
        Verb.RALLY: [["me", match, "3"], *(["us", bad, "3"] for bad in BAD_NUMBERS)]
        + [["us", match, bad] for bad in BAD_NUMBERS],
        Verb.TIMEOUT: [["me", match, "3"], *(["us", bad, "3"] for bad in BAD_NUMBERS)]
        + [["us", match, bad] for bad in BAD_NUMBERS],
        Verb.SERVE: [["me", match], ["us", match], ["them", match]]
        + [["us", bad] for bad in BAD_NUMBERS]
        + [["us", match, game] for game in ("1", "2", "x", HUGE)],
        Verb.SIDES: [
            ["me", player, match, "1"],
            ["us", player, match, "1"],
            ["them", player, match, "1"],
            ["them", hale, match, "2"],
            ["them", hale, "1", "1"],
            ["them", mira, match, "1"],
            *(["them", hale, match, bad] for bad in BAD_NUMBERS),
            *(["them", bad, match, "1"] for bad in BAD_NUMBERS),
        ],
        Verb.SERVER: [
            [player, match, "3"],
            [hale, match, "3"],
            [mira, match, "1"],
            [mira, "1", "3"],
            *([mira, match, bad] for bad in BAD_NUMBERS),
            *([bad, match, "3"] for bad in BAD_NUMBERS),
        ],
        Verb.SCORE: [
            ["me", "1-0-1", match, "3"],
            ["us", "99-3-7", match, "3"],
            ["us", "6", match, "3"],
            ["us", "six", match, "3"],
            ["us", "1-0-1", match, "1"],
            ["us", "1-0-1", match, HUGE],
            ["us", "1-0-1", "1", "3"],
            ["us", "999999999-1", match, "3"],
        ],
        Verb.MODE: [["party"], ["MATCH"], ["match", "break"]],
        Verb.PROFILE: [
            [player, "hand", "often"],
            [player, "smile", "often"],
            [player, "hand"],
            *([bad, "hand", "left"] for bad in BAD_NUMBERS),
        ],
        Verb.PLAN: [["steal", player, hale], ["b", player], ["b"]]
        + [["share", player, bad] for bad in BAD_NUMBERS]
        + [["again", bad, hale] for bad in BAD_NUMBERS],
        Verb.EXAMPLE: [[bad] for bad in BAD_NUMBERS] + [["4"]],
        Verb.USE_LOG: [["book"], ["log", "log"]],
        Verb.LATER: [[bad] for bad in BAD_NUMBERS] + [["1"], ["7"]],
        Verb.ENDED: [["draw", match, "2"], ["winner", match, "1"], ["winner", match]]
        + [["winner", match, bad] for bad in BAD_NUMBERS]
        + [["winner", bad, "2"] for bad in BAD_NUMBERS],
        Verb.ENDED_BY: [[player, match, "2"], [hale, match, "1"], [hale, match]]
        + [[hale, match, bad] for bad in BAD_NUMBERS]
        + [[hale, bad, "2"] for bad in BAD_NUMBERS]
        + [[bad, match, "2"] for bad in BAD_NUMBERS],
        Verb.MEANT: [[player, match, "2"], [hale, match, "1"], [hale, match]]
        + [[hale, match, bad] for bad in BAD_NUMBERS]
        + [[hale, bad, "2"] for bad in BAD_NUMBERS]
        + [[bad, match, "2"] for bad in BAD_NUMBERS],
        Verb.AGREE: [
            ["weather", "one", player, hale],
            ["sides", "three", player, hale],
            *(["sides", "one", player, bad] for bad in BAD_NUMBERS),
        ],
        Verb.TAG: [["lob", "wide", match, "3"], ["serve", "moon", match, "3"]]
        + [["serve", hale, match, "3"], ["return", player, match, "3"]]
        + [["serve", "wide", match, bad] for bad in BAD_NUMBERS]
        + [["serve", "wide", bad, "3"] for bad in BAD_NUMBERS]
        + [["return", bad, match, "3"] for bad in BAD_NUMBERS],
        Verb.INVITE: [["owner"], ["EDITOR"], ["editor", "reader"]],
        Verb.MEMBER: [["fire", "1"], ["remove"], *(["really", bad] for bad in BAD_NUMBERS)],
        Verb.BOOK: [["sell"], ["use"], ["bind", "yours"], *(["use", bad] for bad in BAD_NUMBERS)],
        Verb.FORGET: [["all"], ["me", "too"], *(["player", bad] for bad in BAD_NUMBERS)],
    }  # fmt: skip
    return [f"1:{verb}", f"1:{verb}:", *(":".join(["1", verb, *args]) for args in wrong[verb])]


@pytest.mark.parametrize("verb", Verb)
def test_no_forged_tap_changes_anything(verb: Verb, shared: Talk) -> None:
    for payload in forged(verb, shared):
        reply = changes_nothing(shared, payload)
        assert reply.strip(), payload
        assert "Traceback" not in reply, payload


@pytest.mark.parametrize(
    "payload",
    ["", ":", "1", "1:", "2:undo:1", "1:dance:1", "1:undo:1:", "undo", "1::", "\x00", "é" * 32],
)
def test_what_was_never_a_payload_is_told_so(payload: str, shared: Talk) -> None:
    assert changes_nothing(shared, payload) == TOO_OLD


WORDS = st.sampled_from(
    [*Topic, *Trait, *MatchFact, *Value, "us", "them", "delete", "yes", "-1", "999", HUGE, "x"]
)


@settings(max_examples=150, deadline=None)
@given(verb=st.sampled_from(Verb), args=st.lists(WORDS, max_size=5))
def test_no_mix_of_words_reaches_the_book(verb: Verb, args: list[str], shared: Talk) -> None:
    """Without a number of this book in it, a tap may ask, and can write nothing."""
    stored = shared.stored()
    assert shared.press(":".join(["1", verb, *map(str, args)])).strip()
    after = shared.stored()
    assert {name: rows for name, rows in after.items() if name != "plan"} == {
        name: rows for name, rows in stored.items() if name != "plan"
    }


def test_a_tap_with_a_number_of_another_book_changes_nothing(demo: Talk) -> None:
    """Numbers of another book on the same store: its players, changes, notes and matches."""
    other = demo.of("kim", chat="kim's")
    for number in range(100):  # past every number that the demo book has used
        with other.book() as book:
            book.add_player(f"Filler {number}")
    other.say("/add Zora Vance")
    change = other.button("undo").payload
    with other.book() as book:
        note = book.add_note("Vance: quick")
        match = book.announce(our_pair=None, their_pair=None, format={})
    theirs = other.player("Vance")
    demo.say("/players")
    for payload in (
        change,
        change.replace("undo", "redo"),
        f"1:note:delete:{note}",
        f"1:ask:cover_middle:{theirs}",
        f"1:set:cover_middle:hand:left:{theirs}",
        f"1:prof:{theirs}:hand:left",
        f"1:who:1:{theirs}",
        f"1:rally:us:{match}:1",
        f"1:to:us:{match}:1",
        f"1:serve:us:{match}",
        f"1:serve:us:{match}:1",
        f"1:sides:them:{theirs}:{match}:1",
        f"1:score:us:1-0-2:{match}:1",
    ):
        reply = changes_nothing(demo, payload)
        assert "Vance" not in reply, payload


def test_a_name_asked_about_is_settled_once(demo: Talk) -> None:
    demo.say("note zorblatt: lefty")
    pressed = demo.button("add zorblatt").payload
    demo.press(pressed)
    assert changes_nothing(demo, pressed) == TOO_OLD


def test_an_old_question_about_a_name_never_settles_a_newer_one(demo: Talk) -> None:
    demo.say("note zorblatt: lefty")
    old = demo.button("add zorblatt").payload
    demo.press(old)
    demo.say("undo")
    demo.say("note vance: lefty")
    assert changes_nothing(demo, old) == TOO_OLD


def test_a_profile_tap_is_a_note_that_can_be_taken_back(demo: Talk) -> None:
    okafor = demo.player("Okafor")
    before = demo.claims("Okafor")
    reply = demo.press(f"1:prof:{okafor}:footwork_kitchen_faults:often")
    assert reply.startswith("Okafor:")
    assert ("footwork_kitchen_faults", "often", False) in demo.claims("Okafor")
    demo.tap("undo")
    assert demo.claims("Okafor") == before


def test_the_whose_call_buttons_carry_their_place_in_the_log(demo: Talk) -> None:
    """An old "who serves?" must not set the score back after more rallies were counted."""
    demo.say("next: ruiz and hale, to 11")
    demo.say("3-3")
    old = [one.payload for one in demo.buttons if Tap.parse(one.payload).verb is Verb.SCORE]
    assert old, demo.sent[-1]
    demo.press(old[0])
    demo.say("our point")
    stored = demo.stored()
    demo.press(old[1])
    assert demo.stored() == stored


@given(numbers=st.tuples(st.integers(0, 2**63 - 1), st.integers(0, 2**63 - 1)))
def test_the_longest_payload_fits_a_telegram_button(numbers: tuple[int, int]) -> None:
    """Bot API: callback_data is 1 to 64 bytes. Longest realistic arguments of each verb."""
    for who, call in product(("us", "them"), ("21-19-2",)):
        text = str(Tap(verb=Verb.SCORE, args=(who, call, *map(str, numbers))))
        assert len(text.encode()) <= LIMIT_BYTES
