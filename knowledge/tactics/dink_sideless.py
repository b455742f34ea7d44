"""A note of which way somebody moves badly, where the side they play is not known.

It says whether the line or the middle is the dink, so it is named, with the call on the side where
it turns: "Koek plays left? Dink Koek: across."
"""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import Reason
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import dink_words as words
from knowledge.tactics.dink_answer import DinkAnswer, answer_dink
from knowledge.tactics.dink_lanes import Spot
from knowledge.vocabulary import Side, Trait

_WAYS = {Side.LEFT: Trait.MOVES_LEFT, Side.RIGHT: Trait.MOVES_RIGHT}


def slow_way(answer: DinkAnswer) -> tuple[OnCourt, Side] | None:
    """Whose dink it turns, and which way they are slow: the called one's, else the partner's."""
    best = answer.best
    if best is None:
        return None
    pair = sorted(answer.question.pair, key=lambda one: one.player != best.target.player)
    return next(
        (
            (one, way)
            for one in pair
            for way, trait in _WAYS.items()
            if one.side is None and _is_slow(one, trait)
        ),
        None,
    )


def _is_slow(one: OnCourt, trait: Trait) -> bool:
    noted = one.profile.skill(trait)
    return noted.notes > 0 and noted.level < 0 and not noted.is_open


def noted_way(answer: DinkAnswer) -> list[Reason]:
    """The note, as a reason where the dink goes to whom it is of: and on which side."""
    found, best = slow_way(answer), answer.best
    if found is None or best is None or found[0].player != best.target.player:
        return []
    one, way = found
    side = way if best.spot is Spot.SIDELINE else way.other
    source = one.profile.skill(_WAYS[way]).source
    return [Reason(text=f"On the {side}, {one.name} moves badly to it", source=source)]


def on_that_side(answer: DinkAnswer, situation: Situation) -> str | None:
    """The call if they play where that way is the sideline; None where it would stay."""
    found, best = slow_way(answer), answer.best
    if found is None or best is None:
        return None
    one, way = found
    theirs = tuple(
        replace(each, side=way)
        if each.player == one.player
        else replace(each, side=each.side or way.other)
        for each in situation.theirs
    )
    other = answer_dink(replace(situation, theirs=theirs)).best
    if other is None or words.call(other) == words.call(best):
        return None
    return f"{one.name} plays {way}? {words.call(other)}"
