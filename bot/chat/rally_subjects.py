"""Where somebody else begins to act, unmarked: "sped up at okafor's hip he dumped it"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.rally_words import rally_lexicon
from bot.chat.words import Word

_SUBJECTS = frozenset(["i", "we", "they", "he", "she"])
"""Words that only ever act; a name may be whom the ball went at."""

_LEADS_ON = frozenset(
    ["after", "as", "because", "before", "that", "what", "when", "where", "which"]
)
"""What such a word leads to belongs to what stands before it."""

_ACTS = ("verbs.", "endings.", "acts.")


def begins_anew(before: Sequence[Word], ahead: Sequence[Word]) -> bool:
    """Whether the first word ahead acts on its own, after an act told before it."""
    if ahead[0].folded not in _SUBJECTS or before[-1].folded in _LEADS_ON:
        return False
    return bool(_concepts(before)) and any(start == 0 for start, _ in _concepts(ahead[1:]))


def _concepts(said: Sequence[Word]) -> list[tuple[int, str]]:
    """Where something is done, and what."""
    line = [rally_lexicon().repair(word.folded) for word in said]
    return [
        (hit.start, hit.concept)
        for hit in rally_lexicon().find(line)
        if hit.concept.startswith(_ACTS)
    ]
