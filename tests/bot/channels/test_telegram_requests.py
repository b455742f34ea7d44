"""How a request reaches the server: directly, or through the proxy that the environment names."""

from __future__ import annotations

import asyncio
from collections.abc import Iterator
from urllib.parse import urlsplit

import pytest
from bot_api import TOKEN, Server, running
from telegram.error import NetworkError

from bot.channels.telegram_bot.requests import AiohttpRequest

NOWHERE = "http://nowhere.invalid"
"""A host that has no address (RFC 2606)."""

NO_SERVER = "http://127.0.0.1:9"
"""The port of "discard", on which nothing listens here."""


@pytest.fixture(scope="module")
def api() -> Iterator[Server]:
    with running() as server:
        yield server


@pytest.fixture(autouse=True)
def no_proxy_of_ours(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("http_proxy", "https_proxy", "all_proxy", "no_proxy"):
        monkeypatch.delenv(name, raising=False)
        monkeypatch.delenv(name.upper(), raising=False)


def statuses(root: str, *, times: int = 1) -> list[int]:
    """Of so many questions who the bot is."""

    async def ask() -> list[int]:
        request = AiohttpRequest(connections=1)
        await request.initialize()
        try:
            url = f"{root}/bot{TOKEN}/getMe"
            return [(await request.do_request(url, "POST"))[0] for _ in range(times)]
        finally:
            await request.shutdown()

    return asyncio.run(ask())


def test_without_a_proxy_it_goes_directly(api: Server) -> None:
    assert statuses(api.root) == [200]


def test_the_environment_s_proxy_is_asked(api: Server, monkeypatch: pytest.MonkeyPatch) -> None:
    """RFC 9112, 3.2.2: a proxy gets the whole address; the stand-in answers whatever the host."""
    monkeypatch.setenv("HTTP_PROXY", api.root)
    assert statuses(NOWHERE, times=2) == [200, 200]


def test_a_proxy_that_is_not_there_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("HTTP_PROXY", NO_SERVER)
    with pytest.raises(NetworkError):
        statuses(NOWHERE)


@pytest.mark.parametrize("direct", ["127.0.0.1", "127.0.0.1:{port}", "*"])
def test_a_host_that_needs_no_proxy_is_reached_directly(
    api: Server, monkeypatch: pytest.MonkeyPatch, direct: str
) -> None:
    """urllib.request, `proxy_bypass`: hosts, hosts with a port, or all."""
    monkeypatch.setenv("HTTP_PROXY", NO_SERVER)
    monkeypatch.setenv("NO_PROXY", direct.format(port=urlsplit(api.root).port))
    assert statuses(api.root) == [200]


def test_a_proxy_for_another_scheme_is_not_asked(
    api: Server, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("HTTPS_PROXY", NO_SERVER)
    assert statuses(api.root) == [200]
