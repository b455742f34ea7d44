"""Time-outs in words: one that was taken ("they called a timeout"), and how many are left."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import TimeoutSaid
from bot.chat.view import ChatView
from knowledge.regex import regex

_TIMEOUT = r"(?:a |the |our |their |another |first |second |last )*time ?out"
_TOOK = r"(?:just |have |has |ve )*(?:called|calls?|took|takes?|used|uses?|burned|burnt)"
_OURS = regex(
    rf"we {_TOOK} {_TIMEOUT}|our time ?out|time ?out (?:for )?(?:we|us|ours)|{_TOOK} {_TIMEOUT}"
    r"|time ?out (?:taken|called)"
)
_THEIRS = regex(rf"they {_TOOK} {_TIMEOUT}|their time ?out|time ?out (?:for )?(?:they|them|theirs)")
_LEFT = regex(
    r"(?:any |how many |our |their |do (?:we|they|i) (?:still )?have (?:any )?)*time ?outs?"
    r"(?: (?:do|have|are|did) (?:we|they|i|there|you))*(?: still)?(?: have| got)?"
    r" (?:left|remaining|to go)(?: (?:for )?(?:we|us|they|them))?"
)
_FILLING = frozenset(["ok", "so", "and", "now", "here", "right"])


def timeouts_asked(message: Message) -> bool:
    """Whether the message asks how many time-outs are left, and nothing else."""
    line = " ".join(word.folded for word in message.told.words if word.folded not in _FILLING)
    return _LEFT.fullmatch(line) is not None


def timeout_said(message: Message, chat: ChatView) -> TimeoutSaid | None:
    """The message, if it says of the running match that a time-out was taken, and nothing else."""
    if not chat.match_on or "?" in message.text:
        return None
    line = " ".join(word.folded for word in message.told.words if word.folded not in _FILLING)
    ours, theirs = _OURS.fullmatch(line), _THEIRS.fullmatch(line)
    if ours is None and theirs is None:
        return None
    return TimeoutSaid(text=message.text, ours=ours is not None)
