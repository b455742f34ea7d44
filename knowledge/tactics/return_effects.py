"""What makes one return better than another: the page of effects behind aim_return."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from knowledge.effects import (
    Condition,
    Effect,
    FactId,
    Mechanism,
    OptionId,
    Points,
    Truth,
)
from knowledge.situation import Formation, OnCourt, Wind
from knowledge.tactics import return_sizes as sizes
from knowledge.tactics.conditions import grows_with, in_front, other_of, rule_of_thumb, skill
from knowledge.tactics.return_time import TIME, ground_bought_ft
from knowledge.vocabulary import BallQuality, PlayerId, Side, Trait, Value

MIDDLE = OptionId("middle")
CROSSER = OptionId("crosser")
SERVER = OptionId("server")
"""Whoever crosses, or serves, where the score does not say who that is."""

SEEN = ("crossing:", "inside:")
"""Effects that are seen on court, not noted of a player."""

STACKED = (Formation.STACK_ALWAYS, Formation.STACK_ON_SERVE, Formation.ON_SIGNAL)

_INSIDE = re.compile(
    r"\binside the (?:baseline|court|line)|\bin(?:side)? (?:the )?baseline"
    r"|\b(?:steps?|stands?|stays?|creeps?|moves?|drifts?) (?:way |right |too )?(?:in|up)\b"
    r"(?! the| front)"
    r"|\b(?:stands?|stays?) (?:too )?close"
)


class Style(StrEnum):
    """How the return is hit."""

    HIGH = "high"
    HARD = "hard"
    SLICE = "slice"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnQuestion:
    """Both of them, who of ours returns from where, and the serve that came."""

    theirs: tuple[OnCourt, ...]
    ours: tuple[OnCourt, ...]
    returner: OnCourt | None
    returner_side: Side | None
    server: OnCourt | None
    server_court: Side | None
    ball: BallQuality
    stacked: bool
    server_inside: bool
    wind: Wind | None

    @property
    def crosser(self) -> OnCourt | None:
        """Who has to cross after the serve; None where nobody does or the score doesn't say."""
        if not self.stacked or self.server is None or self.server_court is None:
            return None
        return self.server if self.server.side is self.server_court.other else None

    @property
    def crosser_unknown(self) -> bool:
        return self.stacked and (
            self.server is None or self.server_court is None or self.server.side is None
        )


def at(one: OnCourt) -> OptionId:
    return OptionId(f"at:{one.player}")


_SHORT_SERVE = re.compile(r"\bshort serves?\b|\bserv(?:es?|ed|ing)\b.{0,12}\bshort\b")
_THEY_STACK = re.compile(r"\bthey(?:'re| are)? (?:always |both )?stack(?:s|ed|ing)?\b")


def says_stack(words: str) -> bool:
    """Whether a question says that they stack."""
    return _THEY_STACK.search(words.lower()) is not None


def says_short_serve(words: str) -> bool:
    """Whether a question is about a short serve, which is an easy ball."""
    return _SHORT_SERVE.search(words.lower()) is not None


def says_inside(words: str) -> bool:
    """Whether a question says that the server stands inside the baseline."""
    return "serv" in words.lower() and _INSIDE.search(words.lower()) is not None


def target_effects(question: ReturnQuestion) -> Iterator[Effect]:
    """Everything about whom to return at, and about the deep middle."""
    yield rule_of_thumb(
        "middle", MIDDLE, sizes.DEEP_MIDDLE, Mechanism.COVER, "The middle gives them no angle"
    )
    for one in question.theirs:
        yield grows_with(
            one,
            Trait.COMMUNICATION,
            Value.WEAKNESS,
            sizes.THEY_DO_NOT_TALK,
            Mechanism.COVER,
            on=(MIDDLE,),
            because="They don't call the middle",
        )
        yield from _third(question, one)
        yield from _lane(question, one)
        yield from _our_aim(question, one)
    yield from _crossing(question)
    yield from _inside(question)


def _third(question: ReturnQuestion, one: OnCourt) -> Iterator[Effect]:
    on, name = at(one), one.name
    yield skill(
        one,
        Trait.THIRD_SHOT_DROP,
        -sizes.WORSE_THIRD,
        Mechanism.THEIR_ERROR,
        on=(on,),
        named=f"{name}'s third shot",
    )
    yield grows_with(
        one,
        Trait.CRASH,
        Value.OFTEN,
        sizes.CRASHER_MUST_HIT,
        Mechanism.HABIT,
        on=(on,),
        because=f"Hitting the third, {name} can't crash",
        when=~_better_third(one, other_of(one, question.theirs)),
    )
    yield grows_with(
        one,
        Trait.FORWARD_SPEED,
        Value.WEAKNESS,
        sizes.SLOW_FORWARD,
        Mechanism.TIME,
        on=(on,),
        because=f"{name} is slow forward",
    )
    partner = other_of(one, question.theirs)
    if partner is not None:
        yield grows_with(
            partner,
            Trait.CRASH,
            Value.OFTEN,
            sizes.PARTNER_CRASHES,
            Mechanism.HABIT,
            on=(on,),
            because=f"{partner.name} crashes off {name}'s third",
        )


