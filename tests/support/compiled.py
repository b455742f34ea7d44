"""What SQLAlchemy compiles of statements, kept for all stores of a process.

An engine keeps it for itself, and every test has an engine of its own: a third of the time of a
first message went into compiling what the test before had compiled (measured).
"""

from __future__ import annotations

from collections import defaultdict
from typing import Any

from sqlalchemy import Dialect
from sqlalchemy.engine import Engine

_dialects: dict[str, Dialect] = {}
_compiled: defaultdict[str, dict[Any, Any]] = defaultdict(dict)


def compiling_once(engine: Engine) -> Engine:
    """The engine with all that others of its kind have compiled.

    Compiled for one dialect object, it holds for another of the same kind of database: the same
    server or the same SQLite. "compiled_cache" is an option of SQLAlchemy's own.
    """
    engine.dialect = _dialects.setdefault(engine.name, engine.dialect)
    return engine.execution_options(compiled_cache=_compiled[engine.name])
