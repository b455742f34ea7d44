"""Words that are not for the book: handed back with what is first to be done, and not stored."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.private_words import is_private, playing_part
from bot.chat.question import AgreementSaid, DetailSaid, NoteSaid, RallySaid, Understood
from bot.chat.reply import Reply
from bot.chat.understand import understand_note
from bot.chat.wording import wording

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
