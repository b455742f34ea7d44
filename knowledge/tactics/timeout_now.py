"""Time-out now: the change it carries is what counts; a rest alone is worth little, and when.

What a rest or a change is worth is common practice, no source; what follows from it for the
game is computed, and every reply says what it was computed from.
"""

from __future__ import annotations

from typing import Final

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.chances import (
    EndlessGameError,
    TimeoutWorth,
    gain_if_kept,
    timeout_worth,
)
from knowledge.game import lost_in_a_row
from knowledge.odds_words import in_hundred, of_hundred
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE, computed, rule
from knowledge.tactics.score_view import ScoreView, said_rates_first, view_of
from knowledge.tactics.win_chance import endless
from knowledge.vocabulary import Topic

CHANGE_POINTS: Final = 2.0
"""What a real change is worth in every rally that follows, until they adjust. Common practice, no
source."""

REST_POINTS: Final = 1.0
RUN_POINTS: Final = 1.0
BREATH_POINTS: Final = 1.0
HEAT_POINTS: Final = 0.5
"""What a pause is worth in each of the next REST_RALLIES rallies: by itself, after a run of lost
ones, out of breath, in the heat. Common practice, no source."""

REST_RALLIES: Final = 3
"""How long a pause is felt. Common practice, no source."""

RUN_FROM: Final = 3
"""So many rallies lost running are a run. Common practice, no source."""

SAME: Final = 0.1
"""Now and later are the same while they differ by less than this part of what a pause is worth."""

LIFT = computed("assumed lifts, counted to the game's end")
TIMEOUTS = rule("10.A")
TEN_SECONDS = rule("section 4")
"""The server has 10 seconds after the call; the section is from memory."""
MEDICAL = "Dizzy, cramps, chest pain: stop and call the referee."
"""Medical time-outs are 10.B; medical staff and the event decide."""


def advise(situation: Situation) -> Advice:
    """Take it with a change to make; else keep it, unless a pause is worth most just now."""
    try:
        view = view_of(situation)
    except EndlessGameError:
        return endless(Topic.TIMEOUT_NOW)
    left = _left(situation, view)
    if view.match.game.is_over:
        return _between_games(situation, view)
    if left == 0:
        return _none_left(situation, view)
    lift = rest_points(situation)
    worth = timeout_worth(
        view.match.game,
        view.belief.rates,
        points=REST_POINTS,
        points_now=lift,
        rallies=REST_RALLIES,
        left=left,
    )
    change = change_worth(view)
    return Advice(
        topic=Topic.TIMEOUT_NOW,
        call=_call(situation, worth, run=_run(situation)),
        reasons=said_rates_first(
            view,
            Reason(text=_change(change), source=LIFT),
            Reason(text=_rest(worth, lift), source=LIFT),
            Reason(text=_stock(left), source=TIMEOUTS),
        ),
        unless=_unless(situation),
        assumed=_assumed(view),
        caution=MEDICAL if situation.asked.tired or situation.asked.hot else None,
        confidence=Confidence.LEAN,
        numbers=_numbers(view, worth, change, left=left, lift=lift, run=_run(situation)),
        choices=_choices(situation),
        more=_in_full(view, worth, lift),
    )


def _left(situation: Situation, view: ScoreView) -> int:
    said = situation.asked.timeouts_left
    return view.match.timeouts_left[0] if said is None else said


def _run(situation: Situation) -> int:
    """Rallies lost running: as said, else as logged."""
    said = situation.asked.lost_in_a_row
    if said is not None:
        return said
    return 0 if situation.asked.score_said else lost_in_a_row(situation.played, situation.match)


def rest_points(situation: Situation) -> float:
    """What a pause without a change lifts each of the next few rallies by, in rally points."""
    points = REST_POINTS
    points += RUN_POINTS if _run(situation) >= RUN_FROM else 0.0
    points += BREATH_POINTS if situation.asked.tired else 0.0
    return points + (HEAT_POINTS if situation.asked.hot else 0.0)


def change_worth(view: ScoreView) -> float:
    """Game chance that a real change is worth, kept from here on (if they do not adjust)."""
    return gain_if_kept(
        view.match,
        view.belief.rates,
        serving_points=CHANGE_POINTS,
        receiving_points=CHANGE_POINTS,
    )


def _call(situation: Situation, worth: TimeoutWorth, *, run: int) -> str:
    asked, moment = situation.asked, _moment(worth)
    if asked.has_change:
        return "Take it now, and say the one change in a line."
    if asked.has_change is None:
        return _without_a_word(moment, run=run, is_ours=asked.lost_in_a_row == 0)
    if moment > 0:
        return "Take it: a pause is worth most just now."
    if moment < 0:
        return "Keep it: a pause alone is worth more later."
    return "Now or later is the same; don't end with it unused."


