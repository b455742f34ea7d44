"""The messenger's channel: fetch, store, take turns, send. Only this package knows its library."""

import os
import sys

from bot.channels.telegram_bot import no_httpx

# The library then gives periods as timedelta, without warning at each "retry after".
os.environ.setdefault("PTB_TIMEDELTA", "true")

# The library loads an HTTP client where we give it another.
sys.modules.setdefault("telegram.request._httpxrequest", no_httpx)

from bot.channels.telegram_bot.polling import run  # noqa: E402  both must stand before the library

__all__ = ["run"]
