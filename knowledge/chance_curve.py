"""The picture of a match so far: our win chance after every rally, the heaviest ones marked."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from knowledge.advice import ChanceCurve, CurveMark, GameBreak
from knowledge.dataclass import dataclass
from knowledge.odds_words import in_ten

TITLE = "Our win chance, rally by rally"

MARKS = 3
"""Rallies marked at most."""

MARKED_SHARE = 1 / 3
"""And never more than this share of the rallies, rounded up: few stand out among few."""

TOLD_APART = 1e-9
"""Chances this close are the same: the score ran on, and nothing was told in between."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveRally:
    """One rally played: our win chance before and after it, and what hung on it.

    All of one game or all of the match, 0 to 1. `weight` is the chance after we win the rally
    less the chance after we lose it. `call` is the score called before it. `game` counts from
    1. `game_score`, ours first, stands on the rally that ended its game.
    """

    before: float
    after: float
    weight: float
    won_by_us: bool
    we_served: bool
    call: str
    game: int = 1
    game_score: str | None = None


def chance_curve(rallies: Sequence[CurveRally], *, title: str = TITLE) -> ChanceCurve:
    """The curve through the rallies in the order played, with its marks and its words.

    Where a rally starts at another chance than the last one left, the score was told in
    between: that is a point of its own.
    """
    points, places = _points(rallies)
    heaviest = heaviest_places([rally.weight for rally in rallies])
    return ChanceCurve(
        title=title,
        alt=_alt(rallies, heaviest),
        points=points,
        marks=tuple(_mark(rallies[each], places[each]) for each in heaviest),
        games=tuple(_games(rallies, places)),
        now=_now(rallies),
    )


def heaviest_places(weights: Sequence[float]) -> tuple[int, ...]:
    """The places of the heaviest rallies, in the order played; of equal ones the latest.

    Neighbours are not spread out: if they were the heaviest, that is what happened.
    """
    count = min(MARKS, math.ceil(MARKED_SHARE * len(weights)))
    ranked = sorted(range(len(weights)), key=lambda place: (-weights[place], -place))
    return tuple(sorted(ranked[:count]))


def _points(rallies: Sequence[CurveRally]) -> tuple[tuple[float, ...], tuple[int, ...]]:
    """All points, and the place among them that each rally led to."""
    points: list[float] = []
    places: list[int] = []
    for rally in rallies:
        if not points or abs(points[-1] - rally.before) > TOLD_APART:
            points.append(float(rally.before))
        places.append(len(points))
        points.append(float(rally.after))
    return tuple(points), tuple(places)


def _mark(rally: CurveRally, place: int) -> CurveMark:
    otherwise = rally.after - rally.weight if rally.won_by_us else rally.after + rally.weight
    return CurveMark(
        point=place,
        label=_result(rally),
        won_by_us=rally.won_by_us,
        otherwise=float(max(0.0, min(otherwise, 1.0))),
    )


def _result(rally: CurveRally) -> str:
    return f"{rally.call} {'won' if rally.won_by_us else 'lost'}"


def _games(rallies: Sequence[CurveRally], places: Sequence[int]) -> Iterator[GameBreak]:
    """Where games ended, by a rally that ended it or since the next one is of another game."""
    games_after = [rally.game for rally in rallies[1:]] + [rallies[-1].game] if rallies else []
    for rally, place, game_after in zip(rallies, places, games_after, strict=True):
        if rally.game_score is not None:
            yield GameBreak(
                point=place,
                label=f"game {rally.game}: {rally.game_score}",
                won_by_us=rally.won_by_us,
            )
        elif game_after != rally.game:
            yield GameBreak(point=place, label=f"game {rally.game}")


def _is_over(rallies: Sequence[CurveRally]) -> bool:
    return rallies[-1].game_score is not None and rallies[-1].after in (0, 1)


def _now(rallies: Sequence[CurveRally]) -> str:
    if not rallies:
        return "no rally yet"
    last = rallies[-1]
    if _is_over(rallies):
        return "won" if last.won_by_us else "lost"
    return f"now {in_ten(last.after)}"


def _alt(rallies: Sequence[CurveRally], heaviest: Sequence[int]) -> str:
    """The curve in words: start, best, worst; heaviest rallies; games; and now."""
    if not rallies:
        return "Our win chance through the match: no rally is logged yet."
    course = ", ".join([f"Started {in_ten(rallies[0].before)}", *_extremes(rallies)])
    marked = ", ".join(
        f"{_result(rallies[each])} on {'our' if rallies[each].we_served else 'their'} serve"
        f"{_which(rallies, rallies[each])}"
        for each in heaviest
    )
    games = ", ".join(
        f"game {rally.game} {'won' if rally.won_by_us else 'lost'} {rally.game_score}"
        for rally in rallies
        if rally.game_score is not None
    )
    heavy = f"heaviest {'rally' if len(heaviest) == 1 else 'rallies'} {marked}"
    return "; ".join(part for part in (course, heavy, games, _now(rallies)) if part) + "."


def _extremes(rallies: Sequence[CurveRally]) -> Iterator[str]:
    """The best and the worst on the way, where they are neither the start nor now."""
    ends = (rallies[0].before, rallies[-1].after)
    for word, found in (("best", max), ("worst", min)):
        there = found(rallies, key=lambda rally: rally.before)
        if in_ten(there.before) not in map(in_ten, ends):
            yield f"{word} {in_ten(there.before)} at {there.call}{_which(rallies, there)}"


def _which(rallies: Sequence[CurveRally], one: CurveRally) -> str:
    """Which game a call is of, where several were played."""
    return f" in game {one.game}" if rallies[-1].game != rallies[0].game else ""
