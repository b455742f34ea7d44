"""The lexicon's phrases in a note: what was found where, and the skills it speaks of."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.clauses import Clause
from bot.chat.forms import word_set
from bot.chat.note_figures import figures
from bot.chat.note_misread import is_misread
from bot.chat.note_sides import tells_apart
from bot.chat.phrase import Found
from bot.chat.trait_lexicon import (
    BOTH,
    TRAIT_OF_STROKE,
    WINGLESS,
    Family,
    Role,
    Sense,
    trait_phrases,
)
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Trait, Wing

Hit = Found[Sense]

TRAIT_ROLES = frozenset({Role.DIRECT, Role.HABIT, Role.NOUN, Role.STROKE, Role.WING})
SKILLS = frozenset({Role.NOUN, Role.STROKE, Role.WING})
JUDGEMENTS = frozenset({Role.GOOD, Role.BAD})

_RANK = {Role.DIRECT: 0, Role.HABIT: 1, Role.NOUN: 2, Role.STROKE: 3, Role.WING: 4}
_WEIGHING = frozenset({Role.GOOD, Role.BAD, Role.NOT, Role.NO_NEGATION})

_WING_BEFORE = 2
_WING_AFTER = 4
"""Words between a stroke and its wing: "dinks off of the backhand". Common practice, no source."""

_DRIVEN = frozenset({Family.DRIVE, Family.COUNTER})
"""Strokes that go on about a two-hander just told of: "drives it well"."""

_FAMILY_OF = {trait: family for (family, _), trait in TRAIT_OF_STROKE.items()}
_TO_A_SIDE = (Trait.MOVES_LEFT, Trait.MOVES_RIGHT)
_BOTH_SIDES = frozenset(["both", "either", "and", "or"])
_LEFT, _RIGHT = frozenset(["left", "l"]), frozenset(["right", "r"])
_FROM_OR_TO = frozenset(["off", "on", "from", "to", "at", "over"])
_UNDER = frozenset(["under", "vs", "versus", "against"])
_BETWEEN = frozenset(["the", "his", "her", "their", "that", "of"])
_BEFORE_AN_ORIGIN = frozenset(
    [
        "a",
        "the",
        "any",
        "every",
        "each",
        "all",
        "my",
        "our",
        "high",
        "low",
        "short",
        "slow",
        "hard",
        "soft",
        "dead",
        "deep",
    ]
)
_CONNECTORS = word_set("connectors")
_HARD_HITS = word_set("hard_hits")
_ON_THE_BODY = word_set("on_the_body")
BIG = frozenset(["big", "huge", "massive"])
"""Of a player tall, of a stroke strong; a wing that is big is a drive: "big forehand"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """A skill spoken of: the traits it stands for. `bare` is a wing without a stroke."""

    start: int
    stop: int
    traits: tuple[Trait, ...]
    family: Family | None = None
    bare: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Hits:
    """Everything found: traits without overlap, judgements outside them, and the rest."""

    traits: tuple[Hit, ...]
    others: tuple[Hit, ...]

    def inside(self, clause: Clause) -> Hits:
        return Hits(traits=_inside(self.traits, clause), others=_inside(self.others, clause))

    def having(self, *roles: Role) -> list[Hit]:
        """Hits of these roles in order of place."""
        found = [hit for hit in (*self.traits, *self.others) if hit.meaning.role in roles]
        return sorted(found, key=lambda hit: hit.start)

    def has(self, role: Role) -> bool:
        return bool(self.having(role))


def find_hits(line: Sequence[str], breaks: Sequence[int]) -> Hits:
    """Everything the lexicon finds; no phrase reaches over one of the `breaks`."""
    edges = [0, *breaks, len(line)]
    hits = [
        replace(hit, start=hit.start + start, stop=hit.stop + start)
        for start, stop in pairwise(edges)
        for hit in (*trait_phrases().find(line[start:stop]), *figures(line[start:stop]))
    ]
    hits = [
        hit
        for hit in hits
        if not _is_of_a_stroke(hit, hits, line)
        and not is_misread(hit, hits, line, breaks)
        and not tells_apart(hit.meaning, line[hit.start : hit.stop])
    ]
    traits = _longest(hit for hit in hits if hit.meaning.role in TRAIT_ROLES)
    covered = {place for hit in traits for place in range(hit.start, hit.stop)}
    weighing = _longest(
        hit
        for hit in hits
        if hit.meaning.role in _WEIGHING and not covered & set(range(hit.start, hit.stop))
    )
    rest = [hit for hit in hits if hit.meaning.role not in _WEIGHING | TRAIT_ROLES]
    return Hits(traits=tuple(traits), others=(*weighing, *rest))


