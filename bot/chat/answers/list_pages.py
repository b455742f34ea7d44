"""Which list a "more" turns the page of."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.leak_list import leaks_page, student_page
from bot.chat.answers.notes_shown import notes_page
from bot.chat.answers.pool_standing import standing_page
from bot.chat.payload import BadPayloadError
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId
from scouting_db.values import EventId, MatchId


def turn_to(desk: Desk, what: str, of: int, page: int) -> Reply:
    """A page of a list; BadPayloadError for a list that we never show."""
    match what:
        case "pool":
            return standing_page(desk, EventId(of), page)
        case "leaks":
            return leaks_page(desk, MatchId(of), page)
        case "student":
            return student_page(desk, MatchId(of), page)
        case "notes" if desk.view.player(PlayerId(of)) is not None:
            return notes_page(desk, PlayerId(of), page)
        case _:
            raise BadPayloadError(f"no list: {what}")


def next_page(desk: Desk) -> Reply:
    """The page after the one shown last, for a typed "more"."""
    shown = desk.context.listing
    if shown is None:
        return Reply(text=wording("unclear.why"))
    reply = turn_to(desk, shown.what, shown.of, shown.page + 1)
    return Reply(text=wording("all_told")) if desk.context.listing == shown else reply
