"""An edited message: its note or its rally is read again."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers import notes, rallies
from bot.chat.answers.desk import Desk
from bot.chat.answers.handed_back import handed_back
from bot.chat.private_words import is_private
from bot.chat.reply import Reply
from bot.chat.said import RallySaid, Understood, VideoSaid
from bot.chat.understand import understand, understand_note
from bot.chat.wording import wording
from scouting_db.values import MatchId

Edited = tuple[Understood | None, Reply]
"""What was understood of the new words, if anything was done with them, and the reply."""


def read_anew(desk: Desk, *, may_write: bool) -> Edited:
    """An edited message: its note or its rally is read again; else nothing changes."""
    message = desk.incoming.external_message_id
    rally = None if message is None else desk.book.rally_of_message(desk.chat.chat, message)
    if rally is not None and may_write:
        return _edited_rally(desk, *rally)
    row = None if message is None else desk.book.note_of_message(desk.chat.chat, message)
    if row is None or row.deleted or not may_write:
        return None, Reply(text=wording("media.edited"))
    if is_private(desk.incoming.text):
        return None, handed_back(desk, desk.incoming.text)
    said = understand_note(desk.incoming.text, chat=desk.chat_view())
    desk.book.add_note(desk.incoming.text, chat=desk.chat.chat)
    reply = notes.read_again(desk, row.note, said, origin="parsed")
    return said, reply


def _edited_rally(desk: Desk, match: MatchId, n: int) -> Edited:
    """The rally that the message told, told anew."""
    view = replace(desk.chat_view(), match_on=True)
    understood = understand(desk.incoming.text, chat=view)
    if isinstance(understood[0], VideoSaid):
        # One message of many rallies: none of them may take all its lines for its own.
        return understood[0], Reply(text=wording("video.edited"))
    told = next((one for one in understood if isinstance(one, RallySaid)), None)
    reply = rallies.tell_anew(desk, match, n, desk.incoming.text, told)
    if reply is None:
        return told, Reply(text=wording("media.edited"))
    return told, reply
