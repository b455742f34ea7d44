"""A scout card: taps are notes, in the order of what would change calls, and nothing else is."""

from __future__ import annotations

import random
from collections.abc import Sequence

import pytest
from talk import Talk, demo_talk

from bot.chat.payload import LIMIT_BYTES, STAMP_BYTES, Verb, stamped, tap
from bot.chat.said import BookSaid, BookVerb, NoteSaid
from bot.chat.scouting import Scouting, Tapped
from bot.chat.understand import understand
from bot.chat.view import ChatView
from bot.chat.wording import wording
from knowledge.evidence import Profile, profile
from knowledge.phone_screen import MOST_LINES, wrapped
from knowledge.planning.scout_questions import scout_questions
from knowledge.vocabulary import PlayerId, Seen
from scouting_db.values import NoteId, PlayerRow

REACHED = 10**12

LAST_STAMPED = 36 ** (STAMP_BYTES - 1) - 1
"""The highest number of a book that a button can bear."""

CONTROLS = {"skip", "done", "undo", "put it back"}


def players(talk: Talk) -> tuple[PlayerId, PlayerId]:
    return PlayerId(talk.player("Okafor")), PlayerId(talk.player("Lindqvist"))


def answers(talk: Talk) -> list[str]:
    """The payloads of the question's answers."""
    found = [one for one in talk.buttons if one.label not in CONTROLS and "?" not in one.label]
    return [one.payload for one in found if one.payload.startswith("1:scout:")]


def believed(talk: Talk, who: Sequence[PlayerId]) -> list[Profile]:
    """What the book's notes come to; day and author as they were written."""
    with talk.book() as book:
        said = book.observations(who)
    today = max(one.day for one in said)
    return [profile(player, "", said, today=today) for player in who]


def figures(one: Profile) -> object:
    """Everything that an estimate says but the names of its notes."""
    skills = {
        key: (found.level, found.variance, found.says_yes, found.says_no, found.newest_day)
        for key, found in one.skills.items()
    }
    facts = {
        key: (found.value, found.chance, found.disagreeing, len(found.evidence))
        for key, found in one.facts.items()
    }
    return skills, facts


@pytest.mark.parametrize("seed", range(5))
def test_tapping_through_a_card_equals_typing_the_same_notes(seed: int) -> None:
    """Taps at random, a changed mind among them; then the notes' words, typed in that order."""
    rng = random.Random(seed)
    tapped, typed = demo_talk(), demo_talk()
    who = players(tapped)
    tapped.say("watching okafor and lindqvist")
    before = {row.note for row in tapped.notes()}
    shown: list[str] = []
    for _ in range(9):
        choice = rng.random()
        if choice < 0.15:
            tapped.tap("skip")
        elif choice < 0.3 and shown:
            tapped.press(rng.choice(shown))
        else:
            shown += answers(tapped)
            tapped.press(rng.choice(answers(tapped)))
    written = sorted(
        (row for row in tapped.notes() if row.note not in before), key=lambda row: row.note
    )
    assert written
    for row in written:
        assert all(one.seen is Seen.LIVE and one.origin == "tapped" for one in row.observations)
        typed.say(row.text)
        assert typed.heard is not None
        assert isinstance(typed.heard.understood, NoteSaid), row.text
    assert list(map(figures, believed(tapped, who))) == list(map(figures, believed(typed, who)))
    tapped.store.close()
    typed.store.close()


@pytest.mark.parametrize("question", scout_questions().values(), ids=lambda one: one.id)
def test_a_taps_words_typed_say_what_the_tap_says(question: object) -> None:
    roster = (PlayerRow(player=PlayerId(3), name="Chidi Okafor", ours=False),)
    view = ChatView(book=1, version=1, roster=roster)
    for answer in question.answers:  # type: ignore[attr-defined]
        (said,) = understand(answer.words.format(name="Okafor"), chat=view)
        assert isinstance(said, NoteSaid)
        assert [(one.trait, one.value, one.weight, one.denied, one.tag) for one in said.claims] == [
            (answer.trait, answer.value, 1.0, False, None)
        ]


def test_every_payload_fits_with_the_highest_numbers_reached() -> None:
    """With a book's stamp before it. Two numbers as long as a column holds would not fit.

    A card is numbered as the message that opened it, which a thousand messages a second would
    bring to REACHED in thirty years; players are numbered by book.
    """
    for question in scout_questions().values():
        for args in (
            (REACHED, question.id, REACHED, len(question.answers)),
            (REACHED, "skip", REACHED, question.id),
            (REACHED, "look", REACHED),
            ("open", question.id, REACHED, REACHED),
        ):
            payload = stamped(tap(Verb.SCOUT, *args), LAST_STAMPED)
            assert len(payload.encode()) <= LIMIT_BYTES


