"""Pictures drawn in a process of their own, which ends when none was wanted for a while.

The drawing library with its canvas keeps some 70 MB (tests/benchmarks/memory.py), as much as all
that answering takes; a picture every few minutes is no reason to hold them. Whatever becomes of
that process costs one picture's delay: it is started anew and asked once more.
"""

from __future__ import annotations

import logging
import os
import pickle
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache
from threading import Lock, Timer
from typing import IO

from bot.chat.pictures import CACHED_PICTURES, draw
from bot.chat.pictures.worker import DRAWN, receive, send
from knowledge.advice import Picture

log = logging.getLogger(__name__)

RESTS_AFTER_S = 120.0
"""Without a picture for so long the process ends; a time-out's questions fall well within."""

DRAWN_WITHIN_S = 10.0
"""A picture takes a tenth of a second, the first of a process one: after this it is stuck."""

TRIES = 2

COMMAND = (sys.executable, "-m", "bot.chat.pictures.worker")


class PictureError(Exception):
    """It could not be drawn; the message says why."""


class DrawnApart:
    """Draws one picture at a time; to be used from any thread. The latest pictures are kept."""

    def __init__(
        self,
        *,
        command: Sequence[str] = COMMAND,
        rests_after_s: float = RESTS_AFTER_S,
        within_s: float = DRAWN_WITHIN_S,
    ) -> None:
        self._command = command
        self._rests_after_s = rests_after_s
        self._within_s = within_s
        self._drawing = Lock()
        self._process: subprocess.Popen[bytes] | None = None
        self._rest: Timer | None = None
        self._closing = False
        self.draw: Callable[[Picture], bytes] = lru_cache(maxsize=CACHED_PICTURES)(self._draw)

    @property
    def pid(self) -> int | None:
        """The process that draws, while there is one."""
        return None if self._process is None else self._process.pid

    def close(self) -> None:
        """End the process, in the middle of a picture too; a later one would start another."""
        self._closing = True
        process = self._process
        if process is not None:
            process.kill()
        with self._drawing:
            self._end()
            self._closing = False

    def _draw(self, picture: Picture) -> bytes:
        """The picture as PNG (pictures.draw); PictureError where that fails twice, or fails in a
        way that would repeat itself. Where no process can be started it is drawn here.
        """
        request = pickle.dumps(picture)
        with self._drawing:
            self._stay()
            try:
                answer = self._asked(request)
            except OSError as error:
                log.warning("no process to draw in (%s): drawn in this one", error)
                return draw(picture)
            finally:
                self._rest_later()
        if answer[:1] == DRAWN:
            return answer[1:]
        raise PictureError(answer[1:].decode(errors="replace"))

    def _asked(self, request: bytes) -> bytes:
        """The answer, of a fresh process where the first one is dead or stuck."""
        for _ in range(TRIES):
            answer = self._answer_of(self._running(), request)
            if answer is not None:
                return answer
            if self._closing:
                raise PictureError("we are ending")
            log.warning("the process that draws pictures ended or was stuck; another is started")
            self._end()
        raise PictureError("the process that draws pictures ended or was stuck, twice")

    def _answer_of(self, process: subprocess.Popen[bytes], request: bytes) -> bytes | None:
        """None where it died before or while drawing, or took too long and was ended for it."""
        late = Timer(self._within_s, process.kill)
        late.daemon = True
        late.start()
        try:
            send(_pipe(process.stdin), request)
            return receive(_pipe(process.stdout))
        except BrokenPipeError:
            return None
        finally:
            late.cancel()

    def _running(self) -> subprocess.Popen[bytes]:
        if self._process is None:
            self._process = subprocess.Popen(
                self._command,
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                env=environment(os.environ),
                start_new_session=True,  # Ctrl-C is for us, who end it afterwards
            )
        return self._process

    def _stay(self) -> None:
        if self._rest is not None:
            self._rest.cancel()
            self._rest = None

    def _rest_later(self) -> None:
        self._rest = Timer(self._rests_after_s, self._rest_now)
        self._rest.daemon = True
        self._rest.start()

    def _rest_now(self) -> None:
        """Unless a picture is being drawn right now, after which it rests later."""
        if self._drawing.acquire(blocking=False):
            try:
                self._end()
            finally:
                self._drawing.release()

    def _end(self) -> None:
        self._stay()
        process, self._process = self._process, None
        if process is None:
            return
        process.kill()
        process.wait()
        for pipe in (process.stdin, process.stdout):
            _close(pipe)


def environment(ours: Mapping[str, str]) -> dict[str, str]:
    """What the process is told of ours: where modules are, and nothing that is secret."""
    told = {name: value for name, value in ours.items() if not name.startswith("SEAMWISE_")}
    return told | {"PYTHONPATH": os.pathsep.join(path for path in sys.path if path)}


def _pipe(pipe: IO[bytes] | None) -> IO[bytes]:
    assert pipe is not None, "both ends are ours"
    return pipe


def _close(pipe: IO[bytes] | None) -> None:
    """A pipe to a dead process may still hold what was never sent."""
    try:
        _pipe(pipe).close()
    except BrokenPipeError:
        return
