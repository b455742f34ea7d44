"""Who we are, told with more in the same message: nothing of it may be lost."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import EVENING

from bot.chat import own_pair_told
from bot.chat.own_pair_told import pair_and_rest
from bot.chat.understand import understand


@pytest.mark.parametrize(
    ("said", "noted"),
    [
        ("we are mira and tom, tom is lefty", "Noted. Tom: left-handed."),
        ("hi we are mira and tom. mira plays left", "Noted. Mira: plays left."),
        ("were mira n tom, tom is lefty", "Noted. Tom: left-handed."),
    ],
)
def test_the_pair_is_known_and_the_rest_is_taken(
    fresh_anywhere: Talk, said: str, noted: str
) -> None:
    answered = fresh_anywhere.say(said)
    assert "You are Mira and Tom." in answered
    assert noted in answered
    assert len(fresh_anywhere.last) == 1


def test_whose_side_is_told_by_somebody_else_is_asked_about(fresh_anywhere: Talk) -> None:
    fresh_anywhere.user, fresh_anywhere.name = "zoe", "Zoe"
    answered = fresh_anywhere.say("we are mira and tom and i play left")
    assert "You are Mira and Tom." in answered
    assert answered.endswith("Which of you are you?")


@pytest.mark.parametrize("said", ["we're mira and tom", "hey were mira n tom!"])
def test_the_apostrophe_may_be_anywhere_or_left_out(fresh_anywhere: Talk, said: str) -> None:
    assert fresh_anywhere.say(said) == "You are Mira and Tom."


@pytest.mark.parametrize(
    "said", ["were struggling with okafor", "were gassed and cooked", "were up 4 and okafor is mad"]
)
def test_how_we_are_is_no_pair(demo: Talk, said: str) -> None:
    assert "You are" not in demo.say(said)


@pytest.mark.parametrize(
    "typed",
    [
        "gassed and cooked, what now",
        "tight and nervous. help",
        "down, what do we change",
        "mira and tom",
        "mira and tom,",
        "",
    ],
)
def test_what_names_no_two_people_or_tells_no_more_is_left_alone(typed: str) -> None:
    assert pair_and_rest(typed) is None


def test_two_names_with_spaces_and_marks_are_kept_whole() -> None:
    assert pair_and_rest("Mira Vale and Tom O'Dell; to 15") == ("Mira Vale and Tom O'Dell", "to 15")


@pytest.mark.parametrize(
    "said",
    [
        "im mira w/ tom",
        "hey i'm mira, playing with tom",
        "this is mira and my partner is tom today",
    ],
)
def test_one_of_us_tells_the_pair(demo: Talk, said: str) -> None:
    assert demo.say(said) == "You are Mira and Tom."


def test_a_day_may_open_with_where_we_are_and_who(demo: Talk) -> None:
    for said in (
        "were in denver, im mira w/ tom",
        "im mira with tom, we're in denver",
        "were in denver and im mira with tom",
    ):
        told = demo.say(said)
        assert told.startswith("You are Mira and Tom.")
        assert "Clock set: Denver" in told
        demo.say("undo")


@pytest.mark.parametrize(
    "said",
    ["im stuck with tom", "im good with that", "im okafor w/ tom", "he lobs and im stuck w/ tom"],
)
def test_not_everybody_with_somebody_is_our_pair(demo: Talk, said: str) -> None:
    assert not demo.say(said).startswith("You are ")


@pytest.mark.parametrize("said", ["ok playing now", "were playing now", "match started"])
def test_playing_now_shows_how_the_match_stands(demo: Talk, said: str) -> None:
    demo.say("next: okafor and lindqvist, one game to 15")
    assert demo.say(said) == "Who serves first?"
    assert demo.say("15 12 won") == "Won 15-12. The match is closed."
    assert demo.say(said).startswith("No match is on.")


@pytest.mark.parametrize(
    "said",
    [
        "im anselm, partner joss tarver",
        "im anselm partner joss tarver",
        "im anselm w/ joss tarver",
        "i'm Anselm. partner: Joss Tarver",
        "anselm here, partner joss tarver",
        "anselm here, playing with joss tarver",
        "im anselm, joss tarver is my partner",
        "my name is anselm, partner is joss tarver",
    ],
)
def test_two_whom_the_book_does_not_know_are_our_pair_and_the_first_writes(
    fresh_anywhere: Talk, said: str
) -> None:
    assert fresh_anywhere.say(said) == "You are Anselm and Joss."
    assert fresh_anywhere.say("i am righty").startswith("Noted. Anselm: right-handed.")


@pytest.mark.parametrize(
    "said",
    [
        "im anselm, partner joss tarver, lefty",
        "im anselm, partner joss tarver (lefty)",
        "im anselm my partner joss tarver is lefty",
        "im anselm w/ joss tarver, left handed",
    ],
)
def test_a_hand_behind_the_partner_is_the_partners(fresh_anywhere: Talk, said: str) -> None:
    told = fresh_anywhere.say(said)
    assert told.startswith("You are Anselm and Joss.")
    assert "Noted. Joss: left-handed." in told
    labels = [one.label for one in fresh_anywhere.buttons]
    assert len(labels) == len(set(labels))


@pytest.mark.parametrize(
    "said",
    [
        "im tired, partner is mad at me",
        "im lefty, partner righty",
        "im kitchen partner baseline",
        "im gassed, partner gassed",
        "im on the left, partner right",
        "im okafor, partner lindqvist",
        "im stuck w/ lindkvist",
        "im here, partner late",
    ],
)
def test_what_is_told_of_us_and_a_partner_is_no_pair(demo: Talk, said: str) -> None:
    assert not demo.say(said).startswith("You are ")


@pytest.mark.parametrize(
    "said",
    [
        "hi im ines, righty, playing mixed tomorow with emeka, hes a lefty. rally scoring to 15",
        "im ines, righty, playing womens doubles on saturday with emeka, hes a lefty",
        "im ines, righty, playing the mixed today w emeka, hes a lefty",
    ],
)
def test_what_is_played_may_stand_before_the_partner(fresh_anywhere: Talk, said: str) -> None:
    assert fresh_anywhere.say(said).startswith("You are Ines and Emeka.")
    assert ("hand", "right", False) in fresh_anywhere.claims("Ines")
    assert ("hand", "left", False) in fresh_anywhere.claims("Emeka")


@pytest.mark.parametrize("filler", ["x", "9 ", "okafor\n", "a and "])
def test_a_message_too_long_to_introduce_anybody_is_not_searched(
    monkeypatch: pytest.MonkeyPatch, filler: str
) -> None:
    """The pattern's work grows with the square of what it is given."""
    given: list[int] = []

    class Counting:
        def fullmatch(self, text: str) -> None:
            given.append(len(text))

    monkeypatch.setattr(own_pair_told, "_ONE_WITH", Counting())
    understand((filler * 4096)[:4096], chat=EVENING)
    assert all(length <= 500 for length in given)
    understand("im mira with tom", chat=EVENING)
    assert given


def test_he_behind_the_partners_name_is_the_partner(fresh: Talk) -> None:
    told = fresh.say("morning. devi here, playing w soren today, he's lefty")
    assert told == "You are Devi and Soren.\n\nNoted. Soren: left-handed."
