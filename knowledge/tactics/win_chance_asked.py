"""What a question of our chances asks beside the game: the next rally alone, the exact figure."""

from __future__ import annotations

from knowledge.regex import regex
from knowledge.tactics.told_ball import plain_words

_OF_ONE_RALLY = regex(
    r"\b(?:win|wins|winning|take|taking|get|getting|lose|losing|chances?|odds|likely|probability)"
    r" (?:(?:on|at|of|in|for|to|we|us|that|win|winning|take|get|just|only) )*"
    r"(?:the (?:very )?next|this|the coming|one|a(?: single)?|any|each)"
    r" (?:one )?(?:rally|point|pt)\b(?! of (?:the )?(?:match|game))"
)
_SUPPOSES = regex(r"\b(?:if|when|after|once|worth|big|matter|swing|game|match)\b")
_EXACTLY = regex(r"\b(?:exact(?:ly)?|decimals?|precise(?:ly)?|to the percent|accurate(?:ly)?)\b")


def asks_of_one_rally(words: str) -> bool:
    """ "How likely do we win the next rally"; the game's chance if we win it is another one."""
    said = plain_words(words)
    return _OF_ONE_RALLY.search(said) is not None and not _SUPPOSES.search(said)


def asks_exactly(words: str) -> bool:
    """Whether a figure to the percent is wanted."""
    return _EXACTLY.search(plain_words(words)) is not None
