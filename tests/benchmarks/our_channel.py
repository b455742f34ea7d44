"""Our channel with a turn that only echoes: inbox, outbox and sending by themselves."""

from __future__ import annotations

import asyncio
import os
import sys

from sqlalchemy import Connection

from bot.channels.telegram_bot import run
from bot.chat.reply import Reply
from bot.settings import Settings
from scouting_db.values import InboxRow, Micros


def echo(_connection: Connection, row: InboxRow, *, now: Micros) -> tuple[Reply, ...]:  # noqa: ARG001
    """The text back."""
    return (Reply(text=str(row.payload["text"])),)


if __name__ == "__main__":
    sys.exit(asyncio.run(run(Settings.from_environment(os.environ), turn=echo)))
