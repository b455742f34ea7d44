"""Stands where the library keeps its HTTP client, which it would load whoever sends for it.

Ours is another one (`requests.py`), so 5 MB of modules would lie there for nothing. The library's
own module with this class is never loaded (`__init__.py`).
"""

from __future__ import annotations

from typing import NoReturn


class HTTPXRequest:
    """What a `telegram.Bot` would make for itself if it were given nothing that sends."""

    def __init__(self, *_arguments: object, **_named: object) -> NoReturn:
        raise TypeError("telegram.Bot(...) must be given both requests (contact.new_bot)")
