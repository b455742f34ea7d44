"""A mix in words: a default, a change-up and its trigger; behind a button the exact shares."""

from __future__ import annotations

from collections.abc import Iterable

from bot.chat.wording import wording
from knowledge.advice import AdvisedMix
from knowledge.effects import OptionId
from knowledge.mixing import MIN_LOGGED_AIMS, RECENT_AIMS, of_ten

LEAST_POINTS = 0.05
"""Points that would be shown as 0.0."""


def change_line(mix: AdvisedMix, *, call: str = "") -> str:
    """What to change to, when, and how often; or that there is no need.

    A call that is the change-up itself ("Lob Okafor off a dead dink, ...") is not said twice.
    """
    if mix.change_up is None:
        return wording("mix.every_ball")
    if call.startswith(mix.change_up.call.rstrip(".")):
        return wording("mix.only").format(trigger=mix.trigger, how_often=mix.how_often)
    return wording("mix.change").format(
        label=mix.change_up.label, trigger=mix.trigger, how_often=mix.how_often
    )


def mix_text(mix: AdvisedMix) -> str:
    """The shares of ten, what varying is worth, and what the recent pattern gives away."""
    return "\n".join([*_shares(mix), *_worth(mix), *_pattern(mix)])


def _shares(mix: AdvisedMix) -> Iterable[str]:
    if mix.change_up is None:
        yield mix.default.call
        yield wording("mix.every_ball")
        return
    counts = of_ten({OptionId(one.option): one.share for one in mix.shares})
    yield wording("mix.of_ten")
    for one in mix.shares:
        if one.share > 0:
            share = wording("mix.share")
            yield share.format(count=counts[OptionId(one.option)], label=one.label)
    out = [one.label for one in mix.shares if one.share == 0]
    if out:
        yield wording("mix.out").format(labels=", ".join(out))


def _worth(mix: AdvisedMix) -> Iterable[str]:
    """What varying gains, and the judgement that it stands on."""
    if mix.change_up is not None and mix.worth_points >= LEAST_POINTS:
        yield wording("mix.worth").format(points=f"{mix.worth_points:.1f}")
        yield wording("mix.cost").format(points=f"{mix.cost_points:.0f}")


def _pattern(mix: AdvisedMix) -> Iterable[str]:
    """Nothing on our pattern until enough is logged, and then with the count behind it."""
    if mix.pattern_loss_points is None:
        if mix.logged_aims:
            yield wording("mix.too_few").format(logged=mix.logged_aims, needed=MIN_LOGGED_AIMS)
        return
    ours, advised = mix.pattern_loss_points, mix.of_ten_loss_points
    if ours >= advised + LEAST_POINTS:
        yield wording("mix.gives_away").format(
            count=RECENT_AIMS, points=f"{ours:.1f}", advised=f"{advised:.1f}"
        )
    else:
        yield wording("mix.gives_nothing").format(count=RECENT_AIMS)
    yield from mix.regularity
