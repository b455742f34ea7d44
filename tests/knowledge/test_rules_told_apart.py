"""A medical time-out, an Erne out of the kitchen, a follow through: told from what is much alike.

Medical time-out: rulebook 2025, 10.B; both feet outside before a volley: 2026, 11.A.3.
"""

from __future__ import annotations

import pytest

from knowledge.rulebook.broken_paddle import as_broken_paddle
from knowledge.rulebook.entry import rule_named
from knowledge.rulebook.finding import find_rule
from knowledge.rulebook.newcomers import rule_of_a_newcomer
from knowledge.rulebook.told_apart import (
    asks_of_feet_first,
    asks_of_line_judges,
    asks_of_medical,
    asks_who_should_serve,
)

MEDICAL = [
    "how long is med timeout",
    "med timeout length",
    "medical t/o how long",
    "both timeouts gone, medical ok?",
    "no timeouts left can i take a medical",
    "how long do we get for a medical",
    "injury timeout how long",
]
FEET_FIRST = [
    "can he erne if he touches the nvz before he hits",
    "do u have to re establish both feet b4 an erne",
    "can you erne from inside the kitchen",
    "his foot was on the line then he erned legal?",
    "can i erne if i step in the kitchen first",
    "do both feet have to be outside before the erne",
]


@pytest.mark.parametrize("said", MEDICAL)
def test_a_medical_timeout_is_its_own_rule(said: str) -> None:
    assert asks_of_medical(said)
    found = find_rule(said).rule
    assert found is not None
    assert found.name == "medical"


@pytest.mark.parametrize("said", FEET_FIRST)
def test_an_erne_out_of_the_kitchen_is_a_fault(said: str) -> None:
    assert asks_of_feet_first(said)
    found = find_rule(said).rule
    assert found is not None
    assert found.ruling.call.startswith("Fault")


@pytest.mark.parametrize(
    "said",
    [
        "is the erne legal",
        "is the ernie legal if i jump from outside",
        "erne legal if feet outside when he hits?",
        "is an erne ok if he jumps over the corner",
        "how do we stop the erne from the kitchen side",
        "when should i erne",
    ],
)
def test_an_erne_as_it_should_be_is_not(said: str) -> None:
    assert not asks_of_feet_first(said)


@pytest.mark.parametrize(
    "said",
    ["how long is a timeout", "call the medical staff", "he wears a medical brace", "t/o left?"],
)
def test_other_timeouts_and_medical_words_are_not_that_rule(said: str) -> None:
    assert not asks_of_medical(said)


@pytest.mark.parametrize(
    ("said", "rule"),
    [
        ("foot fault on atp?", "kitchen enter"),
        ("is it a foot fault on an atp if i step in the kitchen", "kitchen enter"),
        ("foot fault on ernie?", "erne"),
        ("foot fault", "serve foot"),
        ("foot fault on the serve", "serve foot"),
    ],
)
def test_a_foot_fault_is_the_servers_unless_another_shot_is_named(said: str, rule: str) -> None:
    found = find_rule(said).rule
    assert found is not None
    assert found.name == rule


@pytest.mark.parametrize(
    "said",
    [
        "who is it best to have serving at 10-8, I want Brandt",
        "who should serve at match point",
        "who do we want to serve at 9 8 2",
    ],
)
def test_who_is_to_serve_in_mid_game_is_the_order_of_servers(said: str) -> None:
    found = find_rule(said).rule
    assert asks_who_should_serve(said)
    assert found is not None
    assert found.name == "rotation"


@pytest.mark.parametrize(
    "said",
    [
        "who should serve first",
        "who do we serve to at 9-8",
        "who should serve first at 0-0",
        "where do we serve at 10-8",
        "who serves better",
    ],
)
def test_other_questions_of_who_serves_are_not(said: str) -> None:
    assert not asks_who_should_serve(said)


@pytest.mark.parametrize(
    "said",
    [
        "it bounced on the line and she said out, there are line judges. can they challenge?",
        "can we appeal if a line judge called it out",
    ],
)
def test_a_call_taken_further_where_there_are_line_judges(said: str) -> None:
    found = find_rule(said).rule
    assert asks_of_line_judges(said)
    assert found is not None
    assert found.name == "bad call"


@pytest.mark.parametrize("said", ["who calls the line", "a line judge stood in my way", "appeal?"])
def test_line_judges_or_an_appeal_alone_decide_nothing(said: str) -> None:
    assert not asks_of_line_judges(said)


