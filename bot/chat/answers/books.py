"""Which book a chat speaks of: one's own books, switching between them, and a group's."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.membership import press_leave
from bot.chat.answers.sharing import go_to
from bot.chat.payload import BadPayloadError, Verb, number_in, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid
from bot.chat.wording import wording
from scouting_db.names import fold
from scouting_db.values import BookId, Membership, Role

SHOWN_BOOKS = 6
LONGEST_LABEL = 30


def books(desk: Desk, said: BookSaid | None = None) -> Reply:
    """The writer's books, the one in use marked; "switch to mira's book" goes there at once."""
    if desk.chat.is_group:
        return Reply(text=wording("books.in_private"))
    mine = desk.directory.memberships(desk.writer)
    named = [one for one in mine if said and said.words and fold(one.name) == fold(said.words)]
    if len(named) == 1:
        return _switched(desk, named[0])
    lines = [wording("books.count").format(count=len(mine))]
    lines += [_line(desk, one) for one in mine[:SHOWN_BOOKS]]
    buttons = [
        Button(label=one.name[:LONGEST_LABEL], payload=tap(Verb.BOOK, "use", one.book))
        for one in mine[:SHOWN_BOOKS]
        if one.book != desk.book_id
    ]
    return Reply(text="\n".join(lines), buttons=rows(buttons))


def _line(desk: Desk, one: Membership) -> str:
    key = "books.this" if one.book == desk.book_id else "books.other"
    return wording(key).format(name=one.name, role=wording(f"share.role_{one.role}"))


def press_book(desk: Desk, args: tuple[str, ...]) -> Reply:
    """A button about books; what its presser may do is looked up again."""
    match args:
        case ("list",):
            return books(desk)
        case ("leave",):
            return press_leave(desk)
        case ("use", number):
            return _use(desk, BookId(number_in(number)))
        case ("bind", "mine" | "fresh"):
            return Reply(text=wording("group.has_one"))
        case _:
            raise BadPayloadError(f"nothing to do with a book: {args}")


def _use(desk: Desk, book: BookId) -> Reply:
    if desk.chat.is_group:
        return Reply(text=wording("books.in_private"))
    mine = desk.directory.memberships(desk.writer)
    wanted = next((one for one in mine if one.book == book), None)
    return Reply(text=wording("share.not_in")) if wanted is None else _switched(desk, wanted)


def _switched(desk: Desk, one: Membership) -> Reply:
    go_to(desk, one.book)
    lines = (wording("books.now").format(name=one.name), wording(f"share.as_{one.role}"))
    return Reply(text="\n".join(lines))


def bind(desk: Desk) -> Reply:
    """Asked for where a book is in use already."""
    key = "group.has_one" if desk.chat.is_group else "group.only_in_group"
    return Reply(text=wording(key))


def unbind(desk: Desk) -> Reply:
    """The group has no book any more; only its editors may."""
    if not desk.chat.is_group:
        return Reply(text=wording("group.only_in_group"))
    if desk.role is not Role.EDITOR:
        return Reply(text=wording("share.editors_only"))
    desk.directory.leave_book(desk.chat.chat)
    desk.directory.save_context(desk.chat.chat, {})
    desk.is_gone = True
    return Reply(text=wording("group.unbound"))
