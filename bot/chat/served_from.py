"""The court a serve is said to go from: "im serving from the right side", "right court"."""

from __future__ import annotations

import re

from knowledge.regex import regex
from knowledge.vocabulary import Side

_COURTS = {
    Side.RIGHT: r"right(?:[ -]hand)?|even|deuce",
    Side.LEFT: r"left(?:[ -]hand)?|odd|ad",
}
_WHOSE = r"(?:the |my |our |his |her |their )?"
_BODY = r"(?! ?(?:hip|shoulder|foot|feet|hand|arm|knee|elbow|wing|now|after|away))"
_SAID = {
    side: regex(
        rf"\b(?:(?:{words}) (?:side|court|box)|(?:from|on|in) {_WHOSE}(?:{words})\b{_BODY})\b",
        re.IGNORECASE,
    )
    for side, words in _COURTS.items()
}
_WHERE_THEY_PLAY = regex(
    r"\b(?:play(?:s|ing|er)?|stands?|lives?|is|hes|shes|he's|she's)(?: \w+){0,2}? "
    r"(?:left|right|even|odd|deuce|ad)\b(?: (?:side|court))?",
    re.IGNORECASE,
)
"""The side that a player plays is not the court that the serve goes from."""


def served_from(text: str) -> Side | None:
    """Our court that a question about a serve says; None for neither or both.

    The court that the receiver stands in has the same name, as each pair counts its own: a serve
    goes across.
    """
    said = _WHERE_THEY_PLAY.sub(" ", text)
    found = [side for side, form in _SAID.items() if form.search(said)]
    return found[0] if len(found) == 1 else None
