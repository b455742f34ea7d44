"""The descent that fits every linear model, against scikit-learn's ridge regression."""

from __future__ import annotations

import numpy as np
import pytest
from linear_training import fit, matrix_of, one_of
from sklearn.linear_model import Ridge
from topic_examples import OPEN_VOICES, known_words, see, voice_examples

from bot.chat.features import GROUP_LENGTHS
from knowledge.reading.feature_table import FeatureTable

RIDGE = 0.8


def test_it_finds_the_weights_that_scikit_learn_finds() -> None:
    """Ridge(solver="cholesky") of scikit-learn solves the dual of the same sum without descent.

    Features of one message alone, which `fit` never solves for, are among what it solves for.
    """
    examples = voice_examples(OPEN_VOICES[0])
    seen = see(examples, known_words())
    topics = sorted({one.topic for one in examples})
    targets = one_of([topics.index(one.topic) for one in examples], len(topics))
    weight = np.linspace(1, 3, len(examples), dtype=np.float32)
    kept, weights = fit(seen, targets, weight, ridge=RIDGE, tolerance=1e-5)
    whole = FeatureTable.of(seen, GROUP_LENGTHS)
    rows = matrix_of(seen, whole).astype(np.float64).toarray()
    model = Ridge(alpha=RIDGE, solver="cholesky", fit_intercept=False)
    model.fit(rows, targets, sample_weight=weight)
    theirs = model.coef_.T[np.isin(whole.keys, kept.keys)]
    assert 0 < len(kept.keys) < len(whole.keys)
    assert weights == pytest.approx(theirs, abs=2e-4)


def test_all_messages_at_once_are_what_each_is_alone() -> None:
    examples = voice_examples(OPEN_VOICES[0])
    seen = see(examples, known_words())
    table = FeatureTable.of(seen[::2], GROUP_LENGTHS)  # the others show features it does not know
    rows = matrix_of(seen, table)
    for at, message in enumerate(seen):
        vector = table.vector(message)
        alone = np.bincount(vector.rows, vector.values, len(table.keys))
        assert np.allclose(rows[[at]].toarray()[0], alone, atol=1e-6), examples[at].text
