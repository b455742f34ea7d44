"""Who won a game, or how many each has: the games that stand, not the points."""

from __future__ import annotations

from knowledge.regex import regex

_WHO_WON = regex(
    r"(?:(?:so|ok|and|wait) )*(?:(?:who|whos|did we|did they|have we) (?:won|win|took|take|got)"
    r"(?: (?:it|that|the|this|first|1st|second|2nd|third|3rd|last|game|match|one|set|two|three"
    r"|[123]|g[123]))*"
    r"|(?:which|what|how many) games? (?:did|have) (?:we|they) (?:won|win|lost|lose)"
    r"|(?:(?:what|whats|what is|how is) )?(?:(?:the|our|match) )*score (?:in|of|by|on)"
    r" (?:the )?games|(?:how many games|what) (?:is it|are we) (?:in|on) games"
    r"|(?:(?:what|whats|what is|what was|how was|how did|tell me) )?(?:(?:the|our) )*"
    r"(?:score|result|points|we end|it end|we do)(?: (?:of|in|for|from|on))? (?:the |our )*"
    r"(?:(?:first|1st|second|2nd|third|3rd|last) (?:game|one|set)"
    r"|(?:game|set|g) ?(?:one|two|three|[123]))"
    r"|(?:game|set) (?:one|two|three|[123]) (?:score|result)"
    r"|games (?:each|so far|score)|how many games (?:each|is it|are we|do we have|have we got))"
    r"(?: (?:now|so far|each|apiece))*"
)
"""Who won a game is in the score that stands."""

OF_GAMES = "games"
"""The words of a score asked for by its finished games."""


def asks_of_games(spoken: str) -> bool:
    """Whether nothing else is asked, in a line of folded words."""
    return _WHO_WON.fullmatch(spoken) is not None
