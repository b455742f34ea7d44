"""From a topic's ranking to the mix that its reply carries, in the words players use."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from typing import Final

from knowledge.advice import AdvisedMix, MixShare
from knowledge.effects import OptionId
from knowledge.engine import Ranking
from knowledge.evidence import TraitEstimate
from knowledge.mixing.costs import COST_WHEN_GUESSED_POINTS, cost_when_guessed
from knowledge.mixing.guessing import guessables
from knowledge.mixing.regularity import (
    MIN_LOGGED_AIMS,
    UNLIKELY,
    equal_win_rates,
    fits_shares,
    runs_of,
)
from knowledge.mixing.solution import Mix, of_ten, pattern_loss_of
from knowledge.mixing.watched import watched_mix_of
from knowledge.situation import Situation

RECENT_AIMS: Final = 20
"""Our pattern is what we did in our last so many choices. Common practice, no source."""

RALLIES_A_GAME: Final = 35
"""Rallies of an even game to 11 (chances.expected_rallies from 0-0-2 at .5/.5: 34.96)."""

ONCE_A_GAME: Final = 1.25
TWICE_A_GAME: Final = 2.5
"""Below these a count in a game says it better than a share. Common practice, no source."""


def advised_mix(
    situation: Situation,
    ranking: Ranking,
    *,
    calls: Mapping[str, str],
    trigger: str,
    punishes: Mapping[str, TraitEstimate] | None = None,
    counts_as: Callable[[str], str] = str,
) -> AdvisedMix:
    """How to vary among the ranked options that have a call, at the situation's topic.

    `calls` gives each option's imperative line ("Serve wide."); leave out what our own profile
    marks as weak. `trigger` completes "when"; `punishes` is the skill that meets a guessed ball;
    `counts_as` turns a logged option into one of these. The default is the best-ranked option.
    The shares are those against one who learns them (`watched`), the figures against the best
    reply (`solution`).
    """
    skills = punishes or {}
    cost = {OptionId(one): cost_when_guessed(situation.topic, skills.get(one)) for one in calls}
    logged = [(counts_as(one), won) for one, won in _logged(situation) if counts_as(one) in cost]
    recent = Counter(OptionId(one) for one, _ in logged[-RECENT_AIMS:])
    mix = watched_mix_of(guessables(ranking, cost, recent))
    order = _order_said(mix)
    counts = of_ten({one: mix.shares[one] for one in order})
    tenths = {one: count / 10 for one, count in counts.items()}
    is_enough = len(logged) >= MIN_LOGGED_AIMS
    return AdvisedMix(
        shares=tuple(
            MixShare(
                option=one,
                label=ranking.of(one).option.label,
                call=calls[one],
                share=mix.shares[one],
                guess=mix.guesses[one],
            )
            for one in order
        ),
        trigger=trigger,
        how_often="" if mix.is_every_ball else _how_often(counts[order[1]], share=ranking.share),
        value=mix.value,
        worth_points=100 * mix.worth,
        cost_points=COST_WHEN_GUESSED_POINTS[situation.topic],
        of_ten_loss_points=100 * pattern_loss_of(mix, tenths),
        logged_aims=len(logged),
        pattern_loss_points=100 * mix.pattern_loss if is_enough else None,
        regularity=_regularity(mix, logged) if is_enough else (),
    )


def _logged(situation: Situation) -> Sequence[tuple[str, bool | None]]:
    """Our choices with the rally's end; None where that is not known."""
    aims = situation.recent_aims.get(situation.topic, ())
    won = situation.aims_won.get(situation.topic, (None,) * len(aims))
    return tuple(zip(aims, won, strict=True))


def _order_said(mix: Mix) -> tuple[OptionId, ...]:
    """Today's best first, then those that are in by their shares, then those that are out."""
    best = mix.options[0].option
    rest = [one for one in mix.by_share if one != best]
    return (best, *rest, *(one.option for one in mix.options if one.option not in {best, *rest}))


def _how_often(of_ten_balls: int, *, share: float) -> str:
    """How often the change-up is right: a count in a game while that is small, else of ten.

    `share` is how often the choice arises, in rallies of 100.
    """
    a_game = of_ten_balls / 10 * RALLIES_A_GAME * share / 100
    if a_game < ONCE_A_GAME:
        return "once a game"
    if a_game < TWICE_A_GAME:
        return "1-2 a game"
    return f"{of_ten_balls} of 10"


def _regularity(mix: Mix, logged: Sequence[tuple[str, bool | None]]) -> tuple[str, ...]:
    """What the logged aims show."""
    found = [_order(logged), _frequency(mix), _rates(logged)]
    return tuple(one for one in found if one is not None)


def _order(logged: Sequence[tuple[str, bool | None]]) -> str:
    runs = runs_of([one for one, _ in logged])
    if runs is None:
        return f"All of your last {len(logged)} were the same choice."
    if runs.chance_as_far >= UNLIKELY:
        return f"No order seen in your last {runs.aims}; few tell little."
    does = "switch" if runs.z > 0 else "repeat"
    switches = "switch" if runs.switches == 1 else "switches"
    return (
        f"You {does} too regularly: {runs.switches} {switches} in {runs.aims}, "
        f"chance makes {runs.expected - 1:.0f}."
    )


def _frequency(mix: Mix) -> str | None:
    """Whether the last choices are further off the mix than chance takes them."""
    fit = fits_shares(
        [one.recent for one in mix.options], [mix.shares[one.option] for one in mix.options]
    )
    if fit is None or fit.chance < UNLIKELY:
        return None
    return "No further from the mix than chance takes you."


def _rates(logged: Sequence[tuple[str, bool | None]]) -> str | None:
    """Whether the options win alike, where each has MIN_LOGGED_AIMS that ended somehow."""
    played = Counter(one for one, won in logged if won is not None)
    won = Counter(one for one, won in logged if won)
    enough = [one for one in played if played[one] >= MIN_LOGGED_AIMS]
    pearson = equal_win_rates([(won[one], played[one]) for one in enough])
    if pearson is None:
        return None
    if pearson.chance < UNLIKELY:
        return "They win unequally: more than chance makes of it."
    return "They win alike, as far as these rallies tell."
