"""Cases with a ball in them: what `aim_cases` reads, and the facts said of the one ball."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from aim_cases import Case, situation_of

from knowledge.advice import Advice
from knowledge.ball_facts import BallFacts, Depth, Footing, Spin
from knowledge.situation import Situation
from knowledge.vocabulary import BallKind, Topic

_ENUMS = {"footing": Footing, "theirs": Depth, "ours": Depth, "spin": Spin}


def facts_of(said: Mapping[str, Any]) -> BallFacts:
    """The ball facts of a case: plain numbers, and words for closed sets."""
    values: dict[str, Any] = {
        key: _ENUMS[key](value) if key in _ENUMS else value for key, value in said.items()
    }
    return BallFacts(**values)


def ball_situation(case: Case, topic: Topic) -> Situation:
    """A case's situation with its `facts` and the `kind` of ball."""
    situation = situation_of(case, topic)
    kind = BallKind(case["kind"]) if "kind" in case else None
    asked = replace(situation.asked, ball_kind=kind, facts=facts_of(case.get("facts", {})))
    return replace(situation, asked=asked)


def said(advice: Advice) -> str:
    """Everything a reply shows at once, a line each."""
    lines = [
        advice.call,
        *(one.text for one in advice.reasons),
        advice.number,
        advice.unless,
        advice.assumed,
    ]
    return "\n".join(line for line in lines if line)
