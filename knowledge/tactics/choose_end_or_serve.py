"""The toss: serve, receive, or which end first, by what each is worth in this format.

How much better one end plays is common practice, no source; what that and serving first are
worth in the match is computed.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.chances import EndlessGameError, TossWorth, toss_worth
from knowledge.game import Discipline, GameFormat, Scoring
from knowledge.odds_words import in_hundred
from knowledge.regex import regex
from knowledge.situation import Situation, TossChoice, Wind
from knowledge.sources import COMMON_PRACTICE, computed, rule
from knowledge.tactics.score_view import rates_of, said_rates_first, view_of
from knowledge.tactics.weather_said import folded
from knowledge.tactics.win_chance import endless
from knowledge.vocabulary import Topic

WIND_POINTS: Final = 2.0
SUN_POINTS: Final = 1.5
BACKGROUND_POINTS: Final = 1.0
"""What an end is worth a rally, in rallies of 100: wind along the court, sun in the eyes, people
or lights behind it. Common practice, no source."""

LITTLE: Final = 0.005
"""Chances of the match below this are said as next to nothing."""

ALONG_COURT = frozenset({Wind.BEHIND_US, Wind.AGAINST_US, Wind.SOME})
"""Winds that make one end better than the other."""

FIRST_SERVE = computed("both first serves")
"""DeFord and Ethier 2023 (arXiv 2303.02942) find the same for side-out doubles: next to nothing."""

END_CHANGE = rule("5.B")
EYES = "Sun: cap and eyewear; let a lob in the sun bounce."


class TossPick(StrEnum):
    """What to take at the toss."""

    WORSE_END = "worse end"
    BETTER_END = "better end"
    SERVE = "serve"
    RECEIVE = "receive"
    EITHER = "either"


def advise(situation: Situation) -> Advice:
    """What to pick at the toss, or of what the other side has left."""
    format = situation.format or GameFormat()
    points = end_points(situation)
    try:
        worth = toss_worth(format, rates_of(situation).rates, end_points=_apart(situation))
    except EndlessGameError:
        return endless(Topic.CHOOSE_END_OR_SERVE)
    pick = best_pick(situation, worth)
    ends_taken = situation.asked.they_chose is TossChoice.END
    return Advice(
        topic=Topic.CHOOSE_END_OR_SERVE,
        call=_call(situation, pick),
        reasons=_reasons(situation, format, worth),
        number="They choose first; of what is left, this." if _they_choose(situation) else None,
        unless=None if ends_taken or _are_alike(situation) else _unless(points),
        assumed=_assumed(situation, format, points),
        caution=EYES if situation.asked.sun else None,
        confidence=Confidence.LEAN if points else Confidence.GENERAL_RULE,
        numbers={
            "serve_first_worth": worth.serve_first_game,
            "serve_first_match_worth": worth.serve_first_match,
            "better_end_first_worth": worth.better_end_first,
            "end_points": _apart(situation),
        },
        choices=_choices(situation),
        more=_in_full(format),
    )


def _they_choose(situation: Situation) -> bool:
    """The toss is lost and what they take is not known yet."""
    return situation.asked.toss_won is False and situation.asked.they_chose is None


def end_points(situation: Situation) -> float:
    """By how many rallies in 100 the ends differ, as far as it was said; 0 if nothing was."""
    points = WIND_POINTS if situation.wind in ALONG_COURT else 0.0
    points += SUN_POINTS if situation.asked.sun else 0.0
    return points + (BACKGROUND_POINTS if situation.asked.background else 0.0)


def _are_alike(situation: Situation) -> bool:
    """Neither sun nor wind: said, not only unsaid."""
    return situation.asked.sun is False and situation.wind is Wind.NONE


def _apart(situation: Situation) -> float:
    """By how much the ends are taken to differ: as said, else as much as wind makes them."""
    if _are_alike(situation):
        return end_points(situation)
    return end_points(situation) or WIND_POINTS


def best_pick(situation: Situation, worth: TossWorth) -> TossPick:
    """What is worth most of what is still to be had."""
    chose = situation.asked.they_chose
    serve = TossPick.SERVE if worth.serve_first_match > 0 else TossPick.RECEIVE
    end = TossPick.BETTER_END if worth.better_end_first > 0 else TossPick.WORSE_END
    serve_taken = chose in (TossChoice.SERVE, TossChoice.RECEIVE)
    serve_worth = 0.0 if serve_taken else abs(worth.serve_first_match)
    end_worth = 0.0 if chose is TossChoice.END else abs(worth.better_end_first)
    if max(serve_worth, end_worth) < LITTLE and not (end_points(situation) and end_worth):
        return TossPick.EITHER
    return end if end_worth >= serve_worth else serve


def _call(situation: Situation, pick: TossPick) -> str:
    match pick:
        case TossPick.WORSE_END:
            return _worse_end(situation)
        case TossPick.BETTER_END:
            return "Take the better end first."
        case TossPick.SERVE:
            return "Serve first."
        case TossPick.RECEIVE:
            return "Receive first."
    if situation.asked.they_chose in (TossChoice.SERVE, TossChoice.RECEIVE):
        return "Take either end: it's next to nothing."
    return "Serve or receive, as you like: it's next to nothing."


def _worse_end(situation: Situation) -> str:
    if situation.asked.sun and situation.wind not in ALONG_COURT:
        return "Start facing the sun: finish with it behind you."
    if _blows_along(situation) and not situation.asked.sun:
        return "Start into the wind: finish with it behind you."
    return "Take the worse end first: finish on the good one."


_WAYS = regex(r"\b(?:behind (?:us|me)|(?:in)?to (?:it|the wind)|against (?:it|the wind)|with it)\b")
"""Both ways along the court, weighed in the question: "behind us first or into it"."""


def _blows_along(situation: Situation) -> bool:
    """Whether the wind is known to blow along the court: where to, or between which one chooses."""
    if situation.wind in (Wind.BEHIND_US, Wind.AGAINST_US):
        return True
    return situation.wind is Wind.SOME and _WAYS.search(folded(situation.asked.words)) is not None


def _reasons(situation: Situation, format: GameFormat, worth: TossWorth) -> tuple[Reason, ...]:
    """What is still to be had, and what it is worth; the user's own numbers stand first."""
    chose, found = situation.asked.they_chose, []
    if chose not in (TossChoice.SERVE, TossChoice.RECEIVE):
        found.append(_serve_reason(format, worth))
    if chose is not TossChoice.END:
        # Ends that are told to differ are what is chosen by; else the serve comes first.
        at = 0 if end_points(situation) else len(found)
        found.insert(at, _end_reason(worth, apart=_apart(situation)))
    return said_rates_first(view_of(situation), *found, _change_reason(format))


