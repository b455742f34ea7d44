"""The library's own HTTP client is not loaded, and nobody is given one by mistake."""

from __future__ import annotations

import subprocess
import sys

import pytest

from bot.channels.telegram_bot.no_httpx import HTTPXRequest

LOADED = """
import sys
import bot.channels.telegram_bot
import telegram
print(sorted({one.partition(".")[0] for one in sys.modules} & {"httpx", "httpcore", "telegram"}))
try:
    telegram.Bot("1:a")
except TypeError as error:
    print(error)
"""


def test_a_serving_process_loads_no_second_client() -> None:
    done = subprocess.run(
        [sys.executable, "-c", LOADED], capture_output=True, text=True, check=True
    )
    assert done.stdout.splitlines() == [
        "['telegram']",
        "telegram.Bot(...) must be given both requests (contact.new_bot)",
    ]


def test_it_says_what_to_give() -> None:
    with pytest.raises(TypeError, match="both requests"):
        HTTPXRequest(connection_pool_size=1)
