"""Rallies of a video: stored with their times as one batch, told back by leak, one undo.

They are a match of their own that is over: the score that is being counted stays as it is, and who
served is not known of them, so that they teach how rallies end and not the chances on serve.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.leak_list import leaks_page
from bot.chat.answers.names import ask_which, by_pair
from bot.chat.answers.rally_book import Played, with_told
from bot.chat.answers.video_lines import ReadLine, opponents_in, read_lines
from bot.chat.answers.video_told import told_before
from bot.chat.match_log import OF_VIDEO, format_to_json, read_log, unvoided
from bot.chat.rally_kept import KeptRally
from bot.chat.render import rows, with_buttons
from bot.chat.reply import Reply
from bot.chat.said import VideoLine, VideoSaid
from bot.chat.video_times import AT_S, UNREAD, line_words
from bot.chat.wording import wording
from knowledge.game import GameFormat, PlayedRally
from knowledge.vocabulary import PlayerId
from scouting_db.values import (
    EntryKind,
    EntryRow,
    MatchId,
    MatchState,
    NoteId,
    RallyRow,
    Winner,
)

VIDEO_FORMAT = GameFormat(target=9_999, best_of=1)
"""Rallies picked from a video are no score: a game that never ends counts them all."""

GOES_ON_FOR_S = 1_800
"""How long after a batch more lines are of the same video: half an hour. Our own choice."""

_MICROS_PER_S = 1_000_000


def take_video(desk: Desk, said: VideoSaid) -> Reply:
    """The rallies stored as one batch; lines that tell none are kept as a note and listed."""
    theirs = opponents_in(desk, said)
    if theirs is None:
        return ask_which(desk, said.text, by_pair(desk, said.mentions))
    view = replace(desk.chat_view(), theirs=theirs, focus=theirs, match_on=True)
    read = read_lines(said, view)
    going_on = _going_on(desk, theirs)
    had = set() if going_on is None else _had(desk, going_on)
    new = [one for one in read if one.rally is not None and _key(one.line) not in had]
    live = told_before(desk, theirs, new)
    fresh = [one for one in new if one not in live]
    unread = [one.line for one in read if one.rally is None]
    told = [one.line for one in live]
    if not fresh:
        return _nothing_new(desk, read, unread, told)
    note = _keep_lines(desk, "video.unread_note", unread)
    kept = _keep_lines(desk, "video.live_note", told)
    match = _new_match(desk, theirs) if going_on is None else going_on
    lines = _store(desk, match, theirs, fresh, note)
    targets = {"match": match, "lines": lines, "note": note, "told": kept}
    change = desk.record(OF_VIDEO, targets, {})
    desk.changed()
    desk.trace |= {"match": match}
    reply = leaks_page(
        desk,
        match,
        0,
        just_kept=len(lines),
        unread=len(unread),
        double=sum(one.rally is not None for one in read) - len(new),
        live=len(live),
    )
    return with_buttons(reply, [undo_button(change)])


def _going_on(desk: Desk, theirs: Sequence[PlayerId]) -> MatchId | None:
    """The batch that these lines go on: the last thing done in this chat, a short while ago."""
    last = desk.book.last_change(desk.chat.chat)
    if last is None or last.verb != OF_VIDEO:
        return None
    match = MatchId(last.targets["match"])
    row, entries = desk.book.match(match), desk.book.entries(match)
    if row is None or not entries:
        return None
    same = set(row.their_pair.players) == set(theirs) if row.their_pair else len(theirs) != 2
    is_fresh = desk.now - entries[-1].at <= GOES_ON_FOR_S * _MICROS_PER_S
    return match if same and is_fresh else None


def _had(desk: Desk, match: MatchId) -> set[tuple[int | None, str]]:
    """Times and words that the batch has already: a message sent twice counts once."""
    words = {row.n: row.words or "" for row in desk.book.rallies(match)}
    return {
        ((one.detail or {}).get(AT_S), words[one.n])
        for one in unvoided(desk.book.entries(match))
        if one.n in words and (one.detail or {}).get(AT_S) is not None
    }


def _key(line: VideoLine) -> tuple[int | None, str]:
    return line.at_s, " ".join(line.words.split())


def _new_match(desk: Desk, theirs: Sequence[PlayerId]) -> MatchId:
    return desk.book.announce(
        our_pair=desk.pair_of(desk.ours),
        their_pair=desk.pair_of(theirs),
        format=format_to_json(VIDEO_FORMAT) | {OF_VIDEO: True},
        state=MatchState.OVER,
    )


def _store(
    desk: Desk,
    match: MatchId,
    theirs: tuple[PlayerId, ...],
    read: Sequence[ReadLine],
    note: NoteId | None,
) -> list[int]:
    """The rallies and what they tell; the numbers of their lines."""
    game = read_log(desk.book.entries(match), VIDEO_FORMAT).match.game
    drafts = [_draft(desk, one, note if at == 0 else None) for at, one in enumerate(read)]
    entries = desk.book.append_all(match, drafts, inbox=desk.inbox)
    kept = []
    for one, entry in zip(read, entries, strict=True):
        assert one.rally is not None, "only rallies are stored"
        played = Played(
            match=match,
            n=entry.n,
            won_by_us=one.rally.won_by_us,
            before=game,
            is_serve_known=False,
            ours=desk.ours,
            theirs=theirs,
        )
        blank = KeptRally(row=RallyRow(match=match, n=entry.n)).with_line(one.line.words)
        kept.append(with_told(desk, played, blank, one.rally.details))
        game = PlayedRally(before=game, won_by_us=one.rally.won_by_us).next
    desk.book.tell_new(
        match,
        [one.row for one in kept],
        [choice for one in kept for choice in one.choices],
        [rate for one in kept for rate in one.rates],
    )
    return [entry.n for entry in entries]


def _draft(desk: Desk, one: ReadLine, note: NoteId | None) -> EntryRow:
    assert one.rally is not None, "only rallies are stored"
    detail: dict[str, Any] = {} if one.line.at_s is None else {AT_S: one.line.at_s}
    if note is not None:
        detail[UNREAD] = note
    return EntryRow(
        n=0,
        game_no=1,
        kind=EntryKind.RALLY,
        at=desk.now,
        won_by=Winner.US if one.rally.won_by_us else Winner.THEM,
        detail=detail or None,
    )


def _keep_lines(desk: Desk, heading: str, lines: Sequence[VideoLine]) -> NoteId | None:
    """Lines that are stored as no rally, as a note of its own: nothing typed is thrown away."""
    if not lines:
        return None
    text = "\n".join([wording(heading), *map(line_words, lines)])
    return desk.book.add_note(text, chat=desk.chat.chat, unread=True)


def _nothing_new(
    desk: Desk, read: Sequence[ReadLine], unread: Sequence[VideoLine], told: Sequence[VideoLine]
) -> Reply:
    """Lines of which none is a rally, or only ones that the batch or the match has."""
    had = len(read) - len(unread)
    key = "video.live_all" if told else "video.had_all" if had else "video.none"
    text = wording(key).format(count=had or len(unread))
    heading = "video.live_note" if told else "video.unread_note"
    note = _keep_lines(desk, heading, [*told, *unread])
    if note is None:
        return Reply(text=text)
    change = desk.record("add_note", {"note": note}, {})
    desk.changed()
    return Reply(text=text, buttons=rows([undo_button(change)]), about=("note", note))


# Undo and redo.


def video_before(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """Take the batch out: its lines are voided, its notes deleted."""
    _void(desk, MatchId(targets["match"]), targets["lines"])
    for note in _notes_of(targets):
        desk.book.delete_note(note)
    return _batch_words(len(targets["lines"]))


def video_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """Put it back."""
    match = MatchId(targets["match"])
    lines = set(targets["lines"])
    voids: dict[int, int] = {}
    for entry in desk.book.entries(match):
        if entry.voids is not None and entry.voids in lines:
            voids[entry.voids] = entry.n
    _void(desk, match, sorted(voids.values()))
    for note in _notes_of(targets):
        desk.book.restore_note(note)
    return _batch_words(len(lines))


def _batch_words(count: int) -> str:
    return wording("video.batch_one" if count == 1 else "video.batch").format(count=count)


def _notes_of(targets: Mapping[str, Any]) -> list[NoteId]:
    """A batch of an older book has no note of what was told live."""
    kept = (targets["note"], targets.get("told"))
    return [NoteId(one) for one in kept if one is not None]


def _void(desk: Desk, match: MatchId, lines: Sequence[int]) -> None:
    drafts = [
        EntryRow(n=0, game_no=1, kind=EntryKind.VOID, at=desk.now, voids=line) for line in lines
    ]
    desk.book.append_all(match, drafts, inbox=desk.inbox)