def _serve_reason(format: GameFormat, worth: TossWorth) -> Reason:
    """What serving first is worth in this format, with the published ground where it is one."""
    doubles = format.discipline is Discipline.DOUBLES and format.scoring is Scoring.SIDE_OUT
    value = worth.serve_first_match
    size = in_hundred(value)
    if doubles and abs(value) < LITTLE:
        return Reason(text="Serving first is worth next to nothing", source=FIRST_SERVE)
    who = "Serving" if value >= 0 else "Receiving"
    of_what = "match" if format.best_of > 1 else "game"
    return Reason(text=f"{who} first is worth {size} of the {of_what}", source=FIRST_SERVE)


def _end_reason(worth: TossWorth, *, apart: float) -> Reason:
    if not apart:
        return Reason(text="Ends alike: either is as good", source=COMMON_PRACTICE)
    which = "worse" if worth.better_end_first < 0 else "better"
    size = in_hundred(worth.better_end_first)
    said = f"{which.capitalize()} end first: {size}, at {apart:g} in 100 apart"
    return Reason(text=said, source=computed("every rally at its end"))


def _change_reason(format: GameFormat) -> Reason:
    last = "You swap" if format.best_of == 1 else f"Game {format.best_of} swaps"
    return Reason(text=f"{last} ends at {format.end_change_at}", source=END_CHANGE)


def _unless(points: float) -> str:
    if points:
        return "Sun going or wind turning? Take the good end now."
    return "Ends alike? Then take what you like."


def _assumed(situation: Situation, format: GameFormat, points: float) -> str:
    games = "One game" if format.best_of == 1 else f"Best of {format.best_of}"
    played = f"{games} to {format.target}"
    if points:
        return f"{played}; ends {points:g} in 100 apart (common practice)."
    if _are_alike(situation):
        return f"{played}; no sun, no wind."
    return f"{played}. Nothing said of sun or wind."


def _choices(situation: Situation) -> tuple[Choice, ...]:
    topic = Topic.CHOOSE_END_OR_SERVE
    found = []
    if not situation.asked.sun:
        found.append(
            Choice(label="sun at one end", topic=topic, fact=MatchFact.SUN.value, value="yes")
        )
    if situation.wind is None:
        found.append(
            Choice(
                label="wind along court", topic=topic, fact=MatchFact.WIND.value, value=Wind.SOME
            )
        )
    return tuple(found)


def _in_full(format: GameFormat) -> tuple[str, ...]:
    return (
        "The toss winner picks end, serve, receive, or defers (rulebook 2025, 5.A).",
        f"Ends change after each game, and at {format.end_change_at} in the last (5.B).",
        "The end of a close game weighs most, so finish it on the good end.",
        "Into the wind drives dip in and lobs hold; with it they sail: which suits you?",
    )
