"""What a word says of a shot by its kind: a soft dink is a good one, a deep return has depth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.forms import word_set
from bot.chat.note_hits import Hit, Thing, as_judgement, is_height
from bot.chat.trait_lexicon import Role
from knowledge.vocabulary import Trait

DINKS = frozenset({Trait.FOREHAND_DINK, Trait.BACKHAND_DINK})

_SOFT = frozenset(["soft", "softly", "softer"])
_TOO = frozenset(["too", "2", "overly"])


_SOFT_IS_GOOD = word_set("soft_is_good")
_SOFT_SKILLS = frozenset({Trait.THIRD_SHOT_DROP, Trait.RESET})

_ATTACKS = frozenset({Trait.SPEED_UP, Trait.FOREHAND_DRIVE, Trait.BACKHAND_DRIVE})
_RETURN = (Trait.RETURN,)


def is_soft_alone(words: Sequence[str], before: Sequence[str]) -> bool:
    """Whether words say soft and nothing else, and not that it is "too soft" (`before` them)."""
    return bool(words) and set(words) <= _SOFT and not _TOO & set(before[-1:])


def by_depth(thing: Thing, judgement: Hit, line: Sequence[str]) -> Thing:
    """A return called deep or short is spoken of for its depth."""
    deep = {"deep", "short"} & set(line[judgement.start : judgement.stop])
    return (
        replace(thing, traits=(Trait.RETURN_DEPTH,)) if thing.traits == _RETURN and deep else thing
    )


def says_where(thing: Thing, judgement: Hit, line: Sequence[str]) -> bool:
    """An attack "chest high" is aimed there; a dink or a drop that comes so is a bad one."""
    return _ATTACKS.issuperset(thing.traits) and is_height(judgement, line)


def by_touch(thing: Thing, judgement: Hit, line: Sequence[str]) -> Hit:
    """A soft drop is a good one, and so is a soft dink, though a dead one is not."""
    words, traits = line[judgement.start : judgement.stop], set(thing.traits)
    is_soft = bool(_SOFT_IS_GOOD & set(words) and traits & _SOFT_SKILLS)
    if traits & DINKS:
        is_soft = is_soft_alone(words, line[: judgement.start])
    return as_judgement(judgement, Role.GOOD) if is_soft else judgement
