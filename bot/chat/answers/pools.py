"""A pool: stored in order from one message, its next match, and how it stands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import field, replace
from typing import Any

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.formats import format_words
from bot.chat.answers.listing import within_screen
from bot.chat.answers.matches import plan_button, starts_at
from bot.chat.answers.names import ask_which, by_pair
from bot.chat.answers.newcomers import capitalised
from bot.chat.answers.pool_again import pool_goes_on
from bot.chat.answers.pool_order import (
    ASSUMED,
    POOL,
    match_words,
    pair_words,
    take_up,
)
from bot.chat.answers.pool_undo import as_kept
from bot.chat.answers.scoreboard import serve_buttons
from bot.chat.match_log import format_to_json
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import Certainty, Mention, PoolSaid, PoolTeam
from bot.chat.wording import wording
from knowledge.dataclass import dataclass
from knowledge.game import FormatError, GameFormat
from knowledge.tactics.standing_words import capital
from knowledge.vocabulary import PlayerId
from scouting_db.values import EventId, MatchId, MatchState

PAIR = 2
COMMON_POOL = GameFormat(best_of=1)
"""Of a pool whose format nobody said: one game to 11. Common practice, no source."""

SHOWN_UNREAD = 2
SHOWN_NEW = 6


@dataclass(slots=True, kw_only=True)
class _Listed:
    """A pool as it is stored: players made for it, its matches, and what stayed out and why."""

    players: dict[str, PlayerId] = field(default_factory=dict)
    matches: list[MatchId] = field(default_factory=list)
    out: list[str] = field(default_factory=list)
    met: set[tuple[frozenset[PlayerId], object]] = field(default_factory=set)


def take_pool(desk: Desk, said: PoolSaid) -> Reply:
    """The matches in order; names that nobody knows become players, and all is one undo."""
    teams = [replace(team, mentions=by_pair(desk, team.mentions)) for team in said.teams]
    alike = [one for team in teams for one in team.mentions if one.certainty is Certainty.AMBIGUOUS]
    if alike:
        return ask_which(desk, said.text, alike)
    again = pool_goes_on(desk, teams)
    if again is not None:
        return again
    listed, before = _Listed(out=list(said.unread)), desk.context
    event = desk.book.add_event(POOL)
    for team in _in_time(teams):
        _add_match(desk, event, team, said, listed)
    if not listed.matches:
        desk.book.remove_event(event)
        return Reply(text="\n".join([wording("pool.no_pair"), *_left_out(listed)]))
    change = desk.record(
        "pool",
        {
            "event": event,
            "matches": listed.matches,
            "players": list(listed.players.values()),
            "words": said.text,
            "rows": [as_kept(row) for row in desk.book.matches_in(event)],
        },
        {"context": before.to_json()},
    )
    desk.changed()
    return _told(desk, event, said, listed, change)


def _in_time(teams: Sequence[PoolTeam]) -> list[PoolTeam]:
    """As told; by the clock where every one has a time."""
    timed = [team for team in teams if team.at is not None]
    if len(timed) < len(teams):
        return list(teams)
    return sorted(timed, key=lambda team: (team.at is None, team.at))


def _add_match(desk: Desk, event: EventId, team: PoolTeam, said: PoolSaid, listed: _Listed) -> None:
    theirs = _players(desk, team, listed)
    typed = "/".join(one.typed for one in team.mentions)
    if len(set(theirs)) != PAIR:
        listed.out.append(wording("pool.one_name").format(name=typed))
        return
    if set(theirs) & set(desk.ours):
        listed.out.append(wording("pool.with_ours").format(pair=typed))
        return
    key = (frozenset(theirs), team.at)
    if key in listed.met:
        listed.out.append(wording("pool.twice").format(pair=typed))
        return
    listed.met.add(key)
    format = format_to_json(_format(said))
    is_said = said.format is not None and None not in (said.format.target, said.format.best_of)
    listed.matches.append(
        desk.book.announce(
            our_pair=desk.pair_of(desk.ours),
            their_pair=desk.pair_of(theirs),
            format=format if is_said else format | {ASSUMED: True},
            starts_at=starts_at(desk, team.at, said.text),
            court=team.court,
            event=event,
        )
    )


def _format(said: PoolSaid) -> GameFormat:
    """What was said over the common one; what makes it unplayable is left out."""
    if said.format is None:
        return COMMON_POOL
    try:
        return said.format.over(COMMON_POOL)
    except FormatError:
        playable = said.format.playable
        return playable if said.format.best_of else replace(playable, best_of=COMMON_POOL.best_of)


def _players(desk: Desk, team: PoolTeam, listed: _Listed) -> tuple[PlayerId, ...]:
    """Those of the book, and new ones for names that nobody has."""
    if len(team.mentions) == 1 and team.mentions[0].certainty is Certainty.SURE:
        player = team.mentions[0].players[0]
        partner = desk.view.partner_of(player)
        return (player,) if partner is None else (player, partner)
    if len(team.mentions) < PAIR:
        return ()
    return tuple(_player(desk, one, listed) for one in team.mentions)


def _player(desk: Desk, mention: Mention, listed: _Listed) -> PlayerId:
    if mention.certainty is Certainty.SURE:
        return mention.players[0]
    name = capitalised(mention.typed)
    key = name.casefold()
    if key not in listed.players:
        listed.players[key] = desk.book.add_player(name)
    return listed.players[key]


def _told(desk: Desk, event: EventId, said: PoolSaid, listed: _Listed, change: Any) -> Reply:
    """The matches in order, whom the book learned, what was not read, and how to go on."""
    matches = desk.book.matches_in(event)
    running = desk.match_row()
    if running is not None and running.state is MatchState.RUNNING:
        desk.context = replace(desk.context, pool=event)
    else:
        take_up(desk, matches[0])
    count = wording("pool.one_match" if len(matches) == 1 else "pool.matches")
    format = format_words(_format(said))
    head = [count.format(count=len(matches), format=format)]
    buttons = [plan_button(), undo_button(change)]
    if desk.context.match == matches[0].match:
        buttons = [*serve_buttons(matches[0].match, desk.log()), *buttons]
    lines = within_screen(
        head,
        [
            wording("pool.line").format(n=n, match=match_words(desk, row))
            for n, row in enumerate(matches, start=1)
        ],
        [*_remarks(desk, said, listed), wording("pool.how")],
        left_out=wording("pool.more_matches"),
    )
    text = "\n".join(lines)
    return Reply(text=text, buttons=rows(buttons), about=("match", matches[0].match))


def _remarks(desk: Desk, said: PoolSaid, listed: _Listed) -> list[str]:
    """What was assumed, whom the book learned, and what was not read."""
    lines = []
    fault = None if said.format is None else said.format.fault
    if fault is not None:
        lines.append(wording("match.format_fault").format(fault=capital(fault)))
    elif said.format is None:
        lines.append(wording("pool.assumed"))
    if desk.context.match is not None and desk.context.match not in listed.matches:
        who = pair_words(desk, desk.context.theirs)
        lines.append(wording("pool.still_on").format(who=who))
    new = [desk.view.name_of(player) for player in listed.players.values()]
    if new:
        more = len(new) - SHOWN_NEW
        names = ", ".join([*new[:SHOWN_NEW], *([f"+{more}"] if more > 0 else [])])
        lines.append(wording("pool.new").format(names=names))
    return [*lines, *_left_out(listed)]


def _left_out(listed: _Listed) -> list[str]:
    if not listed.out:
        return []
    shown = "; ".join(f"“{_cut(one)}”" for one in listed.out[:SHOWN_UNREAD])
    more = len(listed.out) - SHOWN_UNREAD
    return [
        wording("pool.left_out").format(
            what=shown, more=wording("pool.more_out").format(count=more) if more > 0 else ""
        )
    ]


LONGEST_SHOWN = 60


def _cut(text: str) -> str:
    return text if len(text) <= LONGEST_SHOWN else f"{text[: LONGEST_SHOWN - 1]}…"
