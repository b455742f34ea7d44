"""General rules for topics without an engine of their own yet: data, checked at load."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from types import MappingProxyType

from knowledge import rulebook
from knowledge.advice import Advice
from knowledge.general_rule import GeneralRule, RuleDataError, load_table, read_rule
from knowledge.situation import Situation
from knowledge.tactics import smalltalk, weather
from knowledge.vocabulary import Topic

GENERAL_NOTE = "General rule: I don't work this one out from your notes yet."
"""Said with every answer from this module that notes could sharpen."""

OWN_ENGINE = frozenset(
    {
        Topic.COVER_MIDDLE,
        Topic.AIM_DINK,
        Topic.AIM_SERVE,
        Topic.AIM_RETURN,
        Topic.AIM_ATTACK,
        Topic.RESET_OR_COUNTER,
        Topic.AIM_OVERHEAD,
        Topic.DROP_ON_DEEP_OPPONENTS,
        Topic.LOB,
        Topic.WHERE_TO_STAND,
        Topic.WHOM_TO_TARGET,
        Topic.BEING_TARGETED,
        Topic.OPPONENT_REPORT,
        Topic.GAME_PLAN,
        Topic.CUE,
        Topic.RISK_AT_SCORE,
        Topic.WIN_CHANCE,
        Topic.TIMEOUT_NOW,
        Topic.CHOOSE_END_OR_SERVE,
        Topic.ANSWER_PATTERN,
        Topic.PROBE,
        Topic.RESET_HEAD,
        Topic.ERNIE_OR_POST,
        Topic.TRANSITION,
        Topic.TAKE_OR_LET_BOUNCE,
        Topic.THIRD_SHOT,
        Topic.LET_IT_GO,
        Topic.STACK_OR_NOT,
        Topic.PAIR_UP,
    }
)
"""Topics answered elsewhere."""


def advise(situation: Situation) -> Advice:
    """The general rule of the situation's topic."""
    picked = _PICKED_BY_WORDS.get(situation.topic)
    if picked is not None:
        return picked(situation)
    found = general_rules()[situation.topic]
    return Advice(
        topic=situation.topic,
        call=found.call,
        reasons=found.reasons,
        unless=found.unless,
        assumed=GENERAL_NOTE,
        caution=found.caution,
    )


@cache
def general_rules() -> Mapping[Topic, GeneralRule]:
    """The rules with one answer per topic; RuleDataError names what the data lacks."""
    table = load_table("knowledge.tactics", "general_rules.toml")
    rules = {Topic(name): read_rule(row) for name, row in table.items() if isinstance(row, dict)}
    missing = set(Topic) - OWN_ENGINE - set(_PICKED_BY_WORDS) - set(rules)
    if missing:
        raise RuleDataError(f"general_rules.toml lacks {sorted(missing)}")
    return MappingProxyType(rules)


_PICKED_BY_WORDS: Mapping[Topic, Callable[[Situation], Advice]] = MappingProxyType(
    {
        Topic.RULES_QUESTION: rulebook.advise,
        Topic.WEATHER_OR_BODY: weather.advise,
        Topic.SMALLTALK_OR_UNKNOWN: smalltalk.advise,
    }
)
"""Topics with several answers, of which the words pick one."""
