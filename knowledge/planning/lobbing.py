"""Whether to lob these two, and over whom."""

from __future__ import annotations

from knowledge.engine import Decision, Effect, Mechanism
from knowledge.planning import sizes
from knowledge.planning.line import Line, Phase
from knowledge.planning.weighing import always, from_fact, from_trait, is_weak, option, weigh
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import Trait, Value

NO_LOB = "no lob"
SHORT_OR_TALL = 0.15
"""How many players count as short, and as tall, where nobody said. Common practice, no source."""


def lob_line(situation: Situation) -> Line | None:
    """Over whom to lob; None if nobody invites it or no lob of ours is good enough."""
    lobbers = [one for one in situation.ours if not is_weak(one, Trait.LOB)]
    if not situation.theirs or (situation.ours and not lobbers):
        return None
    weighed = weigh(lob_decision(situation), situation, plain=NO_LOB)
    target = next((one for one in situation.theirs if over(one) == weighed.best), None)
    if target is None or not weighed.evidence:
        return None
    who = "" if len(lobbers) == len(situation.ours) else f"{lobbers[0].name}: "
    verb = "lob" if who else "Lob"
    return Line(
        phase=Phase.LOB,
        do=f"{who}{verb} {target.name} off a dead dink",
        because=weighed.because,
        cue=f"{who}{verb} {target.name} off a dead dink.",
        points=weighed.gain,
        share=sizes.LOB_SHARE,
        source=weighed.source,
    )


def lob_decision(situation: Situation) -> Decision:
    """Over whom to lob, or not at all."""
    return Decision(
        options=(
            option(NO_LOB, "no lob"),
            *(option(over(one), one.name) for one in situation.theirs),
        ),
        effects=tuple(effect for one in situation.theirs for effect in _effects(one)),
        neutral=sizes.EVEN_CHANCE,
        share=sizes.LOB_SHARE,
    )


def over(one: OnCourt) -> str:
    """The option that lobs this opponent."""
    return f"over:{one.player}"


def _effects(one: OnCourt) -> list[Effect]:
    on, invites, punishes = (
        (over(one),),
        sizes.LOB_AT_LEANING_SHORT_OR_SLOW,
        sizes.LOB_AT_QUICK_OR_TALL,
    )
    error, cover = Mechanism.THEIR_ERROR, Mechanism.COVER
    return [
        always(f"{over(one)}:cold", "no reason to lob", sizes.LOB_COLD, Mechanism.OUR_ERROR, on=on),
        from_trait(one, Trait.LOB_DEFENSE, invites, error, on=on, up=False),
        from_trait(one, Trait.LOB_DEFENSE, punishes, error, on=on, up=True),
        from_trait(one, Trait.FOOT_SPEED, invites, cover, on=on, up=False),
        from_trait(one, Trait.FOOT_SPEED, punishes, cover, on=on, up=True),
        from_trait(one, Trait.OVERHEAD, invites, error, on=on, up=False),
        from_trait(one, Trait.OVERHEAD, punishes, error, on=on, up=True),
        from_fact(one, Trait.HEIGHT, Value.SHORT, invites, cover, on=on, prevalence=SHORT_OR_TALL),
        from_fact(one, Trait.HEIGHT, Value.TALL, punishes, cover, on=on, prevalence=SHORT_OR_TALL),
    ]
