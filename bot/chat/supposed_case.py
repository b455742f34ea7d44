"""A case that is only supposed: "and if lindqvist poaches" asks what then, and tells nothing.

Where a second clause follows, it tells what then is seen: "if you dink her middle hale pops it up".
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import Mention
from bot.chat.words import Word, words_in
from knowledge.regex import regex

_OPENING = regex(
    r"(?:(?:ok|okay|so|and|but|or|oh|hm+|well|yes|yeah|no|wait|right|then|also|now|even|just"
    r"|only) )*"
    r"(?:what if|what happens (?:if|when)|what about (?:if|when)|if|suppose|supposing|imagine|say"
    r"|assume|assuming|in case|lets say)(?: that)? "
)
_THEM = words_in("he she hes shes they theyre")
_SUBJECTS = words_in("i im we you he she they it its this that thats us hes shes theyre theres")
_MARKS = frozenset(",;:.!\n—–")

LONGEST = 8
"""Words behind who is supposed to do it; more tell a story. Our own bound."""


def is_supposed(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether the message is one clause and nothing of it more than a case."""
    opening = _OPENING.match(" ".join(word.folded for word in said) + " ")
    if opening is None:
        return False
    begin = len(opening[0].split())
    after = _behind_subject(said, begin, mentions)
    if after is None or not after < len(said) <= after + LONGEST:
        return False
    return not any(_begins_another(word, mentions) for word in said[after:])


def _behind_subject(said: Sequence[Word], begin: int, mentions: Sequence[Mention]) -> int | None:
    """The place of the first word behind who is supposed to do it; None where that is nobody."""
    if begin >= len(said):
        return None
    if said[begin].folded in _THEM:
        return begin + 1
    at = said[begin].span[0]
    named = next((one for one in mentions if one.span[0] <= at < one.span[1]), None)
    if named is None:
        return None
    return next((n for n in range(begin, len(said)) if said[n].span[0] >= named.span[1]), len(said))


def _begins_another(word: Word, mentions: Sequence[Mention]) -> bool:
    """Whether a second clause begins with it: a mark before it, or somebody else as its subject."""
    named = any(one.span[0] == word.span[0] and not one.pronoun for one in mentions)
    return named or word.folded in _SUBJECTS or bool(set(word.gap) & _MARKS)
