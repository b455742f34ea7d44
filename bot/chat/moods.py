"""How somebody feels or fares, where a name could stand: "my partner is tilting"."""

from __future__ import annotations

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.unknown_names import is_seen
from bot.chat.words import Word

_MOODS = word_set("moods")
_ENDINGS = ("ing", "ed")
_SHORTEST_STEM = 3


def is_mood(folded: str) -> bool:
    """Whether the word tells how somebody feels, whatever else it may be."""
    return folded in _MOODS


def tells_a_state(word: Word) -> bool:
    """Whether it tells of somebody instead of naming them: a mood, or what they do or suffer.

    A name may look like a verb ("Manning"); written as one, it stays a name.
    """
    return is_mood(word.folded) or (not word.is_capitalised and _is_of_a_verb(word.folded))


def _is_of_a_verb(folded: str) -> bool:
    """ "Sulking", "injured": a known word, or one made of a known verb."""
    ending = next((each for each in _ENDINGS if folded.endswith(each)), None)
    if ending is None or len(folded) - len(ending) < _SHORTEST_STEM:
        return False
    bare = folded.removesuffix(ending)
    once = bare[:-1] if bare[-1] == bare[-2] else bare
    return is_seen(folded) or any(_is_word(each) for each in (bare, once, f"{bare}e"))


def _is_word(folded: str) -> bool:
    return is_common(folded) or is_seen(folded)
