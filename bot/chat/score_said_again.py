"""A score said again after a slip of the tongue: "twelve all, no i mean twelve eleven us"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.said import SaidScore
from bot.chat.score_groups import score_group
from bot.chat.words import Word
from knowledge.regex import regex

_SLIPS = (("no", "i", "mean"), ("no", "wait"), ("wait", "no"), ("i", "mean"), ("no", "sorry"))

_NOT_SO = regex(
    r"no(?: no| wait| sorry)* (?:we|i|they|it|that)"
    r" ?(?:(?:did|do|was|were|are|is|have|had|has) not|didnt|dont|wasnt|werent|arent|isnt|havent)"
    r"(?: (?:the|our|their|yet|serve|serves|served|serving|start|started|right|so|ours|theirs))*"
    r"(?: (?:sorry|wait|no|my bad|oops))* "
)
"""What takes a call back by saying what was not so: "no we did not serve, sorry"."""


def with_side_kept(score: SaidScore, before: SaidScore | None) -> SaidScore:
    """ "6-8-2 us no wait 6-8-1": numbers put right stay the side's that was named before them."""
    call = score.call
    if call is None or call.server is None or score.we_serve is not None or score.ours is not None:
        return score
    if before is None or before.we_serve is None:
        return score
    numbers = (call.serving, call.receiving)
    ours, theirs = numbers if before.we_serve else numbers[::-1]
    return replace(score, ours=ours, theirs=theirs, we_serve=before.we_serve)


def after_slip(said: Sequence[Word]) -> Sequence[Word]:
    """The words from the last slip on, if a score follows it; else all of them."""
    folded = tuple(word.folded for word in said)
    for at in reversed(range(1, len(said))):
        is_slip = any(folded[at : at + len(slip)] == slip for slip in _SLIPS)
        if is_slip and score_group(said[at:]) is not None:
            return said[at:]
        behind = _behind_what_was_not(said, at)
        if behind and score_group(behind) is not None:
            return behind
    return said


def _behind_what_was_not(said: Sequence[Word], at: int) -> Sequence[Word]:
    """The words behind "no we did not serve", where that stands at this place; else none."""
    if said[at].folded != "no":
        return ()
    found = _NOT_SO.match(" ".join(word.folded for word in said[at:]) + " ")
    return said[at + found[0].count(" ") :] if found else ()
