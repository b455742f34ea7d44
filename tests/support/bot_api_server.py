"""The stand-in's state and routes: what each method of the Bot API does to it."""

from __future__ import annotations

import asyncio
import time
from collections import deque
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Protocol

from aiohttp import web
from bot_api_rules import (
    RefusedError,
    check_caption,
    check_keyboard,
    check_text,
    plain_text,
)
from bot_api_updates import BOT_ID, message_update
from bot_api_webhook import Webhook

TOKEN = "1234567:stand-in-token"
BOT_NAME = "stand_in_bot"
FIRST_UPDATE_ID = 1000
_BY = "by the process"
"""No parameter of the Bot API's: who calls, kept beside the parameters."""
MAX_UPDATES = 100
"""getUpdates: limit, 1 to 100."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SentMessage:
    """A message of the bot: `text` as a reader sees it, `source` as it was sent."""

    method: str
    chat_id: int
    message_id: int
    text: str
    source: str
    parse_mode: str | None
    buttons: tuple[tuple[Mapping[str, str], ...], ...]
    photo: bytes | None
    at: float
    document: bytes | None = None
    by: str = ""
    """Whoever of several processes sent it: what it has after the root, `/by/NAME`."""

    def payload(self, label: str) -> str:
        """The payload of the button with that label."""
        for row in self.buttons:
            for button in row:
                if button["text"] == label:
                    return button["callback_data"]
        raise LookupError(f"no button {label!r} in {self.buttons}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """What one call meets. `drop` breaks the connection, `after` says: the call had its effect."""

    status: int = 500
    description: str = "Internal Server Error"
    parameters: Mapping[str, Any] | None = None
    drop: bool = False
    after: bool = False


def too_many_requests(retry_after: int) -> Fault:
    return Fault(
        status=429,
        description=f"Too Many Requests: retry after {retry_after}",
        parameters={"retry_after": retry_after},
    )


class Weather(Protocol):
    """Faults that come by themselves, beside those on demand."""

    def fault_for(self, method: str) -> Fault | None:
        """What the call that is just being answered meets."""

    def delivered(self, updates: list[dict[str, Any]]) -> list[dict[str, Any]]:
        """What is handed over where these are due."""


@dataclass(slots=True)
class State:
    """All that the server knows. Only the server's own thread touches it."""

    token: str = TOKEN
    delay_s: float = 0.0
    updates: deque[dict[str, Any]] = field(default_factory=deque)
    next_update: int = FIRST_UPDATE_ID
    next_message: int = 1
    sent: list[SentMessage] = field(default_factory=list)
    calls: list[tuple[str, dict[str, str]]] = field(default_factory=list)
    faults: dict[str, deque[Fault]] = field(default_factory=dict)
    files: dict[str, bytes] = field(default_factory=dict)
    photos: dict[str, bytes] = field(default_factory=dict)
    """By the number under which they may be sent again."""
    blocked: set[int] = field(default_factory=set)
    migrated: dict[int, int] = field(default_factory=dict)
    answered: list[str] = field(default_factory=list)
    confirmed_below: int = FIRST_UPDATE_ID
    polls: int = 0
    loaded_at: float = 0.0
    arrival: asyncio.Event = field(default_factory=asyncio.Event)
    poller: asyncio.Event | None = None
    keep_calls: bool = True
    weather: Weather | None = None
    unheard: set[int] = field(default_factory=set)
    """Messages of the bot that arrived but whose answer was lost on the way."""
    webhook: Webhook = field(default_factory=Webhook)


class _AnswerError(Exception):
    """An error answer in the server's form."""

    def __init__(self, fault: Fault) -> None:
        self.fault = fault


