"""The messenger's channel: fetch, store, take turns, send. Only this package knows its library."""

import os

# The library then gives periods as timedelta, without warning at each "retry after".
os.environ.setdefault("PTB_TIMEDELTA", "true")

from bot.channels.telegram_bot.polling import run

__all__ = ["run"]
