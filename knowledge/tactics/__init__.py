"""One module per topic or small family of topics: pages of coaching that compute.

`advise` is the door: whatever the topic, a situation goes in and an advice comes out.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from importlib import import_module
from types import MappingProxyType

from knowledge.advice import Advice
from knowledge.evidence import Looked, watched
from knowledge.planning.rate_lines import others_lines
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.break_talk import with_calm
from knowledge.tactics.general_rule import with_notes_named
from knowledge.vocabulary import Topic

PAGES: Mapping[Topic, str] = MappingProxyType(
    {
        Topic.COVER_MIDDLE: "knowledge.tactics.cover_middle",
        Topic.AIM_DINK: "knowledge.tactics.aim_dink",
        Topic.WHERE_TO_STAND: "knowledge.tactics.where_to_stand",
        Topic.OPPONENT_REPORT: "knowledge.planning.report",
        Topic.GAME_PLAN: "knowledge.planning.plan",
        Topic.CUE: "knowledge.planning.cue",
        Topic.AIM_SERVE: "knowledge.tactics.aim_serve",
        Topic.AIM_RETURN: "knowledge.tactics.aim_return",
        Topic.THIRD_SHOT: "knowledge.tactics.third_shot",
        Topic.AIM_ATTACK: "knowledge.tactics.aim_attack",
        Topic.RESET_OR_COUNTER: "knowledge.tactics.reset_or_counter",
        Topic.AIM_OVERHEAD: "knowledge.tactics.aim_overhead",
        Topic.DROP_ON_DEEP_OPPONENTS: "knowledge.tactics.drop_on_deep_opponents",
        Topic.LOB: "knowledge.tactics.lob",
        Topic.WHOM_TO_TARGET: "knowledge.tactics.whom_to_target",
        Topic.WIN_CHANCE: "knowledge.tactics.win_chance",
        Topic.RISK_AT_SCORE: "knowledge.tactics.risk_at_score",
        Topic.TIMEOUT_NOW: "knowledge.tactics.timeout_now",
        Topic.ADJUST: "knowledge.tactics.adjust",
        Topic.BEING_TARGETED: "knowledge.tactics.being_targeted",
        Topic.CHOOSE_END_OR_SERVE: "knowledge.tactics.choose_end_or_serve",
        Topic.ANSWER_PATTERN: "knowledge.tactics.answer_pattern",
        Topic.LET_IT_GO: "knowledge.tactics.let_it_go",
        Topic.PROBE: "knowledge.tactics.probe",
        Topic.RESET_HEAD: "knowledge.tactics.reset_head",
        Topic.ERNIE_OR_POST: "knowledge.tactics.ernie_or_post",
        Topic.TRANSITION: "knowledge.tactics.transition",
        Topic.TAKE_OR_LET_BOUNCE: "knowledge.tactics.take_or_let_bounce",
        Topic.STACK_OR_NOT: "knowledge.tactics.stack_or_not",
        Topic.PAIR_UP: "knowledge.tactics.pair_up",
        Topic.RULES_QUESTION: "knowledge.rulebook",
        Topic.WEATHER_OR_BODY: "knowledge.tactics.weather",
        Topic.SMALLTALK_OR_UNKNOWN: "knowledge.tactics.smalltalk",
    }
)
"""Where each topic's page lives; every such module has an `advise`."""


def advise(situation: Situation) -> Advice:
    """The answer to a situation's question, by the page of its topic.

    Pages are imported when first asked for: planning builds on single topics, so importing
    it from here at load time would close a circle, and a start stays light.
    """
    page: Callable[[Situation], Advice] = import_module(PAGES[situation.topic]).advise
    return with_calm(with_notes_named(page(situation), situation), situation)


def advise_traced(situation: Situation) -> Advice:
    """The same answer with everything that was looked at for it among its evidence.

    That is at least what moves its numbers: an estimate that was read and did not matter in the
    end is among it too, after what the reasons name.
    """
    looked = Looked()
    advice = advise(
        replace(
            situation,
            ours=tuple(_watched(one, looked) for one in situation.ours),
            theirs=tuple(_watched(one, looked) for one in situation.theirs),
        )
    )
    tallies = (*situation.tallies, *(one.tally for one in situation.other_rallies))
    named = [reason.source for reason in (*advice.reasons, *advice.lines)]
    rallies = tuple(tally.evidence for tally in tallies if tally.evidence)
    return replace(
        advice,
        grounds=(*advice.grounds, *looked.evidence, *rallies),
        others=others_lines((*situation.theirs, *situation.ours), named),
    )


def _watched(one: OnCourt, looked: Looked) -> OnCourt:
    return replace(one, profile=watched(one.profile, looked))


__all__ = ["PAGES", "advise", "advise_traced"]
