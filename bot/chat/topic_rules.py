"""A few rules for pairs of topics that share their words: each may only swap near neighbours."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from bot.chat.topic_conditions import (
    Said,
    as_good_as_won,
    asks_who_covers,
    bare_in_match,
    foot_on_the_line,
    kind_of_player,
    legal,
    names_the_return,
    names_the_serve,
    names_the_target,
    odds,
    our_third_floats,
    resets_astray,
    size,
    they_serve,
    timeout_weighed,
    toss,
)
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Topic

REACH = 3
"""A rule lifts a topic only from among the first three: it settles doubts, it invents nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PairRule:
    """When `holds`, `better` goes before any of `than` that the model ranked first."""

    name: str
    better: Topic
    than: tuple[Topic, ...]
    holds: Callable[[Said], bool]
    because: str


RULES = (
    PairRule(
        name="a return named is the return",
        better=Topic.AIM_RETURN,
        than=(Topic.AIM_SERVE,),
        holds=names_the_return,
        because="a shot that is named outweighs the one spoken of before",
    ),
    PairRule(
        name="while they serve our shot is the return",
        better=Topic.AIM_RETURN,
        than=(Topic.AIM_SERVE,),
        holds=they_serve,
        because="who receives has no serve to aim",
    ),
    PairRule(
        name="a serve named is the serve",
        better=Topic.AIM_SERVE,
        than=(Topic.AIM_RETURN,),
        holds=names_the_serve,
        because="a shot that is named outweighs the one spoken of before",
    ),
    PairRule(
        name="whom to target is asked anew",
        better=Topic.WHOM_TO_TARGET,
        than=(Topic.AIM_SERVE, Topic.AIM_RETURN, Topic.AIM_DINK, Topic.AIM_ATTACK),
        holds=names_the_target,
        because="who is the target is no question of the shot spoken of before",
    ),
    PairRule(
        name="who covers the middle is asked anew",
        better=Topic.COVER_MIDDLE,
        than=(
            Topic.AIM_SERVE,
            Topic.AIM_RETURN,
            Topic.AIM_ATTACK,
            Topic.AIM_OVERHEAD,
            Topic.ERNIE_OR_POST,
            Topic.ANSWER_PATTERN,
            Topic.LOB,
            Topic.WHERE_TO_STAND,
            Topic.LET_IT_GO,
        ),
        holds=asks_who_covers,
        because="whose ball it is is no question of where to hit one",
    ),
    PairRule(
        name="odds are a chance",
        better=Topic.WIN_CHANCE,
        than=(
            Topic.RISK_AT_SCORE,
            Topic.ADJUST,
            Topic.RESET_HEAD,
            Topic.TIMEOUT_NOW,
            Topic.WHOM_TO_TARGET,
            Topic.AIM_SERVE,
        ),
        holds=odds,
        because="who says odds wants the number, whatever the score",
    ),
    PairRule(
        name="size is a weight",
        better=Topic.RISK_AT_SCORE,
        than=(Topic.WIN_CHANCE, Topic.TIMEOUT_NOW, Topic.RESET_OR_COUNTER),
        holds=size,
        because="how big a point is asks for its weight, not for the chance to win",
    ),
    PairRule(
        name="as good as won is a chance",
        better=Topic.WIN_CHANCE,
        than=(Topic.SMALLTALK_OR_UNKNOWN, Topic.RISK_AT_SCORE, Topic.CHOOSE_END_OR_SERVE),
        holds=as_good_as_won,
        because="whether it is over asks how likely it is not",
    ),
    PairRule(
        name="a time-out weighed is asked about",
        better=Topic.TIMEOUT_NOW,
        than=(Topic.ADJUST, Topic.PROBE, Topic.RESET_HEAD),
        holds=timeout_weighed,
        because="what to change comes up because the change is what a time-out is worth",
    ),
    PairRule(
        name="a toss is won before the match",
        better=Topic.CHOOSE_END_OR_SERVE,
        than=(
            Topic.WEATHER_OR_BODY,
            Topic.AIM_SERVE,
            Topic.WHERE_TO_STAND,
            Topic.ANSWER_PATTERN,
            Topic.ADJUST,
        ),
        holds=toss,
        because="sun and wind come up at the toss because they decide it",
    ),
    PairRule(
        name="legal is the rulebook's word",
        better=Topic.RULES_QUESTION,
        than=(
            Topic.ERNIE_OR_POST,
            Topic.TIMEOUT_NOW,
            Topic.WHERE_TO_STAND,
            Topic.LET_IT_GO,
            Topic.STACK_OR_NOT,
        ),
        holds=legal,
        because="whether one may is not whether one should",
    ),
    PairRule(
        name="a kind of player is a pattern",
        better=Topic.ANSWER_PATTERN,
        than=(Topic.GAME_PLAN, Topic.WHOM_TO_TARGET),
        holds=kind_of_player,
        because="bangers are beaten alike whoever they are; a plan is for two people",
    ),
    PairRule(
        name="a foot on the line is the rulebook's",
        better=Topic.RULES_QUESTION,
        than=(
            Topic.TRANSITION,
            Topic.ERNIE_OR_POST,
            Topic.TAKE_OR_LET_BOUNCE,
            Topic.WHERE_TO_STAND,
            Topic.WEATHER_OR_BODY,
        ),
        holds=foot_on_the_line,
        because="who tells where a foot came down wants to know whether it was a fault",
    ),
    PairRule(
        name="our third that floats is the third",
        better=Topic.THIRD_SHOT,
        than=(Topic.ADJUST, Topic.ANSWER_PATTERN),
        holds=our_third_floats,
        because="one shot of ours is named, and what to do with it is asked",
    ),
    PairRule(
        name="resets that went wrong are a shot to change",
        better=Topic.ADJUST,
        than=(Topic.RESET_HEAD,),
        holds=resets_astray,
        because="a lost run is told beside them because it is what they cost",
    ),
    PairRule(
        name="two words in a match want a cue",
        better=Topic.CUE,
        than=(Topic.GAME_PLAN, Topic.ADJUST),
        holds=bare_in_match,
        because="between rallies there are ten seconds",
    ),
)


def apply_rules(ranked: Sequence[Topic], said: Said) -> tuple[Topic, ...]:
    """The topics in order after the first rule that applies."""
    for rule in RULES:
        lifted = rule.better in ranked[1:REACH] and ranked[0] in rule.than
        if lifted and rule.holds(said):
            return (rule.better, *[topic for topic in ranked if topic is not rule.better])
    return tuple(ranked)
