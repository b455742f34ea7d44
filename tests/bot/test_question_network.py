"""The second reading of questions: fresh, beside the linear models, and able to name its words."""

from __future__ import annotations

import numpy as np
import pytest
from question_examples import sources
from topic_examples import HELD_OUT, OPEN_VOICES, utterance_of, writer_files

from bot.chat.network import Network
from bot.chat.question_network import (
    ASKS,
    TOPICS,
    dump_question_network,
    load_question_network,
    log_chances,
    the_question_network,
)
from knowledge.vocabulary import Topic

RETRAIN = "run: python tests/train/train_questions.py, then tests/train/train_topics.py"

LINES = [
    "so where do I put my serve to a lefty",
    "who covers the middle ball against okafor and lindqvist",
    "he poaches every third of mine",
    "",
]


def test_it_was_trained_on_the_lines_as_they_are() -> None:
    recipe = the_question_network().recipe
    assert {name: recipe[name] for name in sources()} == sources(), RETRAIN


def test_no_voice_that_is_scored_is_among_its_writers() -> None:
    assert not {path.stem for path in writer_files()} & {*OPEN_VOICES, *HELD_OUT}


@pytest.mark.parametrize("line", LINES)
def test_the_words_votes_add_up_to_the_scores(line: str) -> None:
    """With the opening, which is no word of the message, and the bias."""
    model = the_question_network()
    read = model.read(utterance_of(line), Topic.AIM_SERVE)
    network: Network = model.network
    for head in (0, ASKS):
        votes = network.votes(read.looked, head)
        assert votes.sum() + network.bias[head] == pytest.approx(read.looked.scores[head], abs=1e-3)


def test_the_words_that_speak_for_a_topic_are_named() -> None:
    model = the_question_network()
    utterance = utterance_of("well, should we burn our timeout here")
    read = model.read(utterance, None)
    votes = model.votes(read, Topic.TIMEOUT_NOW, Topic.WIN_CHANCE, len(utterance.tokens))
    assert utterance.words[int(votes.argmax())] in ("timeout", "burn")


def test_a_topic_spoken_of_before_helps_what_leans_on_it() -> None:
    utterance = utterance_of("and on the backhand?")
    after, without = (
        log_chances(the_question_network().read(utterance, before).topics)
        for before in (Topic.AIM_SERVE, None)
    )
    at = TOPICS.index(Topic.AIM_SERVE)
    assert after[at] > without[at] + 1


def test_a_stored_network_reads_the_same() -> None:
    model = the_question_network()
    again = load_question_network(dump_question_network(model))
    for line in LINES:
        first, second = (one.read(utterance_of(line), None) for one in (model, again))
        assert np.allclose(first.looked.scores, second.looked.scores, atol=1e-3)
    assert again.known == model.known
