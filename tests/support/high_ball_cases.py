"""Cases about high and deep balls as data: what is said of the ball stands under `facts`."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from aim_cases import Case, situation_of

from knowledge.advice import Advice
from knowledge.ball_facts import BallFacts, Depth, Footing
from knowledge.situation import Situation
from knowledge.tactics import advise
from knowledge.vocabulary import Topic

FOOT_M, MPH_MPS = 0.3048, 0.44704


def facts_of(said: dict[str, Any]) -> BallFacts:
    """`feet` from the net, `high` in feet, `mph` of wind, and the fields by their own names."""
    return BallFacts(
        from_net_m=said["feet"] * FOOT_M if "feet" in said else None,
        height_m=said["high"] * FOOT_M if "high" in said else None,
        footing=Footing(said["footing"]) if "footing" in said else None,
        theirs=Depth(said["theirs"]) if "theirs" in said else None,
        ours=Depth(said["ours"]) if "ours" in said else None,
        bounced=said.get("bounced"),
        wind_mps=said["mph"] * MPH_MPS if "mph" in said else None,
        fault=said.get("fault"),
    )


def high_ball(case: Case, topic: Topic) -> Situation:
    """The situation of a case; `about` may name ours too, who else stands where is as in aims."""
    situation = situation_of(case, topic)
    ours = tuple(one.player for one in situation.ours if one.name in case.get("about", ()))
    asked = replace(
        situation.asked,
        facts=facts_of(case.get("facts", {})),
        about=(*situation.asked.about, *ours),
        hot=case.get("hot"),
    )
    return replace(situation, asked=asked)


def everything_said(advice: Advice) -> str:
    """All that a phone shows, in lines."""
    lines = [
        advice.call,
        *(one.text for one in advice.reasons),
        advice.now,
        advice.number,
        advice.unless,
        advice.assumed,
        advice.caution,
    ]
    return "\n".join(line for line in lines if line)


def check(case: Case, topic: Topic) -> Advice:
    """The answer to a case, held against its call, what it says and what it must not."""
    advice = advise(high_ball(case, topic))
    said = everything_said(advice)
    assert advice.call == case.get("call", advice.call)
    missing = [text for text in case.get("says", ()) if text not in said]
    assert not missing, said
    wrongly = [text for text in case.get("never", ()) if text in said]
    assert not wrongly, said
    return advice


__all__ = ["check", "everything_said", "facts_of", "high_ball"]
