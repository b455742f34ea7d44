"""In the air or off the bounce: by reach, by where it would land, and by who meets it."""

from __future__ import annotations

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Footing
from knowledge.court import METRES_PER_FOOT, NET_HEIGHT_CENTRE_M
from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Effect, Option
from knowledge.engine import Ranking, rank
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import bounce_sizes as sizes
from knowledge.tactics.aim_words import sum_lines
from knowledge.tactics.bounce_effects import (
    LET,
    TAKE,
    ball_effects,
    lob_effects,
    player_effects,
)
from knowledge.tactics.bounce_picture import bounce_view
from knowledge.tactics.bounce_said import BounceSaid, Landing, bounce_said
from knowledge.tactics.bounce_time import Bounce, dink_of, taken_at_m
from knowledge.tactics.conditions import VOLLEYS, marks_weak
from knowledge.tactics.told_ball import striker_of
from knowledge.tactics.told_reasons import (
    GENERAL,
    figures,
    is_general,
    noted_for,
    plain,
    ruled,
    told_for,
    weak_shot,
)
from knowledge.vocabulary import Topic, Trait

REASONS = 3

LOB_CAUTION = "Turn and run; never backpedal."


@dataclass(frozen=True, slots=True, kw_only=True)
class BounceAnswer:
    """The two ways ranked for one ball; `weak` is the shot that our profile keeps us from."""

    said: BounceSaid
    ranking: Ranking
    striker: OnCourt | None
    weak: Trait | None

    @property
    def takes(self) -> bool:
        return self.ranking.best.option.id == TAKE


def advise(situation: Situation) -> Advice:
    """Take it or let it bounce, what the bounce costs, and what would change it."""
    answer = answer_bounce(situation)
    if answer.said.must_bounce:
        return _must_bounce()
    facts = situation.asked.facts
    is_dead = answer.said.landing is Landing.IN_FRONT
    dink = dink_of(
        height_m=taken_at_m(facts.height_m),
        from_net_m=facts.from_net_m,
        forward_mps=facts.pace_mps,
        is_dead=is_dead,
    )
    bounce, call = dink.bounce, _call(answer)
    general = is_general(answer.ranking) and answer.weak is None
    return Advice(
        topic=Topic.TAKE_OR_LET_BOUNCE,
        call=call,
        reasons=_reasons(answer),
        number=_number(bounce) if _costs(answer.said) else None,
        unless=_unless(answer),
        assumed=_assumed(answer, general=general),
        caution=LOB_CAUTION if answer.said.is_lob else None,
        confidence=Confidence.GENERAL_RULE if general else answer.ranking.confidence,
        numbers=figures(
            answer.ranking,
            bounce_costs_s=bounce.time_s,
            bounce_costs_m=bounce.ground_m,
            bounce_top_m=bounce.top_m,
            lands_after_m=bounce.lands_after_m,
        ),
        choices=_choices(situation, answer),
        picture=bounce_view(dink, call, is_dead=is_dead) if _is_drawn(answer.said) else None,
        more=_more(answer, bounce),
    )


def _is_drawn(said: BounceSaid) -> bool:
    """A dink at us; a lob and a ball to hit down have other paths."""
    return not said.is_lob and not said.high


def answer_bounce(situation: Situation) -> BounceAnswer:
    said = bounce_said(situation)
    striker = striker_of(situation)
    weak = _kept_from(said, striker, situation)
    options = [Option(id=LET, label="let it bounce")]
    if weak is None:
        options.append(Option(id=TAKE, label="take it in the air"))
    known = {one.id for one in options}
    effects = [one for one in _effects(said, striker, situation) if one.on <= known]
    decision = Decision(
        options=tuple(options),
        effects=tuple(effects),
        neutral=sizes.NEUTRAL,
        share=sizes.LOB_SHARE if said.is_lob else sizes.SHARE,
    )
    return BounceAnswer(said=said, ranking=rank(decision, situation), striker=striker, weak=weak)


def _effects(said: BounceSaid, striker: OnCourt | None, situation: Situation) -> list[Effect]:
    if said.is_lob:
        return list(lob_effects(said, striker))
    found = list(ball_effects(said))
    if striker is not None:
        found += player_effects(striker, situation.asked.wing)
    return found


def _kept_from(said: BounceSaid, striker: OnCourt | None, situation: Situation) -> Trait | None:
    """The volley or overhead that our own profile marks as weak, where it is all there is."""
    if said.is_lob:
        return Trait.OVERHEAD if marks_weak(striker, Trait.OVERHEAD) else None
    wing = situation.asked.wing
    volleys = [VOLLEYS[wing]] if wing else list(VOLLEYS.values())
    return volleys[0] if all(marks_weak(striker, each) for each in volleys) else None


