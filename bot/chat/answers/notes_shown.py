"""Notes read back in their own words: of whom, of a day, the newest, or how many there are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.claims_told import claim_words, cut
from bot.chat.answers.desk import Desk
from bot.chat.answers.listing import show_page
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.answers.notes_naming import notes_on
from bot.chat.answers.plan_book import day_of
from bot.chat.note_manner import is_hedged
from bot.chat.notes_asked import BARE, COUNT, TODAY, UNSURE, YESTERDAY
from bot.chat.reply import Reply
from bot.chat.said import BookSaid
from bot.chat.shown_list import Listing
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId
from scouting_db.values import NewObservation, NoteRow

SHOWN_NOTES = 5
SHOWN_OF_SEVERAL = 3
"""Of each, where several were named."""

LOOKED_AT = 200
"""The newest notes, among which a day's are looked for."""


def show_notes(desk: Desk, said: BookSaid) -> Reply:
    """The newest notes asked for; or only their number."""
    mentions = by_pair(desk, said.mentions)
    players = settled(mentions)
    if players is None:
        return ask_which(desk, said.text, mentions)
    asked = [one for one in said.words.split() if one in (COUNT, TODAY, YESTERDAY, UNSURE, BARE)]
    if not players and said.words and not asked:
        return Reply(text=wording("name.whom"))
    if asked == [COUNT] and not players:
        notes = len(desk.book.words_of_notes())
        return Reply(text=_count(notes) if notes else _none(asked))
    if not players:
        rows = _on_days(desk, desk.book.recent_notes(limit=LOOKED_AT), asked)
        if BARE in asked:
            rows = [row for row in rows if not row.observations]
        return _told(rows, asked, wording(_whole(asked)), _none(asked))
    desk.context = desk.context.looking_at(*players)
    if len(players) == 1 and not asked:
        return notes_page(desk, players[0], 0)
    most = SHOWN_NOTES if len(players) == 1 else SHOWN_OF_SEVERAL
    parts = []
    for player in players:
        name = desk.view.short_name(player)
        limit = LOOKED_AT if asked else most
        rows = _on_days(desk, notes_on(desk, player, limit=limit), asked)
        if UNSURE in asked:
            rows = [row for row in rows if _is_unsure(row, player)]
        key = "note.none_unsure" if UNSURE in asked else "note.none"
        none = wording(key).format(name=name)
        of = player if len(players) == 1 else None
        parts.append(
            _told(rows, asked, f"{name}, newest first:", none, name=name, most=most, of=of)
        )
    return Reply(text="\n".join(part.text for part in parts))


def notes_page(desk: Desk, player: PlayerId, page: int) -> Reply:
    """The newest notes on the player, and behind "more" the older ones."""
    name = desk.view.short_name(player)
    rows = notes_on(desk, player, limit=LOOKED_AT)
    newest = _told(
        rows, (), f"{name}, newest first:", wording("note.none").format(name=name), of=player
    )
    older = [_lines(row, player) for row in rows[SHOWN_NOTES:]]
    shown = tuple(row.note for row in rows[:SHOWN_NOTES])
    if not older:
        only = Listing(what="notes", of=player, notes=shown)
        desk.context = replace(desk.context, listing=only)  # behind it "and hale" asks for his
        return newest
    listing = Listing(what="notes", of=player, page=page, notes=() if page else shown)
    count = wording("note.more").format(count=len(older))
    return show_page(desk, listing, older, first=[*newest.text.split("\n"), count])


def _told(
    rows: Sequence[NoteRow],
    asked: Sequence[str],
    head: str,
    none: str,
    *,
    name: str = "",
    most: int = SHOWN_NOTES,
    of: PlayerId | None = None,
) -> Reply:
    """The rows with a head; with what was read in them of the one player asked for."""
    if not rows:
        return Reply(text=none)
    if COUNT in asked:
        return Reply(text=f"{name}: {_count(len(rows))}" if name else _count(len(rows)))
    lines = [line for row in rows[:most] for line in _lines(row, of)]
    left = len(rows) - most
    more = (
        [wording("note.more").format(count=left)] if left > 0 and {TODAY, BARE} & {*asked} else []
    )
    return Reply(text="\n".join([head, *lines, *more]))


def _lines(row: NoteRow, of: PlayerId | None) -> list[str]:
    words = f"· {cut(row.text)}"
    if of is None:
        return [words]
    read = [_said(one) for one in row.observations if one.player == of]
    return [
        words,
        wording("note.read_as").format(claims=", ".join(read) or wording("note.no_trait")),
    ]


def _said(one: NewObservation) -> str:
    return claim_words(one) + (wording("note.unsure") if is_hedged(one.weight) else "")


def _is_unsure(row: NoteRow, player: PlayerId) -> bool:
    return any(one.player == player and is_hedged(one.weight) for one in row.observations)


def _count(notes: int) -> str:
    return f"{notes} note{'' if notes == 1 else 's'}."


def _on_days(desk: Desk, rows: Sequence[NoteRow], asked: Sequence[str]) -> Sequence[NoteRow]:
    back = 0 if TODAY in asked else 1 if YESTERDAY in asked else None
    if back is None:
        return rows
    day = day_of(desk, desk.now) - back
    return [row for row in rows if day_of(desk, row.at) == day]


def _whole(asked: Sequence[str]) -> str:
    if BARE in asked:
        return "note.only_words"
    return "note.of_today" if TODAY in asked else "note.newest"


def _none(asked: Sequence[str]) -> str:
    if BARE in asked:
        return wording("note.all_read")
    days = [one for one in asked if one in (TODAY, YESTERDAY)]
    return wording("note.none_day").format(day=days[0]) if days else wording("note.none_at_all")
