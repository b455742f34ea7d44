"""The messenger's channel: fetch, store, take turns, send. Only this package knows its library."""

import os
import sys
from types import ModuleType
from typing import cast

# The library then gives periods as timedelta, without warning at each "retry after".
os.environ.setdefault("PTB_TIMEDELTA", "true")

# The library loads an HTTP client (we give it another), and that its own command line, for which it
# takes whatever terminal libraries happen to be installed: 8 MB. Without them it does without.
sys.modules.setdefault("httpx._main", cast(ModuleType, None))

from bot.channels.telegram_bot.polling import run  # noqa: E402  both must stand before the library

__all__ = ["run"]
