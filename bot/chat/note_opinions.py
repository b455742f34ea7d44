"""What somebody who writes a note does not think: "i dont think he lobs", "i doubt hale is slow".

The "not" stands before the opinion and means what follows: it is read as if it stood behind the
subject of that.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from bot.chat.clauses import Clause
from bot.chat.note_hits import Hit
from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME, Role, Sense
from knowledge.regex import regex

_NOT = (
    r"(?:dont|do not|didnt|did not|wouldnt|would not|wont|cant|cannot|couldnt|could not|never)"
    r"(?: (?:really|actually|even|exactly|quite|necessarily|honestly))?"
)
_OPINION = r"(?:think|thought|believe|reckon|say|call|figure|feel like|consider|rate)"
_I = r"(?:i|we|id|wed)(?: (?:really|honestly|just|still|personally|actually))?"
_OPENS = r"(?:^|(?<=^so )|(?<=^and )|(?<=^but )|(?<=^well )|(?<=^honestly ))"
_DENIES = (
    rf"(?:(?:\b{_I} |{_OPENS}){_NOT} {_OPINION}"
    rf"|(?:\b(?:im|i am|were|we are) |{_OPENS})not (?:saying|suggesting|claiming)"
    rf"|(?:\b{_I} (?:highly |seriously |very much |kinda )?|{_OPENS})doubt)"
)
_NOTHING_OF_THEM = r"(?! (?:so|twice|you|u|we|i|too|much|about|of|it|to|if|whether|how|who|what)\b)"
"""Words behind which nothing is denied of anybody: "i dont think so", "i dont think we lob"."""

_SUBJECT = rf"(?: (?:that|the|both|either|and|or|n|{NAME}|he|she|they|hes|shes|theyre)(?![^ ]))*"
_FORM: Final = regex(rf"{_DENIES}\b{_NOTHING_OF_THEM}{_SUBJECT}")


def found_in(line: Sequence[str], form: re.Pattern[str]) -> Iterator[tuple[int, int]]:
    """The places of the first word and behind the last of every stretch that has the form."""
    said = " ".join(line)
    for found in form.finditer(said):
        start = said.count(" ", 0, found.start())
        yield start, start + found[0].strip().count(" ") + 1


_JOINS_NAMES = frozenset(["and", "or", "n", "nor"])


def denied_opinions(line: Sequence[str], clause: Clause) -> list[Hit]:
    """Each as a "not" of that clause, with the subject of what is denied.

    It may begin in a clause before: "i dont think hale | and ruiz are quick".
    """
    goes_on = clause.start > 0 and line[clause.start - 1] == NAME
    first = 0 if goes_on and line[clause.start] in _JOINS_NAMES else clause.start
    found = [
        Hit(start=first + start, stop=first + stop, meaning=Sense(role=Role.NOT))
        for start, stop in found_in(line[first : clause.stop], _FORM)
    ]
    return [hit for hit in found if hit.stop > clause.start]


def by_denied_opinions(
    note: NoteLine, parts: Sequence[Clause], ruled: Sequence[Claim]
) -> tuple[Claim, ...]:
    """The claims of the rules that say what somebody is not thought to be or do."""
    found: list[Claim] = []
    for part in parts:
        stop = note.said[part.stop - 1].span[1]
        for hit in denied_opinions(note.line, part):
            start = note.said[hit.stop - 1].span[0]
            behind = [one for one in ruled if start <= one.span[0] and one.span[1] <= stop]
            first = min((one.span for one in behind), default=None)
            found += [one for one in behind if one.span == first and not one.denied]
    return tuple(found)