def test_of_somebody_unknown_the_hand_is_asked_first_and_then_what_changes_calls(
    demo: Talk,
) -> None:
    demo.say("scout castellano")
    assert demo.sent[-1].startswith("Castellano: which hand?")
    demo.tap("left")
    assert demo.sent[-1].startswith("Noted. Castellano is left-handed.")
    assert demo.context.scouting is not None
    asked = [question for _, question in demo.context.scouting.queue]
    assert {"ready", "drop", "crash"} <= {*asked[:5]}
    assert not {"serve", "spin", "foot_fault"} & {*asked[:12]}


def test_what_is_known_is_not_asked(demo: Talk) -> None:
    """The demo has Okafor's hand, side, backhand dink and body; a tap settles one more."""
    demo.say("scout okafor")
    card = demo.context.scouting
    assert card is not None
    asked = {question for _, question in card.queue}
    assert not asked & {"hand", "side", "bh_dink", "body", "forward", "two_hands"}
    first = card.queue[0]
    demo.press(answers(demo)[0])
    demo.say("scout okafor")
    assert demo.context.scouting is not None
    assert first not in demo.context.scouting.queue


def test_skip_goes_on_and_a_name_turns_the_card_to_them(demo: Talk) -> None:
    demo.say("watching okafor and lindqvist")
    first = demo.sent[-1].splitlines()[0]
    other = "Lindqvist" if first.startswith("Okafor") else "Okafor"
    demo.tap(f"{other}?")
    assert demo.sent[-1].startswith(f"{other}: ")
    turned = demo.sent[-1]
    demo.tap("skip")
    assert demo.sent[-1].startswith(f"{other}: ")
    assert demo.sent[-1] != turned


def test_the_warm_up_asks_only_what_it_shows(demo: Talk) -> None:
    demo.say("watching brandt and castellano warm up")
    card = demo.context.scouting
    assert card is not None
    assert card.warm_up
    assert all(scout_questions()[asked].warm_up for _, asked in card.queue)
    assert "poach" not in {asked for _, asked in card.queue}


def test_done_sums_up_on_one_screen_and_leads_on(demo: Talk) -> None:
    demo.say("watching brandt and castellano")
    for _ in range(10):
        demo.press(answers(demo)[0])
    demo.tap("done")
    said = demo.sent[-1]
    assert said.startswith("10 things noted, seen today:")
    assert "Castellano: " in said
    assert {"report on them", "game plan"} <= {one.label for one in demo.buttons}
    assert demo.context.scouting is None


def test_a_summary_of_few_taps_fits_a_screen(demo: Talk) -> None:
    demo.say("watching brandt and castellano")
    for _ in range(4):
        demo.press(answers(demo)[0])
    demo.tap("done")
    assert wrapped(demo.sent[-1].splitlines()) <= MOST_LINES


def test_done_at_once_notes_nothing(demo: Talk) -> None:
    before = demo.stored()
    demo.say("scout okafor")
    demo.tap("done")
    assert demo.sent[-1] == wording("scout.nothing")
    assert demo.stored() == before


@pytest.mark.parametrize(
    "said", ["done", "Done.", "ok im done", "that's it", "done with the card", "finished thanks"]
)
def test_done_typed_ends_the_card_as_its_tap_does(demo: Talk, said: str) -> None:
    demo.say("scout okafor and lindqvist")
    demo.press(demo.buttons[0].payload)
    assert demo.say(said).startswith("1 thing noted")
    assert demo.context.scouting is None


def test_skip_typed_asks_the_next_question(demo: Talk) -> None:
    first = demo.say("scout okafor and lindqvist")
    for said in ("skip", "dunno", "can't tell"):
        assert demo.say(said) != first
        first = demo.sent[-1]
    assert demo.context.scouting is not None
    assert len(demo.context.scouting.skipped) == 3


def test_done_without_a_card_is_no_card(demo: Talk) -> None:
    assert "noted" not in demo.say("done")
    demo.say("scout okafor")
    demo.say("lindqvist is done by game 3")
    assert demo.context.scouting is not None


def test_undo_takes_the_tap_back_and_asks_again(demo: Talk) -> None:
    demo.say("scout okafor")
    asked = demo.sent[-1].splitlines()[0]
    who = players(demo)
    before = list(map(figures, believed(demo, who)))
    demo.press(answers(demo)[0])
    assert list(map(figures, believed(demo, who))) != before
    demo.tap("undo")
    assert demo.sent[-1].startswith("Taken back: ")
    assert asked in demo.sent[-1]
    assert list(map(figures, believed(demo, who))) == before
    demo.tap("put it back")
    assert asked not in demo.sent[-1]
    assert list(map(figures, believed(demo, who))) != before
    demo.say("undo")
    assert asked in demo.sent[-1]


def test_the_same_tap_twice_is_one_note(demo: Talk) -> None:
    demo.say("scout okafor")
    payload = answers(demo)[0]
    demo.press(payload)
    once = demo.stored()
    assert demo.press(payload).startswith(wording("scout.twice"))
    assert demo.stored() == once


