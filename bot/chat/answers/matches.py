"""The next match announced: whom against, when and where, and to how many."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import time

from bot.chat.announcements import begins_as_match
from bot.chat.answers.announced_midgame import asked_midgame
from bot.chat.answers.coachs_pairs import of_which_pair
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.formats import format_words
from bot.chat.answers.game_start import start_game
from bot.chat.answers.match_over import asking_if_over
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.answers.pool_order import opponents_of, pool_match_against, take_up
from bot.chat.answers.reminder_times import remind_of_announced, times_now, times_of_same_pair
from bot.chat.answers.scoreboard import serve_buttons
from bot.chat.answers.serve_asked import ask_first_serve
from bot.chat.forms import any_of
from bot.chat.match_log import format_to_json
from bot.chat.payload import Verb, tap
from bot.chat.render import rows, with_buttons
from bot.chat.reply import Button, Reply
from bot.chat.said import Certainty, MatchSaid, Mention
from bot.chat.start_times import moment_said
from bot.chat.wording import wording
from bot.chat.words import words
from knowledge.game import (
    Discipline,
    GameFormat,
)
from knowledge.regex import regex
from knowledge.tactics.standing_words import capital
from knowledge.vocabulary import Mode, PlayerId, Topic
from scouting_db.sounds import fold
from scouting_db.values import ChangeId, MatchId, MatchRow, Micros
from scouting_db.zones import Moment

PAIR = 2

_NAMES_TWO = regex(r"\band\b|\bwith\b|[&+/]", re.IGNORECASE)
"""A second name was typed: where it is nobody's, the usual partner must not take its place."""

_NOT_THEM = regex(r"\bnot\b[^,;.!?]*", re.IGNORECASE)
"""Who is not played says nothing of how many are."""


def announce(desk: Desk, said: MatchSaid) -> Reply:
    """The next match: from now on "they" are this pair."""
    mentions = by_pair(desk, said.mentions)
    if (too_many := _more_than_a_pair(desk, mentions)) is not None:
        return too_many
    theirs = settled(mentions)
    if theirs is None:
        return ask_which(desk, _told_in_full(said), _not_ours(desk, mentions), announces=True)
    format = said.format or GameFormat()
    theirs = opponents_named(desk, theirs, said.text, format)
    if (midgame := asked_midgame(desk, said, theirs)) is not None:
        return midgame
    listed = pool_match_against(desk, theirs)
    if listed is not None and not any_of("announced.bracket").search(fold(said.text)):
        return take_up_listed(desk, listed, said)
    before, row_before = desk.context, desk.match_row()
    moment = _moment(desk, said.at, said.text)
    match = desk.book.announce(
        our_pair=desk.pair_of(desk.ours),
        their_pair=desk.pair_of(theirs),
        format=format_to_json(format),
        starts_at=None if moment is None else moment.at,
        court=said.court,
    )
    change = desk.record(
        "announce",
        {"match": match},
        {"context": before.to_json(), "times": times_of_same_pair(desk, match)},
    )
    desk.changed()
    desk.context = replace(
        before.after_result().without_announced().looking_at(*theirs),
        match=match,
        ours=desk.ours,
        theirs=theirs,
        mode=Mode.OPEN,
    )
    desk.trace |= {"match": match}
    lines = [
        announced(desk, theirs, said, format),
        *of_which_pair(desk),
        *remind_of_announced(desk, match, moment),
    ]
    if said.format_fault is not None:
        fault = capital(said.format_fault)
        lines.insert(1, wording("match.format_fault").format(fault=fault))
    if len(theirs) == 1 and _NAMES_TWO.search(said.text):
        lines.insert(1, wording("match.one_name"))
    return asking_if_over(desk, _with_serve(desk, said, match, lines, change), row_before)


def _more_than_a_pair(desk: Desk, mentions: Sequence[Mention]) -> Reply | None:
    """Three names or more of whom one is nobody's, or ours: which two play is asked, and none is
    dropped."""
    named = [one for one in mentions if not set(one.players) & {*desk.ours}]
    ours = {row.player for row in desk.view.roster if row.ours}
    are_sure = all(one.certainty is Certainty.SURE for one in named)
    if len(named) <= PAIR or (are_sure and not any({*one.players} <= ours for one in named)):
        return None
    names = ", ".join(one.typed for one in named)
    return Reply(text=wording("match.which_two").format(names=names))


