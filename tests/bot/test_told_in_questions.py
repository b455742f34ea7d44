"""A fact told in a question: kept as a note, and the question answered with it in force."""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.situation import Situation
from knowledge.vocabulary import Hand


def situation(talk: Talk) -> Situation:
    assert talk.heard is not None
    found = talk.heard.trace["situation"]
    assert isinstance(found, Situation)
    return found


@pytest.mark.parametrize(
    ("text", "hand"),
    [
        ("okafor is a lefty where do i dink him", Hand.LEFT),
        ("okafor lefty. dink him where", Hand.LEFT),
        ("okafor is right handed, where do i dink him?", Hand.RIGHT),
        ("so okafor is left handed how do i dink him", Hand.LEFT),
    ],
)
def test_a_hand_told_is_noted_and_answered_with(fresh: Talk, text: str, hand: Hand) -> None:
    fresh.say("/add Chidi Okafor")
    fresh.say(text)
    assert fresh.notes()[0].text == text
    assert ("hand", hand.value, False) in fresh.claims("Okafor")
    assert [one.hand for one in situation(fresh).theirs] == [hand]


def test_a_hand_told_holds_though_older_notes_disagree(demo: Talk) -> None:
    """The demo book has both told of Okafor; who says it now wants an answer for that hand."""
    demo.say("okafor is a lefty, where do I dink him")
    (hand,) = {one.hand for one in situation(demo).theirs if one.name == "Okafor"}
    assert hand is Hand.LEFT


def test_the_answer_is_another_than_without_it(fresh: Talk) -> None:
    fresh.say("/add Chidi Okafor")
    without = fresh.say("where do i dink okafor")
    told = fresh.say("okafor's backhand dink is weak where do i dink him")
    assert ("backhand_dink", "weakness", False) in fresh.claims("Okafor")
    assert told.startswith("Noted.")
    assert told.splitlines()[2] != without.splitlines()[0]


def test_a_question_alone_notes_nothing(fresh: Talk) -> None:
    fresh.say("/add Chidi Okafor")
    fresh.say("is okafor a lefty, right?")
    fresh.say("where do i dink okafor")
    assert fresh.notes() == ()


@pytest.mark.parametrize(
    ("text", "wide"),
    [
        ("tom is pulled wide, who takes the middle", "Tom"),
        ("they pulled me off the court, what does tom do", "Mira"),
        ("im mira, my partner is over by the fence, who takes the middle", "Tom"),
    ],
)
def test_who_is_wide_reaches_the_answer(demo: Talk, text: str, wide: str) -> None:
    demo.say(text)
    assert situation(demo).asked.pulled_wide == demo.player(wide)


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("mira is pulled wide who covers the middle", 0),
        ("okafor who covers the middle", 1),
        ("okafor is the one who covers the middle", 1),
    ],
)
def test_what_who_asks_is_claimed_of_nobody(fresh: Talk, text: str, claims: int) -> None:
    for name in ("Chidi Okafor", "Mira"):
        fresh.say(f"/add {name}")
    fresh.say(text)
    assert len(fresh.claims("Okafor")) == claims
    assert not fresh.claims("Mira")


def test_how_high_their_attack_comes_says_nothing_of_how_good_it_is(demo: Talk) -> None:
    notes = len(demo.notes(50))
    assert demo.say("they speed up chest high, leave or counter").startswith("Leave it")
    assert len(demo.notes(50)) == notes


def test_how_weak_a_shot_told_in_a_question_is_noted(demo: Talk) -> None:
    said = demo.say("okafor's dinks come chest high, where do i speed up")
    assert said.startswith("Noted. Okafor: ")
    assert "dink weak" in said.splitlines()[0]


@pytest.mark.parametrize(
    ("text", "claim"),
    [
        (
            "I see now that okafor is a lefty, and lindqvist has slow feet. so which side shall we"
            " serve at when lindqvist stands right?",
            ("hand", "left", False),
        ),
        ("we found out okafor is lefty. who covers the middle?", ("hand", "left", False)),
        ("it turns out okafor lobs a lot, where do we stand?", ("lob", "often", False)),
        ("we saw that okafor is slow, so who do we target", ("foot_speed", "weakness", False)),
    ],
)
def test_how_we_know_it_hides_nothing_told_beside_a_question(
    fresh: Talk, text: str, claim: tuple[str, str, bool]
) -> None:
    for name in ("Chidi Okafor", "Sven Lindqvist"):
        fresh.say(f"/add {name}")
    assert fresh.say(text).startswith("Noted.")
    assert claim in fresh.claims("Okafor")


@pytest.mark.parametrize(
    "text", ["how do we know okafor is lefty", "do we know if okafor is lefty?"]
)
def test_whether_we_know_it_tells_nothing(fresh: Talk, text: str) -> None:
    fresh.say("/add Chidi Okafor")
    assert "Noted" not in fresh.say(text)
    assert not fresh.claims("Okafor")


@pytest.mark.parametrize(
    ("said", "notes"),
    [
        ("hale stepped in nvz on follow thru after smash, ball already dead. fault?", 0),
        ("hale foot faulted on that erne, is that our point?", 0),
        ("hale steps in the kitchen every volley, can we call it?", 1),
    ],
)
def test_one_fault_to_be_ruled_on_is_no_habit(demo: Talk, said: str, notes: int) -> None:
    before = len(demo.notes())
    assert "rulebook" in demo.say(said)
    assert len(demo.notes()) == before + notes


def test_a_ball_told_for_its_ruling_notes_nothing(fresh: Talk) -> None:
    fresh.say("/add Chidi Okafor")
    fresh.say("okafor lands in the nvz after an erne, legal?")
    fresh.say("okafor ernes and falls in the kitchen. fault or not")
    fresh.say("okafor lobs it over the ref stand, legal?")
    assert fresh.notes() == ()
    fresh.say("okafor falls into the kitchen after his ernes every time, is that a fault")
    assert ("ernie", "often", False) in fresh.claims("Okafor")
