"""Members of a book: who they are, their roles, removing one, and leaving oneself."""

from __future__ import annotations

from enum import StrEnum

from bot.chat.answers.desk import Desk
from bot.chat.answers.sharing import CANCEL
from bot.chat.payload import Verb, number_in, tap, word_in
from bot.chat.place import move_to_own
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid
from bot.chat.wording import wording
from bot.chat.words import words
from scouting_db.names import fold
from scouting_db.values import BookId, MemberRow, NewPost, PersonId, PostKind, Role

SHOWN_MEMBERS = 8
"""Of more the rest is only counted: a phone shows no more."""


class Act(StrEnum):
    """What an editor may do with a member."""

    SHOW = "show"
    REMOVE = "remove"
    REALLY = "really"
    EDITOR = "editor"
    READER = "reader"


def members(desk: Desk) -> Reply:
    """Who may use the book; for its members only."""
    if desk.role is None:
        return Reply(text=wording("share.members_only"))
    everyone = desk.directory.members(desk.book_id)
    lines = [wording("share.members").format(count=len(everyone))]
    lines += [_line(desk, each) for each in everyone[:SHOWN_MEMBERS]]
    if len(everyone) > SHOWN_MEMBERS:
        lines.append(wording("share.more").format(count=len(everyone) - SHOWN_MEMBERS))
    return Reply(text="\n".join(lines), buttons=rows(_member_buttons(desk, everyone)))


def _line(desk: Desk, each: MemberRow) -> str:
    key = "share.you_line" if each.person == desk.writer else "share.member_line"
    return wording(key).format(name=each.name, role=wording(f"share.role_{each.role}"))


def _member_buttons(desk: Desk, everyone: tuple[MemberRow, ...]) -> list[Button]:
    if desk.chat.is_group:
        return []
    if desk.role is not Role.EDITOR:
        return [Button(label=wording("share.leave"), payload=tap(Verb.BOOK, "leave"))]
    others = [each for each in everyone[:SHOWN_MEMBERS] if each.person != desk.writer]
    buttons = [
        Button(label=each.name[:LONGEST_LABEL], payload=tap(Verb.MEMBER, Act.SHOW, each.person))
        for each in others
    ]
    buttons.append(Button(label=wording("share.invite"), payload=tap(Verb.INVITE, Role.READER)))
    if desk.directory.open_invitations(desk.book_id, now=desk.now):
        buttons.append(Button(label=wording("share.cancel"), payload=tap(Verb.INVITE, CANCEL)))
    return buttons


LONGEST_LABEL = 24
"""Characters of a name on a button, as a phone shows them."""


def remove_said(desk: Desk, said: BookSaid) -> Reply:
    """ "Remove tom from the book": asked once more by a button; without a known name, the list."""
    if desk.role is not Role.EDITOR:
        return Reply(text=wording("share.editors_only"))
    typed = {word.folded for word in words(said.text)}
    found = [
        each
        for each in desk.directory.members(desk.book_id)
        if not typed.isdisjoint(fold(each.name).split())
    ]
    return _sure(found[0]) if len(found) == 1 else members(desk)


def press_member(desk: Desk, action: str, number: str) -> Reply:
    """A button of the list. Its presser's role and the member are looked up again."""
    act, person = word_in(Act, action), PersonId(number_in(number))
    if desk.role is not Role.EDITOR:
        return Reply(text=wording("share.editors_only"))
    everyone = desk.directory.members(desk.book_id)
    member = next((each for each in everyone if each.person == person), None)
    if member is None:
        return Reply(text=wording("share.not_in"))
    match act:
        case Act.SHOW:
            return _shown(member)
        case Act.REMOVE:
            return _sure(member)
        case Act.REALLY:
            return _removed(desk, member)
        case Act.EDITOR | Act.READER:
            return _changed(desk, member, Role(act.value))


def _shown(member: MemberRow) -> Reply:
    other = Role.READER if member.role is Role.EDITOR else Role.EDITOR
    buttons = [
        Button(
            label=wording(f"share.make_{other}"),
            payload=tap(Verb.MEMBER, Act(other.value), member.person),
        ),
        Button(label=wording("share.remove"), payload=tap(Verb.MEMBER, Act.REMOVE, member.person)),
    ]
    role = wording(f"share.role_{member.role}")
    text = wording("share.member_line").format(name=member.name, role=role)
    return Reply(text=text, buttons=rows(buttons))


def _sure(member: MemberRow) -> Reply:
    button = Button(
        label=wording("share.really"), payload=tap(Verb.MEMBER, Act.REALLY, member.person)
    )
    text = wording("share.remove_sure").format(name=member.name)
    return Reply(text=text, buttons=rows([button]))


def _removed(desk: Desk, member: MemberRow) -> Reply:
    if desk.directory.is_last_editor(desk.book_id, member.person):
        return Reply(text=wording("share.last_editor"))
    if member.person == desk.writer:
        return _left(desk)
    take_out(desk, desk.book_id, member.person)
    return Reply(text=wording("share.removed").format(name=member.name))


def take_out(desk: Desk, book: BookId, person: PersonId) -> None:
    """No longer a member, and told so in their own chat, which speaks of the book no more."""
    desk.directory.remove_member(book, person)
    told = NewPost(kind=PostKind.SEND, payload={"text": wording("share.taken_out")})
    for chat in desk.directory.take_from_chats(book, person):
        desk.directory.post(chat, None, [told], now=desk.now)


def _changed(desk: Desk, member: MemberRow, role: Role) -> Reply:
    loses = role is Role.READER and member.role is Role.EDITOR
    if loses and desk.directory.is_last_editor(desk.book_id, member.person):
        return Reply(text=wording("share.last_editor"))
    desk.directory.add_member(desk.book_id, member.person, role)
    key = f"share.now_{role}"
    return Reply(text=wording(key).format(name=member.name))


def leave(desk: Desk) -> Reply:
    """Leaving is asked once more; the last editor cannot lock everybody out."""
    refusal = _cannot_leave(desk)
    if refusal is not None:
        return refusal
    button = Button(label=wording("share.leave"), payload=tap(Verb.BOOK, "leave"))
    return Reply(text=wording("share.leave_sure"), buttons=rows([button]))


def press_leave(desk: Desk) -> Reply:
    """The button under it."""
    return _cannot_leave(desk) or _left(desk)


def _cannot_leave(desk: Desk) -> Reply | None:
    if desk.chat.is_group:
        return Reply(text=wording("share.in_private"))
    if desk.role is None:
        return Reply(text=wording("share.not_in"))
    if not desk.directory.is_last_editor(desk.book_id, desk.writer):
        return None
    is_alone = len(desk.directory.members(desk.book_id)) == 1
    return Reply(text=wording("share.alone" if is_alone else "share.last_editor"))


def _left(desk: Desk) -> Reply:
    desk.directory.remove_member(desk.book_id, desk.writer)
    name = desk.incoming.user_name
    desk.moved_to = move_to_own(desk.directory, desk.chat, desk.writer, user_name=name)
    return Reply(text=wording("share.left"))
