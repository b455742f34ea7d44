"""The court picture of who stands where before the serve, stacked places included."""

from __future__ import annotations

from knowledge.court import HALF_WIDTH_M, Point, at_baseline, at_kitchen_line, x_of_side_m
from knowledge.court_picture import Arrow, CourtPicture, Marker
from knowledge.dataclass import dataclass
from knowledge.game import Discipline, GameState, PairPlaces, Places, places
from knowledge.situation import Formation, Situation
from knowledge.tactics.agreed_places import is_as_agreed
from knowledge.tactics.stack_formations import Keep, Plan
from knowledge.tactics.standing_names import Names, PairNames
from knowledge.vocabulary import PlayerId, Side

OUTSIDE_M = 0.5
"""How far outside the sideline a stacked partner waits. Common practice, no source."""

SERVE_LANDS_SHARE = 0.75
"""A serve drawn to land three quarters of the way to the receiver. Drawing only."""

IN_AFTER_SERVE_M = 0.6
"""How far inside the baseline a serving stack's moves are drawn to end. Drawing only."""

SERVE_WIDTH = 0.35
MOVE_WIDTH = 0.15
"""Arrow widths of the serve and of a stacked player's move. Drawing only."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stack:
    """Our stack at this score: where the bound player ends up, and whether anybody moves."""

    bound_plays: Side
    moves: bool


def stack_of(situation: Situation, game: GameState, names: Names, at: Places) -> Stack | None:
    """Our stacked places; None where we do not stack now or nobody said who plays left."""
    is_doubles = game.format.discipline is Discipline.DOUBLES
    if not is_doubles or not _stacks_now(situation.formation, we_serve=game.we_serve):
        return None
    pair = names.ours
    bound = pair.starter_id if at.ours.bound_is_starter else pair.partner_id
    plays = _side_of(situation, bound)
    if plays is None:
        return None
    return Stack(bound_plays=plays, moves=plays is not at.ours.bound_court)


def agreed_homes(situation: Situation, game: GameState) -> str | None:
    """Where an agreed stack has us once the ball is in play, whoever serves; None without one."""
    is_doubles = game.format.discipline is Discipline.DOUBLES
    if not is_doubles or not is_as_agreed(situation):
        return None
    homes = {one.side: one.name for one in situation.ours}
    if homes.keys() != {*Side} or not _stacks_now(situation.formation, we_serve=game.we_serve):
        return None
    return f"Then {homes[Side.LEFT]} left, {homes[Side.RIGHT]} right"


def _stacks_now(formation: Formation | None, *, we_serve: bool) -> bool:
    return formation is not None and Plan(formation=formation).keep(we_serve=we_serve) is Keep.HOME


def _side_of(situation: Situation, player: PlayerId | None) -> Side | None:
    on_court = situation.find(player) if player is not None else None
    return on_court.side if on_court else None


def by_rule(situation: Situation, game: GameState, names: Names) -> CourtPicture:
    """Everybody's place before the serve, the serve's lane, and a stacked pair's moves."""
    at = places(game)
    whose = "we serve" if game.we_serve else "they serve"
    title = f"{game.call}, {whose}"
    if at is None:
        return _open(game, names, title)
    stack = stack_of(situation, game, names, at)
    ours = _pair(game, at.ours, names.ours, ours=True, stack=stack)
    theirs = _pair(game, at.theirs, names.theirs, ours=False, stack=None)
    serve = _serve(at.serving.bound_court, ours=at.we_serve)
    moves = _moves(ours, stack, we_serve=at.we_serve) if stack else ()
    return CourtPicture(
        title=title,
        alt=f"{title}. {_places_in_words((*ours, *theirs), at)}",
        markers=(*ours, *theirs),
        arrows=(serve, *moves),
    )