def application(state: State) -> web.Application:
    """The server's routes over one state."""
    app = web.Application(client_max_size=64 * 1024 * 1024)

    async def bot_call(request: web.Request) -> web.StreamResponse:
        return await _bot_call(state, request)

    async def load(request: web.Request) -> web.Response:
        return await _control_load(state, request)

    async def report(_request: web.Request) -> web.Response:
        times = [one.at for one in state.sent]
        return web.json_response(
            {
                "sent": len(state.sent),
                "first": min(times, default=0),
                "last": max(times, default=0),
                "polls": state.polls,
                "loaded": state.loaded_at,
            }
        )

    async def file_call(request: web.Request) -> web.Response:
        content = state.files.get(request.match_info["path"])
        is_ours = request.match_info["token"] == state.token
        return web.Response(body=content) if is_ours and content else web.Response(status=404)

    app.router.add_route("*", "/bot{token}/{method}", bot_call)
    app.router.add_route("*", "/by/{by}/bot{token}/{method}", bot_call)
    app.router.add_get("/file/bot{token}/{path:.+}", file_call)
    app.router.add_post("/control/load", load)
    app.router.add_get("/control/report", report)
    return app


async def _control_load(state: State, request: web.Request) -> web.Response:
    """Queue messages: {"count", "chats", "text"}; forgets what was sent before."""
    order = await request.json()
    state.sent.clear()
    state.keep_calls = False
    for n in range(order["count"]):
        chat = 1 + n % order["chats"]
        put(state, message_update(chat_id=chat, text=order["text"].format(n=n)))
    state.loaded_at = time.monotonic()
    state.arrival.set()
    return web.json_response({"queued": order["count"]})


async def _bot_call(state: State, request: web.Request) -> web.StreamResponse:
    # "All methods in the Bot API are case-insensitive" (its documentation).
    method = _NAMES.get(request.match_info["method"].lower(), "")
    if request.match_info["token"] != state.token:
        return _error(Fault(status=401, description="Unauthorized"))
    parameters, files = await _parameters(request)
    parameters[_BY] = request.match_info.get("by", "")
    if state.keep_calls:
        state.calls.append((method, parameters))
    if state.delay_s:
        await asyncio.sleep(state.delay_s)
    fault = _fault_for(state, method)
    if fault is not None and not fault.after:
        return _faulty(request, fault)
    try:
        result = await _METHODS[method](state, parameters, files)
    except KeyError:
        return _error(Fault(status=404, description="Not Found"))
    except RefusedError as error:
        return _error(Fault(status=400, description=str(error)))
    except _AnswerError as answer:
        return _error(answer.fault)
    if fault is not None:
        if isinstance(result, dict) and "message_id" in result:
            state.unheard.add(result["message_id"])
        return _faulty(request, fault)
    return web.json_response({"ok": True, "result": result})


def _fault_for(state: State, method: str) -> Fault | None:
    if state.faults.get(method):
        return state.faults[method].popleft()
    return None if state.weather is None else state.weather.fault_for(method)


async def _parameters(request: web.Request) -> tuple[dict[str, str], dict[str, bytes]]:
    parameters = dict(request.query)
    files: dict[str, bytes] = {}
    for name, value in (await request.post()).items():
        if isinstance(value, web.FileField):
            files[name] = value.file.read()
        elif isinstance(value, bytes | bytearray):
            files[name] = bytes(value)
        else:
            parameters[name] = value
    return parameters, files


def _faulty(request: web.Request, fault: Fault) -> web.StreamResponse:
    if not fault.drop:
        return _error(fault)
    if request.transport is not None:
        request.transport.abort()
    return web.Response()


def _error(fault: Fault) -> web.Response:
    body: dict[str, Any] = {
        "ok": False,
        "error_code": fault.status,
        "description": fault.description,
    }
    if fault.parameters:
        body["parameters"] = dict(fault.parameters)
    return web.json_response(body, status=fault.status)


async def _get_me(_state: State, _parameters: dict[str, str], _files: dict[str, bytes]) -> Any:
    return {"id": BOT_ID, "is_bot": True, "first_name": "Stand-in", "username": BOT_NAME}


