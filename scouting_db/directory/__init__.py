"""The first door: people, chats, who may use which book, and the post.

`Directory(connection)` never commits; the turn does.
"""

from __future__ import annotations

from scouting_db.directory.callers import Callers
from scouting_db.directory.chats import Chats
from scouting_db.directory.erasing import Erasing
from scouting_db.directory.inbox import Incoming
from scouting_db.directory.invitations import Invitations
from scouting_db.directory.outbox import Outgoing
from scouting_db.directory.reminders import Reminders


class Directory(Callers, Chats, Invitations, Erasing, Incoming, Outgoing, Reminders):
    """Everything outside the books, on one connection (`scouting_db.session.Store`)."""