def _pair(
    game: GameState, pair: PairPlaces, names: PairNames, *, ours: bool, stack: Stack | None
) -> tuple[Marker, ...]:
    """The bound player, who serves or receives from the baseline, then the partner."""
    bound = Marker.at(
        at_baseline(pair.bound_court, ours=ours),
        names.who(is_starter=pair.bound_is_starter),
        ours=ours,
    )
    if game.format.discipline is Discipline.SINGLES:
        return (bound,)
    free = names.who(is_starter=not pair.bound_is_starter)
    side = pair.bound_court.other
    serving = game.we_serve is ours
    spot = at_baseline(side, ours=ours) if serving else at_kitchen_line(side, ours=ours)
    if stack is not None and stack.moves:
        outward = x_of_side_m(pair.bound_court, ours=ours, share=1.0)
        spot = Point(x_m=outward + (OUTSIDE_M if outward > 0 else -OUTSIDE_M), y_m=spot.y_m)
    return (bound, Marker.at(spot, free, ours=ours))


def _serve(court: Side, *, ours: bool) -> Arrow:
    start = at_baseline(court, ours=ours)
    end = at_baseline(court, ours=not ours)
    return Arrow(
        from_x_m=start.x_m,
        from_y_m=start.y_m,
        to_x_m=start.x_m + SERVE_LANDS_SHARE * (end.x_m - start.x_m),
        to_y_m=start.y_m + SERVE_LANDS_SHARE * (end.y_m - start.y_m),
        width=SERVE_WIDTH,
        label="serve",
    )


def _moves(ours: tuple[Marker, ...], stack: Stack, *, we_serve: bool) -> tuple[Arrow, ...]:
    """Serving, both shift at the back; receiving, the partner shifts and the returner runs up."""
    if not stack.moves:
        return ()
    bound, free = ours
    return (
        _move(bound, stack.bound_plays, we_serve=we_serve),
        _move(free, stack.bound_plays.other, we_serve=we_serve),
    )


def _move(one: Marker, side: Side, *, we_serve: bool) -> Arrow:
    to = at_baseline(side, ours=True, behind_m=-IN_AFTER_SERVE_M)
    if not we_serve:
        to = at_kitchen_line(side, ours=True)
    start = Point(x_m=one.x_m, y_m=one.y_m)
    return Arrow.between(start, to, width=MOVE_WIDTH, label="")


def _open(game: GameState, names: Names, title: str) -> CourtPicture:
    """Courts alone, where the score does not settle which partner serves or stands where."""
    ours, theirs = game.starter_court(ours=True), game.starter_court(ours=False)
    if ours is None or theirs is None:
        return _nameless(game, title)
    markers = tuple(
        Marker.at(at_baseline(side, ours=is_ours), pair.who(is_starter=is_starter), ours=is_ours)
        for is_ours, pair, court in ((True, names.ours, ours), (False, names.theirs, theirs))
        for is_starter, side in ((True, court), (False, court.other))
    )
    where = ", ".join(
        f"{one.label} {'right' if (one.x_m > 0) is one.ours else 'left'}" for one in markers
    )
    return CourtPicture(
        title=title, alt=f"{title}. {where}. Either partner may serve.", markers=markers
    )


def _nameless(game: GameState, title: str) -> CourtPicture:
    """Where the serve comes from and goes to; who stands there is not known."""
    court = game.serving_court or Side.RIGHT
    markers = tuple(
        Marker.at(
            at_baseline(court, ours=ours),
            "server" if ours is game.we_serve else "receiver",
            ours=ours,
        )
        for ours in (True, False)
    )
    alt = f"{title}. The serve goes from {court} to {court}, diagonally."
    return CourtPicture(
        title=title, alt=alt, markers=markers, arrows=(_serve(court, ours=game.we_serve),)
    )


def _places_in_words(markers: tuple[Marker, ...], at: Places) -> str:
    parts = []
    for one in markers:
        side = "right" if (one.x_m > 0) is one.ours else "left"
        where = f"outside the {side} sideline" if abs(one.x_m) > HALF_WIDTH_M else f"on the {side}"
        parts.append(f"{one.label} {where}")
    court = at.serving.bound_court
    return f"{', '.join(parts)}. The serve goes from {court} to {court}, diagonally."