def _without_a_word(moment: int, *, run: int, is_ours: bool) -> str:
    """Nothing said of a change to make: the call where it is not known."""
    if is_ours:
        return "No: you're on a run. Let them call it."
    if run >= RUN_FROM:
        return "Take it, if you change one thing."
    if moment < 0:
        return "Keep it, unless you have a change to make."
    return "Take it if you have a change; else no hurry."


def _moment(worth: TimeoutWorth) -> int:
    """1 if now is the better moment for a pause alone, -1 if later is, 0 if it is the same."""
    gain, size = worth.now - worth.kept, max(worth.now, worth.kept) - worth.none
    if abs(gain) <= SAME * size:
        return 0
    return 1 if gain > 0 else -1


def _change(change: float) -> str:
    return f"A change (+{CHANGE_POINTS:g} in 100 rallies): {in_hundred(change)} games"


def _rest(worth: TimeoutWorth, lift: float) -> str:
    best = in_hundred(max(worth.now, worth.kept) - worth.none)
    if _moment(worth) == 0:
        size = f"{best} any time"
    elif not best[0].isdigit():
        size = f"{best} at best"
    else:
        size = f"{best} now, less kept" if worth.now > worth.kept else f"{best} kept, less now"
    return f"A pause (+{lift:g} for {REST_RALLIES} rallies): {size}"


def _stock(left: int) -> str:
    have = {1: "One left", 2: "Two left", 3: "Three left"}.get(left, f"{left} left")
    return f"{have} this game; unused ones are worth nothing"


def _unless(situation: Situation) -> str | None:
    if situation.asked.lost_in_a_row == 0:
        return None
    match situation.asked.has_change:
        case None:
            return "No idea what to change? Say what hurts."
        case False:
            return "Find a change, and it's worth far more."
    return None


def _assumed(view: ScoreView) -> str:
    """The score; what a change and a pause are taken to add stands in the reasons."""
    return f"{view.assumed or view.score_read} Sizes: common practice."


def _numbers(
    view: ScoreView, worth: TimeoutWorth, change: float, *, left: int, lift: float, run: int
) -> dict[str, float]:
    return view.outlook.numbers() | {
        "timeout_now_worth": worth.now - worth.none,
        "timeout_kept_worth": worth.kept - worth.none,
        "timeouts_left": left,
        "pause_points": lift,
        "lost_in_a_row": run,
        "gain_if_kept": change,
    }


def _choices(situation: Situation) -> tuple[Choice, ...]:
    def settles(label: str, fact: MatchFact, value: str) -> Choice:
        return Choice(label=label, topic=Topic.TIMEOUT_NOW, fact=fact.value, value=value)

    if situation.asked.has_change is not None:
        return (Choice(label="what to change", topic=Topic.ADJUST),)
    return (
        settles("we have a change", MatchFact.HAS_CHANGE, "yes"),
        settles("just a pause", MatchFact.HAS_CHANGE, "no"),
        Choice(label="what to change", topic=Topic.ADJUST),
    )


def _none_left(situation: Situation, view: ScoreView) -> Advice:
    return Advice(
        topic=Topic.TIMEOUT_NOW,
        call="None left: breathe in the ten seconds of the call.",
        reasons=(
            Reason(text="Ten seconds to serve once the score is called", source=TEN_SECONDS),
            Reason(text="Say the one change walking back to your places", source=COMMON_PRACTICE),
        ),
        assumed=view.assumed,
        caution=MEDICAL if situation.asked.tired or situation.asked.hot else None,
        numbers=view.outlook.numbers() | {"timeouts_left": 0, "gain_if_kept": change_worth(view)},
        confidence=Confidence.CLEAR,
        choices=(Choice(label="what to change", topic=Topic.ADJUST),),
    )


def _between_games(situation: Situation, view: ScoreView) -> Advice:
    over = view.match.we_won is not None
    return Advice(
        topic=Topic.TIMEOUT_NOW,
        call="That match is over: drink, sit, breathe."
        if over
        else "No need: use the two minutes.",
        reasons=()
        if over
        else (Reason(text="Two minutes between games, time-outs come new", source=TIMEOUTS),),
        caution=MEDICAL if situation.asked.tired or situation.asked.hot else None,
        numbers=view.outlook.numbers(),
        confidence=Confidence.CLEAR,
    )


def _in_full(view: ScoreView, worth: TimeoutWorth, lift: float) -> tuple[str, ...]:
    return (
        f"A change is taken as +{CHANGE_POINTS:g} in 100 till the end, if they don't adjust.",
        f"A pause as +{lift:g} in 100 for {REST_RALLIES} rallies (common practice).",
        f"With none used you win {of_hundred(worth.none)} in 100 from here.",
        f"{view.rates_reason.text} ({view.rates_reason.source}).",
        "Rule: use one when you have a change to make, keep the other for 8 or later.",
    )
