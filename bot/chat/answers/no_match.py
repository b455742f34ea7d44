"""What is said where a match is needed and none is on: how to announce one."""

from __future__ import annotations

from itertools import chain, islice, repeat

from bot.chat.answers.announced_first import announced_first
from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from scouting_db.values import ChangeId, MatchId, MatchState

_PAIR = 2


def no_match(desk: Desk) -> Reply:
    """How to announce the next match: its example names opponents of this book, if it has any."""
    waiting = announced_first(desk)
    if waiting is not None:
        return waiting
    view = desk.view
    known = (view.short_name(row.player) for row in view.roster if not row.ours)
    first, second = islice(chain(known, repeat(wording("match.some_name"))), _PAIR)
    text = wording("match.none").format(first=first, second=second)
    closed = _closed_last(desk)
    if closed is None:
        return Reply(text=text)
    goes_on = Button(label=wording("match.goes_on"), payload=tap(Verb.UNDO, closed))
    return Reply(text=f"{text}\n{wording('match.closed_before')}", buttons=rows([goes_on]))


def _closed_last(desk: Desk) -> ChangeId | None:
    """The change that closed a match, if nothing was done since: it may have been a slip."""
    last = desk.book.last_change(desk.chat.chat)
    if last is None or last.verb != "entry":
        return None
    row = desk.book.match(MatchId(last.targets["match"]))
    return last.change if row is not None and row.state is MatchState.OVER else None
