"""Invitations: an editor gets a code to pass on, and whoever sends it to us is in."""

from __future__ import annotations

import re

from bot.chat.answers.desk import Desk
from bot.chat.commands import command
from bot.chat.payload import Verb, tap, word_in
from bot.chat.place import switch
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid
from bot.chat.wording import wording
from knowledge.regex import regex
from scouting_db.directory.invitations import Redeemed, code_in
from scouting_db.values import BookId, Role

ABOUT = ("invitation", 0)
"""What such a reply is about: the code is gone from the outbox once it is sent."""

CANCEL = "cancel"

_AS_EDITOR = regex(r"\b(?:editors?|edit|write|writer|writing|partner|full)\b", re.IGNORECASE)
_AS_READER = regex(r"\b(?:readers?|read|reading|view|viewer|look|see|only)\b", re.IGNORECASE)


def invite(desk: Desk, said: BookSaid) -> Reply:
    """A new invitation in the role that the words ask for; a reader's unless they say more."""
    as_editor = _AS_EDITOR.search(said.text) and not _AS_READER.search(said.text)
    return _invitation(desk, Role.EDITOR if as_editor else Role.READER)


def press_invite(desk: Desk, what: str) -> Reply:
    """The button for the other role, or to call back every code that is still open."""
    if what != CANCEL:
        return _invitation(desk, word_in(Role, what))
    if desk.role is not Role.EDITOR:
        return Reply(text=wording("share.editors_only"))
    desk.directory.cancel_invitations(desk.book_id)
    return Reply(text=wording("share.cancelled"))


def _invitation(desk: Desk, role: Role) -> Reply:
    if desk.chat.is_group:
        return Reply(text=wording("share.in_private"))
    if desk.role is not Role.EDITOR:
        return Reply(text=wording("share.editors_only"))
    code = desk.directory.invite(desk.book_id, role, by=desk.writer, now=desk.now)
    name = desk.directory.account_name(desk.chat.account)
    passed_on = wording("share.send_code") if name is None else wording("share.link")
    text = "\n".join(
        (
            wording(f"share.invitation_{role}"),
            code,
            passed_on.format(name=name, code=code),
            wording("share.once"),
        )
    )
    other = Role.READER if role is Role.EDITOR else Role.EDITOR
    buttons = [
        Button(label=wording(f"share.rather_{other}"), payload=tap(Verb.INVITE, other)),
        Button(label=wording("share.cancel"), payload=tap(Verb.INVITE, CANCEL)),
    ]
    return Reply(text=text, buttons=rows(buttons), about=ABOUT)


def join(desk: Desk, said: BookSaid) -> Reply:
    """A code typed, alone, after /join, or by a deep link's /start."""
    typed = command(said.text)
    code = code_in(said.text if typed is None else typed.rest)
    if code is None:
        return Reply(text=wording("share.no_code"))
    if desk.chat.is_group:
        return Reply(text=wording("share.join_in_private"))
    found = desk.directory.redeem(code, desk.writer, now=desk.now)
    if found.outcome is Redeemed.TOO_MANY:
        return Reply(text=wording("share.too_many"))
    if found.book is None or found.role is None:
        return Reply(text=wording("share.refused"))
    go_to(desk, found.book)
    key = "share.joined" if found.outcome is Redeemed.JOINED else "share.already"
    lines = (wording(key).format(book=found.name), wording(f"share.as_{found.role}"))
    buttons = [Button(label=wording("books.mine"), payload=tap(Verb.BOOK, "list"))]
    return Reply(text="\n".join(lines), buttons=rows(buttons))


def go_to(desk: Desk, book: BookId) -> None:
    """The chat speaks of that book from now on."""
    if book == desk.book_id:
        return
    switch(desk.directory, desk.chat, book)
    desk.moved_to = book