def _is_of_a_stroke(hit: Hit, hits: Iterable[Hit], line: Sequence[str]) -> bool:
    """ "Okafor huge forehand", "his serve is huge": a stroke is huge, and nobody's height."""
    if hit.meaning.trait is not Trait.HEIGHT or line[hit.stop - 1] not in BIG:
        return False
    strokes = [one for one in hits if one.meaning.role in SKILLS]
    return any(one.start == hit.stop or one.stop == hit.start for one in strokes)


def things(
    hits: Hits, line: Sequence[str], *, carried: Family | None, wing_told: Wing | None
) -> list[Thing]:
    """The skills of a clause: nouns, strokes with the wing said near them, and bare wings."""
    both_ways = bool(_LEFT & set(line)) and bool(_RIGHT & set(line))
    found = [
        _named(hit, hit.meaning.trait, line)
        for hit in hits.having(Role.NOUN)
        if hit.meaning.trait is not None and (both_ways or not _is_bare_side(hit, line))
    ]
    wings = hits.having(Role.WING)
    used: set[int] = set()
    strokes = [hit for hit in hits.having(Role.STROKE) if not _is_origin(hit, line)]
    for stroke in strokes:
        near = [wing for wing in wings if _belongs(stroke, wing, line)]
        used |= {wing.start for wing in near}
        found.append(_stroke(stroke, near, wing_told))
    for wing in wings:
        before = [hit.meaning.family for hit in strokes if hit.start < wing.start]
        family = _family_of_bare(wing, hits, line, before[-1] if before else carried)
        if wing.start in used:
            continue
        alone = not found and not hits.having(Role.DIRECT, Role.HABIT)
        if family is None and alone and _is_judged(wing, hits, line):
            found.append(replace(_bare(wing, Family.DINK), bare=False))
        elif family is not None:
            found.append(_bare(wing, family))
    return sorted(found, key=lambda thing: thing.start)


def _named(noun: Hit, trait: Trait, line: Sequence[str]) -> Thing:
    """The skill of a noun; "both ways" speaks of two."""
    both = trait in _TO_A_SIDE and _BOTH_SIDES & set(line[noun.start : noun.stop])
    return Thing(
        start=noun.start,
        stop=noun.stop,
        traits=_TO_A_SIDE if both else (trait,),
        family=_FAMILY_OF.get(trait),
    )


def _is_bare_side(hit: Hit, line: Sequence[str]) -> bool:
    """ "Left good, right slow": a side alone is where a player moves only beside the other."""
    return hit.length == 1 and line[hit.start] in _LEFT | _RIGHT


def wings_said(hits: Hits) -> tuple[Wing, ...]:
    return tuple(
        dict.fromkeys(wing for hit in hits.having(Role.WING) for wing in hit.meaning.wings)
    )


def _family_of_bare(
    wing: Hit, hits: Hits, line: Sequence[str], carried: Family | None
) -> Family | None:
    """`the backhand one`, `off the forehand` go on about the stroke before; else it is the dink.

    None where the wing only says from where or to where. A dink has no pace: what is weak under it
    is the counter.
    """
    if any(_HARD_HITS & set(line[hit.start : hit.stop]) for hit in hits.having(*JUDGEMENTS)):
        return Family.DRIVE
    if wing.start and line[wing.start - 1] in BIG:
        return Family.DRIVE
    ahead = line[wing.stop] if wing.stop < len(line) else ""
    before = [word for word in line[max(0, wing.start - 2) : wing.start] if word in _FROM_OR_TO]
    if ahead in {"one", "ones"} or before:
        return carried
    if any(_is_under_pace(hit, line) for hit in hits.having(Role.NOUN)):
        return Family.COUNTER
    return Family.DINK


