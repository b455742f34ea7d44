"""A wing that fails when it is given pace: "her forehand breaks down when you give her pace".

A wing alone is read as its dinks; pace is what a counter meets, and no ball that is dinked.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.note_touch import DINKS
from bot.chat.said import Claim
from bot.chat.trait_lexicon import Family, Role
from knowledge.regex import regex
from knowledge.vocabulary import Trait

_GIVEN_PACE = regex(
    r"(?:when|whenever|if|once|as soon as) (?:you|u|ya|we|i|someone|somebody|one|its|it is|theres)"
    r"(?: (?!but |not |dont |no )\w+){0,4}? (?:pace|speed|heat|power|hard|fast)\b"
)
_COUNTERS = {
    Trait.FOREHAND_DINK: Trait.COUNTER_FOREHAND,
    Trait.BACKHAND_DINK: Trait.COUNTER_BACKHAND,
}


def under_pace(claims: Iterable[Claim], note: NoteLine) -> Iterator[Claim]:
    """The claims, a wing's dinks being its counters where pace follows; none told twice."""
    told = tuple(claims)
    known = {(one.player, one.trait) for one in told}
    for one in told:
        if not _meets_pace(one, note):
            yield one
        elif (one.player, _COUNTERS[one.trait]) not in known:
            yield replace(one, trait=_COUNTERS[one.trait])


def _meets_pace(claim: Claim, note: NoteLine) -> bool:
    if claim.trait not in DINKS or claim.trait not in _COUNTERS:
        return False
    start, stop = claim.span
    dinks = [hit for hit in note.hits.having(Role.STROKE) if hit.meaning.family is Family.DINK]
    named = any(start <= note.said[hit.start].span[0] < stop for hit in dinks)
    behind = " ".join(word.folded for word in note.said if word.span[0] >= stop)
    return not named and _GIVEN_PACE.match(behind) is not None
