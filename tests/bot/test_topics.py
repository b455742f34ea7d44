"""The shipped topic model: fresh, light, bounded, and able to say which words spoke for it."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Sequence

import numpy as np
import pytest
from function_calls import calls_of
from hypothesis import given, settings
from hypothesis import strategies as st
from topic_examples import lines_digest, our_examples, utterance_of

from bot.chat.network import Looked, Network
from bot.chat.phrases import FEWEST_PHRASES, PhraseFileError, parse_phrases, sources_digest
from bot.chat.question_network import TOPICS, read_question
from bot.chat.topic_model import Band, dump_model, load_model, recognise, the_model
from bot.chat.utterance import Mask, SlotToken, read
from knowledge.vocabulary import Topic

RETRAIN = "run: python tests/train/train_topics.py"


def test_the_model_was_trained_on_the_phrases_and_lexicon_as_they_are() -> None:
    assert the_model().recipe["sources"] == sources_digest(), RETRAIN


def test_the_model_was_trained_on_the_open_voices_as_they_are() -> None:
    assert the_model().recipe["lines"] == lines_digest(), RETRAIN


def test_every_phrase_of_ours_reaches_its_topic_at_least_as_an_offer() -> None:
    missed = [
        (one.topic.value, one.text)
        for one in our_examples()
        if one.topic
        not in recognise(utterance_of(one.text), context_topic=one.after, match_on=False).shown
        and not _is_unsure_smalltalk(one.topic, one.text)
    ]
    assert missed == [], f"if the name finder changed, {RETRAIN}"


def _is_unsure_smalltalk(topic: Topic, text: str) -> bool:
    """Small talk is never a button: when unsure of it, asking what is wanted is right."""
    guess = recognise(utterance_of(text), context_topic=None, match_on=False)
    return topic is Topic.SMALLTALK_OR_UNKNOWN and guess.band is Band.UNSURE


@pytest.mark.parametrize(
    ("text", "topic", "one_of"),
    [
        ("so where do I put my serve to a lefty", Topic.AIM_SERVE, {"serve", "where", "put"}),
        ("should we burn our timeout here", Topic.TIMEOUT_NOW, {"timeout", "burn"}),
        ("who covers the middle ball", Topic.COVER_MIDDLE, {"middle", "who", "covers"}),
        ("Is it LEGAL to touch the net?", Topic.RULES_QUESTION, {"LEGAL", "Is", "touch"}),
    ],
)
def test_it_names_the_words_that_spoke_for_a_topic(
    text: str, topic: Topic, one_of: set[str]
) -> None:
    guess = recognise(read(text), context_topic=None, match_on=False)
    assert guess.topic is topic
    assert guess.why[0] in one_of


@pytest.mark.parametrize(
    ("text", "before", "topic"),
    [
        ("where do i return", Topic.WHERE_TO_STAND, Topic.AIM_RETURN),
        ("how do i handle lobs", Topic.ANSWER_PATTERN, Topic.LOB),
        ("who serves first", Topic.AIM_DINK, Topic.WHERE_TO_STAND),
        ("weakr player?", Topic.LOB, Topic.WHOM_TO_TARGET),
        ("sun or wnd", Topic.COVER_MIDDLE, Topic.CHOOSE_END_OR_SERVE),
    ],
)
def test_a_short_question_clear_by_itself_is_not_read_into_the_one_before(
    text: str, before: Topic, topic: Topic
) -> None:
    guess = recognise(read(text), context_topic=before, match_on=False)
    assert guess.topic is topic
    assert before in guess.shown


@pytest.mark.parametrize("text", ["and hale", "backhand?", "same for lindqvist", "in the wind?"])
def test_what_says_little_by_itself_goes_on_from_the_one_before(text: str) -> None:
    guess = recognise(read(text), context_topic=Topic.AIM_DINK, match_on=False)
    assert guess.topic is Topic.AIM_DINK


def test_words_of_an_explanation_stand_in_the_text_as_typed() -> None:
    for one in our_examples()[::7]:
        guess = recognise(utterance_of(one.text), context_topic=one.after, match_on=False)
        assert all(word and word in one.text for word in guess.why)


def test_a_follow_up_takes_its_topic_from_the_one_before() -> None:
    after_serve = recognise(
        read("and on the backhand?"), context_topic=Topic.AIM_SERVE, match_on=False
    )
    after_dink = recognise(
        read("and on the backhand?"), context_topic=Topic.AIM_DINK, match_on=False
    )
    assert (after_serve.topic, after_dink.topic) == (Topic.AIM_SERVE, Topic.AIM_DINK)


def test_whose_name_it_is_decides_who_is_being_hit_at() -> None:
    ours = read("hit everything at Mira", [Mask(span=(18, 22), token=SlotToken.OURS)])
    theirs = read("hit everything at Hale", [Mask(span=(18, 22))])
    assert recognise(ours, context_topic=None, match_on=True).topic is Topic.BEING_TARGETED
    assert recognise(theirs, context_topic=None, match_on=True).topic is Topic.WHOM_TO_TARGET


@given(st.text(max_size=300), st.sampled_from([None, *TOPICS]), st.booleans())
@settings(max_examples=60, deadline=None)
def test_any_text_gives_a_whole_guess(text: str, before: Topic | None, match_on: bool) -> None:
    guess = recognise(read(text), context_topic=before, match_on=match_on)
    assert sorted(topic for topic, _ in guess.ranked) == sorted(TOPICS)
    assert sum(chance for _, chance in guess.ranked) == pytest.approx(1, abs=1e-3)
    assert 0 <= guess.confidence <= 1
    assert guess.topic is guess.ranked[0][0]
    assert 1 <= len(guess.shown) <= 3


NOISE = {
    "long words": "zxqvw" * 819,
    "many words": "dink serve lob erne " * 205,
    "mixed scripts": "где dink どこ serve أين " * 190,
}
"""Other kinds are in test_bad_input.py, where the work of the whole path is counted."""


@pytest.mark.parametrize("kind", NOISE)
def test_four_thousand_characters_of_noise_cost_little(kind: str) -> None:
    text = NOISE[kind][:4096]
    recognise(read(text), context_topic=None, match_on=True)
    calls = calls_of(lambda: recognise(read(text), context_topic=None, match_on=True))
    assert calls < 60_000  # 34,000 at most when written, 1,900 for an ordinary question


@pytest.mark.parametrize("text", ["", "   ", "😀", "xqzt vbnw", "где лопата"])
def test_what_nobody_can_read_is_never_taken_for_a_question_of_the_game(text: str) -> None:
    guess = recognise(read(text), context_topic=None, match_on=False)
    assert guess.topic is Topic.SMALLTALK_OR_UNKNOWN or guess.band is Band.UNSURE


def test_a_message_is_read_once_by_the_network(monkeypatch: pytest.MonkeyPatch) -> None:
    """Work is counted, not timed: milliseconds are measured in tests/benchmarks."""
    lines: list[int] = []
    whole = Network.read

    def counted(self: Network, words: Sequence[Sequence[int]]) -> Looked:
        lines.append(len(words))
        return whole(self, words)

    read_question.cache_clear()
    monkeypatch.setattr(Network, "read", counted)
    texts = [read(one.text) for one in our_examples()[:60:3]]
    for utterance in texts:
        for _ in range(2):
            recognise(utterance, context_topic=None, match_on=False)
    assert len(lines) == len(set(texts))
    assert max(lines) <= 2 * max(len(one.tokens) for one in texts) + 1


def test_a_model_survives_being_written_and_read() -> None:
    model = the_model()
    again = load_model(dump_model(model))
    utterance = read("drop or drive the third vs okafor")
    assert recognise(utterance, context_topic=None, match_on=False, model=again) == recognise(
        utterance, context_topic=None, match_on=False, model=model
    )
    assert np.array_equal(again.linear.weights, model.linear.weights)


def test_recognising_needs_no_training_library() -> None:
    code = (
        "import sys, bot.chat.topic_model as m; m.the_model();"
        "sys.exit(any(name in sys.modules for name in ('sklearn', 'scipy', 'matplotlib')))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def _file(topic: str = "lob", phrases: int = FEWEST_PHRASES, follow_ups: str = "") -> str:
    lines = "\n".join(f"lob {at}?" for at in range(phrases))
    return (
        f"topic = \"{topic}\"\nphrases = '''\n{lines}\n'''\nfollow_ups = '''\n{follow_ups}\n'''\n"
    )


def test_a_phrase_file_gives_phrases_and_follow_ups() -> None:
    found = parse_phrases(_file(follow_ups="aim_dink > or just lob her?"), Topic.LOB)
    assert len(found) == FEWEST_PHRASES + 1
    assert (found[-1].text, found[-1].after) == ("or just lob her?", Topic.AIM_DINK)


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        (_file(topic="cue"), "topic is 'cue', expected 'lob'"),
        (_file(phrases=3), "3 phrases, expected 12 or more"),
        (_file(follow_ups="aim_dnk > or lob?"), "'aim_dnk > or lob?' is not 'topic > text'"),
        (_file(follow_ups="or lob?"), "'or lob?' is not 'topic > text'"),
    ],
)
def test_a_bad_phrase_file_is_refused_by_name(text: str, fault: str) -> None:
    with pytest.raises(PhraseFileError, match=r"lob\.toml") as caught:
        parse_phrases(text, Topic.LOB)
    assert fault in str(caught.value)
