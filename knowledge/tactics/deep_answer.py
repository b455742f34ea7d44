"""The decision behind a ball against a deep pair: what there is to choose, ranked."""

from __future__ import annotations

from typing import Final

from knowledge.advice import Reason
from knowledge.ball_facts import Depth
from knowledge.court import METRES_PER_FOOT
from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Option
from knowledge.engine import Part, Ranking, rank
from knowledge.planning.phrases import skill_words
from knowledge.planning.weighing import driver_of
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import deep_sizes as sizes
from knowledge.tactics import deep_words as words
from knowledge.tactics.conditions import first_of_ours, marks_weak
from knowledge.tactics.deep_effects import DeepAim, DeepQuestion, DeepShot, effects
from knowledge.tactics.deep_outcomes import (
    BACKING_M,
    BASELINE_M,
    FENCE_M,
    MIDCOURT_M,
    deep,
    drop_slack_s,
)
from knowledge.tactics.overhead_outcomes import Outcome
from knowledge.vocabulary import BallQuality, RallyChance, Trait

AT_THE_LINE_M: Final = 8 * METRES_PER_FOOT
NET_HIGH_M: Final = 0.85
SITS_UP_M: Final = 1.8
LOW_M: Final = 0.5
"""Where and how high we meet it where nobody says: at the line, low. Common practice, no source."""

LOWEST_M, HIGHEST_M = 0.1, 2.8

