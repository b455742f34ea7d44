"""How a return is hit, high and deep, hard, or a low slice: time leads its pace, computed."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.effects import Effect, Mechanism, OptionId
from knowledge.planning.sizes import RECEIVING_CHANCE
from knowledge.situation import OnCourt
from knowledge.tactics import return_sizes as sizes
from knowledge.tactics.conditions import grows_with, rule_of_thumb
from knowledge.tactics.return_question import ReturnQuestion
from knowledge.tactics.return_time import TIME, Style, bought_points, flown
from knowledge.tactics.serve_return_depth import landings
from knowledge.tactics.shot_success import success_effect, success_points
from knowledge.vocabulary import BallQuality, Trait, Value


def style_effects(question: ReturnQuestion, target: OnCourt | None) -> Iterator[Effect]:
    """What each way of hitting it does to our time and misses, and to whoever gets it."""
    yield from _time(question)
    yield _hard_misses(question)
    yield rule_of_thumb(
        "pace",
        OptionId(Style.HARD),
        sizes.PACE_HURTS,
        Mechanism.THEIR_REPLY,
        "Pace hurries the third",
    )
    yield rule_of_thumb(
        "slice",
        OptionId(Style.SLICE),
        sizes.SLICE_RISK,
        Mechanism.OUR_ERROR,
        "A slice floats if missed",
    )
    if question.ball is BallQuality.EASY:
        because = "A short serve: step in, take their time"
        yield rule_of_thumb("step in", OptionId(Style.HARD), sizes.STEP_IN, Mechanism.TIME, because)
    receivers = question.theirs if target is None else (target,)
    for one in receivers:
        yield from _receiver(one, 1 / len(receivers))


def time_bought_s(question: ReturnQuestion) -> float:
    """How much later they hit the third after a high return than after a hard one."""
    return question.high.to_third_s - question.hard.to_third_s


def _time(question: ReturnQuestion) -> Iterator[Effect]:
    """What high and low buy against hard."""
    hard = question.slack_s(question.hard)
    slice_ = question.flown(Style.SLICE)
    said = {
        Style.HIGH: (question.high, "High"),
        Style.SLICE: (slice_, "A slice"),
    }
    for style, (ball, how) in said.items():
        more = f"{ball.to_third_s - question.hard.to_third_s:.1f} s more"
        yield rule_of_thumb(
            "time",
            OptionId(style),
            bought_points(question.slack_s(ball), hard),
            Mechanism.TIME,
            f"{how} buys {more} to run",
            source=TIME,
        )


def _hard_misses(question: ReturnQuestion) -> Effect:
    """A hard one's misses against those of a high one at its best depth."""
    depth, scatter = question.depth, question.scatter

    def chance_at(factor: float) -> float:
        hard = flown(Style.HARD, question.contact, factor=factor)
        high = 1 - landings(depth.ball, factor).long(depth.inside_ft)
        return RECEIVING_CHANCE * min(1.0, hard.in_play / high)

    return success_effect(
        OptionId(Style.HARD),
        success_points(chance_at, scatter, level=RECEIVING_CHANCE),
        scatter,
        because=f"Hard and flat: {hard_misses(question):.0f} more misses in 100",
        one=question.returner,
    )


def hard_misses(question: ReturnQuestion) -> float:
    """Extra misses in 100 of a hard return against a high one at its best depth."""
    return 100 * (1 - question.hard.in_play) - question.depth.long_in_100


def _receiver(one: OnCourt, part: float) -> Iterator[Effect]:
    rows = (
        (Trait.HANDLES_PACE, Value.WEAKNESS, sizes.DISLIKES_PACE, Style.HARD, "dislikes pace"),
        (Trait.HANDLES_PACE, Value.STRENGTH, sizes.LIKES_PACE, Style.HARD, "likes pace"),
        (Trait.GETS_LOW, Value.WEAKNESS, sizes.HATES_BENDING, Style.SLICE, "hates bending"),
    )
    for trait, value, points, style, said in rows:
        yield grows_with(
            one,
            trait,
            value,
            points.times(part),
            Mechanism.THEIR_ERROR,
            on=(OptionId(style),),
            because=f"{one.name} {said}",
        )
