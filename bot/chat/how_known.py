"""Words before a statement that only say how we know it: "i really think that", "it turns out"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import Word, words_in
from knowledge.regex import regex

_SEEN_BY_ME = (
    words_in("think thought believe reckon guess feel noticed notice saw see bet know swear"),
    words_in("really just do also kinda still"),
)
_BEFORE_WHOM = words_in("that like")
_SEEN_BY_US = regex(
    r"(?:(?:i|we|ive|weve) (?:(?:really|just|do|did|also|kinda|still|can|now|have|ve|had|only) )*"
    r"(?:think|thought|believe|reckon|guess|feel|noticed?|saw|see|seen|bet|know|knew|swear|found"
    r"|learned|learnt|heard|hear|realised|realized|discovered|spotted|remember)"
    r"|(?:(?:it|so) )?(?:turns|turned) out)(?: (?:out|now|today|clearly|already|just))*"
    r"(?: (?:that|like))? "
)
"""What a part may open with that only says how we know it: "i see now that", "it turns out"."""

_WORDS_OF_SEEING = 8
"""Of "and i can see now that". Common practice, no source."""


def words_of_thought(said: Sequence[Word], at: int) -> int:
    """How many words here only say that I think so: "i really think that"."""
    line = [word.folded for word in said[at : at + 4]]
    verbs, adverbs = _SEEN_BY_ME
    if line[:1] != ["i"]:
        return 0
    verb = 1 + (line[1:2] != [] and line[1] in adverbs)
    if line[verb : verb + 1] == [] or line[verb] not in verbs:
        return 0
    return verb + 1 + (line[verb + 1 : verb + 2] != [] and line[verb + 1] in _BEFORE_WHOM)


def words_of_seeing(said: Sequence[Word], at: int) -> int:
    """How many words here only say that we found it out, thought it or were told."""
    line = " ".join(word.folded for word in said[at : at + _WORDS_OF_SEEING]) + " "
    seen = _SEEN_BY_US.match(line)
    return seen[0].count(" ") if seen else 0