def test_the_same_answer_on_two_cards_of_a_day_counts_once(demo: Talk) -> None:
    """The second card is opened at that question; its note stands, and the evidence is one."""
    okafor, _ = who = players(demo)
    opening = tap(Verb.SCOUT, "open", "poach", okafor)
    demo.press(opening)
    demo.tap("poaches")
    once = list(map(figures, believed(demo, who)))
    notes = len(demo.notes())
    demo.press(opening)
    demo.tap("poaches")
    assert len(demo.notes()) == notes + 1
    assert list(map(figures, believed(demo, who))) == once


def test_a_changed_mind_stands(demo: Talk) -> None:
    okafor, _ = who = players(demo)
    demo.press(tap(Verb.SCOUT, "open", "poach", okafor))
    often, rarely = answers(demo)
    demo.press(often)
    demo.press(rarely)
    found = believed(demo, who)[0]
    assert {key[0].value: one.level < 0 for key, one in found.skills.items()}["poaching"]


def forged(talk: Talk) -> list[str]:
    """Taps that this card never offered, by what is wrong with them."""
    card = talk.context.scouting
    assert card is not None
    okafor, lindqvist = players(talk)
    (player, asked), number = card.queue[0], card.card
    other = "serve" if asked != "serve" else "spin"
    return [
        f"1:scout:{number + 1}:{asked}:{player}:1",  # another card
        f"1:scout:{number}:{asked}:{lindqvist}:1",  # not watched
        f"1:scout:{number}:{asked}:{player}:9",  # no such answer
        f"1:scout:{number}:{asked}:{player}:0",
        f"1:scout:{number}:{other}:{player}:1",  # never shown
        f"1:scout:{number}:backhand:{player}:1",  # no question
        f"1:scout:{number}:{asked}:{player}",
        f"1:scout:{number}:{asked}:999999:1",
        f"1:scout:{number}:skip:{player}:{other}",
        f"1:scout:{number}:skip:{player}:nothing",
        f"1:scout:{number}:look:{lindqvist}",
        f"1:scout:{number}:look",
        f"1:scout:x:{asked}:{okafor}:1",
        "1:scout:open:any:999999",
        "1:scout:open:nothing:1",
        "1:scout:open:any",
        "1:scout:done",
    ]


def test_forged_taps_change_nothing(demo: Talk) -> None:
    demo.say("scout okafor")
    payloads = forged(demo)
    before, card = demo.stored(), demo.context.scouting
    for payload in payloads:
        demo.press(payload)
        assert demo.stored() == before, payload
        assert demo.context.scouting == card, payload


def test_a_closed_card_and_one_of_another_day_take_no_taps(demo: Talk) -> None:
    demo.say("scout okafor")
    payload = answers(demo)[0]
    demo.say("scout lindqvist")
    fresh_anywhere, before = answers(demo)[0], demo.stored()
    assert demo.press(payload) == wording("scout.closed")
    demo.later(days=1)
    assert demo.press(fresh_anywhere) == wording("scout.closed")
    assert demo.stored() == before


def test_a_reader_of_a_group_taps_nothing(demo: Talk) -> None:
    group = demo.of("You", chat="-100")
    group.is_group = True
    group.bind_new_book()
    group.say("we are Mira and Tom")
    group.say("add Okafor")
    group.say("scout okafor")
    stranger = group.of("Stranger")
    stranger.is_group = True
    payload = next(one.payload for one in group.buttons if one.payload.startswith("1:scout:"))
    before = group.stored()
    stranger.press(payload)
    assert group.stored() == before


def test_an_unknown_name_is_asked_about_and_then_watched(demo: Talk) -> None:
    assert demo.say("scout petrov and hale").startswith("No petrov")
    demo.tap("add petrov")
    assert demo.sent[-1].startswith("Petrov: which hand?")


def test_nobody_to_watch_asks_whom(fresh_anywhere: Talk) -> None:
    assert fresh_anywhere.say("scout card") == wording("scout.whom")


def test_a_report_and_what_to_look_for_offer_the_card(demo: Talk) -> None:
    demo.say("report on castellano")
    assert wording("scout.open") in {one.label for one in demo.buttons}
    demo.tap(wording("scout.open"))
    assert "Castellano: " in demo.sent[-1]


def test_a_card_is_kept_between_messages() -> None:
    card = Scouting(
        card=7,
        day=3,
        players=(PlayerId(1), PlayerId(2)),
        warm_up=True,
        queue=((PlayerId(1), "hand"),),
        taps=(Tapped(place=(PlayerId(2), "side"), answer=2, note=NoteId(9)),),
        skipped=((PlayerId(2), "low"),),
    )
    assert Scouting.from_json(card.to_json()) == card
    assert card.without_note(NoteId(9)).with_note_again(NoteId(9)).taps == card.taps


def test_it_is_the_books_business(demo: Talk) -> None:
    demo.say("watching okafor")
    assert demo.heard is not None
    said = demo.heard.understood
    assert isinstance(said, BookSaid)
    assert said.verb is BookVerb.SCOUT
