"""Which topic a question is about: a linear model and a network over its words, with their doubt.

The weights are a ridge regression of the 33 topics (one column each), trained by
tests/train/train_topics.py and shipped as `data/topics.npz`; the network is `question_network`.
Their log-chances are averaged. Two logistic curves, fitted on writers that neither had read, turn
scores into the chance that the first topic is right and the chance that the right one is among the
three shown.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import field, replace
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any, NamedTuple

import numpy as np

from bot.chat.features import GROUP_LENGTHS, Seen, extract
from bot.chat.lexicon import Lexicon, the_lexicon
from bot.chat.question_network import (
    TOPICS,
    QuestionRead,
    log_chances,
    read_question,
    the_question_network,
)
from bot.chat.topic_conditions import Said
from bot.chat.topic_rules import apply_rules
from bot.chat.utterance import Token, Utterance
from knowledge.dataclass import dataclass
from knowledge.reading.feature_table import Indices, Numbers, Vector
from knowledge.reading.linear_model import LinearModel, places_of, unpacked
from knowledge.reading.stored import Source, as_bytes, as_text
from knowledge.vocabulary import Topic

SHOWN = 3
"""Topics a user sees: the answer and two offers, or three offers when we ask."""

SURE_FROM = 0.9
"""Confidence from which an answer stands alone; below it says what else it may have been."""

STANDS_ALONE_FROM = 0.4
"""Confidence from which a message is read without the topic before it, unless it opens like a
continuation. Of 475 of the writers' shortest questions, misspelt and put after a topic that has
nothing to do with them, that answers 443 rightly (.8: 432; without any topic before: 449), of 195
of their follow-ups that open otherwise 191 (.8: 192). Of the open voices' it loses none."""

REASONS_AT_MOST = 4
_REASON_SHARE = 0.2  # of the strongest word's vote; weaker words explain nothing

NETWORK_SHARE = 0.4
"""Of the network in a score; .3 to .5 differ by less than a question in 500 of the open voices."""

LINEAR_SHARPNESS = 9.0
"""What turns the linear model's scores into log-odds; 6 to 10 differ as little."""

_NEVER_OFFERED = Topic.SMALLTALK_OR_UNKNOWN

Ranked = tuple[tuple[Topic, float], ...]
"""Topics with their chances, the likeliest first."""


class Band(StrEnum):
    """What to do with a guess: answer; answer and offer the next two; ask among three."""

    SURE = "sure"
    HALF_SURE = "half sure"
    UNSURE = "unsure"


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicGuess:
    """The likeliest topic, the chance that it is right, and all topics with their chances."""

    topic: Topic
    confidence: float
    band: Band
    ranked: Ranked
    explain: Callable[[], tuple[str, ...]] = field(default=tuple, repr=False, compare=False)

    @property
    def why(self) -> tuple[str, ...]:
        """Words of the message as typed, the strongest vote for the topic first; weighed now."""
        return self.explain()

    @property
    def shown(self) -> tuple[Topic, ...]:
        """What a user gets to see: the answer and the offers beside it, or the offers asked."""
        others = [topic for topic, _ in self.ranked if topic is not _NEVER_OFFERED]
        if self.band is Band.UNSURE:
            return tuple(others[:SHOWN])
        return (self.topic, *[topic for topic in others if topic is not self.topic][: SHOWN - 1])


