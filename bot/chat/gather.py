"""From a question and the book to a situation: everything known that an answer may use."""

from __future__ import annotations

from collections.abc import Sequence
from types import MappingProxyType

from bot.chat.asked import SaidCount
from bot.chat.book_view import BookView
from bot.chat.context import Asked as AskedOf
from bot.chat.context import Context
from bot.chat.meetings import Meetings
from knowledge.ball_facts import NOTHING_SAID
from knowledge.chances import RallyTally
from knowledge.game import GameFormat, GameState, MatchState, PlayedRally
from knowledge.situation import Agreement, Asked, OnCourt, Situation
from knowledge.tactics.agreed_places import with_agreed_places
from knowledge.vocabulary import PlayerId, Side, Trait
from scouting_db.values import AgreementRow


def people_of(asked: AskedOf, context: Context, view: BookView) -> tuple[PlayerId, ...]:
    """Our pair and the pair that a question is about."""
    return *_ours(context, view), *_theirs(asked, context, view)


def _ours(context: Context, view: BookView) -> tuple[PlayerId, ...]:
    return context.ours or view.ours()[:2]


def gather(
    asked: AskedOf,
    context: Context,
    view: BookView,
    *,
    game: GameState | None,
    agreements: Sequence[AgreementRow],
    format: GameFormat | None = None,
    match: MatchState | None = None,
    played: tuple[PlayedRally, ...] = (),
    score_said: bool = False,
    base_rates: tuple[float | None, float | None] | None = None,
    rallies_today: RallyTally | None = None,
    meetings: Meetings | None = None,
    today: int | None = None,
) -> Situation:
    """The situation of one question; whatever nobody said stays None."""
    ours = _ours(context, view)
    theirs = _theirs(asked, context, view)
    asker = next((one for one in (asked.asker, context.asker) if one in ours), None)
    placed = _with_left(context, asked.plays_left)
    situation = Situation(
        topic=asked.topic,
        asked=_asked(asked, context, score_said=score_said),
        ours=_on_court(ours, placed, view),
        theirs=_on_court(theirs, context, view),
        asker=asker,
        striker=asker,
        game=game,
        format=format,
        match=match,
        played=played,
        base_rates=base_rates,
        rallies_today=rallies_today,
        earlier_rallies=meetings.earlier if meetings else (),
        other_rallies=meetings.others if meetings else (),
        formation=context.formation,
        their_formation=context.their_formation,
        familiarity=context.familiarity,
        agreements=MappingProxyType(
            {
                row.key: Agreement(key=row.key, value=row.value, words=row.words)
                for row in agreements
            }
        ),
        wind=asked.wind,
        today=today,
    )
    sides_said = any(placed.side_of(player) is not None for player in ours)
    return with_agreed_places(situation, sides_said=sides_said)


def _with_left(context: Context, player: PlayerId | None) -> Context:
    """The chat's memory with whom this question has on the left."""
    return context if player is None else context.with_side(player, Side.LEFT)


def _asked(asked: AskedOf, context: Context, *, score_said: bool) -> Asked:
    """What the question settles; numbers told earlier in the match hold beneath its own."""
    rates = asked.rates if asked.rates or asked.counts else context.rates
    counts = asked.counts if asked.rates or asked.counts else context.counts
    return Asked(
        about=asked.about,
        wing=asked.wing,
        ball=asked.ball,
        ball_kind=asked.ball_kind,
        hitter_side=asked.hitter_side,
        striker_side=asked.striker_side,
        pulled_wide=asked.pulled_wide,
        we_serve=asked.we_serve,
        words=asked.text,
        rates=rates,
        tally=None if counts is None else said_tally(*counts),
        score_said=score_said,
        lost_in_a_row=asked.lost_in_a_row,
        timeouts_left=asked.timeouts_left,
        tired=asked.tired,
        hot=asked.hot,
        has_change=asked.has_change,
        toss_won=asked.toss_won,
        they_chose=asked.they_chose,
        background=asked.background,
        sun=asked.sun,
        games=asked.games,
        officiated=asked.officiated,
        rule=asked.rule,
        before=asked.before or "",
        facts=asked.facts or NOTHING_SAID,
        trait=asked.trait,
    )


def said_tally(serving: SaidCount, receiving: SaidCount) -> RallyTally:
    """Rallies counted as said, (won, played) of either half."""
    served, received = serving or (0, 0), receiving or (0, 0)
    return RallyTally(
        served_won=served[0],
        served_lost=served[1] - served[0],
        received_won=received[0],
        received_lost=received[1] - received[0],
    )


def _theirs(asked: AskedOf, context: Context, view: BookView) -> tuple[PlayerId, ...]:
    """The pair the question is about: two named opponents, or one and the known partner."""
    named = tuple(
        player
        for player in asked.about
        if (row := view.player(player)) is not None and not row.ours
    )
    if len(named) >= 2:
        return named[:2]
    if not named:
        return _another_pair_of_ours(asked, context, view) or context.theirs
    if named[0] in context.theirs:
        return context.theirs
    partner = view.partner_of(named[0])
    return named if partner is None else (named[0], partner)


def _another_pair_of_ours(asked: AskedOf, context: Context, view: BookView) -> tuple[PlayerId, ...]:
    """Two of a coach's own players across the net, where both are named; else nobody."""
    ours = _ours(context, view)
    others = tuple(one for one in asked.about if view.player(one) and one not in ours)
    return others[:2] if len(others) >= 2 else ()


def _on_court(players: Sequence[PlayerId], context: Context, view: BookView) -> tuple[OnCourt, ...]:
    sides = [_side(player, context, view) for player in players]
    if len(sides) == 2:
        sides = _settled_pair(sides)
    return tuple(
        OnCourt(profile=view.profile_of(player), side=side)
        for player, side in zip(players, sides, strict=True)
    )


def _side(player: PlayerId, context: Context, view: BookView) -> Side | None:
    said = context.side_of(player)
    if said is not None:
        return said
    noted = view.profile_of(player).fact(Trait.SIDE_PLAYED)
    return None if noted is None else Side(noted.value)


def _settled_pair(sides: list[Side | None]) -> list[Side | None]:
    """One partner's side gives the other's; two that clash (both noted left) settle nothing."""
    first, second = sides
    if first is not None and first is second:
        return [None, None]
    return [
        first or (second.other if second else None),
        second or (first.other if first else None),
    ]
