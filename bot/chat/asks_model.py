"""Whether a message that wears no question mark asks or tells: one column of weights.

Players state what troubles them and mean a question ("he poaches every third of mine"), and they
jot down notes in the same words. Practice writers' questions stand against their notes and scores
(tests/train/train_asks.py); the score is about 1 for a question and -1 for what only tells.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache, lru_cache
from importlib.resources import files
from typing import Any

from bot.chat.features import GROUP_LENGTHS, extract
from bot.chat.lexicon import the_lexicon
from bot.chat.topic_model import the_model
from bot.chat.utterance import Utterance
from knowledge.dataclass import dataclass
from knowledge.reading.linear_model import LinearModel, unpacked

ASKS_FROM = 0.15
"""Score from which what looks like a note is a question: of the open voices' notes one in fifty
reaches it (most of them do ask), of their questions more than nine in ten."""

MAY_ASK_FROM = -0.2
"""Score from which what has a fair topic may be either, and so is kept and answered."""

ANSWERED_FROM = ((0.9, -0.6), (0.75, -0.3), (0.6, MAY_ASK_FROM), (0.0, ASKS_FROM))
"""How sure the topic is, and the score from which that much is answered beside what is kept. Of the
writers' hard lines kept as notes (models that had not seen the writer), that answers 87 of 259
that ask, 74 of them rightly, and 17 of 695 that only tell: those get an answer nobody waits for."""

OFFERED_FROM = -0.8
"""Score from which a note gets the likeliest topics as buttons."""

OFFERED_ALSO_FROM = -1.0
"""The same where the topic is likelier right than not, and more than what is known of somebody."""

OFFERED_UNCLAIMED_FROM = -1.2
"""The same of a note that claims nothing: words alone more often ask."""

OFFERED_WITH_SCORE_FROM = -0.5
"""Score from which a score with a few words beside it gets topics as buttons."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AsksModel:
    linear: LinearModel
    recipe: Mapping[str, Any]

    def score(self, utterance: Utterance) -> float:
        seen = extract(utterance, the_lexicon(), known=the_model().known, context_topic=None)
        return float(self.linear.scores(self.linear.table.vector(seen))[0])


@lru_cache(maxsize=64)
def asking_score(utterance: Utterance) -> float:
    """How much a message reads like a question, by the shipped model.

    Kept, since several steps of understanding ask about the same message.
    """
    return the_asks_model().score(utterance)


@cache
def the_asks_model() -> AsksModel:
    """The model shipped with the bot."""
    source = files("bot.chat").joinpath("data/asks.npz")
    linear, recipe, _ = unpacked(source, GROUP_LENGTHS)
    return AsksModel(linear=linear, recipe=recipe)
