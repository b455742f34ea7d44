"""Where in a long message the question stands, so that its words weigh more than the story."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import words_in

_WH = words_in("what where who which how when why whose whom")
_AFTER_WH = words_in(
    "do does should would is are was can to did could shall will has have many much often far deep"
    " side one of am big likely about else now"
)
_VERBS = words_in(
    "should shall can do does is are would could did am was may will might have has ought must"
)
_SUBJECTS = words_in(
    "i we it he she my our this that there <ours> <name> they you the one a us not mine your"
)
_SHORTEST_QUESTION = 3  # words


def asking_part(words: Sequence[str], start: int, end: int) -> tuple[int, int]:
    """The part of words[start:end] from its last "where do", "should we" on; else all of it."""
    for at in range(end - _SHORTEST_QUESTION, start - 1, -1):
        word, following = words[at], words[at + 1]
        if word in _WH and following in _AFTER_WH:
            return at, end
        if word in _VERBS and following in _SUBJECTS:
            opened = at > start and words[at - 1] in _WH
            return at - opened, end
    return start, end
