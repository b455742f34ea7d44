"""One bot process for each file of tests, and chats of its own for each test."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count

import pytest
from bot_api import Server, running
from bot_process import BotProcess, bot_process

NUMBERS = count(11)


@pytest.fixture(scope="module")
def bot(tmp_path_factory: pytest.TempPathFactory) -> Iterator[BotProcess]:
    """The process, already fetching."""
    with running() as api, bot_process(api, tmp_path_factory.mktemp("bot")) as process:
        api.wait_until(lambda _: "getUpdates" in api.called())
        yield process


@pytest.fixture
def api(bot: BotProcess) -> Server:
    return bot.api


@pytest.fixture
def mira() -> int:
    """A private chat."""
    return next(NUMBERS)


@pytest.fixture
def tom() -> int:
    """Another private chat."""
    return next(NUMBERS)


@pytest.fixture
def group() -> int:
    """A group chat; a user's id is positive."""
    return -next(NUMBERS)
