"""Players who are new to the book, alone or as a pair, with what is told of them at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.announced_first import awaited_in_full
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.names import ask_which, settled
from bot.chat.answers.notes import take
from bot.chat.names import index_of
from bot.chat.newcomer_words import newcomers_in
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid
from bot.chat.understand import understand_note
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId
from scouting_db.names import fold, likeliest_of

SHOWN = 3
"""Bearers of one name that a reply names."""


def add_player(desk: Desk, name: str) -> PlayerId:
    """A new opponent on the roster, undoable."""
    player = desk.book.add_player(capitalised(name))
    desk.record("add_player", {"player": player}, {})
    desk.changed()
    return player


def capitalised(name: str) -> str:
    """A name typed all in lower case as it is written; any other as it was typed."""
    words = " ".join(name.split())
    return words.title() if words == words.lower() else words


def add_newcomers(desk: Desk, typed: str) -> Reply:
    """ "add kenji mori, righty, slow feet": the player, and the note about them."""
    if not typed.strip():
        return Reply(text=wording("name.whom"))
    found = newcomers_in(typed)
    if not found.names:
        return Reply(text=wording("name.whom"))
    if not found.told:
        in_full = tuple(awaited_in_full(desk, name) or name for name in found.names)
        found = replace(found, names=in_full)
    if len(found.names) == 1 and not found.told and (bearers := _bearers(desk, found.names[0])):
        return _in_book_already(desk, found.names[0], bearers)
    if len(found.names) == 1 and not found.told and (part := _known_in_part(desk, found.names[0])):
        reply = _in_book_already(desk, found.names[0], [part])
        name = desk.view.name_of(part)
        text = wording("name.have_part").format(names=name, typed=capitalised(found.names[0]))
        return replace(reply, text=text)
    added = [_known(desk, name) or add_player(desk, name) for name in found.names]
    players = list(dict.fromkeys(added))
    desk.pair_of(players)
    desk.context = desk.context.looking_at(*players)
    *before, last = (desk.view.name_of(player) for player in players)
    names = " and ".join([", ".join(before), last] if before else [last])
    said = wording("name.added").format(name=names)
    if found.told:
        return _noted(desk, said, typed)
    change = desk.book.last_change(desk.chat.chat)
    return Reply(text=said, buttons=rows([] if change is None else [undo_button(change.change)]))


def pair_up_them(desk: Desk, said: BookSaid) -> Reply:
    """Two of them play together; what is told of the second is a note."""
    players = settled(said.mentions)
    if players is None:
        return ask_which(desk, said.text, said.mentions)
    if len(players) != 2:
        return Reply(text=wording("name.need_two"))
    before, is_new = desk.context, desk.view.pair_id(players) is None
    desk.pair_of(players)
    desk.changed()
    if desk.context.theirs and set(desk.context.theirs) < set(players):
        desk.context = replace(desk.context, theirs=players)
    desk.context = desk.context.looking_at(*players)
    one, other = (desk.view.name_of(player) for player in players)
    text = wording("name.paired").format(one=one, other=other)
    kept = {"players": list(players)}
    change = desk.record("pair", kept, {"context": before.to_json()}) if is_new else None
    if any(letter.isalnum() for letter in said.words):
        return _noted(desk, text, f"{other}:{said.words}")
    return Reply(text=text, buttons=rows([] if change is None else [undo_button(change)]))


def _known(desk: Desk, name: str) -> PlayerId | None:
    """The player of that name, or the only one called so in part: nobody is added once more."""
    meant = likeliest_of(index_of(desk.chat_view()).lookup(name, nearest=False))
    is_same = meant is not None and fold(meant.name) == fold(name)
    if meant is not None and is_same:
        return meant.player
    bearers = _bearers(desk, name)
    return bearers[0] if len(bearers) == 1 else None


def _bearers(desk: Desk, name: str) -> tuple[PlayerId, ...]:
    """Who of the book is called so in part or in full, letter for letter."""
    typed = set(fold(name).split())
    return tuple(row.player for row in desk.view.roster if typed <= set(fold(row.name).split()))


def _known_in_part(desk: Desk, name: str) -> PlayerId | None:
    """The only opponent whose whole name is a part of this one: Mori, where Kenji Mori is told."""
    typed = set(fold(name).split())
    found = [
        row.player
        for row in desk.view.roster
        if not row.ours and set(fold(row.name).split()) < typed
    ]
    return found[0] if len(found) == 1 else None


def _in_book_already(desk: Desk, typed: str, bearers: Sequence[PlayerId]) -> Reply:
    """Nobody is doubled unasked; somebody else of the same name is one tap away."""
    number = desk.context.pending_count + 1
    desk.context = desk.context.with_pending(
        Pending(number=number, typed=typed, text=typed, candidates=tuple(bearers[:SHOWN]))
    )
    desk.context = desk.context.looking_at(*bearers[:1])
    names = ", ".join(desk.view.name_of(player) for player in bearers[:SHOWN])
    add = Button(
        label=wording("name.add_another").format(typed=typed), payload=tap(Verb.ADD, number)
    )
    return Reply(text=wording("name.have").format(names=names), buttons=rows([add]))


def _noted(desk: Desk, before: str, text: str) -> Reply:
    reply = take(desk, understand_note(text, chat=desk.chat_view()))
    return replace(reply, text=f"{before}\n{reply.text}")
