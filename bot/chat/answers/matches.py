"""Matches: announced, tapped through, scored in words, and ended by their result."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.entries import after_entry, sides_of_first, with_score
from bot.chat.answers.formats import format_words
from bot.chat.answers.game_start import open_game
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.answers.scoreboard import score_line, serve_buttons
from bot.chat.match_log import GUESSED_SERVE, format_to_json
from bot.chat.payload import Verb, tap
from bot.chat.question import MatchSaid, RallySaid, SaidScore, ScoreSaid
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.score_reading import faults_said, says_no_points, state_said
from bot.chat.wording import wording
from knowledge.game import (
    Discipline,
    GameFormat,
    GameState,
    faults,
    is_opening,
    side_out,
)
from knowledge.vocabulary import Mode, PlayerId, Topic
from scouting_db.values import (
    EntryKind,
    MatchId,
    Micros,
    RallyRow,
    Winner,
)

_NAMES_TWO = re.compile(r"\band\b|\bwith\b|[&+/]", re.IGNORECASE)
"""A second name was typed: where it is nobody's, the usual partner must not take its place."""


def announce(desk: Desk, said: MatchSaid) -> Reply:
    """The next match: from now on "they" are this pair."""
    mentions = by_pair(desk, said.mentions)
    theirs = settled(mentions)
    if theirs is None:
        return ask_which(desk, said.text, mentions)
    format = said.format or GameFormat()
    theirs = _opponents(desk, theirs, said.text, format)
    before = desk.context
    match = desk.book.announce(
        our_pair=desk.pair_of(desk.ours),
        their_pair=desk.pair_of(theirs),
        format=format_to_json(format),
        starts_at=_starts_at(desk, said.at),
        court=said.court,
    )
    change = desk.record("announce", {"match": match}, {"context": before.to_json()})
    desk.changed()
    desk.context = replace(
        before.after_result().looking_at(*theirs),
        match=match,
        ours=desk.ours,
        theirs=theirs,
        mode=Mode.OPEN,
    )
    desk.trace |= {"match": match}
    text = wording("match.announced").format(
        them=" and ".join(desk.view.name_of(player) for player in theirs) or "a match",
        at=wording("match.at").format(at=f"{said.at:%H:%M}") if said.at else "",
        court=wording("match.court").format(court=said.court) if said.court else "",
        format=format_words(format),
    )
    plan = Button(
        label=wording(f"topic.{Topic.GAME_PLAN}"),
        payload=tap(Verb.ASK, Topic.GAME_PLAN),
        topic=Topic.GAME_PLAN,
    )
    lines = [text, wording("match.who_serves")]
    if said.format_fault is not None:
        fault = f"{said.format_fault[0].upper()}{said.format_fault[1:]}"
        lines.insert(1, wording("match.format_fault").format(fault=fault))
    if len(theirs) == 1 and _NAMES_TWO.search(said.text):
        lines.insert(1, wording("match.one_name"))
    return Reply(
        text="\n".join(lines),
        buttons=rows([*serve_buttons(match, desk.log()), plan, undo_button(change)]),
        about=("match", match),
    )


def _opponents(
    desk: Desk, named: Sequence[PlayerId], text: str, format: GameFormat
) -> tuple[PlayerId, ...]:
    """The one of singles, or the pair: one name brings the usual partner, if there is one."""
    theirs = tuple(player for player in named if player not in desk.ours)[:2]
    if format.discipline is Discipline.SINGLES:
        return theirs[:1]
    partner = desk.view.partner_of(theirs[0]) if len(theirs) == 1 else None
    return theirs if partner is None or _NAMES_TWO.search(text) else (*theirs, partner)


def _starts_at(desk: Desk, at: time | None) -> Micros | None:
    """The next time the clock in the book's zone shows `at`."""
    if at is None:
        return None
    zone = ZoneInfo(desk.book.about().zone)
    now = datetime.fromtimestamp(desk.now / 1e6, UTC).astimezone(zone)
    start = datetime.combine(now.date(), at, zone)
    if start < now - timedelta(hours=1):
        start += timedelta(days=1)
    return Micros(int(start.timestamp() * 1e6))


