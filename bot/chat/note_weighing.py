"""A note's claims once the model of many writers' notes has weighed what the rules read in it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.claim_model import (
    ADDED_TO_PLAIN_FROM,
    FACTS_STAND_FROM,
    MADE_FROM,
    OFFERED_FROM,
    PLAIN_STANDS_FROM,
    RULES_COUNT,
    RULES_OFFERED_FROM,
    RULES_STAND_FROM,
    SKILL,
    Likely,
    the_claim_model,
)
from bot.chat.clauses import Clause
from bot.chat.forms import word_set
from bot.chat.half_understood import Doubted
from bot.chat.likely_claims import (
    around,
    as_its_own_words,
    claim_of,
    doubted_claim,
    number_of_part,
    part_at,
)
from bot.chat.note_features import players_meant, see_note
from bot.chat.note_hits import Hits, is_height
from bot.chat.note_line import NoteLine
from bot.chat.note_opinions import by_denied_opinions
from bot.chat.note_ourselves import facts_of_myself
from bot.chat.note_plain import between_commas, is_plain, plain_claims, with_plain
from bot.chat.said import Claim
from bot.chat.trait_lexicon import Role
from knowledge.dataclass import dataclass
from knowledge.vocabulary import TRAITS, PlayerId, Trait, TraitKind, Value

DONE_OFTEN = frozenset({Trait.SPEED_UP, Trait.FOREHAND_DRIVE, Trait.BACKHAND_DRIVE})
"""Skills that are also habits: who speeds up a lot need not be good at it."""

LISTED = 3
"""Claims of a note that lists: writers of practice notes hardly ever made so many."""

_ENDS_AN_ACT = frozenset(["up", "out", "away", "long", "wide", "short", "high"])
_WE = frozenset(["i", "we"])
_TAKES_BACK = frozenset(["wait", "no", "nope", "nah", "sorry", "oops", "actually"])
"""Words that open a correction."""

_I_MEANT = (("i", "mean"), ("i", "meant"))

_ACT = word_set("speeds_up_or_drives")
"""Words that tell what is done and not how well."""


MADE_OF_OTHERS_FROM = 0.8
"""The chance from which a claim is made although the words seem to be about somebody else."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """The claims that the note makes, in order of place, and those that it may make."""

    claims: tuple[Claim, ...]
    doubted: tuple[Doubted, ...] = ()


def weigh(
    note: NoteLine, parts: Sequence[Clause], ruled: Sequence[Claim], excepted: Collection[Trait]
) -> Weighed:
    """What the model holds for likely enough, in the rules' words where they read it too.

    What the rules read as denied or excepted stays so: "not slow" says little, but surely. And what
    was only once so the model does not know.
    """
    claims: list[Claim] = []
    doubted: list[Doubted] = []
    players = players_meant(note)
    by_rules = ruled
    misread = [one for one in ruled if _runs_into_ours(note, one)]
    ruled = [one for one in ruled if one not in misread]
    silent_on = {*excepted, *(one.trait for one in misread)}
    for player in players:
        mine = {(one.trait, one.value): one for one in ruled if _affirms(one, player)}
        likely = [
            one
            for one in _as_affirmed(
                as_its_own_words(likely_claims(note, by_rules, player), mine, note), mine
            )
            if _is_read(one, mine)
            or (
                not (one.trait in silent_on or _is_denied(one, player, ruled))
                and _may_add(one, player, note, around(one.at, note.hits, parts))
            )
        ]
        made = [
            one
            for one in likely
            if _is_made(
                one, mine, is_plain=is_plain(part_at(one.at, parts), _read(one, mine), note)
            )
            and not _outdone(one, likely, mine)
        ]
        told = [
            mine[one.trait, one.value]
            if _is_read(one, mine)
            else claim_of(one, player, note, parts)
            for one in made
        ]
        heard = [one for one in likely if one.chance >= MADE_FROM]
        claims += [*told, *_beside(heard, [one for one in mine.values() if one not in told])]
        claims = with_plain(claims, plain_claims(note, parts, mine.values()))
        doubted += [
            doubted_claim(one, player, note, parts)
            for one in likely
            if one not in made
            and not one.denied
            and one.chance >= (RULES_OFFERED_FROM if _is_read(one, mine) else OFFERED_FROM)
        ]
    claims += [one for one in ruled if one.player not in players]
    doubts = {(one.claim.player, one.claim.trait) for one in doubted}
    unheard = [one for one in ruled if (one.player, one.trait) not in doubts and not one.denied]
    claims += _in_a_list(note, parts, unheard, claims)
    claims = with_plain(claims, by_denied_opinions(note, parts, ruled))
    claims += _only_denied(ruled, claims)
    claims = with_plain(claims, facts_of_myself(note.said, note.ourselves, by_rules))
    claims = [one for one in claims if not _is_of_their_lobs(one, claims)]
    doubted = [one for one in doubted if not _is_of_their_lobs(one.claim, claims)]
    claims.sort(key=lambda one: one.span)
    return Weighed(claims=tuple(claims), doubted=tuple(doubted))


def _is_of_their_lobs(claim: Claim, claims: Iterable[Claim]) -> bool:
    """ "Misses lobs over the left shoulder": lobs hit at them, so none of theirs is weak."""
    if claim.trait is not Trait.LOB or claim.value not in (Value.WEAKNESS, Value.STRENGTH):
        return False
    start, stop = claim.span
    return any(
        one.player == claim.player
        and one.trait is Trait.LOB_DEFENSE
        and one.span[0] <= start
        and stop <= one.span[1]
        for one in claims
    )


def likely_claims(note: NoteLine, ruled: Sequence[Claim], player: PlayerId) -> tuple[Likely, ...]:
    """What the model thinks the note may claim of the player, "wait no" or "i mean" before it left
    out.
    """
    typed = [word.folded for word in note.said]
    begins = next((at for at, word in enumerate(typed) if word not in _TAKES_BACK), 0)
    begins += 2 * (tuple(typed[begins : begins + 2]) in _I_MEANT)
    seen = [word.keys for word in see_note(note, ruled, player)[begins:]]
    return tuple(
        replace(one, start=one.start + begins, stop=one.stop + begins, at=one.at + begins)
        for one in the_claim_model().read(seen, above=RULES_OFFERED_FROM)
    )


def _runs_into_ours(note: NoteLine, claim: Claim) -> bool:
    """ "Popped it up | i put it away": its words run on into what one of us did next."""
    start, stop = claim.span
    told = [word.folded for word in note.said if start <= word.span[0] < stop]
    return any(one in _ENDS_AN_ACT and who in _WE for one, who in pairwise(told))


def _as_affirmed(
    likely: Iterable[Likely], ruled: Mapping[tuple[Trait, Value], Claim]
) -> tuple[Likely, ...]:
    """What the rules affirm is not denied: the model takes "not good" for "not weak" at times.

    And lobs that the rules read as hit at them ("misses lobs over the shoulder") are not theirs.
    """
    merged: dict[tuple[Trait, Value, bool], Likely] = {}
    for each in likely:
        at_them = each.trait is Trait.LOB and (Trait.LOB_DEFENSE, each.value) in ruled
        is_theirs = (each.trait, each.value) in ruled
        one = replace(each, trait=Trait.LOB_DEFENSE) if at_them and not is_theirs else each
        is_read = (one.trait, one.value) in ruled
        key = (one.trait, one.value, one.denied and not is_read)
        chance = one.chance + (merged[key].chance if key in merged else 0)
        merged[key] = replace(one, chance=chance, denied=key[-1])
    return tuple(merged.values())


def _is_read(one: Likely, ruled: Mapping[tuple[Trait, Value], Claim]) -> bool:
    """Whether the rules read it too."""
    return not one.denied and (one.trait, one.value) in ruled


def _read(one: Likely, ruled: Mapping[tuple[Trait, Value], Claim]) -> Claim | None:
    return ruled[one.trait, one.value] if _is_read(one, ruled) else None


def _affirms(claim: Claim, player: PlayerId) -> bool:
    return claim.player == player and not claim.denied


def _is_denied(one: Likely, player: PlayerId, ruled: Iterable[Claim]) -> bool:
    """Whether the rules read that it is not so; who is no lefty need not be right-handed."""
    return any(
        claim.denied
        and not one.denied
        and claim.player == player
        and claim.trait is one.trait
        and (claim.value is one.value or TRAITS[one.trait].kind is TraitKind.FACT)
        for claim in ruled
    )


def _beside(heard: Sequence[Likely], ruled: Iterable[Claim]) -> list[Claim]:
    """What the rules read otherwise: "lobs a lot, and badly" says two things of one trait."""
    return [
        claim
        for claim in ruled
        if any(
            one.trait is claim.trait and _is_skill(one.value) is not _is_skill(claim.value)
            for one in heard
        )
    ]


def _may_add(one: Likely, player: PlayerId, note: NoteLine, hits: Hits) -> bool:
    """Nothing that was only once so, no skill for a habit, and of whom the rules think somebody
    else is meant only what is all but certain."""
    meant = note.subjects.at(one.at)
    is_theirs = player in meant or (bool(meant) and one.chance >= MADE_OF_OTHERS_FROM)
    is_habit = one.trait in DONE_OFTEN and _only_tells_what(one, note, hits)
    return is_theirs and not is_habit and not hits.has(Role.FORMER)


def _only_tells_what(one: Likely, note: NoteLine, hits: Hits) -> bool:
    """Whether it is said that it is done, or in its clause how often, and nothing of how well."""
    if _ACT.issuperset(note.line[one.start : one.stop]) and not _judges(_between(one, note), note):
        return True
    return hits.has(Role.OFTEN) and not _judges(hits, note)


def _between(one: Likely, note: NoteLine) -> Hits:
    """Between the commas around it: of "slow feet, bangs forehands" no forehand is slow."""
    return note.hits.inside(between_commas(note, one.start, one.stop))


def _judges(hits: Hits, note: NoteLine) -> bool:
    return any(not is_height(hit, note.line) for hit in hits.having(Role.GOOD, Role.BAD))


def _is_made(one: Likely, ruled: Mapping[tuple[Trait, Value], Claim], *, is_plain: bool) -> bool:
    """Plain words of the lexicon outweigh much doubt of the model."""
    if not _is_read(one, ruled):
        return one.chance >= (ADDED_TO_PLAIN_FROM if is_plain else MADE_FROM)
    if is_plain:
        return one.chance >= PLAIN_STANDS_FROM
    is_fact = TRAITS[one.trait].kind is TraitKind.FACT
    return one.chance >= (FACTS_STAND_FROM if is_fact else RULES_STAND_FROM)


def _outdone(
    one: Likely, likely: Iterable[Likely], ruled: Mapping[tuple[Trait, Value], Claim]
) -> bool:
    """Whether the contrary is likelier. "Lobs a lot, and badly" says two things, not contraries."""
    return any(
        other.trait is one.trait
        and (other.value, other.denied) != (one.value, one.denied)
        and _is_skill(other.value) is _is_skill(one.value)
        and _counted(other, ruled) > _counted(one, ruled)
        for other in likely
    )


def _counted(one: Likely, ruled: Mapping[tuple[Trait, Value], Claim]) -> float:
    return one.chance * RULES_COUNT if _is_read(one, ruled) else one.chance


def _is_skill(value: Value) -> bool:
    return value in SKILL


def _in_a_list(
    note: NoteLine, parts: Sequence[Clause], unheard: Sequence[Claim], made: Sequence[Claim]
) -> list[Claim]:
    """What the rules read in parts of a long list of which the model says nothing at all."""
    if len(made) < LISTED:
        return []
    told = {number_of_part(note, parts, one) for one in made}
    return [one for one in unheard if number_of_part(note, parts, one) not in told]


def _only_denied(ruled: Iterable[Claim], made: Sequence[Claim]) -> list[Claim]:
    told = {(one.player, one.trait) for one in made}
    return [one for one in ruled if one.denied and (one.player, one.trait) not in told]
