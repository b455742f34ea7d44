"""How a clause of a note says what it says: how strongly, how surely, under which condition."""

from __future__ import annotations

from bot.chat.note_hits import Hits
from bot.chat.trait_lexicon import Role
from knowledge.vocabulary import Tag

HEDGED_WEIGHT = 0.45
"""What "maybe" leaves of a claim. Common practice, no source (engineering notes 1.3)."""

STRONG_WEIGHT = 1.5
MILD_WEIGHT = 0.5


def weight(hits: Hits) -> float:
    strength = MILD_WEIGHT if hits.has(Role.LESS) else STRONG_WEIGHT if hits.has(Role.MORE) else 1.0
    return strength * surety(hits)


def surety(hits: Hits) -> float:
    """What hedging leaves, whatever the strength."""
    return HEDGED_WEIGHT if hits.has(Role.HEDGE) else 1.0


def condition(hits: Hits) -> Tag | None:
    """When it holds ("when pulled wide"), by the first such phrase."""
    return next((hit.meaning.tag for hit in hits.having(Role.TAG) if hit.meaning.tag), None)
