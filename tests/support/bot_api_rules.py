"""What the Bot API refuses, for the stand-in server.

Sources: the Bot API's documentation (limits; "Formatting options", HTML style) and the server's
own parser (tdlib/td, parse_html), both from memory; the words of the errors are the server's.
"""

from __future__ import annotations

import html
import json
import re
from collections.abc import Mapping

MAX_TEXT = 4096
MAX_CAPTION = 1024
MAX_BUTTON_BYTES = 64

_TAG = re.compile(r"<(/?)([a-z][a-z0-9-]*)?([^>]*)>?")
_KNOWN = frozenset(
    (
        *("b", "strong", "i", "em", "u", "ins", "s", "strike", "del", "code", "pre", "a"),
        *("tg-spoiler", "span", "blockquote", "tg-emoji"),
    )
)


class RefusedError(Exception):
    """A request that the server answers with 400; the text is its description."""


def plain_text(text: str, parse_mode: str | None) -> str:
    """The text without its markup; RefusedError where the HTML is not well formed."""
    if parse_mode is None:
        return text
    if parse_mode.upper() != "HTML":
        raise RefusedError("Bad Request: unsupported parse_mode")
    return _without_tags(text)


def _without_tags(text: str) -> str:
    opened: list[str] = []
    plain: list[str] = []
    position = 0
    while (at := text.find("<", position)) >= 0:
        plain.append(text[position:at])
        tag = _TAG.match(text, at)
        assert tag is not None, "the pattern matches any '<'"
        position = tag.end()
        _step(opened, tag, at)
    plain.append(text[position:])
    if opened:
        raise _unparsable(f"Can't find end tag corresponding to start tag {opened[-1]}")
    return html.unescape("".join(plain))


def _step(opened: list[str], tag: re.Match[str], at: int) -> None:
    closing, name, _ = tag.groups()
    if not tag.group().endswith(">"):
        raise _unparsable(f"Unclosed start tag at byte offset {at}")
    if closing:
        if not opened or opened.pop() != name:
            raise _unparsable(f"Unexpected end tag at byte offset {at}")
    elif name not in _KNOWN:
        raise _unparsable(f'Unsupported start tag "{name or ""}" at byte offset {at}')
    else:
        opened.append(str(name))


def _unparsable(why: str) -> RefusedError:
    return RefusedError(f"Bad Request: can't parse entities: {why}")


def check_text(text: str) -> None:
    """A message's text after parsing: 1 to 4096 characters, not blank."""
    if not text.strip():
        raise RefusedError("Bad Request: message text is empty")
    if utf16_units(text) > MAX_TEXT:
        raise RefusedError("Bad Request: message is too long")


def check_caption(text: str) -> None:
    """A caption after parsing: up to 1024 characters."""
    if utf16_units(text) > MAX_CAPTION:
        raise RefusedError("Bad Request: message caption is too long")


def check_keyboard(reply_markup: str | None) -> list[list[Mapping[str, str]]]:
    """The rows of buttons: payloads of 1 to 64 bytes, labels not empty."""
    if reply_markup is None:
        return []
    rows: list[list[Mapping[str, str]]] = json.loads(reply_markup).get("inline_keyboard", [])
    for row in rows:
        for button in row:
            if not button["text"].strip():
                raise RefusedError("Bad Request: text buttons are unallowed in the inline keyboard")
            if not 1 <= len(button["callback_data"].encode()) <= MAX_BUTTON_BYTES:
                raise RefusedError("Bad Request: BUTTON_DATA_INVALID")
    return rows


def utf16_units(text: str) -> int:
    """Length as entities count it: the stricter reading of "characters"."""
    return len(text.encode("utf-16-le")) // 2
