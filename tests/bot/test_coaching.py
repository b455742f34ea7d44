"""Several pairs in one book: whose hands, notes and agreements count, and none of the other's."""

from __future__ import annotations

import pytest
from day_lists import POOL, coach
from talk import Talk

from bot.chat.context import Context
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from knowledge.vocabulary import AgreementKey, PlayerId

MIDDLE = "who covers the middle"


@pytest.fixture
def coached(demo: Talk) -> Talk:
    """The demo book with a second pair of ours."""
    coach(demo)
    return demo


def ours(talk: Talk) -> set[int]:
    return set(talk.context.ours)


def pair(talk: Talk, first: str, second: str) -> set[int]:
    return {talk.player(first), talk.player(second)}


def test_whose_pair_we_are_holds_until_it_changes(coached: Talk) -> None:
    coached.say("I'm coaching Jo and Priya")
    coached.say(MIDDLE)
    assert ours(coached) == pair(coached, "Jo Marsh", "Priya")
    coached.say("now mira and tom")
    assert ours(coached) == pair(coached, "Mira", "Tom")


@pytest.mark.parametrize(
    "told",
    [
        "i'm the coach of jo marsh and priya",
        "coach of jo marsh and priya here",
        "hi, coach for jo marsh and priya today",
    ],
)
def test_a_coach_may_say_coach_of(coached: Talk, told: str) -> None:
    coached.say("now mira and tom")
    coached.say(told)
    assert ours(coached) == pair(coached, "Jo Marsh", "Priya")


def test_what_the_coach_said_of_two_is_a_note(coached: Talk) -> None:
    before = ours(coached)
    assert "stacking" in coached.say("coach said okafor and lindqvist stack")
    assert ours(coached) == before


def test_a_plan_for_a_pair_answers_for_it_and_says_so(coached: Talk) -> None:
    reply = coached.say("plan for jo and priya against ruiz and hale")
    assert "For Jo/Priya." in reply or "Jo/Priya vs" in reply
    assert ours(coached) == pair(coached, "Jo Marsh", "Priya")
    assert set(coached.context.theirs) == pair(coached, "Ana Ruiz", "Ben Hale")
    assert wrapped(reply.splitlines()) <= MOST_LIST_LINES


def test_hands_of_the_pair_that_speaks_change_the_answer(coached: Talk) -> None:
    coached.say("jo marsh is a lefty and plays left")
    coached.say("priya is a righty and plays right")
    mira_and_tom = coached.say("who takes the middle for mira and tom")
    jo_and_priya = coached.say("who takes the middle for jo marsh and priya")
    assert mira_and_tom.splitlines()[0] != jo_and_priya.splitlines()[0]
    assert "Jo/Priya" in jo_and_priya or "Jo Marsh/Priya" in jo_and_priya
    assert not {"Mira", "Tom"} & set(jo_and_priya.replace("'", " ").split())


def test_nothing_agreed_by_one_pair_reaches_the_other(coached: Talk) -> None:
    coached.say("we agreed forehand takes the middle")
    assert "agreed" in coached.say(MIDDLE)
    coached.say("now jo and priya")
    assert "agreed" not in coached.say(MIDDLE)
    coached.say("we agreed we stack on serve")
    coached.say("now mira and tom")
    assert "agreed" in coached.say(MIDDLE)
    with coached.book() as book:
        of_pair = {
            frozenset(row.players): {one.key for one in book.agreements_of(row.pair)}
            for row in book.pairs()
        }
    second = frozenset(map(PlayerId, pair(coached, "Jo Marsh", "Priya")))
    assert of_pair[second] == {AgreementKey.STACK}


