"""Asked which of the alike is meant, people type the name as often as they tap it."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.name_given import name_given
from bot.chat.pending import Pending
from bot.chat.view import ChatView
from knowledge.vocabulary import PlayerId
from scouting_db.values import PlayerRow

ANA, PENA, HALE = PlayerId(1), PlayerId(2), PlayerId(3)
CHAT = ChatView(
    book=1,
    version=1,
    roster=(
        PlayerRow(player=ANA, name="Ana Ruiz", ours=False),
        PlayerRow(player=PENA, name="Ana Ruiz-Peña", ours=False),
        PlayerRow(player=HALE, name="Ben Hale", ours=False),
    ),
)
ALIKE = Pending(number=4, typed="ruiz", text="next: ruiz and hale", candidates=(ANA, PENA))
ONE_NEAR = Pending(number=5, typed="hail", text="where do i dink hail", candidates=(HALE,))
NOBODY = Pending(number=6, typed="zubiri", text="zubiri is a lefty", candidates=())
TWO_NEW = Pending(
    number=9,
    typed="kenji mori",
    text="next: kenji mori and pat olsen",
    candidates=(),
    also=("pat olsen",),
)
WHOSE = Pending(number=7, typed="", text="pops up", candidates=(ANA, HALE), note=3)


@pytest.mark.parametrize(
    ("said", "player"),
    [
        ("ana ruiz", ANA),
        ("the first one", ANA),
        ("2nd", PENA),
        ("the last one", PENA),
        ("pena", PENA),
        ("i mean Peña", PENA),
        ("oh sorry, it's ruiz-peña", PENA),
    ],
)
def test_one_of_the_alike_is_typed(said: str, player: PlayerId) -> None:
    assert name_given(said, ALIKE, CHAT) == f"1:who:4:{player}"


@pytest.mark.parametrize(
    "said",
    ["ruiz", "hale", "the third one", "yes", "no", "undo", "where do i dink ana ruiz", "11-7", ""],
)
def test_whatever_else_is_read_as_ever(said: str) -> None:
    assert name_given(said, ALIKE, CHAT) is None


@pytest.mark.parametrize(
    ("said", "pending", "payload"),
    [
        ("yes", ONE_NEAR, "1:who:5:3"),
        ("hale", ONE_NEAR, "1:who:5:3"),
        ("no, add him", ONE_NEAR, "1:add:5"),
        ("a new player", ONE_NEAR, "1:add:5"),
        ("yes please", NOBODY, "1:add:6"),
        ("add her", NOBODY, "1:add:6"),
        ("both", TWO_NEW, "1:add:9"),
        ("add both", TWO_NEW, "1:add:9"),
        ("they are both new", TWO_NEW, "1:add:9"),
        ("that was hale", WHOSE, "1:who:7:3"),
    ],
)
def test_yes_and_new_where_a_name_was_offered(said: str, pending: Pending, payload: str) -> None:
    assert name_given(said, pending, CHAT) == payload


@pytest.mark.parametrize("said", ["ok", "right", "sure", "please", "rise", "plan"])
@pytest.mark.parametrize("pending", [ALIKE, ONE_NEAR, NOBODY, WHOSE])
def test_a_nod_or_an_everyday_word_names_nobody(said: str, pending: Pending) -> None:
    assert name_given(said, pending, CHAT) is None


@pytest.mark.parametrize("typed", ["dag holm", "holm", "priya venn"])
def test_yes_never_puts_somebody_of_another_name_in(typed: str) -> None:
    """Hale is only the nearest there is: yes adds the name that was typed."""
    pending = Pending(number=5, typed=typed, text=f"next: {typed}", candidates=(HALE,))
    assert name_given("yes", pending, CHAT) == "1:add:5"


def test_a_new_pair_is_added_by_two_yeses_and_none_of_ours_is_put_in(demo: Talk) -> None:
    demo.say("next: Priya Venn and Dag Holm")
    said = demo.say("yes")
    if not said.startswith("Next:"):
        said = demo.say("yes")
    assert said.startswith("Next: Priya Venn and Dag Holm")


def test_yes_says_nobodys_name() -> None:
    """ "Who is the note about?" is no question for a yes, though one name is offered."""
    one = Pending(number=8, typed="", text="pops up", candidates=(HALE,), note=3)
    assert name_given("yes", one, CHAT) is None


@pytest.mark.parametrize("said", ["both", "both of them pop up"])
def test_both_is_said_of_two(said: str) -> None:
    assert name_given(said, NOBODY, CHAT) is None


def test_add_both_adds_the_one_asked_about() -> None:
    """The other is known, or was not heard as a name: nobody says it to add nobody."""
    assert name_given("add both", NOBODY, CHAT) == name_given("add", NOBODY, CHAT) is not None


@pytest.mark.parametrize("pending", [ONE_NEAR, NOBODY, WHOSE])
def test_no_alone_settles_nothing(pending: Pending) -> None:
    assert name_given("no", pending, CHAT) is None


def test_whose_note_it_is_adds_nobody() -> None:
    assert name_given("new", WHOSE, CHAT) is None


def test_an_announcement_goes_on_with_the_name_that_was_typed(demo: Talk) -> None:
    assert demo.say("next match vs ruiz/okafor court 4 10:40").startswith("Which ruiz?")
    assert demo.say("ana ruiz").startswith("Next: Ana Ruiz and Chidi Okafor, 10:40")


def test_whom_we_play_is_meant_by_a_name_that_two_bear(demo: Talk) -> None:
    assert demo.say("where do i dink ruiz").startswith("Which ruiz?")
    demo.say("next: ana ruiz and okafor")
    assert demo.say("where do i dink ruiz").startswith("Dink Ana Ruiz")


def test_another_message_in_between_ends_the_question(demo: Talk) -> None:
    demo.say("next match vs ruiz/okafor court 4 10:40")
    demo.say("who covers the middle")
    assert "Next:" not in demo.say("ana ruiz")
