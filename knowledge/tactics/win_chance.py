"""What are our chances: of the game and the match, from this score, with what they rest on."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.advice import Advice, ChanceCurve, Choice, Confidence, Reason
from knowledge.chance_curve import CurveRally, chance_curve
from knowledge.chances import (
    EndlessGameError,
    Grouping,
    Leak,
    LeakPart,
    RallyRates,
    Swing,
    by_serve,
    by_side,
    leak,
    swings,
)
from knowledge.game import PlayedRally
from knowledge.odds_words import about, about_with_range, in_hundred, of_hundred
from knowledge.situation import Situation
from knowledge.sources import SourceKind, computed
from knowledge.tactics.score_view import (
    ScoreView,
    against_others,
    rallies_counted,
    rates_before,
    rates_of,
    said_rates_first,
    view_of,
)
from knowledge.tactics.win_chance_asked import asks_exactly, asks_of_one_rally
from knowledge.vocabulary import Topic

CHAIN = computed("every rally from here, exactly")
"""knowledge.chances: backward from the end of the game, each score solved in closed form."""

FEW_RALLIES = 40
"""Below this many logged rallies the usual chances count for most: say how to tell more. Common
practice, no source."""


def advise(situation: Situation) -> Advice:
    """The chance to win from this score, as a range, and what the next rally makes of it."""
    try:
        view = view_of(situation)
    except EndlessGameError:
        return endless(Topic.WIN_CHANCE)
    if view.match.game.is_over:
        return _over(situation, view)
    of_rally = asks_of_one_rally(situation.asked.words)
    return Advice(
        topic=Topic.WIN_CHANCE,
        call=_call_of_rally(view) if of_rally else _call(view),
        reasons=_reasons_of_rally(view) if of_rally else _reasons(view, situation.asked.words),
        number=_next_rally(view),
        unless=_tell_more(situation),
        assumed=view.assumed or view.both_read,
        confidence=Confidence.CLEAR if view.belief.is_exact else Confidence.LEAN,
        numbers=view.outlook.numbers() | leak_numbers(situation),
        choices=tuple(
            Choice(label=label, topic=topic)
            for label, topic in (
                ("this rally", Topic.RISK_AT_SCORE),
                ("time-out?", Topic.TIMEOUT_NOW),
            )
        ),
        picture=curve_of(situation),
        more=_in_full(situation, view),
    )


def endless(topic: Topic) -> Advice:
    """The answer to rally chances with which the serving side never scores."""
    return Advice(
        topic=topic,
        call="With those numbers no game ever ends.",
        reasons=(Reason(text="The serving side would lose every rally", source=CHAIN),),
        unless="Tell me others: we win 42% on serve, 60% receiving",
    )


def _call(view: ScoreView) -> str:
    return f"Game: {about_with_range(view.outlook.game)}."


def _reasons(view: ScoreView, words: str) -> tuple[Reason, ...]:
    """The match first, unless the user's own numbers speak: then those are shown in any case."""
    rallies = max(1, round(view.outlook.expected_rallies))
    length = f"About {rallies} {'rally' if rallies == 1 else 'rallies'} to go in this game"
    reasons = [Reason(text=length, source=CHAIN)]
    if view.rates_reason.source.kind is not SourceKind.SAID:
        reasons.insert(0, view.rates_reason)
    if view.match.format.best_of > 1:
        match = about_with_range(view.outlook.match)
        reasons.insert(0, Reason(text=f"Match: {match}", source=CHAIN))
    if asks_exactly(words):
        exact = f"{of_hundred(view.outlook.game.chance)} in 100 at just these rates"
        reasons = [Reason(text=exact, source=CHAIN), *reasons[:-1]]
    return said_rates_first(view, *reasons)


def _call_of_rally(view: ScoreView) -> str:
    whose = "you serve" if view.match.game.we_serve else "they serve"
    return f"This rally: about {of_hundred(view.rally_chance)} in 100, {whose}."


def _reasons_of_rally(view: ScoreView) -> tuple[Reason, ...]:
    """What the rally's chance rests on, and the game's beside it."""
    game = Reason(text=f"Game: {about_with_range(view.outlook.game)}", source=CHAIN)
    return said_rates_first(view, game, view.rates_reason)


