"""Lines to train on that nearly repeat a line kept out, and so must go before a figure counts."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from rapidfuzz import fuzz, process
from sklearn.feature_extraction.text import CountVectorizer

NEAR_DUPLICATE = 90  # token_set_ratio of rapidfuzz, 0 to 100, from above which a line repeats
_SHARED_AT_LEAST = 0.8  # of the shorter line's length; a repeat by its shared words has .82
_LIKE_AT_LEAST = 85  # plain likeness of the sorted words; a repeat by its spelling has 90

Flags = np.ndarray[Any, np.dtype[np.bool_]]


def near_duplicates(lines: Sequence[str], kept_out: Sequence[str]) -> Flags:
    """Which lines nearly repeat one that is kept out.

    Two cheap bounds pick the pairs that may: thousands of lines against hundreds take a second
    instead of half a minute.
    """
    ours, theirs = [_sorted(line) for line in lines], [_sorted(line) for line in kept_out]
    flags = np.zeros(len(ours), dtype=np.bool_)
    for at, other in zip(*np.nonzero(_sharing(ours, theirs) | _alike(ours, theirs)), strict=True):
        if not flags[at]:
            likeness = fuzz.token_set_ratio(ours[at], theirs[other])
            flags[at] = likeness > NEAR_DUPLICATE
    return flags


def _sorted(line: str) -> str:
    return " ".join(sorted(line.lower().split()))


def _sharing(ours: Sequence[str], theirs: Sequence[str]) -> Flags:
    """Pairs whose shared words are most of one line."""
    words = CountVectorizer(tokenizer=str.split, token_pattern=None, binary=True, lowercase=False)
    words.fit([*ours, *theirs])
    letters = np.array([len(word) + 1 for word in words.get_feature_names_out()])
    rows, columns = words.transform(ours), words.transform(theirs)
    shared = (rows.multiply(letters).tocsr() @ columns.T).toarray()
    shorter = np.minimum((rows @ letters)[:, None], (columns @ letters)[None, :])
    return np.asarray(shared >= _SHARED_AT_LEAST * shorter)


def _alike(ours: Sequence[str], theirs: Sequence[str]) -> Flags:
    """Pairs that are spelled alike, slips of the finger and all."""
    return np.asarray(
        process.cdist(
            ours, theirs, scorer=fuzz.ratio, score_cutoff=_LIKE_AT_LEAST, dtype=np.uint8, workers=-1
        ).astype(np.bool_)
    )
