"""Times in a video: as they are stored with a rally, and as they are shown."""

from __future__ import annotations

from bot.chat.said import VideoLine

AT_S = "video_s"
"""Seconds from the video's start, in the detail of a rally's log line."""

UNREAD = "unread_note"
"""The note with the lines of the same message that told no rally, in the same place."""


def line_words(line: VideoLine) -> str:
    """ "0:42 6-4-2 my dink popped up"."""
    call = "" if line.call is None else f"{'-'.join(map(str, line.call))} "
    told = f"{call}{line.words}"
    return told if line.at_s is None else f"{clock_words(line.at_s)} {told}".strip()


def clock_words(at_s: int) -> str:
    """Minutes and seconds, or hours before them."""
    minutes, seconds = divmod(at_s, 60)
    hours, left = divmod(minutes, 60)
    return f"{hours}:{left:02d}:{seconds:02d}" if hours else f"{minutes}:{seconds:02d}"
