"""The process that draws: a pickled picture in, its PNG out, until its input ends.

Started by `apart.DrawnApart` as `python -m bot.chat.pictures.worker`; nobody else speaks with it.
A message either way is its length (four bytes) and so many bytes; an answer begins with a byte
that says whether it is a picture or why there is none.
"""

from __future__ import annotations

import os
import pickle
import struct
import sys
import traceback
from typing import IO

DRAWN, FAILED = b"+", b"-"

_LENGTH = struct.Struct(">I")


def send(out: IO[bytes], content: bytes) -> None:
    """One message."""
    out.write(_LENGTH.pack(len(content)) + content)
    out.flush()


def receive(source: IO[bytes]) -> bytes | None:
    """One message; None where the other side ended, in the middle of one too."""
    head = source.read(_LENGTH.size)
    if len(head) < _LENGTH.size:
        return None
    (length,) = _LENGTH.unpack(head)
    content = source.read(length)
    return content if len(content) == length else None


def answer_to(request: bytes) -> bytes:
    """What is sent back for a pickled picture."""
    try:
        from bot.chat.pictures.drawing import png_of

        return DRAWN + png_of(pickle.loads(request))
    except Exception:
        return FAILED + traceback.format_exc().encode()


def serve(source: IO[bytes], out: IO[bytes]) -> None:
    """Answer every request, one at a time."""
    while (request := receive(source)) is not None:
        send(out, answer_to(request))


def main() -> None:
    """Speak over standard input and output; whatever else is printed goes where errors go."""
    answers = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)
    serve(sys.stdin.buffer, answers)


if __name__ == "__main__":
    main()