def test_what_was_said_of_one_match_does_not_hold_for_the_other_pair(coached: Talk) -> None:
    coached.say("next: okafor and lindqvist, to 11")
    coached.say("okafor plays left")
    coached.say("we win 40 of 100 on serve and 50 receiving")
    coached.say("now jo and priya")
    now = coached.context
    blank = Context(pendings=now.pendings, pending_count=now.pending_count, change=now.change)
    assert (now.match, now.theirs, now.sides, now.rates, now.counts, now.formation) == (
        blank.match,
        blank.theirs,
        blank.sides,
        blank.rates,
        blank.counts,
        blank.formation,
    )


def test_usual_numbers_are_of_the_pair_that_said_them(coached: Talk) -> None:
    coached.say("our usual is 40 on serve and 50 receiving")
    first = coached.say("chance to win from 5-5-1")
    coached.say("now jo and priya")
    assert coached.say("chance to win from 5-5-1") != first
    coached.say("our usual is 48 on serve and 60 receiving")
    coached.say("undo")
    coached.say("now mira and tom")
    assert coached.say("chance to win from 5-5-1").splitlines()[0] == first.splitlines()[0]


def test_each_pair_has_its_own_match_and_pool(coached: Talk) -> None:
    coached.say(POOL)
    coached.say("won 15-11")
    coached.say("now jo and priya")
    assert "No pool is on" in coached.say("pool")
    coached.say("pool: nowak/petrov, ruiz/hale; one game to 11")
    coached.say("won 11-3")
    assert coached.say("pool").startswith("Pool: 1 won, 0 lost, 1 to play.")
    coached.say("now mira and tom")
    assert "15-11" in coached.say("pool")
    assert coached.say("next").startswith("Next: Ana Ruiz/Hale")


def test_undo_gives_the_pair_before_back(coached: Talk) -> None:
    before = coached.context
    coached.say("I'm coaching Zed and Ulla")
    assert coached.say("undo") == "Taken back: whom you speak for."
    assert coached.context.ours == before.ours
    assert coached.context.match == before.match
    with coached.book() as book:
        assert not {"Zed", "Ulla"} & {row.name for row in book.players()}


def test_opponents_taken_for_ours_are_opponents_again_after_undo(coached: Talk) -> None:
    coached.say("I'm coaching Ruiz and Hale")
    assert ours(coached) == pair(coached, "Ana Ruiz", "Ben Hale")
    coached.say("undo")
    with coached.book() as book:
        assert not {row.name for row in book.players() if row.ours} & {"Ana Ruiz", "Ben Hale"}


def test_new_names_are_said(coached: Talk) -> None:
    assert "New in the book: Zed, Ulla." in coached.say("plan for zed and ulla vs ruiz and hale")


def test_two_of_our_pairs_may_face_each_other(coached: Talk) -> None:
    coached.say("plan for mira and tom against jo and priya")
    assert coached.heard is not None
    situation = coached.heard.trace["situation"]
    assert {one.player for one in situation.theirs} == pair(coached, "Jo Marsh", "Priya")
    assert {one.player for one in situation.ours} == pair(coached, "Mira", "Tom")


@pytest.mark.parametrize(
    "said",
    [
        "plan for Mira and Tom against Mira and Tom",
        "plan for mira & tom vs tom & mira",
        "plan against mira and tom",
        "next: mira and tom",
        "next: tom and mira, to 11",
        "I'm coaching Jo and Priya against Jo and Priya",
        "plan for Mira and Tom against Tom and Okafor",
    ],
)
def test_a_pair_against_itself_is_said_kindly_and_changes_nothing(coached: Talk, said: str) -> None:
    before, stored = coached.context, coached.stored()
    reply = coached.say(said)
    assert "Who is across the net?" in reply
    assert coached.context == before
    assert coached.stored() == stored


def test_a_reader_of_the_book_does_not_switch_it(coached: Talk) -> None:
    coached.say("hello")
    with coached.book() as book:
        players = len(book.players())
    guest = coached.of("guest", chat="group")
    guest.is_group = True
    guest.say("I'm coaching Zed and Ulla")
    with coached.book() as book:
        assert len(book.players()) == players
