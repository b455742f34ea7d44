"""HTTP for the library's Bot on aiohttp: the default pool slows down past some 40 connections."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from urllib.parse import urlsplit
from urllib.request import getproxies, proxy_bypass

import aiohttp
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, RequestData

CONNECT_TIMEOUT_S = 10.0
READ_TIMEOUT_S = 20.0
KEEP_ALIVE_S = 30.0
"""Shorter than servers keep an idle connection, so that we rarely write into a closed one."""


FORM_HEADERS = {"Content-Type": "application/x-www-form-urlencoded"}


class NotSentError(NetworkError):
    """The request surely did not reach the server: no connection came about."""


class AiohttpRequest(BaseRequest):
    """The library's request interface; at most `connections` at a time, others wait."""

    def __init__(self, *, connections: int) -> None:
        self._connections = connections
        self._session: aiohttp.ClientSession | None = None
        self._proxies: dict[tuple[str, str], str | None] = {}

    @property
    def read_timeout(self) -> float:
        return READ_TIMEOUT_S

    async def initialize(self) -> None:
        if self._session is None:
            self._session = aiohttp.ClientSession(
                connector=aiohttp.TCPConnector(
                    limit=self._connections, keepalive_timeout=KEEP_ALIVE_S
                ),
                headers={"User-Agent": self.USER_AGENT},
            )

    async def shutdown(self) -> None:
        if self._session is not None:
            await self._session.close()
            self._session = None

    async def do_request(
        self,
        url: str,
        method: str,
        request_data: RequestData | None = None,
        read_timeout: object = BaseRequest.DEFAULT_NONE,
        write_timeout: object = BaseRequest.DEFAULT_NONE,  # noqa: ARG002
        connect_timeout: object = BaseRequest.DEFAULT_NONE,
        pool_timeout: object = BaseRequest.DEFAULT_NONE,  # noqa: ARG002
    ) -> tuple[int, bytes]:
        """The status and the body. NotSentError, TimedOut or NetworkError where there is none."""
        if self._session is None:
            raise RuntimeError("the request class is not initialized")
        timeout = aiohttp.ClientTimeout(
            total=None,
            sock_connect=_given(connect_timeout, CONNECT_TIMEOUT_S),
            sock_read=_given(read_timeout, READ_TIMEOUT_S),
        )
        body, headers = (None, {}) if request_data is None else _body(request_data)
        with _library_errors():
            async with self._session.request(
                method, url, data=body, headers=headers, timeout=timeout, proxy=self._proxy(url)
            ) as response:
                return response.status, await response.read()

    def _proxy(self, url: str) -> str | None:
        """The proxy that the environment names for the URL's host, looked up once: the client's
        own `trust_env` reads the environment and the file `.netrc` at every request, in a thread,
        which cost as much as the request itself.
        """
        parts = urlsplit(url)
        asked = (parts.scheme, parts.netloc)
        if asked not in self._proxies:
            self._proxies[asked] = _proxy_of(*asked)
        return self._proxies[asked]


def _proxy_of(scheme: str, netloc: str) -> str | None:
    """urllib.request: `HTTP_PROXY`, `HTTPS_PROXY`, and `NO_PROXY` for hosts reached directly."""
    return None if proxy_bypass(netloc) else getproxies().get(scheme)


@contextmanager
def _library_errors() -> Iterator[None]:
    try:
        yield
    except (aiohttp.ClientConnectorError, aiohttp.ConnectionTimeoutError) as error:
        raise NotSentError(f"no connection: {error}") from error
    except TimeoutError as error:
        raise TimedOut from error
    except aiohttp.ClientError as error:
        # Not the error's own text: it may hold the URL, and with it the token.
        raise NetworkError(f"connection broke: {type(error).__name__}") from error


def _given(timeout: object, default: float) -> float:
    """The caller's timeout; the default where the caller left it to us or set none."""
    return float(timeout) if isinstance(timeout, int | float) else default


def _body(request_data: RequestData) -> tuple[bytes | aiohttp.FormData, dict[str, str]]:
    """The body and its headers. Encoded here where no file is in it: FormData asks the operating
    system for a random boundary at each call, which costs more than the rest.
    """
    if not request_data.contains_files:
        return request_data.url_encoded_parameters().encode(), FORM_HEADERS
    form = aiohttp.FormData(request_data.json_parameters)
    for name, (filename, content, mime_type) in request_data.multipart_data.items():
        form.add_field(name, content, filename=filename, content_type=mime_type)
    return form, {}