@pytest.mark.parametrize(
    ("said", "rule"),
    [
        ("nvz fault on follow through?", "momentum"),
        ("kitchen fault on follow thru?", "momentum"),
        ("followthru into the kitchen a fault?", "momentum"),
        ("is it ok if my followthrough goes in the nvz", "momentum"),
        ("follow through of my volley touched the kitchen line", "momentum"),
        ("can i follow through into the kitchen if the ball bounced first", "kitchen enter"),
        ("follow through over the net legal?", "follow through"),
        ("follow thru over the net legal from the kitchen", "follow through"),
        ("my hat fell in the kitchen on the follow through", "kitchen item"),
    ],
)
def test_a_follow_through_is_momentum_where_the_kitchen_is_spoken_of(said: str, rule: str) -> None:
    found = find_rule(said).rule
    assert found is not None
    assert found.name == rule


@pytest.mark.parametrize(
    ("said", "rule"),
    [
        ("nvz volley ok if i jump from behind n land oob", "erne"),
        ("legal if he jumps from outside the kitchen, volleys and lands outside?", "erne"),
        ("volley ok if i land in the kitchen after", "momentum"),
    ],
)
def test_who_jumps_clear_of_the_kitchen_may_volley(said: str, rule: str) -> None:
    found = find_rule(said).rule
    assert found is not None
    assert found.name == rule


@pytest.mark.parametrize(
    ("said", "rule"),
    [
        ("what do they mean 0-0-2", "score call"),
        ("sorry i dont get it why is it 2", "zero zero two"),
        ("why is the first server called second server", "zero zero two"),
        ("so if we lose the first rally they serve is that it", "zero zero two"),
        ("who serves first how do they decide", "toss"),
        ("can we swap sides in the middle of the game or is that cheating", "stack"),
        ("whats the kitchen rule again can i stand in it", "kitchen enter"),
        ("kath says 3-1-2, what do we do if we disagree about the score", "wrong score"),
    ],
)
def test_what_somebody_new_asks_has_its_rule(said: str, rule: str) -> None:
    found = find_rule(said)
    assert found.is_sure
    assert found.rule is not None
    assert found.rule.name == rule


@pytest.mark.parametrize(
    "said",
    [
        "why is it 2-0 to them",
        "can i go in the kitchen after my third",
        "is it legal to switch sides when they serve",
        "how do we decide who serves first",
        "if we lose the first game do they serve",
    ],
)
def test_what_only_sounds_new_is_left_to_the_model(said: str) -> None:
    assert rule_of_a_newcomer(said) is None


LANDS_IN = [
    "okoye lands in the nvz after an erne, legal?",
    "erne lands inside kitchen after volley legal?",
    "he jumps the corner, hits it, and lands in the nvz",
    "hale volleys it and walks in the kitchen after legal?",
    "foot in the kitchen after the erne allowed?",
    "is it legal to touch the kitchen after an erne",
]


def test_who_lands_in_the_kitchen_after_a_volley_is_never_told_legal() -> None:
    rules = {said: find_rule(said).rule for said in LANDS_IN}
    before = "is his paddle over the net on the erne legal"
    rules["gone on"] = find_rule("what about him landing in the nvz after", before=before).rule
    assert {said for said, one in rules.items() if one is None or one.name != "momentum"} == set()


def test_a_landing_that_is_no_fault_stays_what_it_was() -> None:
    said = {
        "lands outside the kitchen after an erne, legal?": "erne",
        "he doesnt land in the kitchen after the erne legal?": "erne",
        "ball bounced, he ernes and lands in kitchen legal?": "kitchen enter",
        "landed in the kitchen first then hit the erne": "kitchen jump",
        "his hat fell in the kitchen after his volley": "kitchen item",
        "his paddle is over the net on the erne, legal?": "over the net",
    }
    found = {one: find_rule(one).rule for one in said}
    assert {one: rule.name for one, rule in found.items() if rule is not None} == said


def test_a_broken_paddle_is_changed_and_no_ball() -> None:
    said = {
        "soren's paddle cracked mid rally": "paddle change",
        "my paddle has a crack, is it allowed": "paddle change",
        "his racket snapped during the point, replay?": "paddle change",
        "the ball cracked when his paddle hit it": "broken ball",
        "the ball cracked": "broken ball",
        "paddle broke the plane of the net": "over the net",
    }
    found = {one: find_rule(one).rule for one in said}
    assert {one: rule.name for one, rule in found.items() if rule is not None} == said
    change = rule_named("paddle change")
    assert change is not None
    legal = as_broken_paddle(change, "my paddle has a crack, is it allowed").ruling.call
    assert legal.startswith("No")
    assert "change the paddle" in as_broken_paddle(change, "my paddle broke").ruling.call
    assert as_broken_paddle(change, "can i change my paddle mid game") is change
