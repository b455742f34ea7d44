"""How a reply names a pair, and how it fits a line."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from knowledge.advice import CALL_LIMIT
from knowledge.situation import OnCourt


def pair_name(players: Sequence[OnCourt]) -> str:
    """ "Okafor/Lindqvist"; "them" for nobody."""
    return "/".join(one.name for one in players) or "them"


def name_or(one: OnCourt | None, otherwise: str) -> str:
    """The player's name; the other words where nobody is known or the name isn't."""
    return one.name if one is not None and one.name else otherwise


def first_that_fits(candidates: Iterable[str], *, limit: int = CALL_LIMIT) -> str:
    """The first text within the limit; the last one, cut at a word, if none is."""
    last = ""
    for text in candidates:
        if len(text) <= limit:
            return text
        last = text
    return last[: limit + 1].rpartition(" ")[0].rstrip(" ,;:")
