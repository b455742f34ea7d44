"""A claim that the model finds likely, as it stands in its note: its words, clause and weight."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from bot.chat.claim_model import Likely
from bot.chat.clauses import Clause
from bot.chat.half_understood import Doubted
from bot.chat.note_figures import balls_counted
from bot.chat.note_hits import Hits
from bot.chat.note_line import NoteLine
from bot.chat.note_manner import condition_of, surety, weight
from bot.chat.note_plain import between_commas
from bot.chat.said import Claim
from bot.chat.trait_lexicon import Role
from knowledge.vocabulary import PlayerId, Trait, Value

_SELDOM = (Role.NOT, Role.RARELY, Role.FORMER)


def claim_of(likely: Likely, player: PlayerId, note: NoteLine, parts: Sequence[Clause]) -> Claim:
    """The claim with the words that spoke for it, and how their clause says it."""
    part = part_at(likely.at, parts)
    hits = note.hits.inside(part)
    return Claim(
        player=player,
        trait=likely.trait,
        value=likely.value,
        weight=weight(hits, balls_counted(note.line[part.start : part.stop])),
        span=(note.said[likely.start].span[0], note.said[likely.stop - 1].span[1]),
        denied=likely.denied,
        tag=condition_of(likely.trait, hits),
    )


def around(place: int, hits: Hits, parts: Sequence[Clause]) -> Hits:
    """What the lexicon found in the clause of that place."""
    return hits.inside(part_at(place, parts))


def part_at(place: int, parts: Sequence[Clause]) -> Clause:
    """The clause in which the word at that place stands."""
    return next(part for part in parts if part.start <= place < part.stop)


def doubted_claim(
    one: Likely, player: PlayerId, note: NoteLine, parts: Sequence[Clause]
) -> Doubted:
    """The claim with its chance, no surer than its clause says it."""
    claim = claim_of(one, player, note, parts)
    sure = surety(around(one.at, note.hits, parts))
    return Doubted(claim=replace(claim, weight=sure), chance=one.chance)


def number_of_part(note: NoteLine, parts: Sequence[Clause], claim: Claim) -> int:
    """Which part the claim begins in, counted from 1."""
    return sum(note.said[part.start].span[0] <= claim.span[0] for part in parts)


def as_its_own_words(
    likely: Sequence[Likely], ruled: Collection[tuple[Trait, Value]], note: NoteLine
) -> Iterator[Likely]:
    """What they do, where the rules read that and nothing between its commas says seldom: of "no
    lob, ernes lots" the model carries the "no" on."""
    for one in likely:
        own = note.hits.inside(between_commas(note, one.start, one.stop))
        is_carried = one.value is Value.RARELY and (one.trait, Value.OFTEN) in ruled
        is_done = is_carried and not own.having(*_SELDOM)
        yield replace(one, value=Value.OFTEN) if is_done else one
