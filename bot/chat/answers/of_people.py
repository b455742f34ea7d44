"""What is asked about members, books and privacy, by words or by a button, to its answer."""

from __future__ import annotations

from bot.chat.answers import books, forgetting, membership, sharing
from bot.chat.answers.desk import Desk
from bot.chat.payload import Tap, Verb
from bot.chat.reply import Reply
from bot.chat.said import BookSaid, BookVerb
from bot.chat.wording import wording


def manage_people(desk: Desk, said: BookSaid) -> Reply:
    """What was said; ValueError for a verb that is none of these."""
    match said.verb:
        case BookVerb.SHARE:
            return sharing.invite(desk, said)
        case BookVerb.JOIN:
            return sharing.join(desk, said)
        case BookVerb.MEMBERS:
            return membership.members(desk)
        case BookVerb.REMOVE_MEMBER:
            return membership.remove_said(desk, said)
        case BookVerb.LEAVE:
            return membership.leave(desk)
        case BookVerb.BOOKS:
            return books.books(desk, said)
        case BookVerb.BIND:
            return books.bind(desk)
        case BookVerb.UNBIND:
            return books.unbind(desk)
        case BookVerb.PRIVACY:
            return _privacy(desk, said)
        case BookVerb.FORGET:
            return forgetting.forget(desk, said)
        case BookVerb.FORGET_ME:
            return forgetting.forget_me(desk)
        case _:
            raise ValueError(f"not about people or books: {said.verb}")


def _privacy(desk: Desk, said: BookSaid) -> Reply:
    """What is kept and who sees it; who asks of themselves also how to read what is noted."""
    lines = [wording("privacy.text").strip()]
    writer = desk.context.asker
    if writer is not None and "about me" in said.text.lower():
        name = desk.view.short_name(writer)
        lines.append(wording("privacy.own_notes").format(name=name))
    return Reply(text="\n".join(lines))


def press_of_people(desk: Desk, tapped: Tap) -> Reply:
    """What was tapped."""
    match tapped.verb:
        case Verb.INVITE:
            return sharing.press_invite(desk, *tapped.args)
        case Verb.MEMBER:
            return membership.press_member(desk, *tapped.args)
        case Verb.BOOK:
            return books.press_book(desk, tapped.args)
        case _:
            return forgetting.press_forget(desk, tapped.args)