def _better_third(one: OnCourt, partner: OnCourt | None) -> Condition:
    """Row 4 falls away where the crasher is also the better third shot."""
    own = one.profile.skill(Trait.THIRD_SHOT_DROP).level
    other = 0.0 if partner is None else partner.profile.skill(Trait.THIRD_SHOT_DROP).level
    truth = Truth.of(own > sizes.THIRD_GAP and own - other > sizes.THIRD_GAP)
    return Condition(
        name=f"{one.player} has the better third",
        fact=FactId(""),
        prevalence=0.0,
        test=lambda _situation: truth,
    )


def _lane(question: ReturnQuestion, one: OnCourt) -> Iterator[Effect]:
    """Down the line puts us in front of the third hitter; across the lane is longer."""
    front = in_front(one, other_of(one, question.theirs), question.returner_side)
    yield rule_of_thumb(
        "facing",
        at(one),
        sizes.FACING_THE_THIRD,
        Mechanism.COVER,
        f"Down the line you'd face {one.name}'s third",
        when=front,
    )
    yield rule_of_thumb(
        "longer lane",
        at(one),
        sizes.LONGER_LANE,
        Mechanism.OUR_ERROR,
        "Across is the longer lane",
        when=~front,
    )


def _our_aim(question: ReturnQuestion, one: OnCourt) -> Iterator[Effect]:
    returners = question.ours if question.returner is None else (question.returner,)
    for ours in returners:
        yield grows_with(
            ours,
            Trait.RETURN,
            Value.WEAKNESS,
            sizes.NEEDS_OUR_AIM.times(1 / len(returners)),
            Mechanism.OUR_ERROR,
            on=(at(one),),
            because="Aiming needs a safe return",
        )
    if question.wind is Wind.ACROSS:
        yield rule_of_thumb(
            "cross wind",
            at(one),
            sizes.CROSS_WIND,
            Mechanism.OUR_ERROR,
            "Cross wind carries it off a line",
        )


def _crossing(question: ReturnQuestion) -> Iterator[Effect]:
    if not question.stacked:
        return
    crosser = question.crosser
    if crosser is not None:
        because = f"{crosser.name} is still crossing"
        yield rule_of_thumb("crossing", at(crosser), sizes.CROSSING, Mechanism.HABIT, because)
    elif question.crosser_unknown:
        because = "They stack: one is still crossing"
        yield rule_of_thumb("crossing", CROSSER, sizes.CROSSING, Mechanism.HABIT, because)


def _inside(question: ReturnQuestion) -> Iterator[Effect]:
    if not question.server_inside:
        return
    on = SERVER if question.server is None else at(question.server)
    because = "The server stands inside: no time to back up"
    yield rule_of_thumb("inside", on, sizes.SERVER_INSIDE, Mechanism.TIME, because)


def style_effects(question: ReturnQuestion, target: OnCourt | None) -> Iterator[Effect]:
    """High and deep, hard, or a low slice: time leads, unless something speaks for pace."""
    high, hard, low = (OptionId(style) for style in Style)
    receivers = question.theirs if target is None else (target,)
    ground = ground_bought_ft(question.returner)
    yield rule_of_thumb(
        "time",
        high,
        sizes.TIME_TO_THE_LINE,
        Mechanism.TIME,
        f"High buys half a second: {ground:.0f} ft of run",
        source=TIME,
    )
    yield rule_of_thumb(
        "pace", hard, sizes.PACE_HURTS, Mechanism.THEIR_REPLY, "Pace hurries the third"
    )
    yield rule_of_thumb(
        "slice", low, sizes.SLICE_RISK, Mechanism.OUR_ERROR, "A slice floats if missed"
    )
    if question.ball is BallQuality.EASY:
        because = "A short serve: step in, be at the line"
        yield rule_of_thumb("step in", hard, sizes.STEP_IN, Mechanism.TIME, because)
    yield from _runner(question)
    for one in receivers:
        part = 1 / len(receivers)
        rows = (
            (Trait.HANDLES_PACE, Value.WEAKNESS, sizes.DISLIKES_PACE, hard, "dislikes pace"),
            (Trait.HANDLES_PACE, Value.STRENGTH, sizes.LIKES_PACE, hard, "likes pace"),
            (Trait.GETS_LOW, Value.WEAKNESS, sizes.HATES_BENDING, low, "hates bending"),
        )
        for trait, value, points, on, said in rows:
            yield grows_with(
                one,
                trait,
                value,
                points.times(part),
                Mechanism.THEIR_ERROR,
                on=(on,),
                because=f"{one.name} {said}",
            )


def _runner(question: ReturnQuestion) -> Iterator[Effect]:
    returner = question.returner
    if returner is None:
        return
    rows: Mapping[Value, tuple[Points, Style, str]] = {
        Value.WEAKNESS: (sizes.SLOW_RUNNER, Style.HARD, "needs the time to run"),
        Value.STRENGTH: (sizes.QUICK_RUNNER, Style.HARD, "gets there anyway"),
    }
    for value, (points, style, said) in rows.items():
        yield grows_with(
            returner,
            Trait.FORWARD_SPEED,
            value,
            points,
            Mechanism.TIME,
            on=(OptionId(style),),
            because=f"{returner.name} {said}",
        )


def player_at(option: OptionId, theirs: tuple[OnCourt, ...]) -> OnCourt | None:
    """The opponent that an option aims at; None for the middle and for whoever crosses."""
    number = option.removeprefix("at:")
    if not number.lstrip("-").isdigit():
        return None
    return next((one for one in theirs if one.player == PlayerId(int(number))), None)
