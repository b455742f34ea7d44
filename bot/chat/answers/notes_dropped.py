"""Notes taken back by whom, and of which skill, they were: one at once, several to choose from."""

from __future__ import annotations

from bot.chat.answers.claims_told import cut
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.names import ask_which, settled
from bot.chat.answers.notes_naming import notes_on
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId, Trait
from scouting_db.values import NoteRow

OFFERED = 3
"""Notes to choose from: as many as a phone shows without turning."""

LOOKED_AT = 20


def drop_notes(desk: Desk, said: BookSaid) -> Reply:
    """The note meant, deleted with an undo; where several may be, each with its button.

    So is the only one that says it where it says more than that.
    """
    players = settled(said.mentions)
    if players is None:
        return ask_which(desk, said.text, said.mentions)
    player = players[0]
    desk.context = desk.context.looking_at(player)
    traits = {Trait(trait) for trait in said.words.split()}
    notes = notes_on(desk, player, limit=LOOKED_AT)
    fitting = [row for row in notes if not traits or _claims(row, player, traits)]
    name = desk.view.short_name(player)
    if not notes:
        return Reply(text=wording("note.none").format(name=name))
    if len(fitting) == 1 and _says_only(fitting[0], traits):
        return _dropped(desk, fitting[0])
    head = wording("note.drop_which" if fitting else "note.drop_other").format(name=name)
    shown = (fitting or notes)[:OFFERED]
    lines = [f"{n} {cut(row.text)}" for n, row in enumerate(shown, start=1)]
    buttons = [
        Button(label=wording("note.drop").format(n=n), payload=tap(Verb.NOTE, "delete", row.note))
        for n, row in enumerate(shown, start=1)
    ]
    return Reply(text="\n".join([head, *lines]), buttons=rows(buttons))


def _claims(row: NoteRow, player: PlayerId, traits: set[Trait]) -> bool:
    return any(one.player == player and one.trait in traits for one in row.observations)


def _says_only(row: NoteRow, traits: set[Trait]) -> bool:
    return not traits or all(one.trait in traits for one in row.observations)


def _dropped(desk: Desk, row: NoteRow) -> Reply:
    desk.book.delete_note(row.note)
    change = desk.record("delete_note", {"note": row.note}, {})
    desk.changed()
    text = wording("undone").format(what=f"“{cut(row.text)}”")
    return Reply(text=text, buttons=rows([undo_button(change)]))
