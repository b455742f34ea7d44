"""Regular expressions that are compiled when they are first used.

Some five hundred stand in the modules that read messages; one message needs a part of them, and
compiling all of them took a quarter of the time in which a command starts.
"""

from __future__ import annotations

import re
from typing import Any, cast

_METHODS = ("search", "match", "fullmatch", "finditer", "findall", "split", "sub", "subn")


class _Uncompiled:
    """Stands for a pattern; any use compiles it, and from then on the pattern's own methods answer.

    Two threads that use it first at once both compile it, to the same end.
    """

    def __init__(self, pattern: str, flags: int) -> None:
        self.pattern = pattern
        self.flags = flags

    def __getattr__(self, name: str) -> Any:
        if name.startswith("__"):
            raise AttributeError(name)
        return getattr(self.compile(), name)

    def compile(self) -> re.Pattern[str]:
        """The pattern itself, whose methods answer from now on; re.error for a mistake in it."""
        compiled = re.compile(self.pattern, self.flags)
        for method in _METHODS:
            setattr(self, method, getattr(compiled, method))
        return compiled

    def __repr__(self) -> str:
        return f"regex({self.pattern!r}, {self.flags})"


def regex(pattern: str, flags: int = 0) -> re.Pattern[str]:
    """The pattern, compiled at its first use; for constants of a module, which tests use all of.

    A mistake in it shows only then (re.error). It answers as `re.Pattern` does, but is none to
    `isinstance` or to the functions of `re` that take a compiled pattern.
    """
    return cast("re.Pattern[str]", _Uncompiled(pattern, flags))
