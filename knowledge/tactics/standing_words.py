"""Rules and small words that every answer about places uses."""

from __future__ import annotations

from knowledge.advice import CALL_LIMIT
from knowledge.sources import rule

SERVER_RULE = rule("4.B.6")
"""Doubles: who serves from which court, and that partners swap after a point of theirs."""

POSITIONS_RULE = rule("4.B")
"""Only server, server's court and receiver are fixed; partners stand where they like."""


def fitted(*candidates: str) -> str:
    """The first that fits a call line; the last is short by construction."""
    return next((one for one in candidates if len(one) <= CALL_LIMIT), candidates[-1])


def parity(points: int) -> str:
    return "even" if points % 2 == 0 else "odd"


def capital(text: str) -> str:
    return text[:1].upper() + text[1:]
