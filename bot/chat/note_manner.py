"""How a clause of a note says what it says: how strongly, how surely, under which condition."""

from __future__ import annotations

from collections.abc import Sequence
from math import isclose
from typing import Final

from bot.chat.note_hits import Hits
from bot.chat.trait_lexicon import Role
from knowledge.regex import regex
from knowledge.vocabulary import Tag, Trait

HEDGED_WEIGHT = 0.45
"""What "maybe" leaves of a claim. Common practice, no source (engineering notes 1.3)."""

STRONG_WEIGHT = 1.5
MILD_WEIGHT = 0.5

MANY_BALLS, FEW_BALLS = 8, 3
"""So many balls counted ("9 of 10") make a strong note; so few a mild one, whatever its words.
Common practice, no source."""


def weight(hits: Hits, balls: int | None = None) -> float:
    """What a claim weighs by its clause's words, and by how many `balls` they count."""
    return _strength(hits, balls) * surety(hits)


def _strength(hits: Hits, balls: int | None) -> float:
    if balls is not None and balls <= FEW_BALLS:
        return MILD_WEIGHT
    if hits.has(Role.LESS):
        return MILD_WEIGHT
    is_many = balls is not None and balls >= MANY_BALLS
    return STRONG_WEIGHT if is_many or hits.has(Role.MORE) else 1.0


def surety(hits: Hits) -> float:
    """What hedging leaves, whatever the strength."""
    return HEDGED_WEIGHT if hits.has(Role.HEDGE) else 1.0


def is_hedged(weight: float) -> bool:
    """Whether a claim of that weight was told with a "maybe"."""
    return any(isclose(weight, one * HEDGED_WEIGHT) for one in (STRONG_WEIGHT, 1.0, MILD_WEIGHT))


_SOUNDS_UNSURE = regex(
    r"\b(?:maybe|perhaps|prob(?:ably|s)?|prolly|i (?:think|guess|believe|reckon)|might|may be"
    r"|could be|not sure|unsure|seems?|looks? like|kinda|possibly|iirc)\b"
)
"""A mere comparison, "not as slow as he looks", weighs as little and is no doubt."""


def is_told_unsure(text: str, weights: Sequence[float]) -> bool:
    """Whether hedging made all of a note count less, in words that a reader takes for doubt."""
    hedged = all(is_hedged(one) for one in weights)
    return bool(weights) and hedged and _SOUNDS_UNSURE.search(text.lower()) is not None


def condition(hits: Hits) -> Tag | None:
    """When it holds ("when pulled wide"), by the first such phrase."""
    return next((hit.meaning.tag for hit in hits.having(Role.TAG) if hit.meaning.tag), None)


ALWAYS_SO: Final = frozenset({Trait.HAND})
"""What holds at all times: of "righty, drives when pulled wide" the hand is no matter of when."""


def condition_of(trait: Trait, hits: Hits) -> Tag | None:
    """When what is told of that trait holds."""
    return None if trait in ALWAYS_SO else condition(hits)
