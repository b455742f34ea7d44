"""What a clause denies: "doesn't poach", what was only once so, and exceptions ("not on dinks")."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import Enum, auto

from bot.chat.clauses import Clause
from bot.chat.forms import word_set
from bot.chat.note_hits import JUDGEMENTS, SKILLS, Hit, Hits, things
from bot.chat.note_line import NoteLine
from bot.chat.note_opinions import denied_opinions
from bot.chat.trait_lexicon import NAME, Role, Sense
from knowledge.vocabulary import TRAITS, Trait, TraitKind, Value

REACH_OF_A_NEGATION = 6
"""Words between a negation and what it denies. Common practice, no source."""

_SUBJECTS = frozenset(["he", "she", "they", "i", "we", "you"])
_WHO_IS = frozenset(["hes", "shes", "theyre"])
"""Right behind a "no", whoever is told of anew: "no shes righty" puts right, and denies nothing."""
_BEFORE_AN_EXCEPTION = frozenset(["but", "though", "tho", "just", "only", "although", "and"])
_EXCEPT = frozenset(["except", "not"])
_WHERE = frozenset(["on", "off", "with", "for", "from", "in", "at", "when", "the", "his", "her"])


_DONE = word_set("denied_doing")
_BEEN = word_set("denied_being")
_CANT = frozenset(["cant", "cannot", "dont", "arent", "isn"])
_SO = frozenset(["does", "do", "did", "is", "are", "can", "will"])
_IN_A_CONTRAST = word_set("in_a_contrast")


_LIKEWISE = word_set("denied_likewise")
_NOR = "nor"
_ANY = "any"
"""What a phrase of the lexicon begins with that is meant behind a "not": "any topspin" is none."""

_NEITHER = frozenset(["neither"])

_NONE = frozenset(["no", "zero", "without"])
_NEVER = frozenset(["never", "wont", "hardly", "rarely", "barely"])
_NOTHING = "nothing"
_VERY = frozenset(["really", "particularly", "especially", "very", "that", "too", "obviously"])
_SAVE = (["but"], ["except"], ["besides"], ["beyond"], ["apart"], ["bar"])
_OR = frozenset(["or", "nor"])
_COMMAS = frozenset(",/–—")


_OPPOSITE = {
    Value.STRENGTH: Value.WEAKNESS,
    Value.WEAKNESS: Value.STRENGTH,
    Value.OFTEN: Value.RARELY,
    Value.RARELY: Value.OFTEN,
    Value.YES: Value.NO,
    Value.NO: Value.YES,
}


class Denied(Enum):
    """What a contrast denies of another: what somebody does, or is, or only that it is not so.

    `TOO`: what was denied of the one before is denied of another.
    """

    DONE = auto()
    BEEN = auto()
    NOT_SO = auto()
    TOO = auto()


def contrasted(
    hits: Hits, words: Sequence[str], before: Sequence[object], *, denies: bool
) -> Denied | None:
    """ "Hale stacks, Ruiz doesn't": a clause that denies of another what the last one claims.

    `denies` says whether the last one was put with a "not": "Hale doesn't stack, Ruiz does".
    """
    if not before or hits.has(Role.NO_NEGATION) or not is_contrast(words):
        return None
    if _LIKEWISE & set(words):
        return Denied.TOO
    if _DONE & set(words):
        return Denied.DONE
    if _BEEN & set(words):
        return Denied.BEEN
    return Denied.NOT_SO if denies else None


def is_contrast(words: Sequence[str]) -> bool:
    """Whether a clause has a name and nothing else but that they do, are, don't or aren't."""
    told = set(words)
    verbs = _DONE | _BEEN | _SO | _LIKEWISE
    return NAME in told and bool(told & verbs) and told <= _IN_A_CONTRAST | verbs


def denies(words: Sequence[str]) -> bool:
    """Whether words put something with a "not": "Hale doesn't stack"."""
    return bool(set(words) & (_DONE | _BEEN | _CANT))


def negations(hits: Hits, line: Sequence[str], clause: Clause) -> list[Hit]:
    """What denies in a clause; "neither hale nor ruiz" does so once."""
    raised = denied_opinions(line, clause)
    opinions = {at for hit in raised for at in range(hit.start, hit.stop)}
    nots = [hit for hit in _unguarded(hits, Role.NOT) if hit.start not in opinions]
    nots += _nothing_judged(hits, line)
    told = {line[hit.start] for hit in nots} | {
        line[at] for hit in hits.traits for at in range(hit.start, hit.stop)
    }
    doubled = _NEITHER if _NOR in told else frozenset[str]()
    return sorted(
        [*raised, *(hit for hit in nots if line[hit.start] not in doubled)],
        key=lambda hit: hit.start,
    )


def _nothing_judged(hits: Hits, line: Sequence[str]) -> Iterator[Hit]:
    """The "nothing" of "nothing weak about her hands", which stands right before a judgement.

    "Nothing but weak hands" and "nothing weak but her hands" say that something is.
    """
    for hit in hits.having(*JUDGEMENTS):
        at = hit.start - 1
        at -= at > 0 and line[at] in _VERY
        if at >= 0 and line[at] == _NOTHING and line[hit.stop : hit.stop + 1] not in _SAVE:
            yield Hit(start=at, stop=at + 1, meaning=Sense(role=Role.NOT))


def once_so(hits: Hits, predicates: Sequence[Hit], line: Sequence[str]) -> list[Hit]:
    """What somebody "used to" do or be."""
    return denied(_unguarded(hits, Role.FORMER), predicates, line)


def _unguarded(hits: Hits, role: Role) -> list[Hit]:
    """Without those inside "not only", "is used to" and the like."""
    guards = {at for hit in hits.having(Role.NO_NEGATION) for at in range(hit.start, hit.stop)}
    return [hit for hit in hits.having(role) if hit.start not in guards]


def denied(nots: Sequence[Hit], predicates: Sequence[Hit], line: Sequence[str]) -> list[Hit]:
    """The predicates that an odd number of negations reach, each reaching the next predicate."""
    reached: list[Hit] = []
    for no in nots:
        ahead = [hit for hit in predicates if 0 <= hit.start - no.stop < REACH_OF_A_NEGATION]
        nearest = min(ahead, key=lambda hit: hit.start, default=None)
        if nearest is not None and _SUBJECTS & set(line[no.stop : nearest.start]):
            continue
        if line[no.start] in _NONE and line[no.stop : no.stop + 1] and line[no.stop] in _WHO_IS:
            continue
        if nearest is not None and line[nearest.start] == _ANY:
            continue
        if nearest in reached:
            reached.remove(nearest)
        elif nearest is not None:
            reached.append(nearest)
    return reached


def excepted(hits: Hits, line: Sequence[str], start: int) -> frozenset[Trait]:
    """The skills for which a judgement does not hold: "weak, but not on dinks"."""
    if hits.having(Role.DIRECT, Role.HABIT, *JUDGEMENTS):
        return frozenset()
    while start < len(line) and line[start] in _BEFORE_AN_EXCEPTION:
        start += 1
    if line[start : start + 1] == [] or line[start] not in _EXCEPT:
        return frozenset()
    found = things(hits, line, carried=None, wing_told=None)
    if not found or not set(line[start + 1 : found[0].start]) <= _WHERE:
        return frozenset()
    return frozenset(trait for thing in found for trait in thing.traits)


def is_told_lacking(part: Clause, ahead: Clause, note: NoteLine) -> bool:
    """ "No lob, ernes lots", "never speeds up, floats his drop": the skill is said to be missing,
    which waits for no judgement behind the comma; "no lobs, ernies or poaches" is one list under
    its "no"."""
    lacks = any(
        no.stop == skill.start and note.line[no.start] in _NONE | _NEVER
        for no in note.hits.inside(part).having(Role.NOT)
        for skill in note.hits.inside(part).having(*SKILLS)
    )
    is_apart = bool(set(note.said[ahead.start].gap) & _COMMAS)
    rest = note.line[ahead.start :]
    return lacks and is_apart and _OR.isdisjoint(rest)


def under_negation(
    trait: Trait, value: Value, *, denied: bool, is_verb: bool = False
) -> tuple[Value, bool]:
    """The value said, and whether it is only denied: "not slow" is not yet "quick".

    Who is not tall need not be short, but who has not two hands on the backhand has one.
    """
    if not denied:
        return value, False
    is_open_fact = TRAITS[trait].kind is TraitKind.FACT and value not in (Value.YES, Value.NO)
    if is_open_fact or (value is Value.WEAKNESS and not is_verb):
        return value, True
    return _OPPOSITE[value], False
