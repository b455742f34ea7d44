"""An attack told with its wing: "forehand speed-up is heavy" tells of no counter of that wing."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import Family
from knowledge.regex import regex
from knowledge.vocabulary import Trait

_COUNTERS = frozenset({Trait.COUNTER, Trait.COUNTER_FOREHAND, Trait.COUNTER_BACKHAND})
_OURS = frozenset(["our", "my", "your", "us", "me"])
_IN_SHORT = regex(r"\bspd ?ups?\b")
"""Letters that no phrase of the lexicon has."""


def speed_up_off_a_wing(claim: Claim, note: NoteLine) -> Claim | None:
    """The speed-up, where that is the only fast shot named and it is their own."""
    if claim.trait not in _COUNTERS or _OURS & {word.folded for word in note.said}:
        return claim
    named = [
        hit.meaning
        for hit in note.hits.traits
        if hit.meaning.trait in (*_COUNTERS, Trait.SPEED_UP) or hit.meaning.family is Family.COUNTER
    ]
    is_named = bool(named) or _IN_SHORT.search(" ".join(word.folded for word in note.said))
    is_attack = is_named and all(one.trait is Trait.SPEED_UP for one in named)
    return replace(claim, trait=Trait.SPEED_UP) if is_attack else claim
