"""A file that came in or goes out: its name and its text, or its bytes as they are."""

from __future__ import annotations

import base64
from collections.abc import Mapping
from typing import Any

from knowledge.dataclass import dataclass

LARGEST_BYTES = 2_000_000
"""A file taken through a chat; ten thousand notes fit. Larger ones go through the command line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class File:
    """A file. `content` None: it was announced but could not be fetched, or is too large."""

    name: str
    content: bytes | None

    def to_json(self) -> dict[str, Any]:
        """Plain JSON."""
        content = None if self.content is None else base64.b64encode(self.content).decode()
        return {"name": self.name, "content": content}

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> File:
        """The value that `to_json` wrote."""
        content = stored["content"]
        return cls(
            name=stored["name"], content=None if content is None else base64.b64decode(content)
        )
