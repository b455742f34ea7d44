"""Matches: announced, tapped through, scored in words, and ended by their result."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.entries import after_entry, already_counted, with_score
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.answers.scoreboard import score_buttons, score_line, serve_buttons
from bot.chat.match_log import fold, format_to_json, unvoided
from bot.chat.payload import Verb, tap
from bot.chat.question import MatchSaid, RallySaid, SaidScore, ScoreSaid
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.game import GameFormat, GameState, MatchState, Scoring, faults, faults_of_call
from knowledge.vocabulary import Mode, Topic
from scouting_db.values import (
    AlreadyCounted,
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
    theirs = tuple(player for player in theirs if player not in desk.ours)[:2]
    partner = desk.view.partner_of(theirs[0]) if len(theirs) == 1 else None
    if partner is not None and not _NAMES_TWO.search(said.text):
        theirs = (*theirs, partner)
    format = said.format or GameFormat()
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
        format=_format_words(format),
    )
    plan = Button(
        label=wording(f"topic.{Topic.GAME_PLAN}"),
        payload=tap(Verb.ASK, Topic.GAME_PLAN),
        topic=Topic.GAME_PLAN,
    )
    lines = [text, wording("match.who_serves")]
    if len(theirs) == 1 and _NAMES_TWO.search(said.text):
        lines.insert(1, wording("match.one_name"))
    return Reply(
        text="\n".join(lines),
        buttons=rows([*serve_buttons(match), plan, undo_button(change)]),
        about=("match", match),
    )


def _format_words(format: GameFormat) -> str:
    games = "one game" if format.best_of == 1 else f"best of {format.best_of}"
    rally = ", rally scoring" if format.scoring == "rally" else ""
    return f"{games} to {format.target}{rally}"


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


def start_game(desk: Desk, *, we_serve: bool, match: MatchId) -> Reply:
    """The first serve is ours or theirs; once a rally was played, the button is an old one."""
    if match != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    standing = unvoided(desk.entries())
    if standing and standing[-1].kind is EntryKind.GAME and standing[-1].we_serve is we_serve:
        return already_counted(desk, match)
    if any(one.kind is not EntryKind.GAME for one in standing):
        return with_score(desk, match, wording("unclear.too_old"))
    return _open_game(desk, match, we_serve=we_serve)


def _open_game(desk: Desk, match: MatchId, *, we_serve: bool) -> Reply:
    row = desk.book.append(match, EntryKind.GAME, we_serve=we_serve, inbox=desk.inbox)
    return after_entry(desk, match, row)


def count_rally(desk: Desk, *, ours: bool, match: MatchId | None, expected: int | None) -> Reply:
    """One rally by tap or by word; a second tap of the same button is already counted."""
    if match is not None and match != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    current = desk.context.match
    if current is None:
        return Reply(text=wording("match.none"))
    state = fold(desk.entries(), desk.format())
    if state.we_won is not None:
        return Reply(text=wording("match.is_over"))
    row = desk.book.append(
        current,
        EntryKind.RALLY,
        expected=expected,
        game_no=state.games_ours + state.games_theirs + 1,
        won_by=Winner.US if ours else Winner.THEM,
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


def call_timeout(desk: Desk, *, ours: bool, match: MatchId, expected: int) -> Reply:
    """A time-out: from now on it is a break, until the next rally."""
    if match != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    if ours and fold(desk.entries(), desk.format()).timeouts_left[0] == 0:
        return with_score(desk, match, wording("match.no_timeout"))
    row = desk.book.append(
        match,
        EntryKind.TIMEOUT,
        expected=expected,
        won_by=Winner.US if ours else Winner.THEM,
        inbox=desk.inbox,
    )
    if isinstance(row, AlreadyCounted):
        return already_counted(desk, match)
    before = desk.context
    desk.context = replace(before, mode=Mode.BREAK)
    change = desk.record("entry", {"match": match, "n": row.n}, {"context": before.to_json()})
    state = fold(desk.entries(), desk.format())
    text = (
        wording("match.timeout_ours").format(left=state.timeouts_left[0])
        if ours
        else wording("match.timeout_theirs")
    )
    topics = (Topic.ADJUST, Topic.CUE, Topic.ANSWER_PATTERN)
    ask = [
        Button(label=wording(f"topic.{topic}"), payload=tap(Verb.ASK, topic), topic=topic)
        for topic in topics
    ]
    count_on = score_buttons(match, row.n + 1)[:2]
    return Reply(text=text, buttons=rows([*ask, *count_on, undo_button(change)]))


def take_score(desk: Desk, said: ScoreSaid, *, expected: int | None = None) -> Reply:
    """A score in words. An impossible one is questioned, and nothing is stored.

    `expected` is the log line that a tap under an older question counts on.
    """
    if said.won_by_us is not None:
        return count_rally(desk, ours=said.won_by_us, match=None, expected=None)
    match = desk.context.match
    state = desk.match_state()
    if said.side_out:
        return _side_out(desk, state)
    if match is not None and said.score is not None and _says_no_points(said.score):
        return _serve_said(desk, match, said.score, state)
    format = desk.format()
    wanted = _state_of(said, state, format)
    wrong = _faults_of(said, format) if wanted is None else faults(wanted)
    if wrong:
        return Reply(text=wording("score.questioned").format(fault=wrong[0]))
    if wanted is None:
        return Reply(text=wording("match.none")) if match is None else _ask_whose(desk, match, said)
    if match is None:
        desk.trace |= {"game": wanted}
        return Reply(text="\n".join([score_line(wanted), wording("match.none")]))
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        expected=expected,
        game_no=1 if state is None else state.games_ours + state.games_theirs + 1,
        ours=wanted.ours,
        theirs=wanted.theirs,
        server=wanted.server,
        we_serve=wanted.we_serve,
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)


def _says_no_points(score: SaidScore) -> bool:
    return score.call is None and score.ours is None and score.theirs is None


def _serve_said(desk: Desk, match: MatchId, score: SaidScore, state: MatchState | None) -> Reply:
    """Who serves, or that the second server does, at the score as it stands."""
    if state is None or state.game.is_over:
        we_serve = True if score.we_serve is None else score.we_serve
        return _open_game(desk, match, we_serve=we_serve)
    game = state.game
    we_serve = game.we_serve if score.we_serve is None else score.we_serve
    same_side = we_serve is game.we_serve
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        game_no=state.games_ours + state.games_theirs + 1,
        ours=game.ours,
        theirs=game.theirs,
        server=score.server or (game.server if same_side else 1),
        we_serve=we_serve,
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)


def _side_out(desk: Desk, state: MatchState | None) -> Reply:
    """ "Side out": the serve changes sides, whichever server was on."""
    match = desk.context.match
    if match is None:
        return Reply(text=wording("match.none"))
    now = fold(desk.entries(), desk.format()) if state is None else state
    row = desk.book.append(
        match,
        EntryKind.SCORE,
        game_no=now.games_ours + now.games_theirs + 1,
        ours=now.game.ours,
        theirs=now.game.theirs,
        server=1 if now.format.has_two_servers else None,
        we_serve=not now.game.we_serve,
        inbox=desk.inbox,
    )
    return after_entry(desk, match, row)


def _state_of(said: ScoreSaid, state: MatchState | None, format: GameFormat) -> GameState | None:
    """The game state a score says; None where it is not said whose number is whose."""
    known = state.game if state else None
    if said.all_at is not None:
        ours = theirs = said.all_at
        we_serve = _who_scored(ours, theirs, known) if known else None
        server = known.server if known and known.we_serve is we_serve else None
    else:
        score = said.score or SaidScore()
        we_serve = score.we_serve
        if we_serve is None and known is not None:
            we_serve = _serving_side(score, known)
            if score.ours is not None and score.theirs is not None:
                we_serve = _who_scored(score.ours, score.theirs, known)
        if score.call is not None:
            if we_serve is None:
                return None
            first, second = score.call.serving, score.call.receiving
            ours, theirs = (first, second) if we_serve else (second, first)
            server = score.call.server
        elif score.ours is not None and score.theirs is not None:
            ours, theirs, server = score.ours, score.theirs, score.server
        else:
            return None
    serving = True if we_serve is None else we_serve
    number = server or (known.server if known and known.we_serve is serving else 1)
    return GameState(
        format=format,
        ours=ours,
        theirs=theirs,
        we_serve=serving,
        server=number if format.has_two_servers else server,
    )


def _faults_of(said: ScoreSaid, format: GameFormat) -> tuple[str, ...]:
    """What is wrong with a call, whoever serves; players often leave the server out."""
    call = said.score.call if said.score else None
    if call is None:
        return ()
    if format.has_two_servers and call.server is None:
        call = replace(call, server=1)
    return faults_of_call(call, format)


def _serving_side(score: SaidScore, known: GameState) -> bool:
    """A bare call is the serving side's own: whichever reading is nearer to what we had."""
    if score.call is None:
        return known.we_serve
    first, second = score.call.serving, score.call.receiving
    if_ours = abs(first - known.ours) + abs(second - known.theirs)
    if_theirs = abs(second - known.ours) + abs(first - known.theirs)
    if if_ours == if_theirs:
        return known.we_serve
    return if_ours < if_theirs


def _who_scored(ours: int, theirs: int, known: GameState) -> bool:
    """Only the serving side scores: where one side's points rose, it is their serve."""
    if known.format.scoring is Scoring.SIDE_OUT and (ours > known.ours) != (theirs > known.theirs):
        return ours > known.ours
    return known.we_serve


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
