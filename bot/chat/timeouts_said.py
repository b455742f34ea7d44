"""A time-out that was taken, said of the running match: "they called a timeout", "timeout us"."""

from __future__ import annotations

import re

from bot.chat.message import Message
from bot.chat.question import TimeoutSaid
from bot.chat.view import ChatView

_TIMEOUT = r"(?:a |the |our |their |another |first |second |last )*time ?out"
_TOOK = r"(?:just |have |has |ve )*(?:called|calls?|took|takes?|used|uses?|burned|burnt)"
_OURS = re.compile(
    rf"we {_TOOK} {_TIMEOUT}|our time ?out|time ?out (?:for )?(?:we|us|ours)|{_TOOK} {_TIMEOUT}"
    r"|time ?out (?:taken|called)"
)
_THEIRS = re.compile(
    rf"they {_TOOK} {_TIMEOUT}|their time ?out|time ?out (?:for )?(?:they|them|theirs)"
)
_FILLING = frozenset(["ok", "so", "and", "now", "here", "right"])


def timeout_said(message: Message, chat: ChatView) -> TimeoutSaid | None:
    """The message, if it says of the running match that a time-out was taken, and nothing else."""
    if not chat.match_on or "?" in message.text:
        return None
    line = " ".join(word.folded for word in message.told.words if word.folded not in _FILLING)
    ours, theirs = _OURS.fullmatch(line), _THEIRS.fullmatch(line)
    if ours is None and theirs is None:
        return None
    return TimeoutSaid(text=message.text, ours=ours is not None)
