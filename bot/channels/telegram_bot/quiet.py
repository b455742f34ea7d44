"""Logging that never shows the token, nor the webhook's secret: lines for a person, or JSON."""

from __future__ import annotations

import json
import logging
import os
import sys
import traceback
from collections.abc import Sequence

FORMAT = "%(asctime)s %(levelname)s %(name)s: %(message)s"

OURS = ("bot", "scouting_db", "knowledge")


class _WithoutSecrets(logging.Formatter):
    """Replaces them in whatever is logged, tracebacks of libraries included."""

    def __init__(self, secrets: Sequence[str]) -> None:
        super().__init__(FORMAT)
        self._secrets = tuple(secrets)

    def format(self, record: logging.LogRecord) -> str:
        line = self.written(record)
        for secret in self._secrets:
            line = line.replace(secret, "<token>")
        return line

    def written(self, record: logging.LogRecord) -> str:
        """The line, secrets and all."""
        return super().format(record)


class _AsJson(_WithoutSecrets):
    """An object to a line: when, how grave, who, what, and the numbers that belong to it.

    Of an exception its type and where it came from: its own text may quote a user, or, where the
    database names the row that it refused, whole messages.
    """

    def written(self, record: logging.LogRecord) -> str:
        told: dict[str, object] = {
            "at": self.formatTime(record, "%Y-%m-%dT%H:%M:%S") + f".{int(record.msecs):03}",
            "level": record.levelname.lower(),
            "from": record.name,
            "process": os.getpid(),
            "message": record.getMessage(),
        }
        told |= getattr(record, "numbers", {})
        error = record.exc_info[1] if record.exc_info else None
        if error is not None:
            told["error"] = type(error).__name__
            told["where"] = [
                f"{frame.filename.rpartition('/')[2]}:{frame.lineno} {frame.name}"
                for frame in traceback.extract_tb(error.__traceback__)
            ]
        return json.dumps(told)


def log_to_stderr(*, level: str, secrets: Sequence[str], as_json: bool = False) -> None:
    """Our own records from `level` on; the libraries' from WARNING on, since they log URLs."""
    handler = logging.StreamHandler(sys.stderr)
    handler.setFormatter((_AsJson if as_json else _WithoutSecrets)(secrets))
    logging.basicConfig(level=logging.WARNING, handlers=[handler], force=True)
    for ours in OURS:
        logging.getLogger(ours).setLevel(level.upper())
