"""Rally lines typed while watching a video, pasted at once: "0:42 lost it, my dink popped up"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.names import mentions_of
from bot.chat.said import Mention, VideoLine, VideoSaid
from bot.chat.view import ChatView
from knowledge.regex import regex

MOST_LINES = 400
"""Lines looked at of one message: a message of 4,096 characters has no more that tell anything.
What is beyond them is kept as not read."""

FEWEST_TIMED = 2
"""Lines with a time that make a message one of these; a single one needs "video" above it."""

TIME = (
    r"(?:at |@ ?|t=)?[\[(]?(?P<a>\d{1,3})(?:[:.](?=\d\d\b)|['’m] ?)(?P<b>\d{2})"
    r"(?:[:.](?P<c>\d{2}))?(?:s|\"|'')?[\])]?"
)
_TIMED = regex(rf"^[\s\-*•>#]*(?:\d{{1,3}}[.)] +)?{TIME}(?![\d])(?!\s*(?:am|pm)\b)", re.IGNORECASE)
_INSIDE = regex(
    r"(?<=[\w.!?)])[ \t]*[;|,]?[ \t]+(?=[\[(]?\d{1,2}:\d{2}(?::\d{2})?[\])]?[ \t]+[^\W\d])"
)
"""Between two rallies in one line: before the next time."""

_TELLS = regex(
    r"\b(?:won|lost|ours|theirs|(?:our|their) (?:point|rally)|miss\w*|net(?:ted)?|winner"
    r"|error|ace|pop\w*|wide|long|into|unforced|forced)\b",
    re.IGNORECASE,
)
_HEADED = regex(
    r"\b(?:video|vid|videos|vids|film|footage|recording|rewatch\w*|tape|clips?|rallies|timestamps?)\b",
    re.IGNORECASE,
)
_CALL = regex(r"^\W*\d{1,2}-\d{1,2}(?:-[12])?\b[\s:,.\-]*")
_POINTS = regex(r"\d+")
_SCHEDULE = regex(r"\b(?:court|ct|crt|vs|versus|lunch|warm ?up|check ?in|flight|doors)\b", re.I)
"""A list of times of day, as of a schedule."""


def video_said(text: str, chat: ChatView) -> VideoSaid | None:
    """The lines of the message with their times, if it is such a list."""
    head, body = _parts(text)
    timed = [line for line in body if line.at_s is not None]
    is_headed = any(_HEADED.search(line) for line in head) and len(head) <= FEWEST_TIMED
    if not timed or (len(timed) < FEWEST_TIMED and not is_headed and not _is_rally(head, body)):
        return None
    if not is_headed and sum(bool(_SCHEDULE.search(one.words)) for one in timed) * 2 > len(timed):
        return None
    mentions = tuple(one for line in head for one in mentions_of(line, chat)) if is_headed else ()
    lines = body if is_headed else (*(VideoLine(at_s=None, words=one) for one in head), *body)
    return VideoSaid(text=text, lines=tuple(lines), mentions=_named(mentions))


def _is_rally(head: Sequence[str], body: Sequence[VideoLine]) -> bool:
    """One line alone: it opens with its time and tells how a rally ended."""
    return not head and len(body) == 1 and _TELLS.search(body[0].words) is not None


def _named(mentions: tuple[Mention, ...]) -> tuple[Mention, ...]:
    return tuple(one for one in mentions if not one.pronoun)


def _parts(text: str) -> tuple[list[str], list[VideoLine]]:
    """The lines above the first time, and those from there on."""
    head: list[str] = []
    body: list[VideoLine] = []
    lines = [one for line in text.splitlines() for one in _apart(line) if one.strip()]
    for line in lines[:MOST_LINES]:
        read = _line(line)
        if read.at_s is None and not body:
            head.append(line.strip())
        else:
            body.append(read)
    rest = "\n".join(lines[MOST_LINES:]).strip()
    return head, [*body, VideoLine(at_s=None, words=rest)] if rest else body


def _apart(line: str) -> list[str]:
    """The rallies of a line that opens with a time and holds more of them."""
    return _INSIDE.split(line) if _TIMED.match(line) else [line]


def _line(line: str) -> VideoLine:
    """A time in the video as minutes and seconds, or hours before them, and what follows it."""
    found = _TIMED.match(line)
    if found is None:
        return VideoLine(at_s=None, words=line.strip())
    first, second, third = int(found["a"]), int(found["b"]), found["c"]
    at_s = first * 60 + second if third is None else (first * 60 + second) * 60 + int(third)
    words = line[found.end() :].strip(" \t-–—:,.|")
    if second >= 60 or (third is not None and int(third) >= 60):
        return VideoLine(at_s=None, words=line.strip())
    call = _CALL.match(words)
    rest = words[call.end() :] if call is not None else ""
    if call is None or not rest:
        return VideoLine(at_s=at_s, words=words)
    points = tuple(int(one) for one in _POINTS.findall(call[0]))
    return VideoLine(at_s=at_s, words=rest, call=points)
