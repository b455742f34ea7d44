"""With which server's number a side begins: "1 or 2 after a side out", where none has happened."""

from __future__ import annotations

from bot.chat.words import words_in
from knowledge.regex import regex

_OVER = regex(r"\bside ?outs?\b")
_ASKED = regex(
    r"(?:server |number )*(?:1|one|first|1st) or "
    r"(?:server |number )*(?:2|two|second|2nd)(?: server)?"
    r"|(?:which|what|whats|whos|who is|who)(?: is| the| our| their)* (?:server|number)(?: [12])?"
)
_BESIDE = words_in(
    "so ok okay wait hey um and now then btw is it its am i are we they do does would should will"
    " be start starts begin go say call called on at with as a the after following when once serve"
    " in server number first again always our their my turn goes over that this you who comes"
)


def asks_server_number(line: str) -> bool:
    """Whether the line asks that and nothing else; "side out, server 1" tells it."""
    if not (_ASKED.search(line) and _OVER.search(line)):
        return False
    return {*_OVER.sub(" ", _ASKED.sub(" ", line)).split()} <= _BESIDE