def count_rally(desk: Desk, *, ours: bool, match: MatchId | None, expected: int | None) -> Reply:
    """One rally by tap or by word; a second tap of the same button is already counted."""
    if match is not None and match != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    current = desk.context.match
    if current is None:
        return Reply(text=wording("match.none"))
    log = desk.log()
    if log.match.we_won is not None:
        return Reply(text=wording("match.is_over"))
    row = desk.book.append(
        current,
        EntryKind.RALLY,
        expected=expected,
        game_no=log.next_game_no,
        won_by=Winner.US if ours else Winner.THEM,
        detail=sides_of_first(desk, log) or None,
        inbox=desk.inbox,
    )
    return after_entry(desk, current, row)


def take_rally(desk: Desk, said: RallySaid) -> Reply:
    """A rally told in words: counted, and the words kept with it."""
    if desk.context.match is None:
        return Reply(text=wording("match.none"))
    match, before = desk.context.match, len(desk.entries())
    reply = count_rally(desk, ours=said.won_by_us, match=None, expected=None)
    after = desk.book.entries(match)
    if len(after) > before:
        desk.book.tell_rally(RallyRow(match=match, n=after[-1].n, words=said.text))
    return reply


def take_score(desk: Desk, said: ScoreSaid, *, expected: int | None = None) -> Reply:
    """A score in words. An impossible one is questioned, and nothing is stored.

    `expected` is the log line that a tap under an older question counts on.
    """
    if said.won_by_us is not None:
        return count_rally(desk, ours=said.won_by_us, match=None, expected=None)
    match = desk.context.match
    if said.side_out:
        return Reply(text=wording("match.none")) if match is None else _side_out(desk, match)
    if match is not None and said.score is not None and says_no_points(said.score):
        return _serve_said(desk, match, said.score)
    return _score_said(desk, match, said, expected)


def _score_said(desk: Desk, match: MatchId | None, said: ScoreSaid, expected: int | None) -> Reply:
    known, format = desk.match_state(), desk.format()
    wanted = state_said(said, known.game if known else None, format)
    wrong = faults_said(said, format) if wanted is None else faults(wanted.game)
    if wrong:
        return Reply(text=wording("score.questioned").format(fault=wrong[0]))
    if wanted is None:
        return Reply(text=wording("match.none")) if match is None else _ask_whose(desk, match, said)
    if match is None:
        desk.trace |= {"game": wanted.game}
        return Reply(text="\n".join([score_line(desk, wanted.game), wording("match.none")]))
    return _set_score(
        desk, match, wanted.game, is_serve_guessed=wanted.is_serve_guessed, expected=expected
    )


def _set_score(
    desk: Desk,
    match: MatchId,
    game: GameState,
    *,
    is_serve_guessed: bool = False,
    expected: int | None = None,
) -> Reply:
    log = desk.log()
    guess = {GUESSED_SERVE: True} if is_serve_guessed else {}
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        expected=expected,
        game_no=log.next_game_no,
        ours=game.ours,
        theirs=game.theirs,
        server=game.server,
        we_serve=game.we_serve,
        detail={**guess, **sides_of_first(desk, log)} or None,
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)


def _serve_said(desk: Desk, match: MatchId, score: SaidScore) -> Reply:
    """Who serves, or that the second server does, at the score as it stands."""
    log = desk.log()
    game = log.match.game
    we_serve = game.we_serve if score.we_serve is None else score.we_serve
    if game.is_over or (is_opening(game) and score.server in (None, game.server)):
        return open_game(desk, match, we_serve=we_serve)
    same_side = we_serve is game.we_serve
    number = score.server or (game.server if same_side else 1)
    guessed = score.we_serve is None and not log.serve_known
    now = replace(game, we_serve=we_serve, server=number)
    return _set_score(desk, match, now, is_serve_guessed=guessed)


def _side_out(desk: Desk, match: MatchId) -> Reply:
    """ "Side out": the serve changes sides, whichever server was on."""
    log = desk.log()
    if log.match.game.is_over:
        return with_score(desk, match, wording("score.again"))
    return _set_score(desk, match, side_out(log.match.game), is_serve_guessed=not log.serve_known)


def _ask_whose(desk: Desk, match: MatchId, said: ScoreSaid) -> Reply:
    """Whose call a bare score was; a score with whose number is whose is never asked about."""
    call = said.score.call if said.score else None
    if call is None:
        return Reply(text=wording("score.again"))
    expected = len(desk.entries()) + 1
    buttons = [
        Button(label=label, payload=tap(Verb.SCORE, who, call, match, expected))
        for label, who in ((wording("match.we_serve"), "us"), (wording("match.they_serve"), "them"))
    ]
    return Reply(text=wording("score.whose").format(call=call), buttons=rows(buttons))