async def _get_updates(state: State, parameters: dict[str, str], _files: dict[str, bytes]) -> Any:
    """A higher offset confirms everything below it; an older waiting call gets 409."""
    state.polls += 1
    offset = int(parameters.get("offset", 0))
    while state.updates and state.updates[0]["update_id"] < offset:
        state.updates.popleft()
    state.confirmed_below = max(state.confirmed_below, offset)
    if state.poller is not None:
        state.poller.set()
    overtaken = state.poller = asyncio.Event()
    try:
        await _wait_for_updates(state, overtaken, float(parameters.get("timeout", 0)))
    finally:
        if state.poller is overtaken:
            state.poller = None
    limit = int(parameters.get("limit", MAX_UPDATES))
    due = [state.updates[n] for n in range(min(limit, len(state.updates)))]
    return due if state.weather is None else state.weather.delivered(due)


async def _wait_for_updates(state: State, overtaken: asyncio.Event, timeout_s: float) -> None:
    end = time.monotonic() + timeout_s
    while not state.updates and (left := end - time.monotonic()) > 0:
        state.arrival.clear()
        waits = [asyncio.ensure_future(each.wait()) for each in (state.arrival, overtaken)]
        await asyncio.wait(waits, timeout=left, return_when=asyncio.FIRST_COMPLETED)
        for each in waits:
            each.cancel()
        if overtaken.is_set():
            raise _AnswerError(
                Fault(
                    status=409,
                    description="Conflict: terminated by other getUpdates request; "
                    "make sure that only one bot instance is running",
                )
            )


def _check_chat(state: State, parameters: dict[str, str]) -> int:
    chat_id = int(parameters["chat_id"])
    if chat_id in state.blocked:
        raise _AnswerError(Fault(status=403, description="Forbidden: bot was blocked by the user"))
    if chat_id in state.migrated:
        raise _AnswerError(
            Fault(
                status=400,
                description="Bad Request: group chat was upgraded to a supergroup chat",
                parameters={"migrate_to_chat_id": state.migrated[chat_id]},
            )
        )
    return chat_id


async def _send_message(state: State, parameters: dict[str, str], _files: dict[str, bytes]) -> Any:
    chat_id = _check_chat(state, parameters)
    text = plain_text(parameters.get("text", ""), parameters.get("parse_mode"))
    check_text(text)
    return _record(state, "sendMessage", chat_id, text, parameters)


async def _send_photo(state: State, parameters: dict[str, str], files: dict[str, bytes]) -> Any:
    chat_id = _check_chat(state, parameters)
    text = plain_text(parameters.get("caption", ""), parameters.get("parse_mode"))
    check_caption(text)
    number, photo = _photo_of(state, parameters, files)
    source = {**parameters, "text": parameters.get("caption", "")}
    answer = _record(state, "sendPhoto", chat_id, text, source, photo=photo)
    # Bot API, Message: `photo` is an array of PhotoSize, "available sizes of the photo".
    sizes = ((f"{number}-small", 90), (number, 1280))
    return answer | {
        "photo": [
            {"file_id": one, "file_unique_id": one, "width": width, "height": width}
            for one, width in sizes
        ]
    }


def _photo_of(
    state: State, parameters: Mapping[str, str], files: Mapping[str, bytes]
) -> tuple[str, bytes]:
    """Its number and bytes. Bot API, "Sending Files": uploaded, or by the number of one that the
    server has; the words of the refusals from memory.
    """
    if files:
        photo = next(iter(files.values()))
        number = f"photo-{len(state.photos) + 1}"
        state.photos[number] = photo
        return number, photo
    if "photo" not in parameters:
        raise RefusedError("Bad Request: there is no photo in the request")
    number = parameters["photo"]
    if number not in state.photos:
        raise RefusedError("Bad Request: wrong file identifier/HTTP URL specified")
    return number, state.photos[number]


async def _send_document(state: State, parameters: dict[str, str], files: dict[str, bytes]) -> Any:
    chat_id = _check_chat(state, parameters)
    text = plain_text(parameters.get("caption", ""), parameters.get("parse_mode"))
    check_caption(text)
    if not files:
        raise RefusedError("Bad Request: there is no document in the request")
    source = {**parameters, "text": parameters.get("caption", "")}
    document = next(iter(files.values()))
    return _record(state, "sendDocument", chat_id, text, source, document=document)


