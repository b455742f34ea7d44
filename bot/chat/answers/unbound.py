"""A group that no book is bound to: how an editor binds one, and nothing else."""

from __future__ import annotations

from bot.chat.book_said import book_said
from bot.chat.commands import command
from bot.chat.payload import BadPayloadError, Tap, Verb, tap, unstamped
from bot.chat.place import own_book, switch
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookVerb
from bot.chat.sharing_words import SHARING_COMMANDS
from bot.chat.wording import wording
from bot.chat.words import words
from bot.post import Incoming, IncomingKind
from scouting_db.directory import Directory
from scouting_db.values import BookId, ChatRow, PersonId, Role

_ALWAYS_TOLD = frozenset(["help", "privacy"])

MINE, FRESH = "mine", "fresh"
"""Which book a group gets: the one that who presses uses, or a new one."""


def without_book(
    directory: Directory, chat: ChatRow, person: PersonId, incoming: Incoming
) -> Reply:
    """What is said to a message in such a group; a book is bound by a tap and nothing else."""
    if incoming.kind is IncomingKind.TAP:
        return _tapped(directory, chat, person, incoming)
    typed = command(incoming.text)
    if typed is not None and typed.word in _ALWAYS_TOLD:
        return Reply(text=wording(f"{typed.word}.text").strip())
    if not _asks_to_bind(incoming.text):
        return Reply(text=wording("group.no_book"))
    if is_anonymous(incoming):
        return Reply(text=wording("group.anonymous"))
    return offer()


def offer() -> Reply:
    """Which book the group may get; names of books are not told in a group."""
    buttons = [
        Button(label=wording("group.mine"), payload=tap(Verb.BOOK, "bind", MINE)),
        Button(label=wording("group.fresh"), payload=tap(Verb.BOOK, "bind", FRESH)),
    ]
    return Reply(text=wording("group.which"), buttons=rows(buttons))


def is_anonymous(incoming: Incoming) -> bool:
    """An admin who hides writes as the group itself (Bot API: sender_chat): nobody we know."""
    return incoming.user_id == incoming.chat


def _asks_to_bind(text: str) -> bool:
    typed = command(text)
    if typed is not None:
        return typed.word == "start" or SHARING_COMMANDS.get(typed.word) is BookVerb.BIND
    found = book_said(text, words(text), ())
    return found is not None and found.verb is BookVerb.BIND


def _tapped(directory: Directory, chat: ChatRow, person: PersonId, incoming: Incoming) -> Reply:
    payload, _ = unstamped(incoming.payload or "")
    try:
        tapped = Tap.parse(payload)
    except BadPayloadError:
        return Reply(text=wording("unclear.too_old"))
    if tapped.verb is not Verb.BOOK or tapped.args not in (("bind", MINE), ("bind", FRESH)):
        return Reply(text=wording("group.no_book"))
    if is_anonymous(incoming):
        return Reply(text=wording("group.anonymous"))
    is_mine = tapped.args[1] == MINE
    bound = _book_in_use(directory, chat, person, incoming) if is_mine else None
    if is_mine and bound is None:
        return Reply(text=wording("group.none_to_edit"))
    if bound is None:
        name = wording("group.name").format(name=incoming.user_name)
        bound = directory.create_book(name, owner=person)
    switch(directory, chat, bound)
    return Reply(text=wording("group.bound"))


def _book_in_use(
    directory: Directory, chat: ChatRow, person: PersonId, incoming: Incoming
) -> BookId | None:
    """The book of the person's own chat, if they may edit it; else the oldest that they may."""
    private = directory.chat(chat.account, incoming.user_id)
    if private.book is not None and directory.role(private.book, person) is Role.EDITOR:
        return private.book
    return own_book(directory.memberships(person))
