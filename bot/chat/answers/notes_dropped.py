"""Notes taken back by whom, and of which skill, they were: one at once, several to choose from."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import replace

from bot.chat.answers.claims_told import cut
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.names import ask_which, settled
from bot.chat.answers.notes import PARSER_VERSION
from bot.chat.answers.notes_naming import notes_on
from bot.chat.names import find_mentions
from bot.chat.note_of_list_said import NONE_OF_THEM, place_told
from bot.chat.note_parts import CutNote, NotePart, cut_note, says_one_of
from bot.chat.notes_dropped import ToldOf, told_of, words_to_drop
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid
from bot.chat.shown_list import DROP, FORGET, Listing
from bot.chat.trait_holders_said import claims_of
from bot.chat.wording import wording
from bot.chat.words import words
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId
from scouting_db.values import NewObservation, NoteId, NoteRow

OFFERED = 3
"""Notes to choose from: as many as a phone shows without turning."""

LOOKED_AT = 20

SHORT_OF_A_NOTE = 2
"""Words a note is called by, all of them its own: of "the both hands thing" a note that says
"single hand" is none. Who tells more of it tells it in other words. Our own bound."""

_NEWEST = regex(r"\b(?:last|latest|newest|most recent)\b", re.IGNORECASE)
"""Which of several is meant: "forget the last note about okafor"."""


def drop_notes(desk: Desk, said: BookSaid) -> Reply:
    """The note meant, deleted with an undo; where several may be, each with its button.

    Of a note that says more than that, or something of others, the rest stays.
    """
    place = place_told(said.words)
    if place is not None:
        return _of_list(desk, place)
    players = settled(said.mentions)
    if players is None:
        return ask_which(desk, said.text, said.mentions)
    if not players:
        return _part_dropped(desk, said)
    player = players[0]
    desk.context = desk.context.looking_at(player)
    told = told_of(said.words)
    notes = notes_on(desk, player, limit=LOOKED_AT)
    asked = words_to_drop(said.text, said.mentions)
    cuts = {row.note: _cut(desk, row, player, told, asked) for row in notes}
    fitting = [row for row in notes if cuts[row.note] is not None]
    name = desk.view.short_name(player)
    if not notes:
        return Reply(text=wording("note.none").format(name=name))
    is_newest = _NEWEST.search(said.text) is not None
    only = cuts[fitting[0].note] if len(fitting) == 1 or (fitting and is_newest) else None
    if only is not None:
        says_more = _says_something(desk, only.left)
        return _parted(desk, fitting[0], only) if says_more else _dropped(desk, fitting[0])
    head = wording("note.drop_which" if fitting else "note.drop_other").format(name=name)
    shown = (fitting or notes)[:OFFERED]
    lines = [f"{n} {cut(row.text)}" for n, row in enumerate(shown, start=1)]
    buttons = [
        Button(label=wording("note.drop").format(n=n), payload=tap(Verb.NOTE, "delete", row.note))
        for n, row in enumerate(shown, start=1)
    ]
    asked_of = Listing(what=DROP, of=player, notes=tuple(row.note for row in shown))
    desk.context = replace(desk.context, listing=asked_of)
    return Reply(text="\n".join([head, *lines]), buttons=rows(buttons))


def _of_list(desk: Desk, place: int) -> Reply:
    """The note at that place of the list shown last, the first being 1; 0 for none of them."""
    shown = desk.context.listing
    if shown is None or place > len(shown.notes):
        return Reply(text=wording("unclear.too_old"))
    if place == NONE_OF_THEM:
        key = "forget.kept" if shown.what == FORGET else "note.drop_none"
        desk.context = replace(desk.context, listing=None)
        return Reply(text=wording(key))
    row = desk.book.note(NoteId(shown.notes[place - 1]))
    is_gone = row is None or row.deleted
    return Reply(text=wording("already_undone")) if row is None or is_gone else _dropped(desk, row)


def _part_dropped(desk: Desk, said: BookSaid) -> Reply:
    """The part that says so, of the newest note that does: the rest stays.

    What somebody else told goes only where the note says who did.
    """
    asked = words_to_drop(said.text, ())
    told = tuple(
        ToldOf(trait=one.trait, value=one.value, denied=one.denied)
        for one in (() if said.words else claims_of(f" {said.text}", desk.chat_view()))
    )
    newest = desk.book.recent_notes(limit=LOOKED_AT)
    row = next((one for one in newest if _says_so(one, told, asked)), None)
    if row is None:
        return Reply(text=wording("note.drop_no_word").format(words=said.text))
    only = next((_cut(desk, row, one, told, asked) for one in _told_of(desk, row)), None)
    is_left = only is not None and _says_something(desk, only.left)
    return _parted(desk, row, only) if only is not None and is_left else _dropped(desk, row)


def _says_so(row: NoteRow, told: Sequence[ToldOf], asked: Collection[str]) -> bool:
    """Whether the note claims it or has all its words."""
    is_claimed = any(each.is_told_by(one) for one in row.observations for each in told)
    return is_claimed or _says_all(row.text, asked)


def _says_all(text: str, asked: Collection[str]) -> bool:
    return all(says_one_of(text, (one,)) for one in asked)


def _says_something(desk: Desk, left: str) -> bool:
    """Whether what is left are more than names and small words: "with benedikt" tells nothing."""
    return bool(words_to_drop(left, find_mentions(words(left), desk.chat_view())))


def _told_of(desk: Desk, row: NoteRow) -> tuple[PlayerId, ...]:
    """Of whom the note is, by its claims or else by its words."""
    named = (one for one in find_mentions(words(row.text), desk.chat_view()) if not one.pronoun)
    told = (one.player for one in row.observations)
    return (*told, *(player for one in named for player in one.players))


def _cut(
    desk: Desk, row: NoteRow, player: PlayerId, told: Collection[ToldOf], asked: Collection[str]
) -> CutNote | None:
    """What goes of the note and what stays; None where it says nothing of what was asked.

    What tells the contrary of it stays: "okafor isn't slow" is no note that he is slow.
    """
    of_them = [one for one in row.observations if one.player == player and one.span is not None]
    same = [one for one in of_them if any(each.is_told_by(one) for each in told)]
    other = [one for one in of_them if one not in same and one.trait in {o.trait for o in told}]

    is_long = len(asked) > SHORT_OF_A_NOTE

    def goes(part: NotePart) -> bool:
        if part.players and player not in part.players:
            return False
        if not told and not asked:
            return True
        if any(_stands_in(part, one) for one in same):
            return True
        if any(_stands_in(part, one) for one in other):
            return False
        words_of_part = row.text[part.start : part.stop]
        if told:
            # Its words may stand in a note of something else: "single hand", for "both hands".
            return bool(asked) and _says_all(words_of_part, asked)
        return says_one_of(words_of_part, asked) and (is_long or _says_all(row.text, asked))

    view = replace(desk.chat_view(), focus=(player,))
    return cut_note(row.text, view, goes, name=desk.view.name_of)


def _stands_in(part: NotePart, one: NewObservation) -> bool:
    return one.span is not None and part.start <= one.span[0] < part.stop


def _parted(desk: Desk, row: NoteRow, cut_in_two: CutNote) -> Reply:
    """The note without that part: what is left of its words is kept as a note of its own.

    It says what it said before, and is not read again: that might find more in it.
    """
    read = [replace(one, span=None) for one in row.observations if cut_in_two.keeps(one.span)]
    kept = desk.book.add_note(cut_in_two.left, read, parser=PARSER_VERSION, chat=desk.chat.chat)
    desk.book.delete_note(row.note)
    targets = {"note": row.note, "kept": kept, "words": cut_in_two.gone}
    change = desk.record("part_note", targets, {})
    desk.changed()
    text = wording("note.parted").format(gone=cut(cut_in_two.gone), left=cut(cut_in_two.left))
    return Reply(text=text, buttons=rows([undo_button(change)]), about=("note", kept))


def _dropped(desk: Desk, row: NoteRow) -> Reply:
    desk.book.delete_note(row.note)
    change = desk.record("delete_note", {"note": row.note}, {})
    desk.changed()
    text = wording("undone").format(what=f"“{cut(row.text)}”")
    return Reply(text=text, buttons=rows([undo_button(change)]))