async def _get_file(state: State, parameters: dict[str, str], _files: dict[str, bytes]) -> Any:
    """Bot API, getFile: a path under https://api.telegram.org/file/bot<token>/ for an hour."""
    path = f"documents/{parameters['file_id']}"
    if path not in state.files:
        raise RefusedError("Bad Request: invalid file_id")
    return {"file_id": parameters["file_id"], "file_unique_id": "u", "file_path": path}


async def _edit_text(state: State, parameters: dict[str, str], _files: dict[str, bytes]) -> Any:
    chat_id = _check_chat(state, parameters)
    text = plain_text(parameters.get("text", ""), parameters.get("parse_mode"))
    check_text(text)
    edited = int(parameters["message_id"])
    before = [one for one in state.sent if (one.chat_id, one.message_id) == (chat_id, edited)]
    if not before:
        raise RefusedError("Bad Request: message to edit not found")
    buttons = check_keyboard(parameters.get("reply_markup"))
    if (before[-1].text, [list(row) for row in before[-1].buttons]) == (text, buttons):
        raise RefusedError(
            "Bad Request: message is not modified: specified new message content and reply markup "
            "are exactly the same as a current content and reply markup of the message"
        )
    return _record(state, "editMessageText", chat_id, text, parameters, message_id=edited)


def _record(
    state: State,
    method: str,
    chat_id: int,
    text: str,
    parameters: Mapping[str, str],
    *,
    photo: bytes | None = None,
    document: bytes | None = None,
    message_id: int | None = None,
) -> dict[str, Any]:
    buttons = check_keyboard(parameters.get("reply_markup"))
    number = message_id if message_id is not None else _next_message(state)
    state.sent.append(
        SentMessage(
            method=method,
            chat_id=chat_id,
            message_id=number,
            text=text,
            source=parameters.get("text", ""),
            parse_mode=parameters.get("parse_mode"),
            buttons=tuple(tuple(row) for row in buttons),
            photo=photo,
            at=time.monotonic(),
            document=document,
            by=parameters[_BY],
        )
    )
    return {
        "message_id": number,
        "date": int(time.time()),
        "chat": {"id": chat_id, "type": "private" if chat_id > 0 else "supergroup"},
        "text": text,
    }


async def _answer_tap(state: State, parameters: dict[str, str], _files: dict[str, bytes]) -> Any:
    state.answered.append(parameters["callback_query_id"])
    return True


async def _agree(_state: State, _parameters: dict[str, str], _files: dict[str, bytes]) -> Any:
    return True


async def _set_webhook(state: State, parameters: dict[str, str], _files: dict[str, bytes]) -> Any:
    """What waits, and what comes from now on, is delivered to the address."""
    state.webhook.set(parameters["url"], parameters.get("secret_token"))
    while state.updates:
        state.webhook.push(state.updates.popleft())
    return True


async def _delete_webhook(state: State, _parameters: dict[str, str], _files: Any) -> Any:
    state.webhook.set(None, None)
    return True


_METHODS = {
    "getMe": _get_me,
    "getUpdates": _get_updates,
    "sendMessage": _send_message,
    "sendPhoto": _send_photo,
    "sendDocument": _send_document,
    "getFile": _get_file,
    "editMessageText": _edit_text,
    "answerCallbackQuery": _answer_tap,
    "setMyCommands": _agree,
    "setWebhook": _set_webhook,
    "deleteWebhook": _delete_webhook,
}
_NAMES = {name.lower(): name for name in _METHODS}


def _next_message(state: State) -> int:
    state.next_message += 1
    return state.next_message - 1


def put(state: State, update: Mapping[str, Any]) -> int:
    """Queue an update under the next id, unless it brings its own; returns the id."""
    numbered = {"update_id": state.next_update, **update}
    message = numbered.get("message") or numbered.get("edited_message")
    if message is not None and not message.get("message_id"):
        message["message_id"] = _next_message(state)
    state.next_update = max(state.next_update, numbered["update_id"] + 1)
    if state.webhook.url is None:
        state.updates.append(numbered)
    else:
        state.webhook.push(numbered)
    state.arrival.set()
    return int(numbered["update_id"])
