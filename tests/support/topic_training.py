"""Training of the topic model, and its curves from questions whose writers it had not read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np
import scipy.linalg
import scipy.optimize
import scipy.sparse
from rapidfuzz import fuzz, process
from sklearn.linear_model import LogisticRegression
from topic_examples import (
    OPEN_VOICES,
    Example,
    known_words,
    our_examples,
    see,
    voice_examples,
    voices_digest,
)

from bot.chat.feature_table import FeatureTable, Numbers
from bot.chat.features import Seen
from bot.chat.phrases import sources_digest
from bot.chat.topic_model import (
    SHOWN,
    TOPICS,
    Calibration,
    Curve,
    TopicModel,
    chances_of,
    signals_of,
)
from knowledge.vocabulary import Topic

RIDGE = 0.8  # chosen among 0.15 .. 1.6 on the open voices
VOICE_WEIGHT = 3.0  # a voice's line counts as three of ours: players type so, we imagined it
NEAR_DUPLICATE = 90  # token_set_ratio of rapidfuzz, 0 to 100
ASKED_AT_MOST = 0.045  # share of the open voices' questions that we ask back about
INT8_TOP = 127


def matrix_of(seen: Sequence[Seen], table: FeatureTable) -> scipy.sparse.csr_matrix:
    """One row a message; a feature that occurs in two groups is summed."""
    vectors = [table.vector(one) for one in seen]
    ends = np.cumsum([0, *(len(vector.rows) for vector in vectors)])
    values = np.concatenate([vector.values for vector in vectors])
    columns = np.concatenate([vector.rows for vector in vectors])
    return scipy.sparse.csr_matrix((values, columns, ends), shape=(len(seen), len(table.keys)))


def ridge(rows: scipy.sparse.csr_matrix, topics: Sequence[int], weight: Numbers) -> Numbers:
    """Weights by feature and topic: ridge regression in its dual form (one solve, exact).

    Minimises sum_i weight_i |rows_i W - target_i|² + RIDGE |W|²; W = rows' (K + RIDGE/weight)⁻¹ T.
    """
    targets = np.full((len(topics), len(TOPICS)), -1 / len(TOPICS), dtype=np.float32)
    targets[np.arange(len(topics)), topics] = 1
    kernel = (rows @ rows.T).toarray().astype(np.float32)
    kernel[np.diag_indices_from(kernel)] += RIDGE / weight
    factor = scipy.linalg.cho_factor(kernel, overwrite_a=True, check_finite=False)
    result: Numbers = rows.T @ scipy.linalg.cho_solve(factor, targets, check_finite=False)
    return result


def quantised(weights: Numbers) -> tuple[np.ndarray[Any, np.dtype[np.int8]], Numbers]:
    """Whole numbers of one byte and the scale of each topic's column."""
    scale = np.abs(weights).max(axis=0) / INT8_TOP
    return np.rint(weights / scale).astype(np.int8), scale.astype(np.float32)


def train(
    examples: Sequence[Example], weight: Numbers, calibration: Calibration, recipe: dict[str, Any]
) -> TopicModel:
    known = known_words()
    seen = see(examples, known)
    table = FeatureTable.of(seen)
    topics = [TOPICS.index(one.topic) for one in examples]
    weights, scale = quantised(ridge(matrix_of(seen, table), topics, weight))
    return TopicModel(
        table=table,
        weights=weights,
        scale=scale,
        known=known,
        calibration=calibration,
        recipe=recipe,
    )


def near_duplicates(train_: Sequence[Example], kept_out: Sequence[Example]) -> np.ndarray[Any, Any]:
    """Which training lines nearly repeat a line that is kept out, and must go."""
    likeness = process.cdist(
        [one.text.lower() for one in train_],
        [one.text.lower() for one in kept_out],
        scorer=fuzz.token_set_ratio,
        score_cutoff=NEAR_DUPLICATE + 1,
        dtype=np.uint8,
    )
    return np.asarray(likeness.any(axis=1))


@dataclass(frozen=True, slots=True, kw_only=True)
class Scored:
    """A question scored by a model that had not read its writer."""

    example: Example
    seen: Seen
    scores: Numbers


def leave_one_voice_out() -> dict[str, list[Scored]]:
    """Each open voice scored by a model trained on our phrases and the other five voices."""
    known = known_words()
    ours = our_examples()
    voices = {voice: voice_examples(voice) for voice in OPEN_VOICES}
    seen = {one: see(examples, known) for one, examples in {"": ours, **voices}.items()}
    found = {}
    for voice, kept_out in voices.items():
        others = {name: examples for name, examples in voices.items() if name != voice}
        examples = [*ours, *(one for each in others.values() for one in each)]
        rows = [*seen[""], *(one for name in others for one in seen[name])]
        stays = np.flatnonzero(~near_duplicates(examples, kept_out))
        table = FeatureTable.of([rows[at] for at in stays])
        weights = ridge(
            matrix_of([rows[at] for at in stays], table),
            [TOPICS.index(examples[at].topic) for at in stays],
            weights_of(len(ours), len(examples))[stays],
        )
        scores = matrix_of(seen[voice], table) @ weights
        found[voice] = [
            Scored(example=one, seen=s, scores=row)
            for one, s, row in zip(kept_out, seen[voice], scores, strict=True)
        ]
    return found


def weights_of(ours: int, total: int) -> Numbers:
    """How much each example counts: ours first, then the voices'."""
    return np.where(np.arange(total) < ours, 1.0, VOICE_WEIGHT).astype(np.float32)


def calibrate(scored: Sequence[Scored]) -> Calibration:
    """Curves fitted on questions whose writers the model had not read."""
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
        ask_below=float(np.quantile(reach, ASKED_AT_MOST)),
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

    found = scipy.optimize.minimize_scalar(surprise, bounds=(1, 40), method="bounded")
    return round(float(found.x), 3)


def _curve(table: Numbers, came_true: np.ndarray[Any, Any]) -> Curve:
    """Logistic regression with a slight pull to zero, on standardised signals."""
    centre, spread = table.mean(axis=0), table.std(axis=0) + np.finfo(np.float32).eps
    fitted = LogisticRegression(C=10).fit((table - centre) / spread, came_true)
    weights = fitted.coef_[0] / spread
    bias = float(fitted.intercept_[0] - weights @ centre)
    return Curve(round(bias, 5), tuple(round(float(w), 5) for w in weights))


def train_shipped(found: dict[str, list[Scored]]) -> TopicModel:
    """The model on all our phrases and all open voices, calibrated on what was left out."""
    calibration = calibrate([one for scored in found.values() for one in scored])
    ours = our_examples()
    examples = [*ours, *(one for voice in OPEN_VOICES for one in voice_examples(voice))]
    return train(
        examples,
        weights_of(len(ours), len(examples)),
        calibration,
        _recipe(calibration, len(ours), len(examples)),
    )


def _recipe(calibration: Calibration, ours: int, total: int) -> dict[str, Any]:
    return {
        "sources": sources_digest(),
        "voices": voices_digest(),
        "phrases": ours,
        "examples": total,
        "trained_on": ["bot/chat/data/phrases", *OPEN_VOICES],
        "command": "python tests/train/train_topics.py",
        "ridge": RIDGE,
        "voice_weight": VOICE_WEIGHT,
        "calibration": asdict(calibration),
    }
