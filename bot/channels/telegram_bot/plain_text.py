"""Text in which nothing can become a link: the server makes links of whatever looks like one.

Its rules are those of the server's own source (tdlib, MessageEntity.cpp, read): an address needs
a dot before something that is no blank, a mention an @, a hashtag a #, a cashtag a $, a command a
slash, its own addresses "://", a card number 13 digits. Each sign is replaced by one that looks
alike and is none of these, one for one, so that lengths and limits stay. Our own commands stay.
"""

from __future__ import annotations

import re
from collections.abc import Collection

from knowledge.regex import regex

DOT, AT, HASH, DOLLAR, SLASH = "\u2024", "\uff20", "\uff03", "\uff04", "\u2215"
"""One dot leader, full-width @ # $, division slash."""

_DECIMAL = r"(?<![\w.])\d+\.\d+(?![\w.]*\w)"
# Most signs of a text begin none of these, which the look ahead tells at once.
_LOOKS_ALIVE = regex(
    r"(?=[.@#$/\d])(?:"
    rf"(?P<decimal>{_DECIMAL})"
    r"|(?P<dot>\.)(?=\S)"
    r"|(?P<at>@)(?=\w)|(?P<hash>#)(?=[\w\u00b7\u200c])|(?P<dollar>\$)(?=[A-Z1])"
    r"|(?P<scheme>(?<=:)//)"
    r"|(?<![\w/<>])(?P<slash>/)(?P<command>[a-zA-Z0-9_]{1,64})"
    r"|(?P<card>\d(?:[ -]*\d){12,}))"
)
_WIDE_DIGITS = {ord(digit): 0xFF10 + int(digit) for digit in "0123456789"}


def unlinked(text: str, *, commands: Collection[str]) -> str:
    """The text with everything that the server would make a link of, but for our commands."""
    return _LOOKS_ALIVE.sub(lambda found: _tame(found, commands), text)


def _tame(found: re.Match[str], commands: Collection[str]) -> str:
    match found.lastgroup:
        case "decimal":
            return found[0]
        case "dot":
            return DOT
        case "at":
            return AT
        case "hash":
            return HASH
        case "dollar":
            return DOLLAR
        case "scheme":
            return SLASH + SLASH
        case "card":
            return found[0].translate(_WIDE_DIGITS)
        case _:
            word = found["command"]
            return found[0] if word in commands else SLASH + word