def _told_in_full(said: MatchSaid) -> str:
    """The announcement so that it still is one when it is read again, with names known by then."""
    if begins_as_match(words(said.text)):
        return f"{said.text}, {said.then}" if said.then else said.text
    rest = f"{said.text}, {said.then}" if said.then else said.text
    for one in sorted(said.mentions, key=lambda one: one.span, reverse=True):
        rest = rest[: one.span[0]] + rest[one.span[1] :]
    names = " and ".join(one.typed for one in said.mentions)
    return f"next: {names}, {rest}"


def _with_serve(
    desk: Desk, said: MatchSaid, match: MatchId, lines: Sequence[str], change: ChangeId
) -> Reply:
    """The announcement, and who serves first: as told, or asked."""
    if said.we_serve is None:
        buttons = [*serve_buttons(match, desk.log()), plan_button(), undo_button(change)]
        ask_first_serve(desk, match)
        text = "\n".join([*lines, wording("match.who_serves")])
        return Reply(text=text, buttons=rows(buttons), about=("match", match))
    begun = start_game(desk, we_serve=said.we_serve, match=match)
    return with_buttons(
        replace(begun, text="\n".join([*lines, begun.text]), about=("match", match)),
        [plan_button()],
    )


def announced(desk: Desk, theirs: Sequence[PlayerId], said: MatchSaid, format: GameFormat) -> str:
    """ "Next: Ana Ruiz and Ben Hale, 10:40, court 7, best of 3 to 11." """
    return wording("match.announced").format(
        them=" and ".join(desk.view.name_of(player) for player in theirs) or "a match",
        at=wording("match.at").format(at=f"{said.at:%H:%M}") if said.at else "",
        court=wording("match.court").format(court=said.court) if said.court else "",
        format=format_words(format),
    )


def plan_button() -> Button:
    """The game plan against whoever comes next."""
    return Button(
        label=wording(f"topic.{Topic.GAME_PLAN}"),
        payload=tap(Verb.ASK, Topic.GAME_PLAN),
        topic=Topic.GAME_PLAN,
    )


def take_up_listed(desk: Desk, row: MatchRow, said: MatchSaid) -> Reply:
    """A match of the pool is named as the next one: it comes first, with what is told of it."""
    before, moment = desk.context, _moment(desk, said.at, said.text)
    times = times_now(desk, [row.match])
    changed = replace(
        row,
        format=dict(row.format) if said.format is None else format_to_json(said.format),
        starts_at=row.starts_at if moment is None else moment.at,
        court=row.court if said.court is None else said.court,
    )
    if changed != row:
        desk.book.replace_match(changed)
    stood = {"format": dict(row.format), "starts_at": row.starts_at, "court": row.court}
    change = desk.record(
        "pool_match",
        {"match": row.match},
        {"context": before.to_json(), "row": stood, "times": times},
    )
    take_up(desk, changed)
    desk.context = desk.context.without_announced()
    desk.match_changed()
    lines = [
        announced(desk, opponents_of(changed), said, desk.format()),
        *remind_of_announced(desk, row.match, moment),
        wording("pool.of_the_pool"),
    ]
    return _with_serve(desk, said, row.match, lines, change)


def _not_ours(desk: Desk, mentions: Sequence[Mention]) -> tuple[Mention, ...]:
    """The names without the nearest among us: nobody plays against themselves."""
    return tuple(
        replace(one, players=tuple(player for player in one.players if player not in desk.ours))
        for one in mentions
    )


def opponents_named(
    desk: Desk, named: Sequence[PlayerId], text: str, format: GameFormat
) -> tuple[PlayerId, ...]:
    """The one of singles, or the pair: one name brings the usual partner, if there is one."""
    theirs = tuple(player for player in named if player not in desk.ours)[:2]
    if format.discipline is Discipline.SINGLES:
        return theirs[:1]
    partner = desk.view.partner_of(theirs[0]) if len(theirs) == 1 else None
    names_two = _NAMES_TWO.search(_NOT_THEM.sub("", text))
    return theirs if partner is None or names_two else (*theirs, partner)


def starts_at(desk: Desk, at: time | None, text: str) -> Micros | None:
    """When that is by the book's clock; `text` may name the day."""
    moment = _moment(desk, at, text)
    return None if moment is None else moment.at


def _moment(desk: Desk, at: time | None, text: str) -> Moment | None:
    if at is None:
        return None
    return moment_said(at, text, now=desk.now, zone=desk.book.about().zone)
