"""The score told by what is missing: "we need 3 more, they need 1"."""

from __future__ import annotations

from bot.chat.score_words import FIRST, SECOND
from bot.chat.spoken_line import NUMBER, SpokenLine, count
from knowledge.dataclass import dataclass
from knowledge.regex import regex

_ONLY = r"(?:only |just |still |now )*"
_NEEDS = regex(
    rf"\b(?P<who>we|were|they|theyre) {_ONLY}"
    rf"(?:(?:need|needs|want|lack) {_ONLY}(?:another )?(?P<need>{NUMBER})"
    rf"(?: more)?(?: points?| pts?)?\b(?! (?:to|in|of)\b)"
    rf"|(?:are |re )?(?P<away>{NUMBER})(?: points?| pts?)? (?:away|short)\b)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundNeeds:
    """Points that we and they lack to the target, the server if said, and the words."""

    ours: int
    theirs: int
    server: int | None
    places: frozenset[int]


def find_needs(line: SpokenLine) -> FoundNeeds | None:
    """What either side still needs; None unless it is said of both."""
    found = {one["who"][0] == "w": one for one in _NEEDS.finditer(line.text)}
    if len(found) < 2:
        return None
    ours, theirs = (count(found[us]["need"] or found[us]["away"]) for us in (True, False))
    rest = _NEEDS.sub(",", line.text)
    server = 2 if SECOND.search(rest) else 1 if FIRST.search(rest) else None
    places = line.covered(*found.values())
    return FoundNeeds(ours=ours, theirs=theirs, server=server, places=places)
