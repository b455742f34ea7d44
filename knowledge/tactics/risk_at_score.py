"""How big is this rally, and does the score change what to play: mostly not, and here is why.

A rally has two outcomes, so what wins it most often is best at every score (Walker, Wooders and
Amir 2011, Games and Economic Behavior 71:487). The score changes what the rally weighs.
"""

from __future__ import annotations

import re

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.chances import EndlessGameError, weight_to_come, worth_of_one_try
from knowledge.situation import Situation
from knowledge.sources import computed
from knowledge.tactics.odds_words import in_hundred, of_hundred, winners_and_misses
from knowledge.tactics.score_view import ScoreView, view_of
from knowledge.tactics.win_chance import CHAIN, endless
from knowledge.vocabulary import POINT, Topic

SAME_SHOT = computed("a rally is won or lost (Walker, Wooders and Amir 2011)")

READ_SHARE = 0.3
"""Part of later rallies in which a read on an opponent could be used. Common practice."""

READ_BEHIND_POINTS = 1.0
"""How much worse an unproven read looks than the usual ball: else it would be played already.
Common practice, no source."""

READ_DOUBT_POINTS = 8.0
"""How unsure that is, as a standard deviation: nobody has seen it yet. Common practice."""

_SIZE = re.compile(
    r"\bhow (?:big|important|much|costly|heavy|bad)\b|\bweigh\w*\b|\bhow many (?:percent|%)|"
    r"\bworth\b|\bbig(?:gest)? (?:point|rally)\b|\bmatters? more\b"
)
"""Words that ask for the size, and so get the number; before a serve nobody wants it unasked."""


def advise(situation: Situation) -> Advice:
    """The same shot at any score; the rally's weight, what a miss costs, and when to test."""
    try:
        view = view_of(situation)
    except EndlessGameError:
        return endless(Topic.RISK_AT_SCORE)
    if view.match.game.is_over:
        return _between_games(view)
    weight = in_hundred(view.outlook.weight)
    asked = _SIZE.search(situation.asked.words.casefold()) is not None
    return Advice(
        topic=Topic.RISK_AT_SCORE,
        call=f"This rally swings the game by {weight}. Same shot."
        if asked
        else "Play the same shot as at 2-2.",
        reasons=(
            Reason(text="The best shot is the same at any score", source=SAME_SHOT),
            Reason(text=_miss(view), source=CHAIN),
            Reason(text=_winners(view), source=CHAIN),
        ),
        number=None if asked else f"This rally swings the game by {weight}.",
        unless=_test(view),
        assumed=view.assumed or view.score_read,
        confidence=Confidence.CLEAR,
        numbers=_numbers(view),
        choices=(
            Choice(label="win chance", topic=Topic.WIN_CHANCE),
            Choice(label="time-out?", topic=Topic.TIMEOUT_NOW),
        ),
        more=_in_full(view),
    )


def _between_games(view: ScoreView) -> Advice:
    return Advice(
        topic=Topic.RISK_AT_SCORE,
        call="Start the next one with your usual first ball.",
        reasons=(Reason(text="That game is over: no rally hangs on it", source=CHAIN),),
        numbers=view.outlook.numbers(),
        confidence=Confidence.CLEAR,
    )


def _miss(view: ScoreView) -> str:
    """An error costs the chance we would have had: of the rally, and so of the game."""
    rally, game = of_hundred(view.rally_chance), of_hundred(miss_cost(view))
    return f"A miss costs the {rally} in 100 you had, {game} of the game"


def miss_cost(view: ScoreView) -> float:
    """Game chance that one unforced error costs, against a rally that is played out."""
    return view.rally_chance * view.outlook.weight


def misses_per_winner(view: ScoreView) -> float:
    """How many misses one clean winner pays for: (1 - v)/v, v the chance if it is played out."""
    return (1 - view.rally_chance) / view.rally_chance if view.rally_chance else float("inf")


def _winners(view: ScoreView) -> str:
    if not 0 < view.rally_chance < 1:
        return "A winner and a miss weigh the rally in full"
    winners, misses = winners_and_misses(misses_per_winner(view))
    won = "1 clean winner pays" if winners == 1 else f"{winners} clean winners pay"
    return f"{won} for {misses} miss{'' if misses == 1 else 'es'}"


def _test(view: ScoreView) -> str:
    """Whether an unproven read is cheap to try now (the knowledge gradient)."""
    if _read_worth(view) > _read_cost(view):
        return "A new read on them? Cheap to test now."
    return "A new read? Not now: test it in a lighter rally."


def _read_worth(view: ScoreView) -> float:
    return worth_of_one_try(
        weight_to_come=weight_to_come(view.match.game, view.belief.rates) - view.outlook.weight,
        share=READ_SHARE,
        behind_points=READ_BEHIND_POINTS,
        doubt_points=READ_DOUBT_POINTS,
        chance=view.rally_chance,
    )


def _read_cost(view: ScoreView) -> float:
    return READ_BEHIND_POINTS * POINT * view.outlook.weight


def _numbers(view: ScoreView) -> dict[str, float]:
    numbers = view.outlook.numbers() | {
        "miss_cost_rally": view.rally_chance,
        "miss_cost_game": miss_cost(view),
        "read_test_worth": _read_worth(view),
        "read_test_cost": _read_cost(view),
        "gain_this_rally_per_point": POINT * view.outlook.weight,
    }
    if view.rally_chance > 0:
        numbers["misses_per_winner"] = misses_per_winner(view)
    return numbers


def _in_full(view: ScoreView) -> tuple[str, ...]:
    return (
        "A rally is won or lost: whatever wins it most often is best at 0-0 and at 10-10.",
        f"{view.rates_reason.text} ({view.rates_reason.source}).",
        "What the score changes: the weight, when a time-out pays, when to test a read.",
        "Tight at the end? Of two close shots, take the one you miss less.",
    )
