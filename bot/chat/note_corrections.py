"""Whom a note means once its names are in order: a slip corrected, a pronoun before its name."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from bot.chat.forms import any_of, word_set
from bot.chat.pronouns import PLURAL
from bot.chat.said import Certainty, Mention
from bot.chat.words import Word

_LINKS = word_set("between_a_slip_and_a_name")
_AFTER = word_set("after_a_right_name")


def meant(said: Sequence[Word], mentions: Sequence[Mention]) -> tuple[Mention, ...]:
    """The mentions that count.

    After "scratch that, it was Castellano" nobody named before is meant. A pronoun before the
    only name of a note is that name's: "his counter is lovely, that's Lindqvist again". A "they"
    before several is theirs, not that of one player spoken of before: "they stack, Hale and Ruiz".
    """
    named = [one for one in mentions if not one.pronoun]
    if not named:
        return tuple(mentions)
    if len(named) > 1 and _is_correction(said, named[-2], named[-1]):
        return (named[-1],)
    players = {one.players for one in named}
    first = min(one.span[0] for one in named)
    if len(players) > 1 or any(one.certainty is not Certainty.SURE for one in named):
        return _without_early_they(mentions, first)
    return tuple(one for one in mentions if not (one.pronoun and one.span[0] < first))


def _without_early_they(mentions: Sequence[Mention], first: int) -> tuple[Mention, ...]:
    meant_by = Counter(one.span for one in mentions)
    return tuple(
        one
        for one in mentions
        if not (
            one.pronoun
            and one.typed.lower() in PLURAL
            and one.span[0] < first
            and meant_by[one.span] == 1
        )
    )


def _is_correction(said: Sequence[Word], slip: Mention, right: Mention) -> bool:
    """Whether words of correction lead from the one name to the other, which ends the note."""
    between = [word.folded for word in said if slip.span[1] <= word.span[0] < right.span[0]]
    after = {word.folded for word in said if word.span[0] >= right.span[1]}
    lead = " ".join(between)
    cues = list(any_of("corrects_a_name").finditer(lead))
    return bool(cues) and set(lead[cues[-1].end() :].split()) <= _LINKS and after <= _AFTER
