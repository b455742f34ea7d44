"""Phrases of the lexicon that say something else where they stand: of a ball, of a shot missed."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from bot.chat.phrase import Found
from bot.chat.trait_lexicon import Family, Role, Sense
from knowledge.vocabulary import Trait, Value

_Hit = Found[Sense]

_EVERY = frozenset(["every", "each", "any", "all"])
_OFF = frozenset(["off", "from"])
_NEAR = 3
"""Words between a shot and what it is hit off, or between a miss and what is missed."""

_WHICH = frozenset(["the", "his", "her", "their", "that", "those", "all", "some", "most", "every"])
"""Words that may stand between a miss and the ball that is missed: "misses the low backhand"."""

_BALLS = frozenset(["ball", "balls", "one", "ones", "bounce", "feed", "feeds"])


def is_misread(
    hit: _Hit, hits: Collection[_Hit], line: Sequence[str], breaks: Collection[int]
) -> bool:
    """Whether the phrase is none of the player: "drives off every short ball", "missed returns
    long". `breaks` are the places behind a mark."""
    meaning = hit.meaning
    if meaning.role is Role.GOOD:
        return _is_of_a_miss(hit, hits, line, breaks)
    if meaning.role is Role.BAD and not meaning.is_verb:
        return _is_of_the_ball(hit, hits, line)
    if meaning.trait is Trait.HEIGHT and meaning.value is Value.SHORT:
        return _is_of_the_ball(hit, hits, line)
    if meaning.trait is Trait.RETURN_DEPTH and meaning.value is Value.STRENGTH:
        return line[hit.stop - 1] == "long" and any(
            one.meaning.role is Role.BAD
            and one.meaning.is_verb
            and 0 <= hit.start - one.stop < _NEAR
            for one in hits
        )
    return False


def _is_of_a_miss(
    hit: _Hit, hits: Collection[_Hit], line: Sequence[str], breaks: Collection[int]
) -> bool:
    """ "Misses the low forehand volley": what is missed is low, and nobody's praise."""
    is_before_a_stroke = any(
        one.start == hit.stop and one.meaning.role in (Role.STROKE, Role.WING, Role.NOUN)
        for one in hits
    )
    return is_before_a_stroke and any(
        one.meaning.role is Role.BAD
        and one.meaning.is_verb
        and one.stop <= hit.start
        and _WHICH.issuperset(line[one.stop : hit.start])
        and not any(one.stop <= place <= hit.stop for place in breaks)
        for one in hits
    )


def _is_of_the_ball(hit: _Hit, hits: Collection[_Hit], line: Sequence[str]) -> bool:
    """An adjective of what is hit, behind the shot that hits it: "attacks every high dink"."""
    before = line[max(0, hit.start - _NEAR) : hit.start]
    is_of_many = bool(before) and (before[-1] in _EVERY or bool(_OFF & set(before)))
    behind = line[hit.stop] if hit.stop < len(line) else ""
    is_before_a_ball = behind in _BALLS or any(
        one.start == hit.stop and one.meaning.role is Role.STROKE for one in hits
    )
    return is_of_many and is_before_a_ball and any(_is_attack(one, hit) for one in hits)


def _is_attack(shot: _Hit, hit: _Hit) -> bool:
    """Whether it is a shot that attacks, a few words before."""
    is_hard = shot.meaning.trait is Trait.SPEED_UP or shot.meaning.family is Family.DRIVE
    return is_hard and 0 <= hit.start - shot.stop <= _NEAR
