"""Words of thirds that are theirs: they ask for our fourth, not for a third of ours."""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.tactics.told_ball import plain_words

_THEY: Final = r"(?:they|he|she|both)"
_THIRDS: Final = r"(?:thirds?|3rds?|third shots?)"
_OFTEN: Final = r"(?:every|each|all|always)"

_TELLS: Final = regex(
    rf"\b{_THEY} (?:always |just |keep |keeps )?drop(?:s|ping)?(?: \w+){{0,3}} {_OFTEN}(?: \w+)? "
    rf"{_THIRDS}\b|\b{_THEY} (?:always |just )?drops? {_OFTEN} {_THIRDS}\b|"
    rf"\b{_THEY} (?:never|dont|doesnt|wont) (?:miss|miss on|pop up)(?: \w+){{0,2}} "
    rf"(?:{_THIRDS}|drops?)\b|"
    rf"\b(?:their|his|her) (?:{_THIRDS}|drops?|third shot drops?) (?:is|are|land|lands|r|all) "
    r"(?:\w+ ){0,3}"
    r"(?:perfect|good|great|too good|unattackable|at our feet|in the kitchen|low|dead)\b"
)
"""Their thirds told as a habit: "they drop perfect every third", "their drops are too good"."""

GOOD: Final = regex(r"\b(?:perfect\w*|unattackable|too good|dead|never miss)\b")
"""Words of a drop that can't be hit down."""


def tells_their_thirds(situation: Situation) -> bool:
    """Whether the question tells of their thirds as a habit."""
    return _TELLS.search(_by_role(situation)) is not None


def _by_role(situation: Situation) -> str:
    """The words with the names of theirs as "he", which the forms know."""
    words = f" {plain_words(situation.asked.words)} "
    for one in situation.theirs:
        name = plain_words(one.name)
        if name:
            words = words.replace(f" {name}s ", " his ").replace(f" {name} ", " he ")
    return words.strip()
