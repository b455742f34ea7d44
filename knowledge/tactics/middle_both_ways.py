"""The middle of a left-hander and a right-hander of whom nobody said who plays left.

Their forehands meet there or their backhands, and which of the two is the court's to say. So both
are answered: a rule that holds either way is the call, else each way has its own.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.dataclass import dataclass
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import middle_words as words
from knowledge.tactics.aim_words import short
from knowledge.tactics.dink_words import fit
from knowledge.tactics.middle_answer import FAST, SLOW, MiddleAnswer, Owner, answer_middle
from knowledge.tactics.said_hands import wing_in_middle
from knowledge.tactics.told_ball import plain_words
from knowledge.vocabulary import AgreementKey, BallKind, Hand, Side, Topic, Wing

SETTLE_FIRST = "Settle who plays left first: it decides the middle."


@dataclass(frozen=True, slots=True, kw_only=True)
class _Seating:
    """Our two with this one on the left, and whose the middle is then."""

    left: OnCourt
    answer: MiddleAnswer

    def owners(self, kinds: Sequence[BallKind]) -> tuple[Owner, ...]:
        return tuple(self.answer.of(kind).owner for kind in kinds)


def both_ways(situation: Situation, choices: Sequence[Choice]) -> Advice | None:
    """The answer for either of us on the left; None where hands or sides make it one answer."""
    pair = _lefty_and_righty(situation)
    asked = situation.asked.ball_kind
    is_settled = AgreementKey.MIDDLE in situation.agreements
    if pair is None or is_settled or situation.asked.pulled_wide is not None:
        return None
    lefty, righty = pair
    forehands, backhands = (_seated(situation, left) for left in (righty, lefty))
    kinds = (asked,) if asked else (*SLOW, *FAST)
    is_one_rule = forehands.owners(kinds) == backhands.owners(kinds) and not {
        Owner.LEFT,
        Owner.RIGHT,
    } & {*forehands.owners(kinds)}
    return Advice(
        topic=Topic.COVER_MIDDLE,
        call=words.call(forehands.answer, asked) if is_one_rule else SETTLE_FIRST,
        reasons=(
            _reason(forehands, asked, "two forehands meet: say it early", is_one_rule=is_one_rule),
            _reason(backhands, asked, "two backhands meet: swap sides", is_one_rule=is_one_rule),
        ),
        unless=words.IF_WIDE,
        assumed=_assumed(righty),
        confidence=Confidence.GENERAL_RULE,
        choices=tuple(choices),
    )


def seated_as_meeting(situation: Situation) -> Situation:
    """Our two on the courts that bring both forehands, or backhands, to the middle as was said."""
    pair, wing = _lefty_and_righty(situation), wing_in_middle(plain_words(situation.asked.words))
    if pair is None or wing is None:
        return situation
    lefty, righty = pair
    return _with_left(situation, righty if wing is Wing.FOREHAND else lefty)


def _lefty_and_righty(situation: Situation) -> tuple[OnCourt, OnCourt] | None:
    """Both of us in that order, where nobody has a court; a hand nobody noted is taken as right."""
    ours = situation.ours
    if len(ours) != len(Side) or any(one.side is not None for one in ours):
        return None
    lefties = [one for one in ours if one.hand is Hand.LEFT]
    others = [one for one in ours if one.hand in (Hand.RIGHT, None)]
    return (lefties[0], others[0]) if len(lefties) == len(others) == 1 else None


def _seated(situation: Situation, left: OnCourt) -> _Seating:
    return _Seating(left=left, answer=answer_middle(_with_left(situation, left)))


def _with_left(situation: Situation, left: OnCourt) -> Situation:
    sides = {one.player: Side.RIGHT for one in situation.ours} | {left.player: Side.LEFT}
    ours = tuple(replace(one, side=sides[one.player]) for one in situation.ours)
    return replace(situation, ours=ours)


def _reason(seating: _Seating, asked: BallKind | None, meets: str, *, is_one_rule: bool) -> Reason:
    """What this seating brings together, and whose the balls are where that depends on it."""
    name = seating.left.name
    told: tuple[str, ...] = (f"{name} left: {meets}", meets[:1].upper() + meets[1:])
    if not is_one_rule:
        call = words.call(seating.answer, asked).rstrip(".")
        told = (f"{name} left: {call[:1].lower() if asked else call[:1]}{call[1:]}", *told)
    return Reason(text=short(told), source=COMMON_PRACTICE)


def _assumed(righty: OnCourt) -> str:
    taken = f" Taking {righty.name} as right-handed." if righty.hand is None else ""
    return fit((f"Who plays left?{taken}", "Who plays left?"))
