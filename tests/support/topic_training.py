"""Training of the topic model, and its curves from questions whose writers it had not read."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np
import scipy.optimize
from linear_training import fit, matrix_of, one_of, quantised
from near_duplicates import Flags, near_duplicates
from sklearn.linear_model import LogisticRegression
from topic_examples import (
    OPEN_VOICES,
    Example,
    known_words,
    lines_digest,
    our_examples,
    see,
    utterance_of,
    voice_examples,
    writer_examples,
)

from bot.chat.features import Seen
from bot.chat.phrases import sources_digest
from bot.chat.question_network import TOPICS, read_question, the_question_network
from bot.chat.topic_model import (
    SHOWN,
    Calibration,
    Curve,
    TopicModel,
    blended,
    chances_of,
    signals_of,
)
from knowledge.reading.feature_table import FeatureTable, Numbers
from knowledge.reading.linear_model import LinearModel
from knowledge.vocabulary import Topic

RIDGE = 0.8  # chosen among 0.4 .. 2 on the open voices
TOLERANCE = 0.03  # from .05 a voice loses a question or two; .02 takes half as long again
TYPED_WEIGHT = 3.0  # a writer's line counts as three of ours: players type so, we imagined it
ASKED_AT_MOST = 0.005
"""Share of the open voices' questions that we ask back about. Asking more often costs right answers
and spares fewer wrong ones: `python tests/train/train_topics.py` prints what each share costs."""


def train(
    examples: Sequence[Example], weight: Numbers, calibration: Calibration, recipe: dict[str, Any]
) -> TopicModel:
    known = known_words()
    return TopicModel(
        linear=quantised(*_fitted(examples, see(examples, known), weight)),
        known=known,
        calibration=calibration,
        recipe=recipe,
    )


def _fitted(
    examples: Sequence[Example], seen: Sequence[Seen], weight: Numbers
) -> tuple[FeatureTable, Numbers]:
    topics = one_of([TOPICS.index(one.topic) for one in examples], len(TOPICS))
    return fit(seen, topics, weight, ridge=RIDGE, tolerance=TOLERANCE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Scored:
    """A question scored by a model that had not read its writer."""

    example: Example
    seen: Seen
    scores: Numbers


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """A voice's questions as scored by a model that had not read it, and that model's weights."""

    scored: list[Scored]
    linear: LinearModel


def leave_one_voice_out() -> dict[str, list[Scored]]:
    """The questions of each open voice, scored as `left_out_voices` does."""
    return {voice: one.scored for voice, one in left_out_voices().items()}


def models_of(left_out: Mapping[str, LeftOut]) -> dict[str, TopicModel]:
    """For each voice the whole model that had not read it, its chances from the other voices."""
    known = known_words()
    return {
        voice: TopicModel(
            linear=one.linear,
            known=known,
            calibration=calibrate(
                [each for other in left_out if other != voice for each in left_out[other].scored]
            ),
            recipe={},
        )
        for voice, one in left_out.items()
    }


def left_out_voices() -> dict[str, LeftOut]:
    """Each open voice scored by a model trained on our phrases, the writers and other voices."""
    known = known_words()
    taught = _Taught.of([*our_examples(), *writer_examples()], known, ours=len(our_examples()))
    voices = {voice: _Taught.of(voice_examples(voice), known) for voice in OPEN_VOICES}
    return {
        voice: _scored(
            kept_out, taught.joined([one for name, one in voices.items() if name != voice])
        )
        for voice, kept_out in voices.items()
    }


@dataclass(frozen=True, slots=True, kw_only=True)
class _Taught:
    """Examples with what the model sees of them and how much each counts."""

    examples: list[Example]
    seen: list[Seen]
    weight: Numbers

    @classmethod
    def of(cls, examples: list[Example], known: frozenset[str], *, ours: int = 0) -> _Taught:
        weight = weights_of(ours, len(examples))
        return cls(examples=examples, seen=see(examples, known), weight=weight)

    def joined(self, others: Sequence[_Taught]) -> _Taught:
        return _Taught(
            examples=[*self.examples, *(one for each in others for one in each.examples)],
            seen=[*self.seen, *(one for each in others for one in each.seen)],
            weight=np.concatenate([self.weight, *(each.weight for each in others)]),
        )


def _scored(kept_out: _Taught, taught: _Taught) -> LeftOut:
    stays = np.flatnonzero(~repeats_of(taught.examples, kept_out.examples))
    table, weights = _fitted(
        [taught.examples[at] for at in stays],
        [taught.seen[at] for at in stays],
        taught.weight[stays],
    )
    linear = matrix_of(kept_out.seen, table) @ weights
    scores = [
        blended(row, read_question(utterance_of(one.text), one.after).topics)
        for one, row in zip(kept_out.examples, linear, strict=True)
    ]
    return LeftOut(
        scored=[
            Scored(example=one, seen=seen, scores=row)
            for one, seen, row in zip(kept_out.examples, kept_out.seen, scores, strict=True)
        ],
        linear=quantised(table, weights),
    )


def repeats_of(taught: Sequence[Example], kept_out: Sequence[Example]) -> Flags:
    """Which examples nearly repeat a question that is kept out."""
    return near_duplicates([one.text for one in taught], [one.text for one in kept_out])


def weights_of(ours: int, total: int) -> Numbers:
    """How much each example counts: our phrases first, then what others typed."""
    return np.where(np.arange(total) < ours, 1.0, TYPED_WEIGHT).astype(np.float32)


def calibrate(scored: Sequence[Scored], *, asked: float = ASKED_AT_MOST) -> Calibration:
    """Curves fitted on questions whose writers the model had not read.

    `asked` is the share of these questions that it asks back about.
    """
    sharpness = _sharpness(scored)
    signals, right, shown = [], [], []
    for one in scored:
        chances = chances_of(one.scores, sharpness)
        signals.append(signals_of(one.scores, chances, one.seen))
        best = [TOPICS[at] for at in np.argsort(-one.scores)]
        right.append(best[0] in one.example.right)
        shown.append(bool(set(_shown_if_answered(best)) & one.example.right))
    table = np.array(signals)
    shown_curve = _curve(table, np.array(shown))
    reach = [shown_curve.at(row) for row in signals]
    return Calibration(
        sharpness=sharpness,
        right=_curve(table, np.array(right)),
        shown=shown_curve,
        ask_below=float(np.quantile(reach, asked)),
    )


def _shown_if_answered(best: Sequence[Topic]) -> list[Topic]:
    others = [topic for topic in best[1:] if topic is not Topic.SMALLTALK_OR_UNKNOWN]
    return [best[0], *others[: SHOWN - 1]]


def _sharpness(scored: Sequence[Scored]) -> float:
    """The softmax scale under which the right topics are least surprising."""

    def surprise(sharpness: float) -> float:
        chances = [chances_of(one.scores, sharpness) for one in scored]
        return -float(
            np.mean(
                [
                    np.log(max(row[TOPICS.index(topic)] for topic in one.example.right))
                    for row, one in zip(chances, scored, strict=True)
                ]
            )
        )

    found = scipy.optimize.minimize_scalar(surprise, bounds=(0.1, 10), method="bounded")
    return round(float(found.x), 3)


def _curve(table: Numbers, came_true: np.ndarray[Any, Any]) -> Curve:
    """Logistic regression with a slight pull to zero, on standardised signals."""
    centre, spread = table.mean(axis=0), table.std(axis=0) + np.finfo(np.float32).eps
    fitted = LogisticRegression(C=10).fit((table - centre) / spread, came_true)
    weights = fitted.coef_[0] / spread
    bias = float(fitted.intercept_[0] - weights @ centre)
    return Curve(round(bias, 5), tuple(round(float(w), 5) for w in weights))


def train_shipped(found: dict[str, list[Scored]]) -> TopicModel:
    """The model on all phrases, writers and open voices, calibrated on what was left out."""
    calibration = calibrate([one for scored in found.values() for one in scored])
    ours = our_examples()
    typed = [*writer_examples(), *(one for voice in OPEN_VOICES for one in voice_examples(voice))]
    examples = [*ours, *typed]
    return train(
        examples,
        weights_of(len(ours), len(examples)),
        calibration,
        _recipe(calibration, len(ours), len(examples)),
    )


def _recipe(calibration: Calibration, ours: int, total: int) -> dict[str, Any]:
    return {
        "sources": sources_digest(),
        "lines": lines_digest(),
        "network": the_question_network().recipe,
        "phrases": ours,
        "examples": total,
        "trained_on": ["bot/chat/data/phrases", "tests/train/writers", *OPEN_VOICES],
        "command": "python tests/train/train_topics.py",
        "ridge": RIDGE,
        "typed_weight": TYPED_WEIGHT,
        "calibration": asdict(calibration),
    }
