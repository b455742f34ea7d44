"""Who "bangs everything" or "is a banger" hardly drops a third: offered, since it is said of all
their balls and not of that one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from bot.chat.half_understood import Doubted
from bot.chat.note_line import NoteLine
from bot.chat.note_opinions import found_in
from bot.chat.note_weighing import Weighed
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_BANGS: Final = regex(
    r"\b(?:(?:is|hes|shes|just|only)(?: (?:such|just|only|really))? (?:a|an)"
    r"(?: (?:total|big|pure|real|proper|huge|classic|typical))* bangers?\b"
    r"|(?:bangs?|blasts?|hammers?|drives?|rips?|hits?|smacks?) (?:literally |basically |just )?"
    r"(?:everything|eveything|everythin|every ball|every shot|all (?:the |his |her )?balls"
    r"|anything)(?: (?:hard|flat))?(?! (?:[^ ]+ )?(?:third|thirds|3rds?|out|long|back|in|into|to"
    r"|at|over|off|above)\b))"
)
_NOT = regex(r"\b(?:not|no|isnt|doesnt|dont|never|hates?|against|vs|with)\b")
_HITS = regex(r"\bhits? (?:everything|every|all|anything)(?!.*\b(?:hard|flat)\b)")
"""Who hits everything may hit it softly."""


def of_bangers(note: NoteLine, read: Weighed) -> Weighed:
    """The reading with what banging everything makes likely, where nothing of thirds was read."""
    known = {one.trait for one in (*read.claims, *(each.claim for each in read.doubted))}
    line = " ".join(note.line)
    if Trait.THIRD_SHOT_DROP in known or _NOT.search(line) or _HITS.search(line):
        return read
    return replace(read, doubted=(*read.doubted, *_likely(note)))


def _likely(note: NoteLine) -> Iterator[Doubted]:
    for start, stop in found_in(note.line, _BANGS):
        span = (note.said[start].span[0], note.said[stop - 1].span[1])
        for player in note.subjects.at(start):
            claim = Claim(
                player=player,
                trait=Trait.THIRD_SHOT_DROP,
                value=Value.RARELY,
                weight=1.0,
                span=span,
            )
            yield Doubted(claim=claim, chance=1.0)
