"""Everyday words that several practice writers used: in a message they are hardly names."""

from __future__ import annotations

import json
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from line_writers import LEARNED_FROM

from bot.chat.common_words import is_common
from bot.chat.words import words
from scouting_db.known_names import Known, known_first_name, known_surname
from scouting_db.sounds import fold

TRAIN = Path(__file__).parents[1] / "train"
FEWEST_WRITERS = 2
SHORTEST = 5
MOSTLY = 0.5
"""Share of its uses in lower case from which a word is one; names are left out."""


def seen_words() -> list[str]:
    """In alphabetical order, without the common words and names."""
    writers: defaultdict[str, set[str]] = defaultdict(set)
    uses: Counter[str] = Counter()
    lower: Counter[str] = Counter()
    names: set[str] = set()
    for path, line in _lines():
        names |= _names(line)
        for word in words(line.get("text", "")):
            if word.folded.isalpha() and len(word.folded) >= SHORTEST:
                writers[word.folded].add(path)
                uses[word.folded] += 1
                lower[word.folded] += word.typed[:1].islower()
    return sorted(
        word
        for word, by in writers.items()
        if len(by) >= FEWEST_WRITERS
        and lower[word] >= MOSTLY * uses[word]
        and word not in names
        and not is_common(word)
        and Known.COMMONLY not in (known_surname(word), known_first_name(word))
    )


def _lines() -> Iterator[tuple[str, Mapping[str, Any]]]:
    folders = ("writers", "note_writers", "entry_writers")
    paths = [path for folder in folders for path in (TRAIN / folder).glob("*.jsonl")]
    paths += [
        TRAIN / "line_writers" / f"{writer}.{kind}.jsonl"
        for writer in LEARNED_FROM
        for kind in ("asked", "noted", "scores")
    ]
    for path in paths:
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.strip():
                yield str(path), json.loads(line)


def _names(line: Mapping[str, Any]) -> set[str]:
    told = [one for kind in ("players", "opponents") for one in line.get(kind) or ()]
    told += [one[0] for one in line.get("observations") or ()]
    return {part for one in told if isinstance(one, str) for part in fold(one).split()}
