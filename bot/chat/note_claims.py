"""What one clause of a note claims: traits with their values, before they are anybody's."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.clauses import Clause
from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.note_adjectives import adjectives_of, counts_a_habit, is_told, skills_not_habits
from bot.chat.note_hits import (
    JUDGEMENTS,
    Hit,
    Hits,
    Thing,
    things,
    wings_said,
)
from bot.chat.note_negations import (
    REACH_OF_A_NEGATION,
    Denied,
    contrasted,
    denied,
    denies,
    negations,
    once_so,
    under_negation,
)
from bot.chat.note_pairs import SMALL_WORDS, judged_within, pairs_of
from bot.chat.note_touch import by_depth, by_touch, says_where
from bot.chat.trait_lexicon import NAME, TRAIT_OF_STROKE, Family, Role
from knowledge.dataclass import dataclass
from knowledge.vocabulary import TRAITS, Trait, TraitKind, Value, Wing

_SKILL = frozenset({Value.STRENGTH, Value.WEAKNESS})

_GOING_ON = word_set("going_on")

_PEOPLE = word_set("who_tells_after")
"""What a "who" that goes on telling of somebody may stand behind, beside a name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A trait with its value, and the words `start` up to `stop` that carry it."""

    trait: Trait
    value: Value
    denied: bool
    start: int
    stop: int
    at: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A clause's claims, and the last skill it spoke of, for "the backhand one is fine"."""

    judged: tuple[Judged, ...]
    last: Thing | None
    wing_told: Wing | None = None


NOTHING_READ = Reading(judged=(), last=None)


def read_clause(hits: Hits, line: Sequence[str], clause: Clause, before: Reading) -> Reading:
    """What the hits of one clause say. `before` is the clause before it."""
    carried, wing_told = before.last, before.wing_told
    family = carried.family if carried is not None else None
    found = things(hits, line, carried=family, wing_told=wing_told)
    if any(hit.meaning.trait is Trait.COUNTER for hit in hits.traits):
        found = [thing for thing in found if not thing.bare]
    here, judgements = adjectives_of(hits, found, line)
    told = [hit.meaning.trait for hit in here if hit.meaning.trait is not None]
    judgements = [hit for hit in judgements if not counts_a_habit(hit, told, line)]
    here = [hit for hit in here if is_told(hit, here, line, clause, carried=carried is not None)]
    found, here = skills_not_habits(found, here, judgements, line)
    judgements += judged_within(found, judgements, line)
    goes_on = _goes_on(judgements, before, clause.start, line)
    if not found and not here and carried is not None and goes_on:
        found = [replace(carried, start=judgements[0].start, stop=judgements[0].start)]
    if not found and not here and not judgements:
        own = line[clause.start : clause.stop]
        said_at = min((one.start for one in before.judged), default=clause.start)
        said_not = denies(line[max(0, said_at - REACH_OF_A_NEGATION) : clause.start])
        contrast = contrasted(hits, own, before.judged, denies=said_not)
        if contrast is not None:
            at = clause.start + own.index(NAME)
            judged = [
                replace(one, start=clause.start, stop=clause.stop, at=at)
                if contrast is Denied.TOO
                else _contrary(one, clause, at, as_verb=contrast is not Denied.BEEN)
                for one in before.judged
            ]
            return replace(before, judged=tuple(judged))
    once = once_so(hits, [*here, *judgements], line)
    here = [hit for hit in here if hit not in once or hit.meaning.role is Role.HABIT]
    judgements = [hit for hit in judgements if hit not in once]
    nots = negations(hits, line, clause)
    no = denied(nots, [*here, *judgements], line)
    judged = [
        replace(
            _direct(hit, hits, denied=(hit in no) is not (hit in once)),
            at=_behind_names(hit, line),
        )
        for hit in here
    ]
    counters = [one for each in judged for one in _with_wings(each, hits)]
    skills = [
        one
        for each in _skills(found, judgements, nots, no, line, clause)
        for one in _with_wings(each, hits)
    ]
    last = found[-1] if found else _skill_told(here) or carried
    hands = any(hit.meaning.trait is Trait.TWO_HANDED_BACKHAND for hit in here)
    wing = Wing.BACKHAND if hands else wing_told
    told_of = tuple(one for one in (*counters, *skills) if not _is_asked_of(one.start, line))
    return Reading(judged=told_of, last=last, wing_told=wing)


def _behind_names(hit: Hit, line: Sequence[str]) -> int:
    """Where it tells of whoever is named in its own words: "nor ruiz lobs"."""
    named = [at for at in range(hit.start, hit.stop) if line[at] == NAME]
    return named[-1] if named else hit.start


def _is_asked_of(start: int, line: Sequence[str]) -> bool:
    """Whether "who" asks before it: "mira is wide who covers the middle", not "okafor, who ..."."""
    if start < 2 or line[start - 1] != "who":
        return False
    before = line[start - 2]
    return is_common(before) and before not in _PEOPLE


