"""Whom a note means once its names are in order: a slip corrected, a pronoun before its name."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.forms import any_of, word_set
from bot.chat.pronouns import PLURAL
from bot.chat.said import Certainty, Mention
from bot.chat.words import Word

_LINKS = word_set("between_a_slip_and_a_name")
_AFTER = word_set("after_a_right_name")
_AS_AN_ANSWER = frozenset(["yes", "yeah", "yep", "does", "always", "maybe"])
_ADDS = frozenset(["too", "also", "both", "as", "well"])
"""What says that it is true of the one and of the other."""


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


def corrected(
    said: Sequence[Word], mentions: Sequence[Mention]
) -> tuple[Sequence[Word], Sequence[Mention]]:
    """The words and names without a slip of the name and what takes it back.

    A slip of which nothing was told yet goes with whatever led to it: "hang on okafor no lindqvist
    is a lefty" tells of one, and its "no" denies nothing.
    Told again behind the right name, what was told before goes as well: "okafor lobs, sorry
    lindqvist lobs"; else the right name stands where the slip stood: "okafor lobs, sorry
    lindqvist".
    """
    said, mentions = _without_bare_slip(said, mentions)
    named = [one for one in mentions if not one.pronoun]
    if len(named) < 2 or not _is_correction(said, named[-2], named[-1]):
        return said, mentions
    slip, right = named[-2:]
    if _told_again(said, slip, right):
        gone = range(slip.span[0], right.span[0])
        return [word for word in said if word.span[0] not in gone], (right,)
    stop = len([word for word in said if word.span[0] < slip.span[1]])
    stop += len(_told_before(said, slip, right))
    return said[:stop], (replace(right, span=slip.span),)


def leaves_denial_open(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether "i meant" puts the name right: "okafor isn't slow, i meant lindqvist" says as likely
    that Lindqvist is. What such words deny is then no claim about either."""
    named = [one for one in mentions if not one.pronoun]
    if len(named) < 2 or not _is_correction(said, named[-2], named[-1]):
        return False
    return bool({"mean", "meant"} & {*_between(said, named[-2], named[-1])})


def _without_bare_slip(
    said: Sequence[Word], mentions: Sequence[Mention]
) -> tuple[Sequence[Word], Sequence[Mention]]:
    named = [one for one in mentions if not one.pronoun]
    for slip, right in pairwise(named):
        before = [word for word in said if word.span[0] < slip.span[0]]
        if _is_bare(said, slip, right) and _only_leads(before):
            left = [word for word in said if word.span[0] >= right.span[0]]
            return left, tuple(one for one in mentions if one.span[0] >= right.span[0])
    return said, mentions


def _only_leads(before: Sequence[Word]) -> bool:
    return any_of("leads_to_a_slip", first=True, last=True).search(_line(before)) is not None


def _is_bare(said: Sequence[Word], slip: Mention, right: Mention) -> bool:
    """Whether nothing but a change of mind stands between two names, and something is told behind.

    "Okafor no, lindqvist yes" answers for each of them, and "no" behind a comma is a mind changed.
    """
    between = [word for word in said if slip.span[1] <= word.span[0] < right.span[0]]
    ahead = [word for word in said if word.span[0] >= right.span[0]]
    told = [word for word in said if word.span[0] >= right.span[1]]
    if slip.players == right.players or not (between and told):
        return False
    if _line(between) == "no" and (ahead[0].gap.strip() or _AS_AN_ANSWER & {told[0].folded}):
        return False
    return any_of("changes_the_name", first=True, last=True).search(_line(between)) is not None


def _line(words: Sequence[Word]) -> str:
    return " ".join(word.folded for word in words)


def _told_again(said: Sequence[Word], slip: Mention, right: Mention) -> bool:
    after = {word.folded for word in said if word.span[0] >= right.span[1]}
    return bool(after & {*_told_before(said, slip, right)} - _AFTER)


def _is_correction(said: Sequence[Word], slip: Mention, right: Mention) -> bool:
    """Whether words of correction lead from the one name to the other, which ends the note.

    What was told may be told again behind it: "okafor lobs, sorry lindqvist lobs".
    """
    lead = " ".join(_between(said, slip, right))
    after = {word.folded for word in said if word.span[0] >= right.span[1]}
    cues = list(any_of("corrects_a_name").finditer(lead))
    told = {*_told_before(said, slip, right)} - _ADDS
    is_led = bool(cues) and set(lead[cues[-1].end() :].split()) <= _LINKS
    return is_led and after <= _AFTER | told


def _told_before(said: Sequence[Word], slip: Mention, right: Mention) -> list[str]:
    """The words between a slip and what takes it back."""
    between = _between(said, slip, right)
    cue = any_of("corrects_a_name").search(" ".join(between))
    return between if cue is None else " ".join(between)[: cue.start()].split()


def _between(said: Sequence[Word], slip: Mention, right: Mention) -> list[str]:
    return [word.folded for word in said if slip.span[1] <= word.span[0] < right.span[0]]
