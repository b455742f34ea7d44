"""What each part of the rally says for playing at one opponent, from that shot's own page."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from types import MappingProxyType

from knowledge.engine import Decision, Effect, Mechanism, Ranking, rank
from knowledge.planning import sizes
from knowledge.planning.hands import hands_aim
from knowledge.planning.lobbing import NO_LOB, lob_decision, over
from knowledge.planning.thirds import thirds_of
from knowledge.planning.weighing import from_trait, is_weak
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics.conditions import marked_wing
from knowledge.tactics.dink_answer import DINK_SHARE, answer_dink
from knowledge.tactics.dink_words import names_wing
from knowledge.tactics.return_answer import question_of
from knowledge.tactics.return_effects import target_effects
from knowledge.tactics.return_question import at as target_at
from knowledge.tactics.target_sizes import LATE_SHARE, LOSES_PATIENCE, TIGHT, TIRES
from knowledge.vocabulary import Topic, Trait


class TargetPhase(StrEnum):
    """A part of the rally in which we choose at whom to play, in its order."""

    RETURN = "return"
    THIRD = "third"
    DINKS = "dinks"
    HANDS = "hands"
    LOBS = "lobs"
    LATE = "late"


@dataclass(frozen=True, slots=True, kw_only=True)
class AtOne:
    """What speaks for and against the balls of one phase at one opponent, and where they go."""

    effects: tuple[Effect, ...] = ()
    place: str = ""
    spot: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseRow:
    """A phase: how often it arises, what is said of either opponent, and the shot of ours it needs.

    `priced` tells that its page already counts a partner who squeezes or poaches, or that he
    cannot reach that ball. `called` is whoever that shot's own page names: here it names the same
    one or nobody.
    """

    share: float
    at: Callable[[Situation, OnCourt], AtOne | None]
    needs: Trait | None
    priced: bool
    called: Callable[[Situation], OnCourt | None] | None = None


def _return(situation: Situation, one: OnCourt) -> AtOne:
    """The return's own page: what it says of this opponent, each note once."""
    acting = target_effects(question_of(replace(situation, asked=Asked(), game=None)))
    return AtOne(
        effects=tuple(
            effect
            for effect in acting
            if target_at(one) in effect.on and effect.scale and effect.scale.player == one.player
        )
    )


def _third(situation: Situation, one: OnCourt) -> AtOne | None:
    """The third's own page, for whichever of us makes most of this opponent."""
    thirds = thirds_of(situation)
    if not thirds:
        return None
    rankings = [third.weighed.ranking for third in thirds]
    return max(
        (_from_ranking(ranking, f":{one.player}") for ranking in rankings),
        key=lambda at: sum(effect.points.mean for effect in at.effects),
    )


def _dinks(situation: Situation, one: OnCourt) -> AtOne | None:
    """The dink's own page: the better foot of this opponent."""
    answer = answer_dink(replace(situation, topic=Topic.AIM_DINK, asked=Asked()))
    aims = [answer.aim(ranked.option.id) for ranked in answer.ranking.ranked]
    best = next((aim for aim in aims if aim and aim.target.player == one.player), None)
    if best is None:
        return None
    wing = best.wing if names_wing(best, None) else marked_wing(one)
    known = wing if best.wing is not None or best.lane is None else None
    acting = _acting(answer.ranking.decision, best.id)
    return AtOne(effects=acting, place=str(known or ""), spot=str(best.spot))


def _hands(situation: Situation, one: OnCourt) -> AtOne:
    """The speed-up's own page: the better hip of this opponent. How they wait says which hip."""
    found = hands_aim(replace(situation, theirs=(one,)))
    if found.spot is None:
        return _from_ranking(found.weighed.ranking, f":{one.player}")
    acting = _acting(found.weighed.ranking.decision, found.spot.id)
    about_hands = tuple(one for one in acting if one.scale is not None and one.scale.trait)
    return AtOne(effects=about_hands, place=found.spot.label)


def _called_in_hands(situation: Situation) -> OnCourt | None:
    found = hands_aim(situation)
    return None if found.spot is None else found.spot.target


def _lobs(situation: Situation, one: OnCourt) -> AtOne | None:
    """The lob's own page, where a lob over this opponent beats none."""
    ranking = rank(lob_decision(replace(situation, theirs=(one,))), situation)
    if ranking.best.option.id == NO_LOB:
        return AtOne()
    return AtOne(effects=_acting(ranking.decision, over(one)))


def _late(_situation: Situation, one: OnCourt) -> AtOne:
    """Who gets tight, tired or impatient: whatever the shot."""
    on, error = (f"at:{one.player}",), Mechanism.THEIR_ERROR
    rows = ((Trait.NERVES, TIGHT), (Trait.FITNESS, TIRES), (Trait.PATIENCE, LOSES_PATIENCE))
    return AtOne(
        effects=tuple(
            from_trait(one, trait, points if not up else -points, error, on=on, up=up)
            for trait, points in rows
            for up in (False, True)
        )
    )


def _from_ranking(ranking: Ranking, ending: str) -> AtOne:
    best = next(one for one in ranking.ranked if one.option.id.endswith(ending))
    return AtOne(effects=_acting(ranking.decision, best.option.id))


def _acting(decision: Decision, option: str) -> tuple[Effect, ...]:
    return tuple(effect for effect in decision.effects if option in effect.on)


PHASES: Mapping[TargetPhase, PhaseRow] = MappingProxyType(
    {
        TargetPhase.RETURN: PhaseRow(
            share=sizes.RETURN_SHARE, at=_return, needs=Trait.RETURN, priced=True
        ),
        TargetPhase.THIRD: PhaseRow(share=sizes.THIRD_SHARE, at=_third, needs=None, priced=True),
        TargetPhase.DINKS: PhaseRow(share=DINK_SHARE, at=_dinks, needs=None, priced=True),
        TargetPhase.HANDS: PhaseRow(
            share=sizes.HANDS_SHARE,
            at=_hands,
            needs=Trait.SPEED_UP,
            priced=False,
            called=_called_in_hands,
        ),
        TargetPhase.LOBS: PhaseRow(share=sizes.LOB_SHARE, at=_lobs, needs=Trait.LOB, priced=True),
        TargetPhase.LATE: PhaseRow(share=LATE_SHARE, at=_late, needs=None, priced=False),
    }
)


def able(situation: Situation, phase: TargetPhase) -> tuple[OnCourt, ...]:
    """Those of ours who own the shot that the phase needs."""
    needs = PHASES[phase].needs
    return tuple(one for one in situation.ours if needs is None or not is_weak(one, needs))
