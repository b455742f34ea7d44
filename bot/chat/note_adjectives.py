"""Lone adjectives and verbs of a clause: said of the player, of a stroke, or as a habit."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bot.chat.clauses import Clause
from bot.chat.forms import word_set
from bot.chat.note_figures import is_number
from bot.chat.note_hits import JUDGEMENTS, Hit, Hits, Thing, as_judgement
from bot.chat.note_pairs import SMALL_WORDS, touches
from bot.chat.trait_lexicon import Role
from knowledge.vocabulary import TRAITS, Trait, TraitKind, Value

_ROLE_OF: dict[Value | None, Role] = {
    Value.STRENGTH: Role.GOOD,
    Value.WEAKNESS: Role.BAD,
    Value.SHORT: Role.BAD,
}

_BEFORE_AN_ADJECTIVE = SMALL_WORDS | word_set("before_an_adjective")

_JOINING = frozenset(["and", "n", "but", "always"])
_PLAIN_SPEED = frozenset({Trait.FOOT_SPEED})

_FINER_SPEED = frozenset({Trait.FORWARD_SPEED, Trait.MOVES_LEFT, Trait.MOVES_RIGHT})

_OF_ANOTHER_SPEED = word_set("after_another_speed")
"""After "slow" or "quick": of a ball, or of moving somewhere, which is a finer trait."""


def adjectives_of(
    hits: Hits, found: Sequence[Thing], line: Sequence[str]
) -> tuple[list[Hit], list[Hit]]:
    """ "Backhand is slow" is about the backhand, not about the feet."""
    here = hits.having(Role.DIRECT, Role.HABIT)
    judgements = hits.having(*JUDGEMENTS)
    for hit in tuple(here):
        role = _ROLE_OF.get(hit.meaning.value)
        bare = hit.meaning.role is Role.DIRECT and hit.length == 1 and role is not None
        touched = any(touches(thing, hit, line) for thing in (*found, *_skills_in(here)))
        finer = any(set(thing.traits) & _FINER_SPEED for thing in found)
        touched = touched or finer
        bare = bare or (finer and hit.meaning.trait in _PLAIN_SPEED)
        if bare and role and (touched or (hit.meaning.value is Value.SHORT and found)):
            here.remove(hit)
            judgements.append(as_judgement(hit, role))
    return here, sorted(judgements, key=lambda one: one.start)


def is_told(
    hit: Hit, here: Sequence[Hit], line: Sequence[str], clause: Clause, *, carried: bool
) -> bool:
    """Whether a lone adjective is said of the player: not "wants it fast", not "short balls"."""
    sense, start, stop = hit.meaning, clause.start, clause.stop
    if sense.role is not Role.DIRECT or hit.length > 1 or _ROLE_OF.get(sense.value) is None:
        return True
    finer = any(one.meaning.trait in _FINER_SPEED for one in here)
    if sense.trait in _PLAIN_SPEED and finer:
        return False
    if sense.value is Value.SHORT and (
        hit.stop < stop or (carried and set(line[start : hit.start]) <= _JOINING)
    ):
        return False
    ahead = line[hit.stop] if hit.stop < stop else ""
    if sense.trait in _PLAIN_SPEED and (ahead in _OF_ANOTHER_SPEED or _is_past(line[start:stop])):
        return False
    adjective = sense.trait in _PLAIN_SPEED or sense.value is Value.SHORT
    return not adjective or hit.start == start or line[hit.start - 1] in _BEFORE_AN_ADJECTIVE


def _is_past(words: Sequence[str]) -> bool:
    """ "Was quick last season": no longer so, or the note would not say when."""
    return "last" in words and bool({"was", "were"} & set(words))


def _skills_in(here: Sequence[Hit]) -> list[Thing]:
    """Habits that are skills as well ("lobs"), as skills that may be judged."""
    return [
        Thing(start=hit.start, stop=hit.stop, traits=(hit.meaning.trait,))
        for hit in here
        if hit.meaning.trait is not None
        and TRAITS[hit.meaning.trait].kind is TraitKind.SKILL_AND_HABIT
        and hit.length == 1
    ]


def skills_not_habits(
    found: list[Thing], here: list[Hit], judgements: Sequence[Hit], line: Sequence[str]
) -> tuple[list[Thing], list[Hit]]:
    """ "Her lobs are short" judges a skill; "she lobs" tells a habit."""
    for hit in tuple(here):
        trait = hit.meaning.trait
        if trait is None or TRAITS[trait].kind is not TraitKind.SKILL_AND_HABIT or hit.length > 1:
            continue
        thing = Thing(start=hit.start, stop=hit.stop, traits=(trait,))
        if any(touches(thing, judgement, line) for judgement in judgements):
            here.remove(hit)
            found = sorted([*found, thing], key=lambda one: one.start)
    return found, here


def counts_a_habit(judgement: Hit, told: Iterable[Trait], line: Sequence[str]) -> bool:
    """ "Crashes 4 out of 5": how often, not how well."""
    often = any(Value.OFTEN in TRAITS[trait].values for trait in told)
    return often and is_number(line[judgement.start])