def _is_under_pace(noun: Hit, line: Sequence[str]) -> bool:
    """`weak under pace`, `good vs hard balls`."""
    is_pace = noun.meaning.trait is Trait.HANDLES_PACE
    led = {line[at] for at in (noun.start - 1, noun.start) if at >= 0}
    return is_pace and bool(led & _UNDER)


def _is_judged(wing: Hit, hits: Hits, line: Sequence[str]) -> bool:
    """`strong on the backhand`: the wing itself is judged, right before "on"."""
    ends = {hit.stop for hit in hits.having(*JUDGEMENTS)}
    return any(
        line[at] in {"on", "off", "from"} and set(line[at + 1 : wing.start]) <= _BETWEEN
        for at in ends
        if at < wing.start
    )


def _is_origin(stroke: Hit, line: Sequence[str]) -> bool:
    """`lobs off the dink`, `sped up from a dink`: where a shot came from, no skill."""
    before = line[max(0, stroke.start - _WING_AFTER) : stroke.start]
    places = [at for at, word in enumerate(before) if word in {"off", "from"}]
    return bool(places) and any(word in _BEFORE_AN_ORIGIN for word in before[places[-1] :])


def _stroke(stroke: Hit, wings: Sequence[Hit], wing_told: Wing | None) -> Thing:
    family = stroke.meaning.family
    assert family is not None
    said = dict.fromkeys(wing for hit in wings for wing in hit.meaning.wings)
    if not said and wing_told is not None and family in _DRIVEN:
        said = {wing_told: None}
    traits = tuple(TRAIT_OF_STROKE[family, wing] for wing in said) or WINGLESS[family]
    return Thing(
        start=min([stroke.start, *(hit.start for hit in wings)]),
        stop=max([stroke.stop, *(hit.stop for hit in wings)]),
        traits=traits,
        family=family,
    )


def _bare(wing: Hit, family: Family) -> Thing:
    traits = tuple(TRAIT_OF_STROKE[family, one] for one in wing.meaning.wings)
    is_pair = wing.meaning.wings == BOTH
    return Thing(start=wing.start, stop=wing.stop, traits=traits, family=family, bare=not is_pair)


def _belongs(stroke: Hit, wing: Hit, line: Sequence[str]) -> bool:
    if wing.stop <= stroke.start:
        between = line[wing.stop : stroke.start]
        return len(between) <= _WING_BEFORE and all(word in _CONNECTORS for word in between)
    between = line[stroke.stop : wing.start]
    leads = bool(between) and any(word in {"off", "on", "from", "with"} for word in between)
    close = len(between) <= _WING_AFTER and all(word in _CONNECTORS for word in between)
    return close and (leads or set(between) <= _BETWEEN)


def _longest(hits: Iterable[Hit]) -> list[Hit]:
    """Hits that do not overlap, longer ones first; in order of place."""
    taken: set[int] = set()
    chosen: list[Hit] = []
    for hit in sorted(hits, key=_precedence):
        places = set(range(hit.start, hit.stop))
        if not places & taken:
            taken |= places
            chosen.append(hit)
    return sorted(chosen, key=lambda one: one.start)


def _precedence(hit: Hit) -> tuple[int, int, int]:
    return (-hit.length, _RANK.get(hit.meaning.role, len(_RANK)), hit.start)


def _inside(hits: Sequence[Hit], clause: Clause) -> tuple[Hit, ...]:
    return tuple(hit for hit in hits if clause.start <= hit.start and hit.stop <= clause.stop)


def as_judgement(hit: Hit, role: Role) -> Hit:
    """An adjective of a player read as one of a stroke: "slow backhand"."""
    return replace(hit, meaning=Sense(role=role))


def is_height(hit: Hit, line: Sequence[str]) -> bool:
    """Whether a judgement is "chest high" and the like, which judges soft shots only."""
    *body, last = line[hit.start : hit.stop]
    return bool(body) and last == "high" and _ON_THE_BODY.issuperset(body)
