"""Time-outs taken, by tap or in words, with what helps in one; and how many are left."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.entries import already_counted, with_score
from bot.chat.answers.no_match import no_match
from bot.chat.answers.scoreboard import score_buttons
from bot.chat.answers.timeouts_told import told_left
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import TimeoutSaid
from bot.chat.wording import wording
from knowledge.vocabulary import Mode, Topic
from scouting_db.values import AlreadyCounted, EntryKind, EntryRow, MatchId, Winner


def take_timeout(desk: Desk, said: TimeoutSaid) -> Reply:
    """A time-out told in words."""
    match = desk.context.match
    if match is None:
        return no_match(desk)
    return call_timeout(desk, ours=said.ours, match=match, is_last=said.is_last)


def timeouts_left(desk: Desk) -> Reply:
    """How many either side has left in this game, by the log."""
    match = desk.context.match
    if match is None:
        return Reply(text=wording("timeouts.no_match"))
    ours, theirs = desk.log().match.timeouts_left
    told = told_left(desk)
    ours = ours if told is None else told
    return Reply(text=wording("timeouts.left").format(ours=ours, theirs=theirs))


def call_timeout(
    desk: Desk,
    *,
    ours: bool,
    match: MatchId,
    expected: int | None = None,
    is_last: bool = False,
) -> Reply:
    """A time-out: from now on it is a break, until the next rally.

    `expected` is the log line that a tap counts on. With `is_last` those before it that nobody told
    count as taken too, and one undo takes all of them back.
    """
    if match != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    ours_left, theirs_left = desk.log().match.timeouts_left
    left = ours_left if ours else theirs_left
    if left == 0:
        return with_score(
            desk, match, wording("match.no_timeout" if ours else "match.no_timeout_theirs")
        )
    side = Winner.US if ours else Winner.THEM
    row = desk.book.append(
        match, EntryKind.TIMEOUT, expected=expected, won_by=side, inbox=desk.inbox
    )
    if isinstance(row, AlreadyCounted):
        return already_counted(desk, match)
    earlier = list[int]()
    for _ in range(left - 1 if is_last else 0):
        earlier.append(row.n)
        row = desk.book.append(match, EntryKind.TIMEOUT, won_by=side, inbox=desk.inbox)
        assert isinstance(row, EntryRow), "an entry without an expected number always lands"
    before = desk.context
    desk.context = replace(before, mode=Mode.BREAK)
    lines = {"n": row.n, "also": earlier} if earlier else {"n": row.n}
    change = desk.record("entry", {"match": match, **lines}, {"context": before.to_json()})
    text = (
        wording("match.timeout_ours").format(left=desk.log().match.timeouts_left[0])
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
