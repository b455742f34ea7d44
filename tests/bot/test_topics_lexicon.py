"""The lexicon: longest form first, slips repaired, real words left alone."""

from __future__ import annotations

import pytest

from bot.chat.asking_part import asking_part
from bot.chat.features import extract
from bot.chat.lexicon import Lexicon, the_lexicon
from bot.chat.utterance import read
from bot.chat.wordforms import spell_out, stem

SMALL = Lexicon(
    {
        "drop": ["drop"],
        "drop_shot": ["drop shot"],
        "lob": ["lob", "moonball"],
        "both": ["drop shot"],
    },
    guard=["crop"],
    shorthand={"n": "and", "whats": "what is"},
)


def _concepts(lexicon: Lexicon, text: str) -> list[str]:
    return [hit.concept for hit in lexicon.find(text.split())]


def test_the_longest_form_wins_and_may_mean_two_things() -> None:
    assert _concepts(SMALL, "a drop shot or a drop") == ["drop_shot", "both", "drop"]


@pytest.mark.parametrize(
    ("typed", "read_as"),
    [
        ("drpo", "drop"),  # two letters swapped
        ("moonbll", "moonball"),
        ("monbal", "monbal"),  # two slips in six letters are too many
        ("mooonbll", "moonball"),  # two slips in a longer word are not
        ("crop", "crop"),  # guarded
        ("lop", "lop"),  # too short to repair
        ("kitchen", "kitchen"),
    ],
)
def test_slips_are_repaired_and_real_words_are_not(typed: str, read_as: str) -> None:
    assert SMALL.repair(typed) == read_as


@pytest.mark.parametrize("word", ["job", "nerve", "think", "serve", "severe", "beach", "target"])
def test_the_shipped_lexicon_leaves_real_words_alone(word: str) -> None:
    assert the_lexicon().repair(word) == word


@pytest.mark.parametrize(
    ("slip", "word"), [("overhed", "overhead"), ("bakhand", "backhand"), ("stackin", "stacking")]
)
def test_the_shipped_lexicon_repairs_slips(slip: str, word: str) -> None:
    assert the_lexicon().repair(slip) == word


def test_shorthand_is_spelled_out_and_keeps_its_token() -> None:
    words = spell_out(["whats", "up", "n", "hittin"], SMALL.shorthand, frozenset(["hitting"]))
    assert [(word.text, word.token) for word in words] == [
        ("what", 0),
        ("is", 0),
        ("up", 1),
        ("and", 2),
        ("hitting", 3),
    ]


@pytest.mark.parametrize(
    "family",
    [
        ["poach", "poaches", "poaching", "poached", "poacher"],
        ["drop", "drops", "dropping", "dropped"],
        ["serve", "serves", "serving"],
        ["stack", "stacks", "stacking", "stacked"],
    ],
)
def test_forms_of_a_word_share_a_stem(family: list[str]) -> None:
    assert len({stem(word) for word in family}) == 1


@pytest.mark.parametrize(("one", "other"), [("drop", "drive"), ("stack", "stand"), ("lob", "low")])
def test_different_words_keep_different_stems(one: str, other: str) -> None:
    assert stem(one) != stem(other)


def test_the_part_that_asks_is_found_in_a_long_story() -> None:
    words = ["we", "lost", "four", "in", "a", "row", "and", "now", "what", "do", "we", "change"]
    start, end = asking_part(words, 0, len(words))
    assert words[start:end] == ["what", "do", "we", "change"]


def test_a_message_without_a_question_is_read_whole() -> None:
    words = ["they", "bang", "everything", "at", "us"]
    assert asking_part(words, 0, len(words)) == (0, len(words))


def test_the_asking_sentence_is_the_one_with_the_question_mark() -> None:
    story = "Where were you? I served wide. Should we call a timeout? Tom is tired."
    whole = extract(read(story), the_lexicon(), known=frozenset(), context_topic=None)
    only = extract(
        read("Should we call a timeout?"), the_lexicon(), known=frozenset(), context_topic=None
    )
    assert set(whole.groups[-1]) == set(only.groups[-1])


def test_unknown_share_counts_strange_words_only() -> None:
    seen = extract(
        read("lob zzyzzx 9-8 qwrt"), the_lexicon(), known=frozenset(), context_topic=None
    )
    assert seen.unknown == 0.5