def _next_rally(view: ScoreView) -> str:
    won, lost = about(view.outlook.if_won), about(view.outlook.if_lost)
    if won == lost:
        return f"This rally moves it little: {in_hundred(view.outlook.weight)}."
    return f"If we win this rally: {won}; if not: {lost}."


def _tell_more(situation: Situation) -> str | None:
    """How to make the range narrower, while little is logged."""
    if situation.asked.rates is not None:
        return None
    if rallies_counted(situation) >= FEW_RALLIES:
        return None
    return "Sharper once you tap rallies or say your rates."


def _over(situation: Situation, view: ScoreView) -> Advice:
    match, game = view.match, view.match.game
    score = f"{game.ours}-{game.theirs}"
    if match.we_won is not None:
        call = f"{'Won' if match.we_won else 'Lost'}: that match is over."
    else:
        call = f"That game is {'ours' if game.we_won else 'theirs'}, {score}."
    match_chance = about(view.outlook.match.chance)
    return Advice(
        topic=Topic.WIN_CHANCE,
        call=call,
        reasons=()
        if match.we_won is not None
        else (Reason(text=f"Match: {match_chance}", source=CHAIN), view.rates_reason),
        numbers=view.outlook.numbers() | leak_numbers(situation),
        picture=curve_of(situation),
        confidence=Confidence.CLEAR,
        more=_in_full(situation, view),
    )


def curve_of(situation: Situation) -> ChanceCurve | None:
    """The match so far in our chance of it; None before the first rally, or for another score."""
    if not situation.played or situation.asked.score_said:
        return None
    return match_curve(situation.played, rates_of(situation).rates)


def match_curve(played: Sequence[PlayedRally], rates: RallyRates) -> ChanceCurve:
    """Our chance after every rally, at what is now known of the two sides; of the match if it
    has more games than one."""
    of_match = played[0].before.format.best_of > 1
    points = [_point(swing, of_match=of_match) for swing in swings(played, rates)]
    scope = "match" if of_match else "game"
    return chance_curve(points, title=f"Our {scope} chance, as we know it now")


def _point(swing: Swing, *, of_match: bool) -> CurveRally:
    rally = swing.rally
    ended = rally.next if rally.next.is_over else None
    return CurveRally(
        before=swing.match_before if of_match else swing.before,
        after=swing.match_after if of_match else swing.after,
        weight=swing.match_weight if of_match else swing.weight,
        won_by_us=rally.won_by_us,
        we_served=rally.before.we_serve,
        call=str(rally.before.call),
        game=sum(rally.games) + 1,
        game_score=None if ended is None else f"{ended.ours}-{ended.theirs}",
    )


def leak_of(situation: Situation, by: Grouping = by_serve) -> Leak | None:
    """Where our chance of the match went since the first logged rally.

    Measured at the rates known before the match: those fitted to its rallies would hide it.
    """
    return leak(situation.played, rates_before(situation).rates, by=by, of_match=True)


def leak_numbers(situation: Situation) -> dict[str, float]:
    """The leak by who served and from which side, in chances of the match, by name."""
    found = leak_of(situation)
    if found is None:
        return {}
    numbers = {"match_chance_change": found.total, "leak_unlogged": found.unlogged}
    by_court = leak_of(situation, by_side)
    for part in (*found.parts, *(by_court.parts if by_court else ())):
        name = f"leak_{part.name.replace(' ', '_')}"
        numbers |= {name: part.swing, f"{name}_spread": part.spread}
    return numbers


def _in_full(situation: Situation, view: ScoreView) -> tuple[str, ...]:
    """For the "why" button: the range, and the leak with its spread by chance alone."""
    game = view.outlook.game
    lines = [
        "Every way the game can go from here, counted exactly.",
        f"{view.rates_reason.text} ({view.rates_reason.source}).",
    ]
    if not view.belief.is_exact:
        lines.append(
            f"8 times in 10 between {of_hundred(game.low)} and {of_hundred(game.high)} in 100."
        )
        lines += against_others(situation)
    found = leak_of(situation)
    if found is not None:
        lines += [_leak_line(part) for part in found.parts]
    return tuple(lines)


def _leak_line(part: LeakPart) -> str:
    moved = "gained" if part.swing >= 0 else "cost"
    return (
        f"{part.name.capitalize()}: won {part.won} of {part.rallies}; {moved} "
        f"{in_hundred(part.swing)} of the match, luck alone moves {in_hundred(part.spread)}."
    )
