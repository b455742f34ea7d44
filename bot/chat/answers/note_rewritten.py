"""A note that says something else from now on: its claims replaced, with an undo."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers import notes
from bot.chat.answers.claims_told import observed_line
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.wording import wording
from scouting_db.values import NewObservation, NoteRow


def replace_claims(desk: Desk, row: NoteRow, fresh: Sequence[NewObservation]) -> Reply:
    """New claims stand in for older ones about the same trait of the same player."""
    told = {(one.player, one.trait) for one in fresh}
    kept = [one for one in row.observations if (one.player, one.trait) not in told]
    return rewrite(desk, row, [*kept, *fresh])


def take_out(desk: Desk, row: NoteRow, gone: Sequence[NewObservation]) -> Reply:
    """The note without these claims; its words stay."""
    told = wording("note.no_longer").format(claims=observed_line(desk, gone))
    left = [one for one in row.observations if one not in gone]
    return replace(rewrite(desk, row, left), text=told)


def rewrite(desk: Desk, row: NoteRow, observations: Sequence[NewObservation]) -> Reply:
    desk.book.replace_observations(
        row.note, observations, origin="corrected", parser=notes.PARSER_VERSION
    )
    change = desk.record(
        "read_note",
        {"note": row.note, "after": notes.stored(observations)},
        {"observations": notes.stored(row.observations)},
    )
    desk.changed()
    players = dict.fromkeys(one.player for one in observations)
    desk.context = replace(desk.context.looking_at(*players), noted=row.note)
    text = wording("note.changed").format(claims=observed_line(desk, observations))
    return Reply(text=text, buttons=rows([undo_button(change)]), about=("note", row.note))
