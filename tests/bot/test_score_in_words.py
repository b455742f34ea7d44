"""The running score put right, asked for and counted in a few words."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.match_log import unvoided
from scouting_db.values import EntryRow

NEXT = "next: ruiz and hale, best of 3 to 11"


@pytest.fixture
def match(demo: Talk) -> Talk:
    """A match of Mira and Tom with Ruiz and Hale; we serve first."""
    demo.say(NEXT)
    demo.say("we serve")
    return demo


def log_of(talk: Talk) -> tuple[EntryRow, ...]:
    number = talk.context.match
    assert number is not None
    with talk.book() as book:
        return unvoided(book.entries(number))


def rallies(talk: Talk) -> int:
    return sum(one.kind == "rally" for one in log_of(talk))


def call(talk: Talk) -> str:
    return talk.say("score").split(".")[0]


# Undo and redo: a stack.


def test_the_tap_undone_last_is_put_back_and_nothing_more(match: Talk) -> None:
    for said in ("our rally", "undo", "their rally", "undo"):
        match.say(said)
    assert match.say("put it back").startswith("Put back: their rally.\n0-0-1.")
    assert match.say("put it back").startswith("Nothing was taken back")
    assert rallies(match) == 1


def test_several_come_back_in_the_order_they_were_counted(match: Talk) -> None:
    for said in ("our rally", "their rally", "undo", "undo"):
        match.say(said)
    assert match.say("redo").startswith("Put back: our rally.\n1-0-2.")
    assert match.say("redo").startswith("Put back: their rally.\n0-1-1.")


def test_a_new_entry_clears_what_could_be_put_back(match: Talk) -> None:
    match.say("our rally")
    match.tap("undo")
    old = match.button("put it back").payload
    match.say("their rally")
    before = match.stored()
    assert match.say("redo").startswith("Nothing was taken back")
    assert match.press(old).startswith("Too old to put back")
    assert match.stored() == before
    match.say("undo")
    assert match.press(old).startswith("Too old to put back")
    assert match.say("redo").startswith("Put back: their rally.")
    assert rallies(match) == 1


def test_what_cannot_be_put_back_is_no_old_button(demo: Talk) -> None:
    demo.say(NEXT)
    demo.say("undo")
    assert demo.say("redo").startswith("Nothing was taken back")


def test_what_was_undone_last_goes_first_by_button_too(match: Talk) -> None:
    match.say("our rally")
    match.say("their rally")
    match.say("undo")
    later = match.button("put it back").payload
    match.say("undo")
    assert match.press(later).startswith("Too old to put back")
    assert rallies(match) == 0


# A correction in words replaces the last rally.


@pytest.mark.parametrize(
    "said",
    ["no wait, their rally", "actually that was their point", "no their rally", "no, we missed",
     "wait, theirs", "other way round"],
)  # fmt: skip
def test_a_correction_replaces_the_last_rally(match: Talk, said: str) -> None:
    match.say("our rally")
    assert match.say(said).startswith("0-0-1. They serve")
    assert rallies(match) == 1
    assert "1-0-2" in match.say("undo"), "one step back to the rally as first counted"
    assert "0-0-1" in match.say("redo")


def test_a_correction_that_changes_nothing_counts_nothing(match: Talk) -> None:
    match.say("their rally")
    before = match.stored()
    assert match.say("no, their rally").startswith("That's how I have it.\n0-0-1.")
    assert match.stored() == before


@pytest.mark.parametrize("said", ["no way, our point", "our point, no doubt"])
def test_a_cheer_is_no_correction(match: Talk, said: str) -> None:
    match.say("our rally")
    assert match.say(said).startswith("2-0-2.")


# Only the serving side scores (2025 rulebook, 12.B).


@pytest.mark.parametrize("said", ["they scored", "they got a point", "they score", "hale scored"])
def test_a_point_of_the_receiving_side_is_asked_about(match: Talk, said: str) -> None:
    before = match.stored()
    assert match.say(said).startswith("Only the serving side scores")
    assert match.stored() == before
    assert [one.label for one in match.buttons] == ["their rally", "they serve at 1-0-2"]
    assert match.tap("they serve at 1-0-2").startswith("1-0-2. They serve")


def test_a_point_of_the_serving_side_counts(match: Talk) -> None:
    assert match.say("we scored").startswith("1-0-2.")
    assert match.say("their rally").startswith("0-1-1.")
    assert match.say("they scored").startswith("1-1-1. They serve")


def test_in_rally_scoring_either_side_scores(demo: Talk) -> None:
    demo.say("next: ruiz and hale, rally scoring to 21")
    demo.say("we serve")
    assert demo.say("they scored").startswith("1-0. They serve")


# Who serves.


@pytest.mark.parametrize(
    ("said", "score"),
    [
        ("its our serve", "1-0-2. Mira serves"),
        ("we are the ones serving", "1-0-2. Mira serves"),
        ("its their serve", "0-1-1. They serve"),
        ("their ball", "0-1-1. They serve"),
        ("mira's serving", "That's how I have it.\n1-0-2. Mira"),
        ("tom is serving", "1-0-2. Tom serves"),
        ("Tom serves", "1-0-2. Tom serves"),
        ("hale is serving", "0-1-1. Hale serves"),
        ("no, it's hale's serve", "0-1-1. Hale serves"),
    ],
)
def test_who_serves_may_be_said_at_any_score(match: Talk, said: str, score: str) -> None:
    match.say("our rally")
    assert match.say(said).startswith(score)
    assert match.say("their rally")[0].isdigit(), "and counting goes on"


def test_who_serves_by_name_is_one_step_to_undo(match: Talk) -> None:
    match.say("our rally")
    match.say("hale is serving")
    assert "1-0-2. Mira serves" in match.say("undo")
    assert "0-1-1. Hale serves" in match.say("redo")


def test_who_serves_before_the_first_rally_stands_right(demo: Talk) -> None:
    """2025 rulebook: the first server of a game starts on the right side."""
    demo.say(NEXT)
    assert demo.say("hale is serving").startswith("0-0-2. Hale serves from the right")


@pytest.mark.parametrize(
    "said", ["note: tom is serving", "tom is serving well today", "hale is serving to my backhand"]
)
def test_what_says_more_than_who_serves_stays_a_note(match: Talk, said: str) -> None:
    before = log_of(match)
    assert match.say(said).startswith("Noted")
    assert log_of(match) == before


@pytest.mark.parametrize(
    "said",
    [
        "we are the ones serving",
        "my partner is mad at me",
        "my partner is nervous as a kitten and it shows",
        "we are 7 to 4 and i stand on the wrong side i think",
    ],
)
def test_everyday_words_are_no_pair(fresh: Talk, said: str) -> None:
    assert "YOUR NAME" not in fresh.say(said)


@pytest.mark.parametrize("said", ["we are Will and Mark", "we are tom and mira"])
def test_names_are_a_pair(fresh: Talk, said: str) -> None:
    assert fresh.say(said).startswith("You are ")


# Slips.


@pytest.mark.parametrize(
    "said",
    ["oops", "oops wrong button", "wrong, undo", "go back", "take back", "undo that",
     "that was wrong", "wrong"],
)  # fmt: skip
def test_a_slip_takes_the_last_entry_back(match: Talk, said: str) -> None:
    match.say("our rally")
    match.say("our rally")
    assert match.say(said).startswith("Taken back: our rally.\n1-0-2.")


@pytest.mark.parametrize("said", ["that was wrong", "oops", "go back"])
def test_a_note_in_between_is_asked_about(match: Talk, said: str) -> None:
    match.say("our rally")
    match.say("hale: lefty")
    before = match.stored()
    assert match.say(said).startswith("Take back which?")
    assert match.stored() == before
    assert match.tap("undo our rally").startswith("Taken back: our rally.")


def test_a_slip_without_an_entry_takes_no_match_back(demo: Talk) -> None:
    demo.say(NEXT)
    assert demo.say("oops").startswith("Take back which?")
    assert demo.context.match is not None


def test_a_wrong_button_that_ended_the_match_is_taken_back(demo: Talk) -> None:
    demo.say("next: ruiz and hale, one game to 11")
    demo.say("we serve at 10-3")
    demo.say("our rally")
    assert "10-3-" in demo.say("oops wrong button")


def test_undo_everything_goes_step_by_step(match: Talk) -> None:
    match.say("our rally")
    match.say("their rally")
    assert match.say("undo everything").startswith("Taken back: their rally.\n1-0-2.")
    assert "0-0-2" in match.tap("undo one more")


# Rallies in a few words.


@pytest.mark.parametrize(
    ("said", "score"),
    [
        ("they hit it out", "1-0-2."),
        ("they missed", "1-0-2."),
        ("hale hit it long", "1-0-2."),
        ("their error", "1-0-2."),
        ("our ace", "1-0-2."),
        ("our error", "0-0-1."),
        ("fault on us", "0-0-1."),
        ("tom hit it into the net", "0-0-1."),
        ("I missed", "0-0-1."),
        ("hale aced us", "0-0-1."),
    ],
)
def test_a_rally_in_a_few_words(match: Talk, said: str, score: str) -> None:
    assert match.say(said).startswith(score)
    number = match.context.match
    assert number is not None
    with match.book() as book:
        assert [one.words for one in book.rallies(number)] == [said]


@pytest.mark.parametrize("said", ["point", "Point!"])
def test_whose_point_is_asked(match: Talk, said: str) -> None:
    before = match.stored()
    assert match.say(said) == "Whose point?"
    assert match.stored() == before
    assert match.tap("their rally").startswith("0-0-1.")


@pytest.mark.parametrize(
    "said",
    ["okafor hit it out a lot", "okafor hit it out", "note: hale hit it out",
     "hale netted his backhand drives again"],
)  # fmt: skip
def test_notes_about_opponents_stay_notes(match: Talk, said: str) -> None:
    before = log_of(match)
    assert match.say(said).startswith("Noted")
    assert log_of(match) == before


def test_without_a_match_such_words_count_nothing(fresh: Talk) -> None:
    for said in ("they missed", "our error", "ace", "its our serve", "make it 5"):
        fresh.say(said)
        assert fresh.heard is not None
        assert fresh.heard.kind in ("question", "note", "unclear"), said


# The call, and the score put right.


@pytest.mark.parametrize(
    "asked",
    ["what's the call", "what do i call", "call?", "announce", "call the score", "who's ahead",
     "score please"],
)  # fmt: skip
def test_the_call_can_be_asked_for(match: Talk, asked: str) -> None:
    match.say("our rally")
    assert match.say(asked).startswith("1-0-2. Mira serves")


@pytest.mark.parametrize(
    ("said", "score"),
    [
        ("no they have 5", "4-5-1. We serve"),
        ("we have 5", "5-3-1. We serve"),
        ("other way round", "4-3-1. They serve"),
        ("wait it should be 4-4-1", "4-4-1."),
        ("no its 4-4-1", "4-4-1."),
        ("make it 5-3-2", "5-3-2."),
        ("it was 5-3 not 4-3 we serve", "5-3-1. We serve"),
        ("should be 5-3-1 instead of 4-3-1", "5-3-1. We serve"),
    ],
)
def test_a_score_is_put_right(match: Talk, said: str, score: str) -> None:
    match.say("we serve 4-3-1")
    assert match.say(said).startswith(score)
    assert "4-3-1. We serve" in match.say("undo")


def test_one_sides_points_may_come_first(demo: Talk) -> None:
    demo.say(NEXT)
    assert demo.say("we have 5").startswith("5-0, ours first. Who serves?")


def test_one_number_is_asked_about(match: Talk) -> None:
    match.say("we serve 4-3-1")
    assert match.say("make it 5") == "5 for whom?"
    assert match.tap("them: 4-5-1").startswith("4-5-1. We serve")


def test_one_number_that_only_fits_one_side_is_taken(match: Talk) -> None:
    match.say("we serve 4-3-1")
    assert match.say("make it 4").startswith("4-4-1. We serve")


@pytest.mark.parametrize(
    "said", ["-3-4-1", "3.5-2-1", "99-98-1", "4 5 6 7", "1000-999-1", "3--4-1"]
)
def test_what_is_no_score_is_not_taken_for_another(match: Talk, said: str) -> None:
    match.say("we serve 4-3-1")
    before = match.stored()
    reply = match.say(said)
    assert "reads like 6-4-2" in reply or "Not stored" in reply
    assert match.stored() == before


def test_four_numbers_that_are_two_games_are_a_result(match: Talk) -> None:
    assert match.say("11 8 11 6").startswith("Won 11-8 11-6.")


@pytest.mark.parametrize(
    "said",
    ["wrong guy that was okafor", "wrong player, that was hale", "no wrong name that was okafor"],
)
def test_who_somebody_was_is_no_rally_of_theirs(match: Talk, said: str) -> None:
    assert match.say("ruiz is a lefty").startswith("Noted. Ana Ruiz")
    assert match.say(said).startswith("Changed. ")
    assert rallies(match) == 0
    assert call(match) == "0-0-2"
    match.say(said)
    assert call(match) == "0-0-2"


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("lost point", "3-5-2. We serve"),
        ("lost pt", "3-5-2. We serve"),
        ("point lost", "3-5-2. We serve"),
        ("another point lost", "3-5-2. We serve"),
        ("won point", "4-5-1. We serve"),
        ("point won", "4-5-1. We serve"),
    ],
)
def test_a_point_and_how_it_went_is_a_rally(demo: Talk, said: str, then: str) -> None:
    demo.say("3-5-1, we serve")
    assert demo.say(said).startswith(then)


@pytest.mark.parametrize("said", ["lost match point", "won point blank", "point lost in the wind"])
def test_more_than_that_is_none(demo: Talk, said: str) -> None:
    demo.say("3-5-1, we serve")
    demo.say(said)
    assert demo.say("score").startswith("3-5-1. We serve")


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("down 5-8 wtf do we do", "8-5-1. They serve"),
        ("were down 5-8 omg what now", "8-5-1. They serve"),
        ("up 8-5 ugh how do we close", "8-5-1. We serve"),
    ],
)
def test_a_score_before_a_curse_and_a_question_counts(demo: Talk, said: str, then: str) -> None:
    demo.say("5-5-1, we serve")
    assert then in demo.say(said)


# A call taken back by what was not so.


@pytest.mark.parametrize(
    "said",
    [
        "1-0-... no we did not serve, sorry. They serve 0-0-1",
        "1-0-1, no we were not serving, sorry. 0-0-1 they serve",
        "hale has served in the net, 1-0-... no we did not serve, sorry. They serve 0-0-1",
    ],
)
def test_what_was_not_so_takes_a_call_back_and_denies_no_skill(demo: Talk, said: str) -> None:
    demo.say(NEXT)
    demo.say(said)
    assert call(demo) == "0-0-1"
    assert "They serve" in demo.sent[-1]
    assert not {one for one in demo.claims("Hale") if one[0] == "serve" and one[2]}
