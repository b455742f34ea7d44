"""Where the win chance went, exactly: every rally's swing, and the leak as sums of them.

W_end - W_start is the sum, over the rallies played, of weight × (result - expected): an
identity, since a state's chance is the average of the two that follow it. So any grouping of
the rallies splits the whole change without a rest. By chance alone a group varies with
variance sum of weight² × expected × (1 - expected).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from math import fsum, sqrt
from typing import TypeAlias

from knowledge.chances.game_table import GameTable, game_table
from knowledge.chances.match_chance import after_this_game
from knowledge.chances.rates import RallyRates
from knowledge.dataclass import dataclass
from knowledge.game import MatchState, PlayedRally, after, server


@dataclass(frozen=True, slots=True, kw_only=True)
class Swing:
    """One rally: our chance before and after it, its weight, and our chance to win the rally.

    `of_match` carries the same weight in chances of the match.
    """

    rally: PlayedRally
    before: float
    after: float
    weight: float
    expected: float
    match_before: float
    match_after: float
    match_weight: float

    @property
    def swing(self) -> float:
        return self.weight * (self.rally.won_by_us - self.expected)

    @property
    def match_swing(self) -> float:
        return self.match_weight * (self.rally.won_by_us - self.expected)


def swings(played: Sequence[PlayedRally], rates: RallyRates) -> tuple[Swing, ...]:
    """Every rally's swing, at fixed rally chances; StateError for a rally of no game."""
    return tuple(_swing(rally, rates) for rally in played)


def _swing(rally: PlayedRally, rates: RallyRates) -> Swing:
    state = rally.before
    table = game_table(state.format, rates.serving, rates.receiving)
    before = table.win_chance(state)
    if_won, if_lost = (table.at(after(state, won_by_us=won)) for won in (True, False))
    game_won, game_lost = _match_ends(rally, table)
    scale = game_won - game_lost
    came = if_won if rally.won_by_us else if_lost
    return Swing(
        rally=rally,
        before=before,
        after=came,
        weight=if_won - if_lost,
        expected=rates.of_rally(we_serve=state.we_serve),
        match_before=game_lost + before * scale,
        match_after=game_lost + came * scale,
        match_weight=(if_won - if_lost) * scale,
    )


def _match_ends(rally: PlayedRally, table: GameTable[float]) -> tuple[float, float]:
    ours, theirs = rally.games
    match = MatchState(game=rally.before, games_ours=ours, games_theirs=theirs)
    return after_this_game(match, table)


Grouping: TypeAlias = Callable[[PlayedRally], str]
"""Names the group of a rally; any grouping splits the whole change without a rest."""


def by_serve(rally: PlayedRally) -> str:
    """Our serve or theirs."""
    return "serving" if rally.before.we_serve else "receiving"


def by_server(rally: PlayedRally) -> str:
    """Who served: the player's number where a lineup tells it, else the side and its server."""
    who = server(rally.before)
    number = rally.before.server
    return f"{by_serve(rally)} {number or ''}".strip() if who is None else f"player {who}"


def by_side(rally: PlayedRally) -> str:
    """Whose serve, and from which court."""
    court = rally.before.serving_court
    return by_serve(rally) if court is None else f"{by_serve(rally)} {court}"


def by_tag(rally: PlayedRally) -> str:
    """What the rally was tagged with; several tags make a group of their own."""
    return " and ".join(sorted(rally.tags)) or "untagged"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeakPart:
    """A group of rallies: how many, won and expected to be won, and what they did to our chance.

    `spread` is the standard deviation of `swing` by chance alone.
    """

    name: str
    rallies: int
    won: int
    expected: float
    swing: float
    spread: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Leak:
    """The change of our chance over the rallies played, and its parts, the costliest first.

    `unlogged` is what changed between rallies: points that were told, not tapped.
    """

    start: float
    end: float
    parts: tuple[LeakPart, ...]
    unlogged: float

    @property
    def total(self) -> float:
        return self.end - self.start


def leak(
    played: Sequence[PlayedRally],
    rates: RallyRates,
    *,
    by: Grouping = by_serve,
    of_match: bool = False,
) -> Leak | None:
    """The leak of a game, or of a match in chances of the match; None without a rally.

    total = sum of the parts' swings + unlogged.
    """
    if not played:
        return None
    all_swings = swings(played, rates)
    start, end = _ends(all_swings[0], all_swings[-1], of_match=of_match)
    parts = _parts(all_swings, by, of_match=of_match)
    told = fsum(part.swing for part in parts)
    return Leak(start=start, end=end, parts=parts, unlogged=end - start - told)


def _ends(first: Swing, last: Swing, *, of_match: bool) -> tuple[float, float]:
    if of_match:
        return first.match_before, last.match_after
    return first.before, last.after


def _parts(all_swings: Iterable[Swing], by: Grouping, *, of_match: bool) -> tuple[LeakPart, ...]:
    groups: dict[str, list[Swing]] = {}
    for one in all_swings:
        groups.setdefault(by(one.rally), []).append(one)
    parts = [_part(name, group, of_match=of_match) for name, group in groups.items()]
    return tuple(sorted(parts, key=lambda part: part.swing))


def _part(name: str, group: Sequence[Swing], *, of_match: bool) -> LeakPart:
    weights = [one.match_weight if of_match else one.weight for one in group]
    swung = fsum(one.match_swing if of_match else one.swing for one in group)
    variance = fsum(
        weight * weight * one.expected * (1 - one.expected)
        for weight, one in zip(weights, group, strict=True)
    )
    return LeakPart(
        name=name,
        rallies=len(group),
        won=sum(one.rally.won_by_us for one in group),
        expected=fsum(one.expected for one in group),
        swing=swung,
        spread=sqrt(variance),
    )
