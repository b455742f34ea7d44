"""The lines of tests/train/line_writers: hard questions, notes, scores and names."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

LINE_WRITERS = Path(__file__).parents[1] / "train" / "line_writers"

LEARNED_FROM = ("abe", "bea", "coby", "dag", "fitz", "gus", "ike", "jude", "lou")
ONLY_SCORED = ("effie", "hana", "kit")
"""Never read and never trained on."""


def lines_of(writer: str, kind: str) -> list[Mapping[str, Any]]:
    """A writer's lines of one kind: `asked`, `noted`, `scores` or `names`."""
    lines = (LINE_WRITERS / f"{writer}.{kind}.jsonl").read_text(encoding="utf-8").splitlines()
    return [json.loads(line) for line in lines]


def digest_of(*kinds: str) -> str:
    """A hash of what a model learns from these writers: one trained on other lines is stale."""
    digest = hashlib.sha256()
    for writer in LEARNED_FROM:
        for kind in kinds:
            digest.update((LINE_WRITERS / f"{writer}.{kind}.jsonl").read_bytes())
    return digest.hexdigest()
