"""Words that are not for the book: handed back with what is first to be done, and not stored."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.private_words import is_private, playing_part
from bot.chat.reply import Reply
from bot.chat.said import AgreementSaid, DetailSaid, NoteSaid, RallySaid, Understood
from bot.chat.understand import understand_note
from bot.chat.wording import wording
from bot.chat.words import words
from knowledge.complaints import complains_of_us
from scouting_db.names import fold

ABOUT = ("handed_back", 0)
"""What such a reply is about: its text is gone from the outbox once it is sent."""


def handed_back(desk: Desk, text: str) -> Reply:
    """The text as typed, which stays nowhere here once this is sent."""
    blank(desk)
    return Reply(text="\n".join((wording("note.body"), text)), about=ABOUT)


def blank(desk: Desk) -> None:
    """The words as they came in are gone with this turn."""
    if desk.people is not None:
        desk.people.blank_row(desk.inbox)


def kept_of(desk: Desk, said: NoteSaid) -> NoteSaid | None:
    """The part of the note about play, where it stands alone and names its player; else None."""
    part = playing_part(said.text)
    if not part:
        return None
    read = understand_note(part, chat=desk.chat_view())
    names_all = all(one.certainty == "sure" for one in read.mentions)
    is_whole = bool(read.mentions) and names_all and bool(read.claims) and not is_private(part)
    return read if is_whole else None


def of_play(understood: Understood) -> Understood:
    """The same with only its words about play: those of a rally or an agreement are stored too."""
    match understood:
        case RallySaid() | DetailSaid() if is_private(understood.text):
            return replace(understood, text=playing_part(understood.text))
        case AgreementSaid() if is_private(understood.text):
            return replace(understood, text=playing_part(understood.text), value=understood.key)
    return understood


def forget_private(desk: Desk, text: str) -> None:
    """Whatever the message was understood as: no private words of it stay in the database.

    A complaint of our own stays as the chat's last question, until the next one: what hurts may
    be asked about further.
    """
    if not is_private(text):
        return
    blank(desk)
    if _is_of_us(desk, text):
        return
    context = desk.context
    asked = context.asked
    if asked is not None and is_private(asked.text):
        asked = replace(asked, text=playing_part(asked.text))
    pendings = tuple(one for one in context.pendings if not is_private(one.text))
    desk.context = replace(context, asked=asked, pendings=pendings)


def _is_of_us(desk: Desk, text: str) -> bool:
    """Whether one of us hurts, and no opponent is named beside."""
    ours = [desk.view.name_of(one).split()[0] for one in desk.ours]
    others = {
        part
        for row in desk.view.roster
        if row.player not in desk.ours
        for part in fold(row.name).split()
    }
    names_others = not others.isdisjoint(word.folded for word in words(text))
    return not names_others and complains_of_us(text, names=ours)
