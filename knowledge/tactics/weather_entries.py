"""The entries on weather and bodies: read from data, and picked by the words that stand in them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

from knowledge.complaints import complains
from knowledge.dataclass import dataclass
from knowledge.general_rule import (
    GeneralRule,
    RuleDataError,
    groups_said,
    load_entries,
    overlap,
    read_rule,
)
from knowledge.regex import regex
from knowledge.tactics.weather_said import folded

BODY, SKY = "body", "sky"

LABELS = {
    "heart": "chest or heart",
    "head": "a knock to the head",
    "illness": "ill, or a condition",
    "medicine": "pills",
    "ankle_knee": "ankle, knee or foot",
    "pain": "pain or strain",
    "blister": "blister or skin",
    "fall": "a fall",
    "wet": "wet court",
    "smoke": "smoke or bad air",
    "dark": "bad light",
    "cold": "cold weather",
    "grip": "slippery grip",
    "altitude": "thin air",
    "drink_eat": "food and drink",
    "wait": "a long wait",
    "heat": "hot weather",
}
"""What a button says where an entry's id would not tell a player what it is about."""

SAYINGS = regex(
    r"\b(?:(?:knee|hip|chest|shoulder|head|belt|waist|eye) (?:high|height|level)"
    r"|cold feet|at our backs?|behind (?:my|our) backs?|on the other side|from (?:the )?left side"
    r"|(?:off|at|on) (?:my|his|her|their) (?:hip|shoulder|feet|chest)|breath of (?:wind|air)"
    r"|hot hand|hot streak|hot as heck|heart says|on (?:the )?(?:paddle|other) hand"
    r"|(?:shak\w+|trembl\w+) (?:\w+ ){0,4}(?:nerves|nervous|pressure)"
    r"|balance of|mother in law|paint(?:s|ed)?)\b"
)
"""Bodies in these are figures of speech, or no complaint."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A rule with a name and whether it answers a body's complaint or the weather."""

    id: str
    kind: str
    rule: GeneralRule

    @property
    def label(self) -> str:
        """What a button says."""
        return LABELS.get(self.id, self.id.replace("_", " "))


def entry_by_words(words: str) -> Entry | None:
    """The gravest complaint that is told; without one the entry that covers most of the words."""
    text = _read(words)
    said = SAYINGS.sub(" ~ ", text)
    for entry in entries():
        if entry.kind == BODY and _picks(entry, said):
            return entry
    sky = [entry for entry in entries() if entry.kind == SKY]
    best = max(sky, key=lambda entry: overlap(entry.rule.words, text))
    return best if overlap(best.rule.words, text) else None


def tells_of_a_body(words: str) -> bool:
    """Whether the words tell of a complaint, by their form or by one of an entry's words."""
    picked = entry_by_words(words)
    return complains(words) or (picked is not None and picked.kind == BODY)


def picks(entry: Entry, words: str) -> bool:
    """Whether words that pick this entry stand there, whatever else does."""
    return _picks(entry, SAYINGS.sub(" ~ ", _read(words)))


def _picks(entry: Entry, said: str) -> bool:
    return bool(overlap(entry.rule.words, said) or groups_said(entry.rule, said))


def _read(words: str) -> str:
    return re.sub(r"\bhr:? ?(?=\d{3}\b)", "heart rate ", mended(folded(words)))


REAL_WORDS = frozenset({"does", "tried", "slat", "clod", "sings"})
"""English by themselves, though a swap of two letters makes each a word of ours."""


def mended(text: str) -> str:
    """The text with two swapped letters put right where that makes a word of ours."""
    return re.sub(r"[a-z]{4,}", lambda found: _unswapped(found[0]), text)


def _unswapped(token: str) -> str:
    ours = _long_words()
    if token in ours or token in REAL_WORDS:
        return token
    swaps = (token[:n] + token[n + 1] + token[n] + token[n + 2 :] for n in range(len(token) - 1))
    return next((swap for swap in swaps if swap in ours), token)


@cache
def _long_words() -> frozenset[str]:
    """Single words that pick an entry, long enough to be known with two letters swapped."""
    rules = [entry.rule for entry in entries()]
    said = [word for rule in rules for word in (*rule.words, *sum(rule.together, ()))]
    return frozenset(one for word in said for one in word.split() if len(one) >= 4)


def entry_of(name: str) -> Entry | None:
    """The entry of that name; None for any other text."""
    return _by_id().get(name)


def entry_named(name: str) -> Entry:
    """The entry of a name that is one."""
    return _by_id()[name]


@cache
def _by_id() -> Mapping[str, Entry]:
    return {entry.id: entry for entry in entries()}


@cache
def entries() -> tuple[Entry, ...]:
    """All entries, gravest first; RuleDataError if one does not fit."""
    return tuple(_read_entry(row) for row in load_entries("knowledge.tactics", "weather.toml"))


def _read_entry(row: Mapping[str, object]) -> Entry:
    found = Entry(id=str(row.get("id")), kind=str(row.get("kind")), rule=read_rule(row))
    if found.kind not in (BODY, SKY) or (found.kind == BODY and not found.rule.caution):
        raise RuleDataError(f"an entry is of body, with a caution, or of sky: {row}")
    return found