class Curve(NamedTuple):
    """A logistic curve over `signals`: chance = 1 / (1 + exp(-(bias + weights · signals)))."""

    bias: float
    weights: tuple[float, ...]

    def at(self, signals: Sequence[float]) -> float:
        sum_ = self.bias + sum(w * x for w, x in zip(self.weights, signals, strict=True))
        return float(1 / (1 + np.exp(-sum_)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Calibration:
    """From scores to chances. `sharpness` scales scores before the softmax over topics."""

    sharpness: float
    right: Curve
    shown: Curve
    ask_below: float

    @classmethod
    def parse(cls, data: Mapping[str, Any]) -> Calibration:
        return cls(
            sharpness=data["sharpness"],
            right=Curve(data["right"][0], tuple(data["right"][1])),
            shown=Curve(data["shown"][0], tuple(data["shown"][1])),
            ask_below=data["ask_below"],
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicModel:
    """A column of weights for each of TOPICS, its curves, and the words known."""

    linear: LinearModel
    known: frozenset[str]
    calibration: Calibration
    recipe: Mapping[str, Any]

    def see(self, utterance: Utterance, lexicon: Lexicon, context_topic: Topic | None) -> Seen:
        return extract(utterance, lexicon, known=self.known, context_topic=context_topic)


def blended(linear: Numbers, network: Numbers) -> Numbers:
    """The topics' log-chances by both models, averaged."""
    ours = log_chances(linear * LINEAR_SHARPNESS)
    scores: Numbers = (1 - NETWORK_SHARE) * ours + NETWORK_SHARE * log_chances(network)
    return scores


def signals_of(scores: Numbers, chances: Numbers, seen: Seen) -> tuple[float, ...]:
    """What tells a right guess from a wrong one (best, gaps, chance, length, strange words)."""
    first, second, third = np.sort(scores)[::-1][:SHOWN]
    return (
        float(first),
        float(first - second),
        float(first - third),
        float(np.log(chances.max())),
        float(np.log1p(seen.words)),
        seen.unknown,
    )


def chances_of(scores: Numbers, sharpness: float) -> Numbers:
    """The topics' chances: a softmax of the scores."""
    powers = np.exp((scores - scores.max()) * sharpness)
    result: Numbers = powers / powers.sum()
    return result


@cache
def the_model() -> TopicModel:
    """The model shipped with the bot."""
    return load_model(files("bot.chat").joinpath("data/topics.npz"))


def load_model(source: Source) -> TopicModel:
    linear, recipe, arrays = unpacked(source, GROUP_LENGTHS)
    return TopicModel(
        linear=linear,
        known=frozenset(as_text(arrays["known"]).split("\n")),
        calibration=Calibration.parse(recipe["calibration"]),
        recipe=recipe,
    )


def dump_model(model: TopicModel) -> bytes:
    """The model as the bytes of an .npz file that `load_model` reads."""
    return model.linear.packed(model.recipe, known=as_bytes("\n".join(sorted(model.known))))


def recognise(
    utterance: Utterance,
    *,
    context_topic: Topic | None,
    match_on: bool,
    model: TopicModel | None = None,
) -> TopicGuess:
    """The topic a question is most likely about, how sure that is, and which words spoke for it."""
    model = model or the_model()
    said = Said(words=utterance.words, match_on=match_on)
    guess, seen = _guess(utterance, context_topic, said, model)
    if context_topic is None or seen.goes_on or _is_another(guess, context_topic):
        return guess
    alone, _ = _guess(utterance, None, said, model)
    if alone.topic is guess.topic or alone.confidence < STANDS_ALONE_FROM:
        return guess
    return replace(alone, ranked=_with_second(alone.ranked, context_topic))


def _is_another(guess: TopicGuess, context_topic: Topic) -> bool:
    """Whether it surely is no longer about the topic before."""
    return guess.band is Band.SURE and guess.topic is not context_topic


def _with_second(ranked: Ranked, second: Topic) -> Ranked:
    """The topics with one of them next to the first, where it is offered."""
    first, *others = ranked
    lifted = [one for one in others if one[0] is second]
    return (first, *lifted, *[one for one in others if one[0] is not second])


def _guess(
    utterance: Utterance, context_topic: Topic | None, said: Said, model: TopicModel
) -> tuple[TopicGuess, Seen]:
    """The guess after that topic, and what the model saw."""
    seen = model.see(utterance, the_lexicon(), context_topic)
    vector = model.linear.table.vector(seen)
    read = read_question(utterance, context_topic)
    scores = blended(model.linear.scores(vector), read.topics)
    chances = chances_of(scores, model.calibration.sharpness)
    guess = guess_of(model.calibration, scores, signals_of(scores, chances, seen), said)
    return replace(
        guess, explain=lambda: _why(model, utterance, (vector, places_of(seen)), read, guess)
    ), seen


def guess_of(
    calibration: Calibration, scores: Numbers, signals: Sequence[float], said: Said
) -> TopicGuess:
    """The guess that scores amount to after the rules, without its words."""
    chances = np.sort(chances_of(scores, calibration.sharpness))[::-1]
    best = [TOPICS[at] for at in np.argsort(-scores, kind="stable")]
    order = apply_rules(best, said)
    confidence = calibration.right.at(signals)
    return TopicGuess(
        topic=order[0],
        confidence=confidence,
        band=_band(confidence, calibration.shown.at(signals), calibration.ask_below),
        ranked=tuple(zip(order, map(float, chances), strict=True)),
    )


def _band(confidence: float, shown: float, ask_below: float) -> Band:
    if shown < ask_below:
        return Band.UNSURE
    return Band.SURE if confidence >= SURE_FROM else Band.HALF_SURE


def _why(
    model: TopicModel,
    utterance: Utterance,
    features: tuple[Vector, Indices],
    read: QuestionRead,
    guess: TopicGuess,
) -> tuple[str, ...]:
    (ahead, _), (behind, _) = guess.ranked[:2]
    vector, places = features
    linear = model.linear.votes(
        vector, places[vector.known], winner=TOPICS.index(ahead), other=TOPICS.index(behind)
    )
    votes = NETWORK_SHARE * the_question_network().votes(read, ahead, behind, len(utterance.tokens))
    votes[: len(linear)] += (1 - NETWORK_SHARE) * LINEAR_SHARPNESS * linear[: len(votes)]
    strongest = votes.max(initial=0)
    telling = [
        (vote, token)
        for vote, token in zip(votes, utterance.tokens, strict=False)
        if vote > 0 and vote >= _REASON_SHARE * strongest
    ]
    telling.sort(key=lambda pair: -pair[0])
    return _as_typed(utterance.text, [token for _, token in telling[:REASONS_AT_MOST]])


def _as_typed(text: str, tokens: Sequence[Token]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(text[token.span[0] : token.span[1]] for token in tokens))