FINISHERS: Final = (Trait.OVERHEAD, Trait.FOREHAND_VOLLEY)
TOUCH: Final = Trait.RESET
"""Our shots that a put-away and a drop volley take; soft hands are noted as resets."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DeepAnswer:
    question: DeepQuestion
    ranking: Ranking
    aims: tuple[DeepAim, ...]
    about_one: OnCourt | None

    @property
    def best(self) -> DeepAim:
        return self.aim(self.ranking.best.option.id)

    def aim(self, id: str) -> DeepAim:
        return next(aim for aim in self.aims if aim.id == id)

    @property
    def driver(self) -> Part | None:
        """The largest help that notes on them stand behind and settle."""
        return driver_of(self.ranking.best.parts, self.question.pair)

    @property
    def noted_speed(self) -> Reason | None:
        """What notes say of how quick forward the one is, where that speaks for the call."""
        one = self.best.target
        if one is None or self.question.said_level is not None:
            return None
        estimate = one.profile.skill(Trait.FORWARD_SPEED)
        speaks = estimate.level < 0 if self.best.shot is DeepShot.DROP else estimate.level > 0
        if not estimate.evidence or estimate.is_open or not speaks:
            return None
        said = skill_words(Trait.FORWARD_SPEED, strong=estimate.level > 0)
        return Reason(text=f"{one.name}: {said}", source=estimate.source)

    @property
    def is_about_one(self) -> bool:
        """Whether notes or the question single out whom to play at."""
        drops_at_noted = self.best.shot is DeepShot.DROP and self.noted_speed is not None
        return self.about_one is not None or self.driver is not None or drops_at_noted

    @property
    def may_drop(self) -> bool:
        return any(aim.shot is DeepShot.DROP for aim in self.aims)

    @property
    def other(self) -> tuple[DeepAim, str]:
        """What the call is held against, and its name."""
        wanted = DeepShot.DROP if self.best.shot is DeepShot.DEEP else DeepShot.DEEP
        if wanted is DeepShot.DROP and not self.may_drop:
            wanted = DeepShot.DEEP
        ranked = (self.aim(one.option.id) for one in self.ranking.ranked)
        names = {DeepShot.DROP: "a drop", DeepShot.DEEP: "the deep ball"}
        return next(aim for aim in ranked if aim.shot is wanted), names[wanted]

    @property
    def slack_s(self) -> float:
        """Seconds to spare of the one whom we play at, or who is slowest to a drop."""
        targets = (
            [self.best.target]
            if self.best.shot is DeepShot.DROP
            else [aim.target for aim in self.aims if aim.shot is not DeepShot.PUT_AWAY]
        )
        question = self.question
        return min(
            drop_slack_s(question.runner(one), question.height_m, question.from_net_m)
            for one in targets
        )

    @property
    def best_drop(self) -> Outcome:
        drops = [self.question.drop(aim.target) for aim in self.aims if aim.shot is DeepShot.DROP]
        return max(drops, key=lambda one: one.worth)


def answer_deep(situation: Situation) -> DeepAnswer:
    """Deep, drop or put-away; a shot that our own profile marks as weak is no choice."""
    question = question_of(situation)
    about = [one for one in situation.theirs if one.player in situation.asked.about]
    aims = tuple(_aims(about or list(situation.theirs), situation))
    ranking = rank(
        Decision(
            options=tuple(Option(id=aim.id, label=_label(aim)) for aim in aims),
            effects=effects(question, aims),
            neutral=RallyChance(deep().worth),
            share=sizes.DEEP_SHARE,
        ),
        situation,
    )
    one = about[0] if len(about) == 1 else None
    return DeepAnswer(question=question, ranking=ranking, aims=aims, about_one=one)


_LABELS: Final = {
    DeepShot.DEEP: "deep at the feet",
    DeepShot.DROP: "drop volley",
    DeepShot.PUT_AWAY: "put-away angle",
}


def _label(aim: DeepAim) -> str:
    where = f", {aim.target.name}" if aim.target is not None and aim.target.name else ""
    return f"{_LABELS[aim.shot]}{where}"


def _aims(targets: list[OnCourt], situation: Situation) -> list[DeepAim]:
    whom: list[OnCourt | None] = list(targets) or [None]
    found = [DeepAim(shot=DeepShot.DEEP, target=one) for one in whom]
    striker = _striker(situation)
    if not marks_weak(striker, TOUCH) and situation.asked.facts.theirs is not Depth.COMING_IN:
        found += [DeepAim(shot=DeepShot.DROP, target=one) for one in whom]
    if not marks_weak(striker, *FINISHERS):
        found.append(DeepAim(shot=DeepShot.PUT_AWAY))
    return found


def _striker(situation: Situation) -> OnCourt | None:
    """Who of ours plays it: who is said to, else who asks."""
    return first_of_ours(situation, situation.striker, situation.asker)


def question_of(situation: Situation) -> DeepQuestion:
    """What is said of the ball and of them, in facts first, then in words; the rest assumed."""
    facts, said = situation.asked.facts, words.told(situation.asked.words)
    if facts.from_net_m is not None:
        # "Two feet behind the line" is where we meet it, not how far behind it they stand.
        said -= {words.FENCE, words.MIDCOURT}
    striker = _striker(situation)
    level = 0.0 if striker is None else striker.profile.skill(TOUCH).level
    return DeepQuestion(
        pair=situation.theirs,
        height_m=_height_m(situation),
        from_net_m=facts.from_net_m if facts.from_net_m is not None else AT_THE_LINE_M,
        their_depth_m=_depth_m(facts.theirs, said),
        moving_back=words.MOVING_BACK in said,
        wrong_footed=words.WRONG_FOOTED in said,
        coming_in=facts.theirs is Depth.COMING_IN,
        said_level=_said_level(said),
        touch=sizes.WILDER**-level,
        wind=situation.wind,
    )


def _height_m(situation: Situation) -> float:
    said = situation.asked.facts.height_m
    if said is not None:
        return min(max(said, LOWEST_M), HIGHEST_M)
    match situation.asked.ball:
        case BallQuality.EASY:
            return SITS_UP_M
        case BallQuality.STRETCHED:
            return LOW_M
    return NET_HIGH_M


def _depth_m(theirs: Depth | None, said: frozenset[str]) -> float:
    if theirs is Depth.COMING_IN:
        return MIDCOURT_M
    for word, depth in (
        (words.FENCE, FENCE_M),
        (words.BASELINE, BASELINE_M),
        (words.MIDCOURT, MIDCOURT_M),
    ):
        if word in said:
            return depth
    return BACKING_M if words.MOVING_BACK in said else BASELINE_M


def _said_level(said: frozenset[str]) -> float | None:
    """What the question says of their speed; both or neither says nothing."""
    slow, quick = words.SLOW in said, words.QUICK in said
    if slow == quick:
        return None
    return -sizes.SAID_LEVEL if slow else sizes.SAID_LEVEL
