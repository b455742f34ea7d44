"""Which judgement of a clause belongs to which skill."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.note_hits import Hit, Thing
from bot.chat.trait_lexicon import NAME, Role, Sense

SMALL_WORDS = word_set("small")
"""Words that may stand between a skill and its judgement: "backhand is really just weak"."""

_REACH_OF_A_VERB = 5
_REACH_OF_AN_ADJECTIVE = 3
"""Words between a skill and what is said of it. Common practice, no source."""

_LEADING = word_set("leading")
_OF_A_BALL = frozenset(["low", "deep", "hard", "soft", "fast", "slow", "short", "easy", "wide"])
"""What a missed ball was, between the miss and its stroke: "misses the low forehand volley"."""
_JUDGES_WITHIN = "big"
"""The one adjective that is part of a skill's name and judges it: "big forehand"."""

_SAYS_OF_THE_LAST = frozenset(["is", "are", "was", "were", "s", "looks"])

_ROW_WORDS = frozenset(["and", "n", "or", "his", "her", "their", "the", "plus", "both", "with"])


def touches(thing: Thing, hit: Hit, line: Sequence[str]) -> bool:
    """`slow backhand`, or `backhand is slow` with nothing but small words in between."""
    if hit.stop == thing.start or thing.start <= hit.start < thing.stop:
        return True
    between = line[thing.stop : hit.start]
    if "from" in between[:1]:
        between = [word for word in between[1:] if word != NAME]
    return thing.stop <= hit.start and all(word in SMALL_WORDS for word in between)


Pair = tuple[Thing, Hit]


def pairs_of(found: Sequence[Thing], judgements: Sequence[Hit], line: Sequence[str]) -> list[Pair]:
    """Each judgement with the skill before it, or after it; skills in a row share one."""
    pairs: list[Pair] = []
    for judgement in judgements:
        free = [thing for thing in found if not any(thing is paired for paired, _ in pairs)]
        thing = _thing_of(judgement, free, line)
        if thing is not None:
            pairs.append((thing, judgement))
    for thing in found:
        if not any(thing is paired for paired, _ in pairs):
            shared = _shared(thing, found, pairs, line)
            pairs += [(thing, shared)] if shared is not None else []
    return pairs


def judged_within(
    found: Sequence[Thing], judgements: Sequence[Hit], line: Sequence[str]
) -> list[Hit]:
    """What the names of skills judge that nothing else does: "big forehand, weak backhand dink"."""
    paired = [thing for thing, _ in pairs_of(found, judgements, line)]
    return [
        Hit(start=thing.start, stop=thing.start + 1, meaning=Sense(role=Role.GOOD))
        for thing in found
        if _is_judged_within(thing, line) and not any(thing is one for one in paired)
    ]


def _is_judged_within(thing: Thing, line: Sequence[str]) -> bool:
    """Whether the skill's name judges it; in "drive is big backhand not" the drive is judged."""
    is_said_of_another = thing.start > 0 and line[thing.start - 1] in _SAYS_OF_THE_LAST
    return line[thing.start] == _JUDGES_WITHIN and not is_said_of_another


def _thing_of(judgement: Hit, free: Sequence[Thing], line: Sequence[str]) -> Thing | None:
    before = [thing for thing in free if thing.start <= judgement.start]
    after = [thing for thing in free if thing.start >= judgement.stop]
    leads = bool(after) and after[0].start == judgement.stop
    if (
        leads
        and before
        and _is_judged_within(before[-1], line)
        and judgement.start >= before[-1].stop
    ):
        return after[0]
    if before and touches(before[-1], judgement, line):
        return before[-1]
    if leads:
        return after[0]
    near = [(judgement.start - thing.stop, thing) for thing in before[-1:] if not thing.bare]
    near += [
        (thing.start - judgement.stop, thing)
        for thing in after[:1]
        if not thing.bare and _leads_to(judgement, thing, line)
    ]
    if not near:
        return None
    distance, thing = min(near, key=lambda one: one[0])
    reach = _REACH_OF_A_VERB if judgement.meaning.is_verb else _REACH_OF_AN_ADJECTIVE
    return thing if distance < reach else None


def _leads_to(judgement: Hit, thing: Thing, line: Sequence[str]) -> bool:
    """`misses his serves`, `good with the backhand dink`."""
    between = SMALL_WORDS | _LEADING
    if judgement.meaning.is_verb:
        between = between | _OF_A_BALL
    return all(word in between for word in line[judgement.stop : thing.start])


def _shared(
    thing: Thing, found: Sequence[Thing], pairs: Sequence[Pair], line: Sequence[str]
) -> Hit | None:
    """The judgement of the skill next in a row of skills ("serve and return are solid")."""
    for other, judgement in pairs:
        first, last = sorted((thing, other), key=lambda one: one.start)
        between = range(first.stop, last.start)
        if all(
            line[place] in _ROW_WORDS or any(one.start <= place < one.stop for one in found)
            for place in between
        ):
            return judgement
    return None
