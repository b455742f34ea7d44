"""Topics out of voice beside two general-purpose baselines, on the same split and training lines.

Run from the checkout: `python tests/benchmarks/language.py`; about three minutes. Each open voice
is left out in turn; near-duplicates of its lines are taken out of training, for all three alike.
The baselines know nothing of pickleball: the nearest training line (rapidfuzz), and logistic
regression on word and character n-grams (scikit-learn).
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from rapidfuzz import fuzz, process  # noqa: E402
from sklearn.feature_extraction.text import TfidfVectorizer  # noqa: E402
from sklearn.linear_model import LogisticRegression  # noqa: E402
from sklearn.pipeline import make_pipeline, make_union  # noqa: E402
from topic_examples import (  # noqa: E402
    OPEN_VOICES,
    Example,
    our_examples,
    voice_examples,
    writer_examples,
)
from topic_training import leave_one_voice_out, repeats_of  # noqa: E402

from bot.chat.question_network import TOPICS  # noqa: E402

SHOWN = 3
"""Topics a user may see: the answer and two buttons."""

Scores = NDArray[np.float64]
Baseline = Callable[[Sequence[Example], Sequence[Example]], Scores]


def nearest_line(trained: Sequence[Example], asked: Sequence[Example]) -> Scores:
    """A topic scores as its likeliest training line does (rapidfuzz, token set ratio)."""
    likeness = process.cdist(
        [one.text.lower() for one in asked],
        [one.text.lower() for one in trained],
        scorer=fuzz.token_set_ratio,
    )
    topics = np.array([TOPICS.index(one.topic) for one in trained])
    return np.stack(
        [likeness[:, topics == topic].max(axis=1, initial=0) for topic in range(len(TOPICS))],
        axis=1,
    ).astype(np.float64)


def ngram_regression(trained: Sequence[Example], asked: Sequence[Example]) -> Scores:
    """Logistic regression on tf-idf of words (1 to 2) and characters (2 to 5)."""
    model = make_pipeline(
        make_union(
            TfidfVectorizer(ngram_range=(1, 2), sublinear_tf=True),
            TfidfVectorizer(analyzer="char_wb", ngram_range=(2, 5), sublinear_tf=True),
        ),
        LogisticRegression(C=10, max_iter=300),
    )
    model.fit([one.text for one in trained], [TOPICS.index(one.topic) for one in trained])
    scores = np.full((len(asked), len(TOPICS)), -np.inf)
    scores[:, model.classes_] = model.decision_function([one.text for one in asked])
    return scores


def right_of(scores: Scores, asked: Sequence[Example]) -> tuple[float, float]:
    """Shares whose best topic is right, and whose best three hold a right one."""
    best = np.argsort(-scores, axis=1)[:, :SHOWN]
    hits = [
        [TOPICS[topic] in one.right for topic in row] for row, one in zip(best, asked, strict=True)
    ]
    return float(np.mean([row[0] for row in hits])), float(np.mean([any(row) for row in hits]))


def lines() -> Iterator[str]:
    """A row a voice: best right and among three, for ours and the two baselines."""
    ours = {
        voice: np.array([one.scores for one in scored], dtype=np.float64)
        for voice, scored in leave_one_voice_out().items()
    }
    contenders: dict[str, Baseline] = {
        "nearest line": nearest_line,
        "n-gram regression": ngram_regression,
    }
    yield f"{'left out':10}{'n':>5}" + "".join(f"{name:>22}" for name in ("ours", *contenders))
    totals: list[list[float]] = []
    for voice in OPEN_VOICES:
        asked, trained = voice_examples(voice), _training_lines(voice)
        found = [right_of(ours[voice], asked)]
        found += [right_of(baseline(trained, asked), asked) for baseline in contenders.values()]
        totals.append([len(asked), *(share for pair in found for share in pair)])
        yield f"{voice:10}{len(asked):>5}" + "".join(map(_cell, found))
    table = np.array(totals)
    whole = np.average(table[:, 1:], axis=0, weights=table[:, 0])
    pairs = [(float(a), float(b)) for a, b in zip(whole[::2], whole[1::2], strict=True)]
    yield f"{'all':10}{int(table[:, 0].sum()):>5}" + "".join(map(_cell, pairs))


def _training_lines(left_out: str) -> list[Example]:
    asked = voice_examples(left_out)
    others = [one for name in OPEN_VOICES if name != left_out for one in voice_examples(name)]
    examples = [*our_examples(), *writer_examples(), *others]
    return [
        one for one, repeats in zip(examples, repeats_of(examples, asked), strict=True)
        if not repeats
    ]  # fmt: skip


def _cell(shares: tuple[float, float]) -> str:
    return f"{shares[0]:>12.1%} {shares[1]:>8.1%} "


def main() -> None:
    for line in lines():
        sys.stdout.write(line + "\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main()
