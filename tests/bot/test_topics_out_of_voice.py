"""How the topic model does on writers it has not read: one open voice left out at a time.

Trains six models, each on some twenty thousand lines (minutes). The figures are recorded; a change
that falls below them is a loss. The slack is a line or two of a voice: another version of the
solver may move so much.
"""

from __future__ import annotations

import numpy as np
import pytest
from topic_examples import OPEN_VOICES, Example
from topic_figures import Figures, all_voices_figures, out_of_voice_figures
from topic_training import LeftOut, Scored, calibrate, left_out_voices, repeats_of
from whole_path import Read, figures_of, read_out_of_voice, together

from bot.chat.question_network import TOPICS
from bot.chat.topic_model import chances_of, signals_of
from knowledge.vocabulary import Topic

# Two cores train for minutes beside other tests.
pytestmark = [pytest.mark.timeout(900), pytest.mark.minutes]

SLACK = 0.005

RECORDED = {
    "nova": (0.959, 1.0, 0.0),
    "gaffer": (0.942, 0.985, 0.015),
    "walt": (0.979, 0.993, 0.004),
    "rex": (0.975, 0.994, 0.003),
    "dot": (0.965, 0.996, 0.004),
    "sid": (0.954, 0.993, 0.007),
}
"""Shares at once, shown and misled, as `python tests/train/train_topics.py` prints them."""

WHOLE_PATH = {
    "nova": (0.946, 0.990, 0.010),
    "gaffer": (0.942, 0.985, 0.015),
    "walt": (0.975, 0.989, 0.007),
    "rex": (0.965, 0.990, 0.010),
    "dot": (0.953, 0.992, 0.008),
    "sid": (0.941, 0.990, 0.007),
}
"""The same through `understand`, by the same command."""

GOAL = (0.92, 0.98, 0.02)
"""Of all questions: the language bar that was agreed on."""


@pytest.fixture(scope="module")
def left_out() -> dict[str, LeftOut]:
    return left_out_voices()


@pytest.fixture(scope="module")
def found(left_out: dict[str, LeftOut]) -> dict[str, list[Scored]]:
    return {voice: one.scored for voice, one in left_out.items()}


@pytest.fixture(scope="module")
def by_voice(found: dict[str, list[Scored]]) -> dict[str, Figures]:
    return out_of_voice_figures(found)


@pytest.fixture(scope="module")
def read(left_out: dict[str, LeftOut]) -> dict[str, list[Read]]:
    return read_out_of_voice(left_out)


@pytest.mark.parametrize("voice", OPEN_VOICES)
def test_a_voice_left_out_is_understood(voice: str, by_voice: dict[str, Figures]) -> None:
    at_once, shown, misled = RECORDED[voice]
    figures = by_voice[voice]
    assert figures.at_once >= at_once - SLACK, figures
    assert figures.shown >= shown - SLACK, figures
    assert figures.misled <= misled + SLACK, figures


def test_all_voices_together_meet_the_bar(found: dict[str, list[Scored]]) -> None:
    figures = all_voices_figures(found)
    at_once, shown, misled = GOAL
    assert figures.at_once >= at_once
    assert figures.shown >= shown
    assert figures.misled <= misled


def test_the_whole_path_loses_little_of_a_voice_left_out(read: dict[str, list[Read]]) -> None:
    """A question may be read as a note, a score or a rally before its topic is looked for."""
    by_voice = {voice: figures_of(each) for voice, each in read.items()}
    for voice, (at_once, shown, misled) in WHOLE_PATH.items():
        figures = by_voice[voice]
        assert figures.at_once >= at_once - SLACK, (voice, figures)
        assert figures.shown >= shown - SLACK, (voice, figures)
        assert figures.misled <= misled + SLACK, (voice, figures)
    figures = together(by_voice)
    assert figures.at_once >= GOAL[0]
    assert figures.shown >= GOAL[1]
    assert figures.misled <= GOAL[2]


def test_no_question_that_is_asked_back_is_without_topics(read: dict[str, list[Read]]) -> None:
    asked_back = [count for each in read.values() for one in each for count in one.asked_back]
    assert asked_back
    assert all(1 <= count <= 3 for count in asked_back)


def test_confidence_means_what_it_says_out_of_voice(found: dict[str, list[Scored]]) -> None:
    """Of questions said to be right with chance .9 and more, about that many are; and below."""
    said, true = [], []
    for voice, scored in found.items():
        curves = calibrate([one for other in found if other != voice for one in found[other]])
        for one in scored:
            chances = chances_of(one.scores, curves.sharpness)
            said.append(curves.right.at(signals_of(one.scores, chances, one.seen)))
            true.append(TOPICS[int(one.scores.argmax())] in one.example.right)
    chance, came_true = np.array(said), np.array(true)
    for low, high in ((0, 0.6), (0.6, 0.8), (0.8, 0.9), (0.9, 1.01)):
        inside = (chance >= low) & (chance < high)
        assert abs(chance[inside].mean() - came_true[inside].mean()) < 0.07, (low, high)


def test_a_line_that_nearly_repeats_a_kept_out_one_is_dropped_from_training() -> None:
    kept_out = [Example(text="Where do I dink Okafor?", topic=Topic.AIM_DINK)]
    lines = ["where do i dink okafor", "who covers the middle", "where do I serve to a lefty"]
    dropped = repeats_of([Example(text=t, topic=Topic.LOB) for t in lines], kept_out)
    assert dropped.tolist() == [True, False, False]
