"""Two games logged by taps and words, and all that rests on them: rates, report, why, calls, mix.

The counts are worked out by hand from the lines below; by which rules a told rally speaks for a
rate stands in `knowledge.rally_rates`.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.post import IncomingKind
from knowledge.evidence import Profile, profile
from knowledge.vocabulary import PlayerId, Rate
from scouting_db.match_rates import tallies_of
from scouting_db.values import ChoiceRow

THIRDS = 16
"""Rallies of the second game in which Okafor is told to have missed the third."""

LOGGED = 11 + 1 + 2 * THIRDS + 11
"""Rallies of both games."""


@pytest.fixture
def match(demo: Talk) -> Talk:
    """Mira serves to Lindqvist at 0-0-2 of a best of three."""
    demo.say("next: okafor and lindqvist, best of 3 to 11")
    demo.tap("we serve")
    demo.tap("Lindqvist started right")
    return demo


def first_game(talk: Talk) -> None:
    """Eleven rallies, all ours: of their errors nine are Okafor's and two Lindqvist's."""
    talk.tap("our rally")
    talk.tap("their miss")
    talk.tap("Okafor")
    for _ in range(7):
        talk.say("ours, okafor popped up a dink")
    talk.say("ours, lindqvist into the net")
    talk.say("ours, lindqvist into the net")
    assert "Game 1 ours" in talk.say("ours, okafor missed the return")


def second_game(talk: Talk) -> None:
    """They serve first and never score; Okafor misses THIRDS thirds, the rest is only counted."""
    talk.tap("they serve first")
    talk.say("ours")
    for _ in range(THIRDS // 2):
        talk.say("theirs")
        talk.say("theirs")
        talk.say("ours, okafor missed the third")
        talk.say("ours, okafor missed the third")
    for _ in range(10):
        talk.say("ours")
    assert "11-0" in talk.say("ours")


def okafor(talk: Talk) -> Profile:
    """His profile by the same road as an answer's, from the book as it stands."""
    player = PlayerId(talk.player("Okafor"))
    with talk.book() as book:
        return profile(
            player,
            "Okafor",
            book.observations([player]),
            today=0,
            tallies=tallies_of(book.match_rates(), [player]),
        )


def counted(talk: Talk) -> dict[Rate, tuple[int, int]]:
    return {rate: (one.made, one.of) for rate, one in okafor(talk).rates.items()}


ASKED = "what do we know about okafor"


def test_rates_are_those_counted_by_hand(match: Talk) -> None:
    """Nine of eleven errors were his. Mira served in turn from the right, to Lindqvist, and from
    the left, to Okafor: four returns of his went in (rallies 2, 4, 6 and 8 ended on a named
    stroke after the return), the eleventh did not."""
    first_game(match)
    assert counted(match) == {Rate.RETURN_IN: (4, 5), Rate.STEADY: (2, 11)}
    second_game(match)
    assert counted(match) == {
        Rate.RETURN_IN: (4, 5),
        Rate.STEADY: (2, 11 + THIRDS),
        Rate.THIRD_FORWARD: (0, THIRDS),
    }


def test_the_report_says_what_rallies_say_and_why_lists_them(match: Talk) -> None:
    first_game(match)
    second_game(match)
    report = match.say(ASKED)
    assert f"Okafor: weak third shot (book: {THIRDS} of {LOGGED} rallies tagged, today)" in report
    assert match.heard is not None
    numbers = match.heard.trace["advice"].numbers
    assert (numbers["Okafor.third_forward_made"], numbers["Okafor.third_forward_of"]) == (0, THIRDS)
    why = match.say("why?")
    assert f"Okafor: thirds that got them forward 0 of {THIRDS}; about" in why
    assert f"lost rallies that ended on the partner 2 of {11 + THIRDS}; about" in why


def test_targets_and_returns_rest_on_them_and_why_quotes_their_words(match: Talk) -> None:
    first_game(match)
    second_game(match)
    match.say("next: okafor and lindqvist")
    target = match.say("who do we target late")
    assert "Okafor" in target.splitlines()[0]
    lost = 11 + THIRDS
    assert f"{lost - 2} of {lost} lost rallies ended on Okafor (book: {lost} rallies)" in target
    why = match.say("why?")
    assert "“ours, okafor missed the third”" in why
    back = match.say("where do i return")
    assert back.startswith("Return deep at Okafor")
    assert f"(book: {THIRDS} of {LOGGED} rallies tagged)" in back
    why = match.say("why?")
    assert "“ours, okafor missed the third”" in why
    plan = match.say("give me a game plan")
    assert f"weak third shot (book: {THIRDS} of {LOGGED} rallies tagged)" in plan


def test_undo_takes_a_rally_out_everywhere_and_redo_brings_it_back(match: Talk) -> None:
    first_game(match)
    before = match.say("who do we target late"), match.say("why?")
    ended = "9 of 11 lost rallies ended on Okafor (book: 11 rallies)"
    assert f"Late: Okafor. {ended}" in before[1]
    report = match.say(ASKED)
    assert "Okafor: weak return (book: 5 of 11 rallies tagged" in match.say("why?")
    match.say("undo")
    assert counted(match) == {Rate.RETURN_IN: (4, 4), Rate.STEADY: (2, 10)}
    on_again = match.say("who do we target late") + match.say("why?")
    assert "lost rallies ended" not in on_again, "the game is on again"
    match.say(ASKED)
    assert "weak return" not in match.say("why?")
    match.say("redo")
    assert counted(match) == {Rate.RETURN_IN: (4, 5), Rate.STEADY: (2, 11)}
    assert (match.say("who do we target late"), match.say("why?")) == before
    assert match.say(ASKED) == report


def test_an_edited_rally_speaks_as_it_now_reads(match: Talk) -> None:
    match.say("ours, okafor popped up a dink", external_message_id=70)
    assert counted(match)[Rate.STEADY] == (0, 1)
    match.send(IncomingKind.EDIT, text="ours, lindqvist popped up a dink", external_message_id=70)
    assert counted(match)[Rate.STEADY] == (1, 1)
    match.say("undo")
    assert counted(match)[Rate.STEADY] == (0, 1)


def logged_serves(talk: Talk) -> float:
    talk.say("where do i serve")
    assert talk.heard is not None
    mix = talk.heard.trace["advice"].mix
    return 0 if mix is None else mix.logged_aims


def test_a_choice_tapped_before_its_rally_is_in_the_mix_one_told_after_is_not(match: Talk) -> None:
    match.say("tag rallies")
    match.say("score")
    match.tap("serve T")
    match.tap("our rally")
    assert logged_serves(match) == 1
    match.say("stop tagging")
    match.say("ours, served wide, they missed")
    assert [one.tagged_before for one in chosen(match)] == [True, False]
    assert logged_serves(match) == 1


def chosen(talk: Talk) -> tuple[ChoiceRow, ...]:
    current = talk.context.match
    assert current is not None
    with talk.book() as book:
        return book.choices_in(current)
