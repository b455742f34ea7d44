"""The winds that an answer offers as buttons."""

from __future__ import annotations

from knowledge.advice import Advice, MatchFact


def winds_offered(advice: Advice) -> list[str | None]:
    """The values of its buttons about the wind, in order."""
    return [choice.value for choice in advice.choices if choice.fact == MatchFact.WIND]