def _contrary(judged: Judged, clause: Clause, at: int, *, as_verb: bool) -> Judged:
    value, denied = under_negation(
        judged.trait, judged.value, denied=not judged.denied, is_verb=as_verb
    )
    return replace(judged, value=value, denied=denied, start=clause.start, stop=clause.stop, at=at)


def _goes_on(judgements: Sequence[Hit], before: Reading, start: int, line: Sequence[str]) -> bool:
    """ "And it is lethal": the clause goes on about the skill before, and begins by judging it."""
    habits = [one.trait for one in before.judged if one.value not in _SKILL]
    if not judgements or counts_a_habit(judgements[0], habits, line):
        return False
    return all(word in SMALL_WORDS | _GOING_ON for word in line[start : judgements[0].start])


def only_names_skills(hits: Hits) -> bool:
    """A clause such as "serve" or "and return" that waits for its judgement."""
    named = hits.having(Role.NOUN, Role.STROKE, Role.WING)
    said = hits.having(Role.DIRECT, Role.HABIT, *JUDGEMENTS)
    return bool(named) and not said


def _skill_told(here: Sequence[Hit]) -> Thing | None:
    """The skill that a habit or a phrase speaks of, for a judgement in the next clause."""
    for hit in here:
        trait, value = hit.meaning.trait, hit.meaning.value
        if trait is Trait.COUNTER:
            return Thing(start=hit.start, stop=hit.stop, traits=(trait,), family=Family.COUNTER)
        if trait is Trait.THIRD_SHOT_DROP and value is Value.RARELY:
            drive = (Trait.FOREHAND_DRIVE,)
            return Thing(start=hit.start, stop=hit.stop, traits=drive, family=Family.DRIVE)
        if trait is not None and TRAITS[trait].kind is TraitKind.SKILL_AND_HABIT:
            return Thing(start=hit.start, stop=hit.stop, traits=(trait,))
    return None


def _direct(hit: Hit, hits: Hits, *, denied: bool) -> Judged:
    sense = hit.meaning
    assert sense.trait is not None
    if sense.role is Role.HABIT:
        value, only_denied = _habit(hit, hits, denied=denied), False
    else:
        assert sense.value is not None
        value, only_denied = under_negation(sense.trait, sense.value, denied=denied)
    return Judged(
        trait=sense.trait,
        value=value,
        denied=only_denied,
        start=hit.start,
        stop=hit.stop,
        at=hit.start,
    )


def _habit(hit: Hit, hits: Hits, *, denied: bool) -> Value:
    """Often, unless a word near it says rarely or never."""
    seldom = hits.having(Role.RARELY)
    near = any(
        0 <= hit.start - one.stop < REACH_OF_A_NEGATION or 0 <= one.start - hit.stop < 2
        for one in seldom
    )
    return Value.RARELY if denied or near else Value.OFTEN


def _with_wings(judged: Judged, hits: Hits) -> list[Judged]:
    """Fast hands "on the backhand" are a backhand counter."""
    wings = wings_said(hits) if judged.trait is Trait.COUNTER else ()
    if not wings:
        return [judged]
    return [replace(judged, trait=TRAIT_OF_STROKE[Family.COUNTER, wing]) for wing in wings]


def _skills(
    found: Sequence[Thing],
    judgements: Sequence[Hit],
    nots: Sequence[Hit],
    no: Sequence[Hit],
    line: Sequence[str],
    clause: Clause,
) -> list[Judged]:
    pairs = pairs_of(found, judgements, line)
    judged = [
        one
        for thing, judgement in pairs
        if not says_where(thing, judgement, line)
        for one in _skill(
            by_depth(thing, judgement, line), by_touch(thing, judgement, line), no=judgement in no
        )
    ]
    without = [thing for thing in found if not any(thing is paired for paired, _ in pairs)]
    lacking = [
        thing
        for thing in without
        if any(no.stop == thing.start for no in nots)
        and (not thing.bare or thing.stop == clause.stop)
    ]
    trailing = [
        thing
        for thing in without
        if any(no.start == thing.stop and no.stop == clause.stop for no in nots)
    ]
    return judged + [one for thing in (*lacking, *trailing) for one in _lacking(thing)]


def _lacking(thing: Thing) -> list[Judged]:
    """ "No backhand drop", "forehand volleys strong, backhand volleys not"."""
    return [
        Judged(
            trait=trait,
            value=Value.RARELY if Value.RARELY in TRAITS[trait].values else Value.WEAKNESS,
            denied=False,
            start=max(0, thing.start - 1),
            stop=thing.stop,
            at=thing.start,
        )
        for trait in thing.traits
    ]


def _skill(thing: Thing, judgement: Hit, *, no: bool) -> list[Judged]:
    said = Value.STRENGTH if judgement.meaning.role is Role.GOOD else Value.WEAKNESS
    judged = []
    for trait in thing.traits:
        value, only_denied = under_negation(
            trait, said, denied=no, is_verb=judgement.meaning.is_verb
        )
        judged.append(
            Judged(
                trait=trait,
                value=value,
                denied=only_denied,
                start=min(thing.start, judgement.start),
                stop=max(thing.stop, judgement.stop),
                at=thing.start,
            )
        )
    return judged
