"""Words without their endings."""

from __future__ import annotations

KEPT_LETTERS = 4
"""An ending is taken off only where so many letters stay."""

ENDINGS = ("ing", "ed", "es", "s")


def stem(token: str) -> str:
    """The token without its ending: bounces, bounced and bouncing read alike."""
    for ending in ENDINGS:
        if token.endswith(ending) and len(token) - len(ending) >= KEPT_LETTERS:
            return token[: -len(ending)]
    return token