def _call(answer: BounceAnswer) -> str:
    said = answer.said
    if said.is_lob:
        return (
            "Take it overhead, feet set." if answer.takes else "Let it bounce: turn, run, face it."
        )
    if answer.takes:
        if said.high:
            return "Take it in the air and hit it down."
        if said.landing is Landing.AT_FEET:
            return "Take it in the air, before it's at your feet."
        return (
            "Take it in the air if your feet stay still."
            if said.balanced is None
            else ("Take it in the air, in front of you.")
        )
    if answer.weak is not None:
        return "Let it bounce: keep the volley out of it."
    if said.landing is Landing.IN_FRONT:
        return "Let it bounce, then step in and attack it."
    return "Let it bounce: no lunge, one step back."


def _reasons(answer: BounceAnswer) -> tuple[Reason, ...]:
    own = _own_weakness(answer)
    notes = noted_for(answer.ranking)[:1]
    ball = told_for(answer.ranking)
    if answer.said.is_lob:
        last = plain("Partner calls it and covers behind")
    elif answer.takes:
        last = (ruled("momentum", "Volley: stay out of the kitchen, after too"),)
    else:
        last = plain("Off the bounce you may step into the kitchen")
    usual = () if answer.said.is_lob or ball or not answer.takes else _usual()
    return tuple(dict.fromkeys((*own, *notes, *ball[:1], *usual, *last)))[:REASONS]


def _usual() -> tuple[Reason, ...]:
    return plain("Taking it keeps them under pressure", "A lunge pops it up")


def _own_weakness(answer: BounceAnswer) -> tuple[Reason, ...]:
    one, trait = answer.striker, answer.weak
    if one is None or trait is None:
        return ()
    return (weak_shot(one, trait),)


def _costs(said: BounceSaid) -> bool:
    """Whether its bounce is that of a dink at us: a lob's is another, on a dead one we step in."""
    return not said.is_lob and said.landing is not Landing.IN_FRONT


def _number(bounce: Bounce) -> str:
    """What letting it go by costs, in tenths of a second and whole feet."""
    feet = round(bounce.ground_m / METRES_PER_FOOT)
    return f"The bounce gives them {bounce.time_s:.1f} s and costs you {feet} ft."


def _unless(answer: BounceAnswer) -> str | None:
    said = answer.said
    if said.is_lob:
        return "Still moving back? Let it bounce." if answer.takes else "Set under it? Overhead."
    if answer.takes:
        if said.balanced is None:
            return "Must lunge, or dead and short: let it bounce."
        return None if said.landing else "Dead and short in front: let it bounce."
    if answer.weak is not None:
        return "At your feet? Half volley it soft, to the middle."
    if said.landing is Landing.IN_FRONT:
        return "Lands at your feet? Take it in the air."
    return "Feet still? Take it in front of you."


def _assumed(answer: BounceAnswer, *, general: bool) -> str | None:
    said = answer.said
    if said.balanced is None and said.landing is None and said.high is None and answer.takes:
        return "General rule, for a ball you can reach." if general else "For a ball you can reach."
    return GENERAL if general else None


_LUNGE, _REACH = ("must lunge", Footing.SIDEWAYS), ("easy reach", Footing.STILL)


def _choices(situation: Situation, answer: BounceAnswer) -> tuple[Choice, ...]:
    """The other way of meeting it; both where none is told, none where the feet are in words."""
    offered: tuple[tuple[str, Footing], ...]
    if answer.said.balanced is None:
        offered = (_LUNGE, _REACH)
    elif situation.asked.ball is None and situation.asked.facts.footing is None:
        return ()
    else:
        offered = (_LUNGE,) if answer.said.balanced else (_REACH,)
    return tuple(
        Choice(
            label=label,
            topic=Topic.TAKE_OR_LET_BOUNCE,
            fact=MatchFact.FOOTING.value,
            value=footing.value,
        )
        for label, footing in offered
    )


def _more(answer: BounceAnswer, bounce: Bounce) -> tuple[str, ...]:
    if answer.said.is_lob:
        return sum_lines(answer.ranking.best.parts, what=answer.ranking.best.option.label)
    top, net = (each / METRES_PER_FOOT for each in (bounce.top_m, NET_HEIGHT_CENTRE_M))
    met = f"Off the bounce it comes up to {top:.1f} ft, the net is {net:.1f} ft."
    return (*sum_lines(answer.ranking.best.parts, what=answer.ranking.best.option.label), met)


def _must_bounce() -> Advice:
    """Serve and return have to bounce, whatever the reach."""
    return Advice(
        topic=Topic.TAKE_OR_LET_BOUNCE,
        call="Let it bounce: serve and return must.",
        reasons=(
            ruled("two bounces", "Struck before its bounce: a fault"),
            ruled("two bounces", "Earliest volley is the fourth shot", reason=1),
        ),
        unless="From the fourth shot on: in the air, if in reach.",
    )
