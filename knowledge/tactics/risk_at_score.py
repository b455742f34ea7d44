"""How big is this rally, and does the score change what to play: mostly not, and here is why.

A rally has two outcomes, so what wins it most often is best at every score (Walker, Wooders and
Amir 2011, Games and Economic Behavior 71:487). The score changes what the rally weighs.
"""

from __future__ import annotations

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.chances import (
    EndlessGameError,
    Read,
    gain_this_rally,
    weight_to_come,
    worth_of_a_try,
)
from knowledge.odds_words import MOST_WINNERS, in_hundred, of_hundred, winners_and_misses
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.sources import computed
from knowledge.tactics.score_view import ScoreView, said_rates_first, view_of
from knowledge.tactics.win_chance import CHAIN, endless
from knowledge.vocabulary import POINT, Topic

SAME_SHOT = computed("a rally is won or lost (Walker, Wooders and Amir 2011)")

READ = Read(behind_points=1.0, doubt_points=6.5, share=0.3)
"""An unproven read on an opponent: looks a point worse than the usual ball, or it would be played
already; nobody knows; it could be used in 3 of 10 rallies. Common practice, no source."""

_SIZE = regex(
    r"\bhow (?:big|important|much|costly|heavy|bad)\b|\bweigh\w*\b|\bhow many (?:percent|%)|"
    r"\bworth\b|\b(?:big|bigger|biggest|huge|crucial) (?:one|deal|point|rally|moment)\b"
    r"|\bmatters? more\b"
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
        reasons=said_rates_first(
            view,
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
    return f"A miss costs the {rally} in 100 you had: {game} in 100 games"


def miss_cost(view: ScoreView) -> float:
    """Game chance that one unforced error costs, against a rally that is played out."""
    return view.rally_chance * view.outlook.weight


def misses_per_winner(view: ScoreView) -> float:
    """How many misses one clean winner pays for: (1 - v)/v, v the chance if it is played out."""
    return (1 - view.rally_chance) / view.rally_chance if view.rally_chance else float("inf")


def _winners(view: ScoreView) -> str:
    if not 0 < view.rally_chance < 1:
        return "A winner and a miss weigh the rally in full"
    per_winner = misses_per_winner(view)
    winners, misses = winners_and_misses(per_winner)
    if max(per_winner, 1 / per_winner) > MOST_WINNERS:
        if per_winner > 1:
            return f"1 clean winner pays for more than {MOST_WINNERS} misses"
        return f"More than {MOST_WINNERS} clean winners pay for 1 miss"
    won = "1 clean winner pays" if winners == 1 else f"{winners} clean winners pay"
    return f"{won} for {misses} miss{'' if misses == 1 else 'es'}"


def _test(view: ScoreView) -> str:
    """Whether an unproven read is cheap to try now, with the games still to come in mind."""
    if is_cheap_to_test(view):
        return "A new read on them? Cheap to test now."
    if _is_lighter_ahead(view):
        return "A new read? Test it in a lighter rally."
    return "A new read? Not now: too little left to use it."


def is_cheap_to_test(view: ScoreView) -> bool:
    """Whether trying an unproven read teaches more for later than this rally weighs."""
    return _read_worth(view) > _read_cost(view)


def _is_lighter_ahead(view: ScoreView) -> bool:
    """Whether lighter rallies will come: another game may, or those left weigh less on average."""
    left = max(1.0, view.outlook.expected_rallies)
    lighter = view.outlook.weight > weight_to_come(view.match, view.belief.rates) / left
    return lighter or not view.match.is_deciding_game


def _read_worth(view: ScoreView) -> float:
    """In chances of the match: what a try teaches serves the games that follow as well."""
    to_come = weight_to_come(view.match, view.belief.rates, of_match=True)
    later = max(0.0, to_come - view.outlook.match_weight)
    return worth_of_a_try(READ, chance=view.rally_chance, later_weight=later)


def _read_cost(view: ScoreView) -> float:
    return READ.behind_points * POINT * view.outlook.match_weight


def _numbers(view: ScoreView) -> dict[str, float]:
    numbers = view.outlook.numbers() | {
        "miss_cost_rally": view.rally_chance,
        "miss_cost_game": miss_cost(view),
        "read_test_worth": _read_worth(view),
        "read_test_cost": _read_cost(view),
        "gain_this_rally": gain_this_rally(view.match, view.belief.rates, 1.0),
    }
    if view.rally_chance > 0:
        numbers["misses_per_winner"] = misses_per_winner(view)
    return numbers


def _in_full(view: ScoreView) -> tuple[str, ...]:
    return (
        "A rally is won or lost: whatever wins it most often is best at 0-0 and at 10-10.",
        f"{view.rates_reason.text} ({view.rates_reason.source}).",
        "What the score changes: the weight, when a time-out pays, when to test a read.",
        f"A read is taken as {READ.behind_points:g} in 100 worse, give or take "
        f"{READ.doubt_points:g}, and of use in {10 * READ.share:.0f} of 10 rallies.",
        "Tight at the end? Of two shots within 2 in 100, take the one you miss less.",
    )
