"""Reading a message: what is folded, what becomes a slot, and that every token keeps its place."""

from __future__ import annotations

import pytest
from function_calls import calls_of
from hypothesis import given
from hypothesis import strategies as st

from bot.chat.utterance import LONGEST_READ_CHARS, Mask, SlotToken, read


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("What's the 3rd shot?", ["whats", "the", "3rd", "shot"]),
        ("WHO covers the míddle", ["who", "covers", "the", "middle"]),
        ("ｗｈｏ takes it", ["who", "takes", "it"]),
        ("dо wе lоb", ["do", "we", "lob"]),  # Cyrillic о and е
        ("d​ink wh­ere", ["dink", "where"]),  # zero-width space, soft hyphen
        ("at 9-8-2", ["at", "<score>"]),
        ("nine eight two, us serving", ["<score>", "us", "serving"]),
        ("8 all", ["<score>"]),
        ("drives 9 of 10", ["drives", "<num>", "of", "<num>"]),
        ("70% to her", ["<num>", "percent", "to", "her"]),
        ("T/O now", ["t", "o", "now"]),
        ("🥵 so hot", ["🥵", "so", "hot"]),
        ("?", ["?"]),
        ("", []),
    ],
)
def test_words_as_read(text: str, words: list[str]) -> None:
    assert list(read(text).words) == words


def test_a_masked_stretch_becomes_its_token_and_keeps_its_place() -> None:
    text = "where do I dink Okafor's backhand"
    utterance = read(text, [Mask(span=(16, 22))])
    assert utterance.words == ("where", "do", "i", "dink", "<name>", "backhand")
    assert text[slice(*utterance.tokens[4].span)] == "Okafor's"


def test_our_own_player_is_told_from_an_opponent() -> None:
    ours = Mask(span=(19, 23), token=SlotToken.OURS)
    assert read("everything goes to Mira", [ours]).words[-1] == "<ours>"
    assert read("everything goes to Mira", [Mask(span=ours.span)]).words[-1] == "<name>"


def test_overlapping_masks_give_each_letter_to_one_token() -> None:
    utterance = read("Ana Ruiz serves", [Mask(span=(0, 8)), Mask(span=(4, 8))])
    assert utterance.words == ("<name>", "serves")


def test_sentences_know_which_of_them_asks() -> None:
    sentences = read("We lost. Where now? Help").sentences
    assert [(one.start, one.end, one.asks) for one in sentences] == [
        (0, 2, False),
        (2, 4, True),
        (4, 5, False),
    ]


@given(st.text(max_size=600))
def test_tokens_stand_in_order_inside_the_part_that_is_read(text: str) -> None:
    utterance = read(text)
    assert utterance.text == text[:LONGEST_READ_CHARS]
    before = 0
    for token in utterance.tokens:
        start, stop = token.span
        assert before <= start < stop <= len(utterance.text)  # "¼" alone makes two tokens
        before = start
    if utterance.tokens:
        assert utterance.sentences[-1].end == len(utterance.tokens)


@given(st.text(alphabet=st.characters(codec="ascii", exclude_characters="'`&%"), max_size=80))
def test_capitals_make_no_difference(text: str) -> None:
    assert read(text.upper()).words == read(text.lower()).words


def test_a_long_message_costs_no_more_than_what_is_read() -> None:
    long = "whe­re dо I dink 9-8-2 😤 " * 170
    read(long[:LONGEST_READ_CHARS])
    what_is_read = calls_of(lambda: read(long[:LONGEST_READ_CHARS]))
    assert calls_of(lambda: read(long[:4096])) < 1.2 * what_is_read
