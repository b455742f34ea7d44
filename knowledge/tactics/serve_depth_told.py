"""How deep their serve lands, as a question of where to stand tells it."""

from __future__ import annotations

from knowledge.regex import regex

_BEFORE = r"(?<!our )(?<!my )(?<!we )(?<!i )"
_DEPTH = r"(?P<{name}>short|soft|low|deep|long|heavy|hard|fast|big)"
_TOLD = regex(
    rf"\b{_BEFORE}serv(?:es?|ing)(?: (?:it|is|are|r|always|so|very|really|all|mostly|quite|pretty"
    rf"|comes?|lands?|drops?|stays?|usually|often|too))* {_DEPTH.format(name='after')}\b"
    rf"|\b{_BEFORE}{_DEPTH.format(name='before')} serv(?:es?|er)\b"
)
_SHORT = frozenset(["short", "soft", "low"])


def serves_short(words: str) -> bool | None:
    """Whether their serve lands short, or else deep; None where nothing is said of it."""
    told = _TOLD.search(words.casefold())
    if told is None:
        return None
    return (told["after"] or told["before"]) in _SHORT
