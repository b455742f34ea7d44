"""A long line on two players of which nothing was read whole: each half is read by itself.

"Jansen dinks everything xcourt n pops it up when u go at her body vos is slow af but hits hard": in
one stretch the words of the one cloud those of the other.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.half_understood import MOST_OFFERED
from bot.chat.said import Certainty, Mention, NoteSaid
from bot.chat.unknown_names import has_predicate
from bot.chat.words import Word

Reader = Callable[[Sequence[Word], Sequence[Mention]], NoteSaid]
"""How the words of a note are read."""

_JOINS = frozenset(["and", "n", "or", "nor", "with", "than", "like", "as", "when", "if", "because"])


def told_apart(
    note: NoteSaid, said: Sequence[Word], mentions: Sequence[Mention], read: Reader
) -> NoteSaid:
    """The note; where it claims nothing of two who are told of one after the other, their halves
    read apart, if one of them claims something."""
    if note.claims or note.about_body:
        return note
    halves = [read(part, named) for part, named in _halves(said, mentions)]
    claims = tuple(dict.fromkeys(one for half in halves for one in half.claims))
    if not claims:
        return note
    told = {(one.player, one.trait) for one in claims}
    offered = [one for half in halves for one in half.offered]
    return replace(
        note,
        claims=claims,
        kept=tuple(one for half in halves for one in half.kept),
        offered=tuple(one for one in offered if (one.player, one.trait) not in told)[:MOST_OFFERED],
    )


def _halves(
    said: Sequence[Word], mentions: Sequence[Mention]
) -> Iterator[tuple[Sequence[Word], Sequence[Mention]]]:
    """The stretches that each open with a name and go on with what is told of it."""
    named = sorted((one for one in mentions if not one.pronoun), key=lambda one: one.span)
    if any(one.certainty is not Certainty.SURE for one in named):
        return
    starts = [at for one in named if (at := _opens(one, said)) is not None]
    players = {one.players for one in named}
    if len(starts) != len(named) or len(players) != len(named) or starts[:1] != [0]:
        return
    for start, stop in pairwise([*starts, len(said)]):
        first, last = said[start].span[0], said[stop - 1].span[1]
        yield said[start:stop], tuple(one for one in mentions if first <= one.span[0] < last)


def _opens(one: Mention, said: Sequence[Word]) -> int | None:
    """Where a name that something is told of stands; None for one named in passing."""
    at = next((at for at, word in enumerate(said) if word.span[0] == one.span[0]), None)
    behind = next((at for at, word in enumerate(said) if word.span[0] >= one.span[1]), len(said))
    if at is None or not has_predicate(said, behind):
        return None
    return at if not at or said[at - 1].folded not in _JOINS else None
