"""Logging that never shows the token."""

from __future__ import annotations

import logging
import sys

FORMAT = "%(asctime)s %(levelname)s %(name)s: %(message)s"


class _WithoutToken(logging.Formatter):
    """Replaces the token in whatever is logged, tracebacks of libraries included."""

    def __init__(self, token: str) -> None:
        super().__init__(FORMAT)
        self._token = token

    def format(self, record: logging.LogRecord) -> str:
        return super().format(record).replace(self._token, "<token>")


def log_to_stderr(*, level: str, token: str) -> None:
    """Our own records from `level` on; the libraries' from WARNING on, since they log URLs."""
    handler = logging.StreamHandler(sys.stderr)
    handler.setFormatter(_WithoutToken(token))
    logging.basicConfig(level=logging.WARNING, handlers=[handler], force=True)
    for ours in ("bot", "scouting_db", "knowledge"):
        logging.getLogger(ours).setLevel(level.upper())
