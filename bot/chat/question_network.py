"""A second reading of what may be a question: the network's, beside the linear models'.

Its heads are the topics and, last, whether the message asks at all: that one is not read, it only
made the layers below learn what notes look like (multitask learning: Caruana 1997). Trained on
practice writers (tests/train/train_questions.py) and shipped as `data/questions.npz`. The linear
models weigh words and pairs of them; the network reads them in order. They err on different lines.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache, lru_cache
from importlib.resources import files
from typing import Any

import numpy as np

from bot.chat.features import spelled
from bot.chat.lexicon import the_lexicon
from bot.chat.network import Looked, Network
from bot.chat.question_words import QuestionWord, see_question
from bot.chat.utterance import Utterance
from knowledge.dataclass import dataclass
from knowledge.reading.feature_table import Numbers
from knowledge.reading.stored import Source, arrays_of, as_bytes, as_text, packed_file
from knowledge.vocabulary import Topic

TOPICS = tuple(Topic)
ASKS = len(TOPICS)
"""The head that says whether a message asks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionRead:
    """What the network made of a message, which begins with a word for how it opens."""

    words: tuple[QuestionWord, ...]
    looked: Looked

    @property
    def topics(self) -> Numbers:
        scores: Numbers = self.looked.scores[:ASKS]
        return scores


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionNetwork:
    """The network, the words its makers knew, and how it was trained."""

    network: Network
    known: frozenset[str]
    recipe: Mapping[str, Any]

    def read(self, utterance: Utterance, context_topic: Topic | None) -> QuestionRead:
        message = spelled(utterance, the_lexicon(), self.known)
        words = see_question(utterance, message, context_topic)
        return QuestionRead(words=words, looked=self.network.read([word.keys for word in words]))

    def votes(self, read: QuestionRead, winner: Topic, other: Topic, tokens: int) -> Numbers:
        """For each token, how much it spoke for one topic against another."""
        ahead, behind = (TOPICS.index(topic) for topic in (winner, other))
        found = self.network.votes(read.looked, ahead) - self.network.votes(read.looked, behind)
        votes = np.zeros(tokens, dtype=np.float32)
        for word, vote in zip(read.words, found, strict=True):
            if word.token is not None:
                votes[word.token] += vote
        return votes


@lru_cache(maxsize=64)
def read_question(utterance: Utterance, context_topic: Topic | None) -> QuestionRead:
    """The shipped network's reading; kept, since several steps ask about the same message."""
    return the_question_network().read(utterance, context_topic)


@cache
def the_question_network() -> QuestionNetwork:
    """The network shipped with the bot."""
    return load_question_network(files("bot.chat").joinpath("data/questions.npz"))


def load_question_network(source: Source) -> QuestionNetwork:
    arrays = arrays_of(source)
    return QuestionNetwork(
        network=Network.load(arrays),
        known=frozenset(as_text(arrays["known"]).split("\n")),
        recipe=json.loads(as_text(arrays["recipe"])),
    )


def dump_question_network(model: QuestionNetwork) -> bytes:
    """The network as the bytes of an .npz file that `load_question_network` reads."""
    arrays: dict[str, Any] = {
        **model.network.arrays(),
        "known": as_bytes("\n".join(sorted(model.known))),
        "recipe": as_bytes(json.dumps(dict(model.recipe))),
    }
    return packed_file(arrays)


def log_chances(scores: Numbers) -> Numbers:
    """The logarithms of a softmax."""
    below: Numbers = scores - scores.max()
    sums: Numbers = below - np.log(np.exp(below).sum())
    return sums
