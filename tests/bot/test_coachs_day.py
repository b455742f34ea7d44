"""What a coach asks around a day: all results of it, who a stranger is, what we do, many notes."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest
from coach_talks import coach_with_opponents, new_coach
from talk import Talk, copy_of

from bot.chat.said import BookSaid, BookVerb, Question


@pytest.fixture
def day() -> Iterator[Talk]:
    """A match won and one lost on the same day."""
    talk = copy_of(_day())
    yield talk
    talk.store.close()


@cache
def _day() -> Talk:
    talk = coach_with_opponents()
    for said in ("next petra and joost", "won 11-4 11-6", "next saskia and wim", "lost 11-4 11-6"):
        talk.say(said)
    return talk


@pytest.fixture
def coach() -> Iterator[Talk]:
    talk = copy_of(_coach())
    yield talk
    talk.store.close()


@cache
def _coach() -> Talk:
    talk = new_coach()
    talk.say("new opponent saskia")
    return talk


@pytest.mark.parametrize(
    "asked",
    [
        "summary of the day",
        "how many matches did we win",
        "who beat us today",
        "todays results",
        "all results today",
        "how did we do today",
        "did we win today?",
        "our record",
        "give me a recap of the day",
        "how was our day",
    ],
)
def test_the_day_is_all_its_matches(day: Talk, asked: str) -> None:
    before = day.stored()
    assert day.say(asked) == (
        "Today: 1 won, 1 lost.\nWon 11-4 11-6 vs Petra/Joost\nLost 4-11 6-11 vs Saskia/Wim"
    )
    assert day.stored() == before


def test_another_pair_of_the_coach_is_named(day: Talk) -> None:
    day.say("im coaching bram and lotte")
    day.say("next petra and wim")
    day.say("won 2-1")
    told = day.say("results today").splitlines()
    assert told[0] == "Today: 2 won, 1 lost."
    assert told[1] == "Ilka/Noor: won 11-4 11-6 vs Petra/Joost"
    assert told[3] == "Bram/Lotte: won 2-1 vs Petra/Wim"


def test_the_next_day_begins_anew(day: Talk) -> None:
    day.later(days=1)
    assert day.say("summary of the day").startswith("Last match: lost 4-11 6-11.")


def test_a_single_match_is_reviewed() -> None:
    talk = coach_with_opponents()
    talk.say("next petra and joost")
    talk.say("won 11-4 11-6")
    assert talk.say("summary of the day").startswith("Last match: won 11-4 11-6.")
    talk.store.close()


@pytest.mark.parametrize(
    "asked", ["which pair was the hardest", "compare the two pairs", "who was the toughest pair"]
)
def test_pairs_already_played_are_ranked_by_what_is_noted(day: Talk, asked: str) -> None:
    day.say("saskia is lefty and lobs well")
    assert day.say(asked).startswith("Most dangerous: Saskia/Wim.")


@pytest.mark.parametrize(
    "asked",
    [
        "what do i have on lotte",
        "report on lotte",
        "anything on lotte",
        "what do we know about lotte",
        "tell me about lotte",
        "notes on petra",
    ],
)
def test_who_is_not_in_the_book_is_offered(coach: Talk, asked: str) -> None:
    name = asked.split()[-1]
    assert coach.say(asked) == f"No {name} in your book yet."
    assert coach.button(f"add {name}")


@pytest.mark.parametrize(
    "asked",
    ["report on opponets", "what do i have on thme", "tell me about stacking", "report on ernes"],
)
def test_a_word_of_the_game_or_a_slip_is_nobody(coach: Talk, asked: str) -> None:
    assert not coach.say(asked).startswith("No ")


@pytest.mark.parametrize(
    ("said", "new", "kept"),
    [
        ("saskia's partner is wim", "wim", "Kept: Saskia plays with Wim."),
        ("saskia plays with lotte", "lotte", "Kept: Saskia plays with Lotte."),
        ("wim is saskias partner", "wim", "Kept: Wim plays with Saskia."),
        ("partner of saskia is lotte", "lotte", "Kept: Saskia plays with Lotte."),
    ],
)
def test_a_partner_who_is_new_is_added_as_one(coach: Talk, said: str, new: str, kept: str) -> None:
    assert coach.say(said) == f"No {new} in your book yet."
    assert coach.tap(f"add {new}") == kept


@pytest.mark.parametrize("said", ["saskia plays with topspin", "saskia's partner is slow"])
def test_how_somebody_plays_is_no_partner(coach: Talk, said: str) -> None:
    assert coach.say(said).startswith("Noted. Saskia:")


@pytest.mark.parametrize(
    ("asked", "verb"),
    [
        ("what can you do for a coach", BookVerb.HELP),
        ("how can you help me as a coach?", BookVerb.HELP),
        ("what can i ask you", BookVerb.HELP),
        ("i got a table of notes from last month to enter", BookVerb.MANY_NOTES),
        ("can i import a spreadsheet of notes?", BookVerb.MANY_NOTES),
        ("i have old notes from last year", BookVerb.MANY_NOTES),
    ],
)
def test_what_we_do_and_how_notes_come_in(coach: Talk, asked: str, verb: BookVerb) -> None:
    coach.say(asked)
    understood = coach.heard and coach.heard.understood
    assert isinstance(understood, BookSaid)
    assert understood.verb is verb


def test_what_we_do_about_a_shot_is_a_question(coach: Talk) -> None:
    coach.say("what can you do about lobs")
    assert coach.heard is not None
    assert isinstance(coach.heard.understood, Question)
