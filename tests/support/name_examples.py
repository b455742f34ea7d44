"""What people typed for names, with whom they meant: for training and for leaving voices out."""

from __future__ import annotations

import hashlib
import json
import random
from collections.abc import Iterator, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

from line_writers import LEARNED_FROM as LINE_WRITERS
from voices import (
    CASES,
    FRESH_NAME_VOICES,
    LATER_SLOT_VOICES,
    OPEN_VOICES,
    SLOT_CASES,
    SLOT_VOICES,
    VOICES,
)

from knowledge.dataclass import dataclass
from scouting_db.name_chances import features_of
from scouting_db.name_forms import given_name, surname_of
from scouting_db.name_parts import bare, without_aside
from scouting_db.sounds import fold

TRAIN = Path(__file__).parents[1] / "train"
NAME_WRITERS = tuple(sorted(path.stem for path in (TRAIN / "name_writers").glob("*.jsonl")))
"""Who wrote names for the model and nothing else; none of the rules was mended by their lines."""

EARLIER = (*OPEN_VOICES, *SLOT_VOICES, *LATER_SLOT_VOICES, *FRESH_NAME_VOICES)
"""Voices whose names were read while the rules were mended."""

_FEWEST_LEFT = 3
_LOWER_CASE = 0.5
"""Share of strangers made up that are typed in lower case."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lookup:
    """What was typed, on which roster, and the answers that are right: a name, names or nobody."""

    typed: str
    roster: tuple[str, ...]
    answers: tuple[frozenset[str], ...]
    made_up: bool = False

    @property
    def words(self) -> list[str]:
        return bare(without_aside(self.typed)).split()

    def share(self, name: str) -> float:
        """Of the answers that are right, the share that have this name among them."""
        return sum(name in one for one in self.answers) / len(self.answers)


@lru_cache(maxsize=1)
def sources() -> dict[str, Path]:
    """Who wrote look-ups that may be learned from, and where they lie."""
    earlier = {
        voice: (VOICES if voice in OPEN_VOICES else SLOT_CASES) / f"{voice}.names.jsonl"
        for voice in EARLIER
    }
    writers = {
        f"line writer {one}": TRAIN / "line_writers" / f"{one}.names.jsonl" for one in LINE_WRITERS
    }
    own = {f"writer {one}": TRAIN / "name_writers" / f"{one}.jsonl" for one in NAME_WRITERS}
    return {"ours": CASES / "names.jsonl"} | earlier | writers | own


def digest() -> str:
    """A hash of all lines learned from: a model trained on others is stale."""
    found = hashlib.sha256()
    for path in sources().values():
        found.update(path.read_bytes())
    return found.hexdigest()


@lru_cache(maxsize=64)
def lookups(source: str) -> tuple[Lookup, ...]:
    lines = sources()[source].read_text(encoding="utf-8").splitlines()
    return tuple(_lookup(json.loads(line)) for line in lines)


def _lookup(told: dict[str, Any]) -> Lookup:
    answers = [_answer(one) for one in (told["right"], *told.get("also", ()))]
    return Lookup(typed=told["typed"], roster=tuple(told["roster"]), answers=tuple(answers))


def _answer(told: str | list[str] | None) -> frozenset[str]:
    if told is None:
        return frozenset()
    return frozenset([told] if isinstance(told, str) else told)


def strangers(source: str) -> Iterator[Lookup]:
    """Made up: whoever was meant is on the roster no more, or only their first name is theirs."""
    rng = random.Random(source)
    everybody = [name for one in lookups(source) for name in one.roster]
    for one in lookups(source):
        if len(one.answers) > 1 or len(one.answers[0]) != 1:
            continue
        (meant,) = one.answers[0]
        left = tuple(name for name in one.roster if name != meant)
        if len(left) >= _FEWEST_LEFT:
            yield Lookup(typed=one.typed, roster=left, answers=(frozenset(),), made_up=True)
        surname = surname_of(rng.choice(everybody))
        if surname and not any(surname in fold(name).replace(" ", "") for name in one.roster):
            typed = f"{given_name(meant)} {surname}"
            typed = typed if rng.random() < _LOWER_CASE else typed.title()
            yield Lookup(typed=typed, roster=one.roster, answers=(frozenset(),), made_up=True)


def seen(one: Lookup) -> Iterator[tuple[dict[str, float], float]]:
    """Of each name near enough, what speaks for it, and the share of right answers that have it."""
    found = features_of(one.words, [(name, ()) for name in one.roster])
    for name, features in zip(one.roster, found, strict=True):
        if features is not None:
            yield features, one.share(name)


def all_of(chosen: Sequence[str]) -> Iterator[Lookup]:
    for source in chosen:
        yield from lookups(source)
        yield from strangers(source)
