"""Taps that nobody was offered: forged, cut, of another book, of another time."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import MIRA, TOM
from talk import Talk, demo_talk

from bot.chat.file import File
from bot.chat.payload import LIMIT_BYTES, STAMP_BYTES, Tap, Verb, stamped, tap
from bot.chat.said import PlanAsk
from bot.chat.wording import wording
from bot.post import IncomingKind
from knowledge.advice import MatchFact
from knowledge.planning.scout_questions import scout_questions
from knowledge.situation import Situation
from knowledge.tactics.pair_up import card_of
from knowledge.vocabulary import Topic, Trait, Value

HUGE = str(10**40)
"""Beyond what a database column holds."""

BEYOND_BY_ONE = str(2**63)

BAD_NUMBERS = ["0", "-1", "987654321", BEYOND_BY_ONE, HUGE, "x", "1.5", "٣", "1 ", "nan", "us"]

NO_NUMBERS = ["-1", BEYOND_BY_ONE, HUGE, "x", "1.5", "٣", "1 ", "nan"]
"""What no page can be numbered; a page past the last one is the last one."""

LISTS = ["pool", "leaks", "student"]

REACHED = 10**12 - 1
"""More than any row's number comes to: the post's are the highest, one for each message of
everybody, and a thousand of them a second would take thirty years."""

TOO_OLD = wording("unclear.too_old")


def zone_of(talk: Talk) -> str:
    with talk.book() as book:
        return book.about().zone


def changes_nothing(talk: Talk, payload: str) -> str:
    stored, zone, context = talk.stored(), zone_of(talk), talk.context
    reply = talk.press(payload)
    assert talk.stored() == stored, payload
    assert zone_of(talk) == zone, payload
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
        Verb.PAGE: [["notes", match, "1"], ["pool", match], ["leaks", match, "1", "1"]]
        + [[what, bad, "1"] for what in LISTS for bad in BAD_NUMBERS]
        + [[what, match, bad] for what in LISTS for bad in NO_NUMBERS],
        Verb.SCOUT: [
            ["open", "any"],
            ["open", "weather", player],
            ["open", "any", player, hale, mira],
            ["open", "any", player, "9999"],
            ["7", "done"],
            ["7", "look", player],
            ["7", "skip", player, "hand"],
            ["7", "hand", player, "1"],
            *(["open", "any", bad] for bad in BAD_NUMBERS),
            *([bad, "hand", player, "1"] for bad in BAD_NUMBERS),
            *([bad, "done"] for bad in BAD_NUMBERS),
        ],
        Verb.OVER: [[match], [match, "1"], *([bad] for bad in BAD_NUMBERS)],
        Verb.ZONE: [["Mars/Base"], ["utc "], ["../etc/passwd"], ["/etc/localtime"], ["Europe"]]
        + [["Europe/Vienna", "UTC"], ["Europe/" + "x" * 300], ["Europe\0/Vienna"]]
        + [[bad] for bad in BAD_NUMBERS],
        Verb.IMPORT: [["1"], ["1", "1"], *([bad] for bad in BAD_NUMBERS)],
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


def test_a_file_of_another_chat_is_not_imported(demo: Talk) -> None:
    """The number is the installation's, so a forger may hit upon somebody else's file."""
    other = demo.of("kim", chat="kim's")
    other.send(IncomingKind.FILE, file=File(name="draw.csv", content=b"Name\nZora Vance\n"))
    demo.say("/players")
    assert changes_nothing(demo, other.button("add them").payload) == TOO_OLD
    assert other.tap("add them").startswith("Added 1 players")


def test_a_message_that_was_no_file_is_not_imported(demo: Talk) -> None:
    demo.send(IncomingKind.FILE, file=File(name="draw.csv", content=b"Name\nZora Vance\n"))
    pressed = Tap.parse(demo.button("add them").payload)
    demo.say("/players")
    (number,) = map(int, pressed.args)
    assert changes_nothing(demo, tap(Verb.IMPORT, number + 1)) == TOO_OLD


def test_a_forged_tap_of_an_open_card_changes_nothing(demo: Talk) -> None:
    """Another card's number, somebody it is not about, what it never asked, no such answer."""
    demo.say("scout ruiz and hale")
    assert demo.context.scouting is not None
    card = demo.context.scouting.card
    (asked, *_), okafor = demo.context.scouting.asked, demo.player("Okafor")
    watched, question = asked
    later = next(one.id for one in scout_questions().values() if one.id != question)
    for args in (
        (card - 1, question, watched, 1),
        (card, question, okafor, 1),
        (card, question, 9999, 1),
        (card, later, watched, 1),
        (card, "weather", watched, 1),
        (card, "look", okafor),
        (card, "skip", okafor, question),
        (card, "skip", watched, "weather"),
        (card, "done", watched),
        *((card, question, watched, bad) for bad in ("0", "99", HUGE, "x")),
    ):
        assert changes_nothing(demo, ":".join(map(str, ("1", "scout", *args)))).strip()


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


@pytest.mark.parametrize(
    ("answer", "shown"), [("we serve", "4-2-1. We serve"), ("they serve", "4-2-1. They serve")]
)
def test_who_serves_a_bare_score_may_be_typed_as_well_as_tapped(
    demo: Talk, answer: str, shown: str
) -> None:
    """What was typed stands: the score is not asked for again, nor is the game begun anew."""
    demo.say("next: ruiz and hale, to 11")
    assert demo.say("4-2-1").startswith("4-2-1: who serves?")
    assert demo.say(answer).startswith(shown)


def test_an_old_question_who_serves_is_not_answered_after_another_rally(demo: Talk) -> None:
    demo.say("next: ruiz and hale, to 11")
    demo.say("4-2-1")
    demo.say("0-0-2, we serve")
    demo.say("our point")
    assert demo.say("we serve").startswith("1-0-2.")


HIGHEST_STAMPED = 36 ** (STAMP_BYTES - 1) - 1
"""The highest number of a book that a button can bear."""

CARD = card_of(Situation(topic=Topic.PAIR_UP, ours=(MIRA, TOM))).items

NUMBERED = [
    (Verb.SCORE, "them", "21-19-2", int, int),
    (Verb.SIDES, "them", int, int, int),
    (Verb.SERVER, int, int, int),
    (Verb.ENDED, "winner", int, int),
    (Verb.ENDED_BY, int, int, int),
    (Verb.MEANT, int, int, int),
    (Verb.PLAN, max(PlanAsk, key=len), int, int),
    (Verb.PAGE, "student", int, int),
    *((Verb.AGREE, item.key, answer.code, int, int) for item in CARD for answer in item.answers),
]
"""The longest forms that carry numbers, by verb; int stands for one."""


@pytest.mark.parametrize("form", NUMBERED, ids=lambda form: ":".join(map(str, form[:3])))
@given(numbers=st.lists(st.integers(0, REACHED), min_size=3, max_size=3))
def test_the_longest_payload_fits_a_telegram_button(
    form: tuple[object, ...], numbers: list[int]
) -> None:
    """Bot API: callback_data is 1 to 64 bytes, of which a book's stamp takes 9.

    Three numbers as long as a column holds, 19 digits each, would fill them alone. So what must
    fit is what the numbers can come to: rows are numbered by book, messages by installation.
    """
    left = iter(numbers)
    args = [next(left) if arg is int else arg for arg in form[1:]]
    verb = form[0]
    assert isinstance(verb, Verb)
    text = stamped(tap(verb, *args), HIGHEST_STAMPED)
    assert len(text.encode()) <= LIMIT_BYTES
