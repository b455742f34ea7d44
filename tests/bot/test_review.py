"""The review: what worked with its sizes, the traits that moved most, what to write down now."""

from __future__ import annotations

import random

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.review_said import COSTS
from bot.chat.said import BookSaid, BookVerb
from bot.chat.understand import understand
from bot.chat.wording import wording
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from knowledge.planning.moved_traits import MOST_MOVED
from knowledge.planning.review_counts import (
    FEWEST,
    Chosen,
    Ended,
    best,
    counts,
    our_errors,
    our_winners,
    worst,
)
from knowledge.vocabulary import Ending, Stroke, Topic, Trait


def begin(talk: Talk) -> None:
    talk.say("tag rallies")
    talk.say("next: okafor and lindqvist, to 11")
    talk.tap("we serve")


def play(talk: Talk, aims: str, won: str) -> None:
    """A rally per letter: `w`, `t`, `b` tags the serve where we serve; `u` is ours, `t` theirs."""
    for aim, winner in zip(aims, won, strict=True):
        label = {"w": "serve wide", "t": "serve T", "b": "serve body"}[aim]
        if label in {one.label for one in talk.buttons}:
            talk.tap(label)
        talk.tap("our rally" if winner == "u" else "their rally")


def test_without_a_match_it_says_kindly_what_to_do(demo: Talk) -> None:
    said = demo.say("review")
    assert said == wording("match.review_none")
    assert "we won 11-5" in said


def test_what_worked_and_what_cost_come_with_their_sizes(demo: Talk) -> None:
    begin(demo)
    play(demo, "wwwwbbbb", "uuuuuuut")
    said = demo.say("how did we do")
    assert "Rallies: won 7 of 8, serving 7 of 8." in said
    assert "Worked: serves wide, won 4 of 4." in said
    assert wording("review.few") in said


def test_a_stroke_that_we_missed_often_is_what_cost(demo: Talk) -> None:
    begin(demo)
    for _ in range(3):
        demo.say("dink error by tom, their point")
    assert "Cost us: dinks, 3 of our 3 errors." in demo.say("review")


