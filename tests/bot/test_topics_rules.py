"""Each pair rule in a case that calls for it, and in one that does not."""

from __future__ import annotations

import pytest

from bot.chat.topic_conditions import Said
from bot.chat.topic_model import recognise
from bot.chat.topic_rules import RULES, apply_rules
from bot.chat.utterance import read
from knowledge.vocabulary import Topic

ALSO = (
    ("while they serve our shot is the return", "their serve where to"),
    ("odds are a chance", "what serve rate do we need at <score>"),
    ("a toss is won before the match", "they chose side what do we do"),
    ("legal is the rulebook's word", "can i volley from the kitchen if i jump"),
    ("legal is the rulebook's word", "can we take a timeout after the serve is called"),
    ("a foot on the line is the rulebook's", "toe in the kitchen after my volley"),
    ("our third that floats is the third", "my third floats every time"),
)
"""Further words that call for a rule."""

CASES = {
    "a return named is the return": ("where to return", "where to serve his return"),
    "while they serve our shot is the return": (
        "<score> they serve where do i aim",
        "they serve where do i serve",
    ),
    "a serve named is the serve": ("where to serve", "where to return his serve"),
    "whom to target is asked anew": ("whom to target", "where is the target on a serve"),
    "who covers the middle is asked anew": (
        "who covers the middle",
        "who do i attack in the middle",
    ),
    "odds are a chance": ("what are the odds at <score>", "is a gamble right at <score>"),
    "size is a weight": ("how big is this point", "how likely is it now"),
    "as good as won is a chance": ("is <score> basically won", "the one who basically won it"),
    "a time-out weighed is asked about": (
        "is a timeout worth it when i know what to change",
        "after the timeout what do we change",
    ),
    "a toss is won before the match": (
        "won the toss and it is windy",
        "my toss drifts in the wind",
    ),
    "legal is the rulebook's word": ("is an ernie legal there", "is an ernie smart there"),
    "a kind of player is a pattern": (
        "how do we beat bangers",
        "how do we beat <name> and <name>",
    ),
    "a foot on the line is the rulebook's": (
        "my heel came down on the line after the volley",
        "where does my foot go on the line after the volley",
    ),
    "our third that floats is the third": (
        "our thrids float what now",
        "their thirds float what now",
    ),
    "resets that went wrong are a shot to change": (
        "we lost two in a row <ours> popped up the resets",
        "we lost two in a row i need resets for the head missed it all",
    ),
    "two words in a match want a cue": ("what now", "what do we change about our returns now"),
}


def _rank(rule_name: str) -> tuple[Topic, ...]:
    """The rule's better topic second, behind one that it may overtake."""
    rule = next(rule for rule in RULES if rule.name == rule_name)
    rest = [topic for topic in Topic if topic not in (rule.better, rule.than[0])]
    return (rule.than[0], rule.better, *rest)


@pytest.mark.parametrize("name", [rule.name for rule in RULES])
def test_a_rule_lifts_its_topic_when_its_words_are_there(name: str) -> None:
    ranked = _rank(name)
    said = Said(words=tuple(CASES[name][0].split()), match_on=True)
    assert apply_rules(ranked, said)[0] is ranked[1]
    assert sorted(apply_rules(ranked, said)) == sorted(ranked)


@pytest.mark.parametrize("name", [rule.name for rule in RULES])
def test_a_rule_keeps_still_when_they_are_not(name: str) -> None:
    ranked = _rank(name)
    said = Said(words=tuple(CASES[name][1].split()), match_on=True)
    assert apply_rules(ranked, said) == ranked


@pytest.mark.parametrize("name", [rule.name for rule in RULES])
def test_a_rule_reaches_no_further_than_the_first_three(name: str) -> None:
    first, better, *rest = _rank(name)
    ranked = (first, *rest[:2], better, *rest[2:])
    said = Said(words=tuple(CASES[name][0].split()), match_on=True)
    assert apply_rules(ranked, said) == ranked


def test_short_words_ask_for_a_cue_only_in_a_match() -> None:
    ranked = _rank("two words in a match want a cue")
    assert apply_rules(ranked, Said(words=("what", "now"), match_on=False)) == ranked


@pytest.mark.parametrize(("name", "words"), ALSO)
def test_other_words_lift_it_too(name: str, words: str) -> None:
    ranked = _rank(name)
    assert apply_rules(ranked, Said(words=tuple(words.split()), match_on=True))[0] is ranked[1]


@pytest.mark.parametrize(
    "words", ["can we take a timeout now", "can i volley that ball at my feet"]
)
def test_asking_whether_one_can_is_not_asking_whether_one_may(words: str) -> None:
    ranked = _rank("legal is the rulebook's word")
    assert apply_rules(ranked, Said(words=tuple(words.split()), match_on=True)) == ranked


@pytest.mark.parametrize("before", [None, *Topic])
def test_who_covers_the_middle_is_asked_anew_after_any_topic(before: Topic | None) -> None:
    for text in ("who covers the middle", "who covers the middle?", "who takes the middle"):
        guess = recognise(read(text), context_topic=before, match_on=False)
        assert guess.topic is Topic.COVER_MIDDLE, text
