"""How the topic model does on writers it has not read: one open voice left out at a time.

Trains six models, each on some twenty thousand lines (minutes). The floors are the figures when written, less about
two standard errors of a voice of 280 questions; a change that falls below them is a loss.
"""

from __future__ import annotations

import numpy as np
import pytest
from topic_examples import OPEN_VOICES, Example
from topic_figures import Figures, out_of_voice_figures
from topic_training import Scored, calibrate, leave_one_voice_out, repeats_of

from bot.chat.topic_model import TOPICS, chances_of, signals_of
from knowledge.vocabulary import Topic

pytestmark = pytest.mark.timeout(900)  # two cores train for minutes beside other tests

# at once, shown (at least), misled (at most); written 85.7, 96.9, 1.8 on average
FLOORS = {
    "nova": (0.84, 0.96, 0.03),
    "gaffer": (0.76, 0.92, 0.05),
    "walt": (0.87, 0.96, 0.02),
    "rex": (0.81, 0.95, 0.04),
    "dot": (0.79, 0.94, 0.03),
    "sid": (0.81, 0.95, 0.03),
}
AVERAGE_FLOOR = (0.845, 0.96, 0.022)  # the first gate is 85, 95 and 2 in 100


@pytest.fixture(scope="module")
def found() -> dict[str, list[Scored]]:
    return leave_one_voice_out()


@pytest.fixture(scope="module")
def by_voice(found: dict[str, list[Scored]]) -> dict[str, Figures]:
    return out_of_voice_figures(found)


@pytest.mark.parametrize("voice", OPEN_VOICES)
def test_a_voice_left_out_is_understood(voice: str, by_voice: dict[str, Figures]) -> None:
    at_once, shown, misled = FLOORS[voice]
    figures = by_voice[voice]
    assert figures.at_once >= at_once, figures
    assert figures.shown >= shown, figures
    assert figures.misled <= misled, figures


def test_the_average_voice_stays_at_the_first_gate(by_voice: dict[str, Figures]) -> None:
    at_once, shown, misled, *_ = np.mean([one.shares for one in by_voice.values()], axis=0)
    assert at_once >= AVERAGE_FLOOR[0]
    assert shown >= AVERAGE_FLOOR[1]
    assert misled <= AVERAGE_FLOOR[2]


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
