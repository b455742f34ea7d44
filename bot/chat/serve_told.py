"""Who serves beside a score, and whose name stands for which side, as the data has it."""

from __future__ import annotations

import re
from functools import cache

from bot.chat.forms import any_of, patterns
from knowledge.regex import regex

OURS = regex(r"\b(?:we|us|our|ours|were|weve|my|i|im|me|ive)\b")
THEIRS = regex(r"\b(?:they|them|their|theirs|theyre|theyve|his|her|hers)\b")
_DENIED = regex(r"\bnot @ \w+")


def with_sides(line: str) -> str:
    """The line with what players call the two pairs as "we" and "they"."""
    return any_of("side_names.they").sub("they", any_of("side_names.we").sub("we", line))


@cache
def forms_of_a_side(key: str) -> re.Pattern[str]:
    """The forms, each with @ for the side it is told of."""
    return re.compile("|".join(rf"(?<!\w){form}(?!\w)" for form in patterns(key)))


def side_serving(line: str) -> bool | None:
    """Whether we serve by what a line of the score says; None where it is not said, or unsure."""
    ours, theirs = OURS.sub("@", line), THEIRS.sub("@", line)
    we, they = _serves(ours), _serves(theirs)
    if we is not None or they is not None:
        return None if we is not None and we is they else they is not True if we is None else we
    return _only_side(line)


def _serves(line: str) -> bool | None:
    line = _DENIED.sub(" ", line)
    if forms_of_a_side("side_receives").search(line):
        return False
    return True if forms_of_a_side("side_serves").search(line) else None


def _only_side(line: str) -> bool | None:
    """ "12-11 us and serving": the one side that is named serves."""
    sides = OURS.search(line) is not None, THEIRS.search(line) is not None
    if sides[0] is sides[1] or not any_of("serving_unowned").search(line):
        return None
    return sides[0]