def test_with_nothing_tagged_it_says_how_to_next_time(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist, to 11")
    demo.tap("we serve")
    for _ in range(3):
        demo.tap("our rally")
    assert wording("review.untagged") in demo.say("review")


def test_a_result_alone_is_reviewed_too(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("lost 8-11 11-6 9-11")
    said = demo.say("review")
    assert said.startswith("Last match: lost 8-11 11-6 9-11.")
    assert wording("review.no_rallies") in said


def test_what_moved_is_what_was_noted_during_this_match(demo: Talk) -> None:
    """Notes of before stay out; the largest move comes first; one turned round says so."""
    begin(demo)
    play(demo, "w", "u")
    demo.say("lindqvist third shot drop is strong")
    demo.say("okafor lobs a lot")
    demo.say("okafor pops up backhand dinks")
    said = demo.say("review").splitlines()
    start = said.index(wording("review.moved"))
    moved = said[start + 1 : start + 1 + MOST_MOVED]
    assert moved[0] == "· Okafor: lobs a lot, new (1 note)"
    assert any(line.startswith("· Lindqvist: ") and "less sure (1 note)" in line for line in moved)
    assert demo.heard is not None
    traits = {one.trait for one in demo.heard.trace["moved"]}
    assert Trait.LOB in traits
    assert Trait.POACHING not in traits


def test_the_moves_are_the_difference_of_the_two_beliefs(demo: Talk) -> None:
    """Closed form: a live note of today moves a beta of one and one from 0 to 1/3."""
    begin(demo)
    play(demo, "w", "u")
    demo.say("okafor lobs a lot")
    demo.say("review")
    assert demo.heard is not None
    (lob,) = [one for one in demo.heard.trace["moved"] if one.trait is Trait.LOB]
    assert lob.before.level == 0
    assert lob.after.level == pytest.approx(1 / 3)
    assert lob.move == pytest.approx(1 / 3)


def test_three_prompts_each_open_a_card_at_their_question(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("won 11-5 11-7")
    demo.say("review")
    prompts = [one for one in demo.buttons if one.payload.startswith("1:scout:open:")]
    assert len(prompts) == 3
    for prompt in prompts:
        assert demo.press(prompt.payload).startswith(prompt.label)


def test_a_review_changes_nothing_and_fits_the_screen(demo: Talk) -> None:
    begin(demo)
    play(demo, "wwwbbbttt", "uutuutuut")
    demo.say("okafor lobs a lot")
    demo.say("lindqvist is slow forward")
    before = demo.stored()
    said = demo.say("review")
    assert demo.stored() == before
    assert wrapped(said.splitlines()) <= MOST_LIST_LINES


def _chosen(option: str, won: int, of: int) -> list[Chosen]:
    return [
        Chosen(topic=Topic.AIM_SERVE, option=option, against=None, won=n < won) for n in range(of)
    ]


def test_counts_do_not_depend_on_the_order() -> None:
    chosen = _chosen("wide", 5, 8) + _chosen("t", 1, 6) + _chosen("body", 2, 2)
    expected = counts(chosen)
    random.Random(3).shuffle(chosen)
    assert counts(chosen) == expected
    assert [(one.option, one.won, one.of) for one in expected] == [("wide", 5, 8), ("t", 1, 6)]
    assert best(expected) == expected[0]
    assert worst(expected) == expected[-1]


def test_three_of_three_is_not_better_than_twenty_of_thirty() -> None:
    found = counts(_chosen("wide", 3, 3) + _chosen("t", 22, 30))
    assert found[0].option == "t"


def test_the_usual_is_neither_good_nor_bad() -> None:
    assert best(counts(_chosen("wide", 44, 100))) is None
    assert worst(counts(_chosen("wide", 44, 100))) is None


def test_endings_say_of_how_many_they_are() -> None:
    ended = [Ended(ending=Ending.UNFORCED_ERROR, stroke=Stroke.DINK, won=False)] * FEWEST
    ended += [Ended(ending=Ending.FORCED_ERROR, stroke=Stroke.RETURN, won=False)]
    ended += [Ended(ending=Ending.UNFORCED_ERROR, stroke=Stroke.DINK, won=True)] * 5
    found = our_errors(ended)
    assert found is not None
    assert (found.stroke, found.count, found.of) == (Stroke.DINK, FEWEST, FEWEST + 1)
    assert our_winners(ended) is None


@pytest.mark.parametrize(
    "asked",
    [
        "how did we do review",
        "how was it review",
        "how was that match, review please",
        "review the match against okafor",
        "recap of the match vs okafor and lindqvist",
        "what worked, review",
        "review game 1 quick",
    ],
)
def test_a_review_asked_twice_over_is_one(demo: Talk, asked: str) -> None:
    demo.say("next: okafor and lindqvist, to 11")
    demo.say("we won 11-7 11-8")
    before = demo.stored()
    assert demo.say(asked).startswith("Last match: won 11-7 11-8.")
    assert demo.stored() == before


@pytest.mark.parametrize(
    ("asked", "wanted"),
    [
        ("that wasnt very good was it. what went wrong", "lost"),
        ("who did we lose most points to", COSTS),
    ],
)
def test_what_lost_it_is_the_reviews_to_say(asked: str, wanted: str) -> None:
    (said,) = understand(asked, chat=EVENING)
    assert isinstance(said, BookSaid)
    assert (said.verb, said.words) == (BookVerb.REVIEW, wanted)


@pytest.mark.parametrize("asked", ["review okafor's backhand", "review the rule on line calls"])
def test_what_reviews_something_else_is_none(demo: Talk, asked: str) -> None:
    demo.say("next: okafor and lindqvist, to 11")
    demo.say("we won 11-7 11-8")
    assert not demo.say(asked).startswith("Last match:")


@pytest.mark.parametrize(
    "asked", ["what worked against okafor and lindqvist", "what went well vs okafor"]
)
def test_what_worked_against_those_just_played_is_the_review(demo: Talk, asked: str) -> None:
    begin(demo)
    play(demo, "wwwwbbbb", "uuuuuuut")
    demo.say("won 11-4 11-5")
    assert demo.say(asked).startswith("Last match: won 11-4 11-5.")


def test_what_worked_against_people_never_met_offers_the_plan(demo: Talk) -> None:
    demo.say("new opponent zenon pirk")
    assert demo.say("what worked against pirk").startswith("No match against Pirk")
    assert "game plan" in {one.label for one in demo.buttons}
