"""Left and right told apart: "plays left not right" and "she plays left i play right" are of sides.

The lexicon hears both hands in "serves left ... right" of one player, and may not in these.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import any_of, word_set
from bot.chat.trait_lexicon import NAME, Sense
from bot.chat.words import Word, folded_line
from knowledge.regex import regex
from knowledge.vocabulary import Value

_ANOTHER = word_set("tells_sides_apart") | {NAME}
"""What stands between a left and a right that are not both one player's."""

_WORDS_TO_THE_FACT = 5
_MARKS = frozenset(",;.!?()\n—–|/")

_LEFT_AND_RIGHT = regex(
    r"\b(?P<who>he|she) (?:\w+ ){0,3}?(?P<one>left|right)\b(?: side| court)?"
    r"(?: and| n| but| so| while)? (?:i|im|ill|id) (?:\w+ ){0,3}?(?P<other>left|right)\b"
    r"|\b(?:i|im|ill|id) (?:\w+ ){0,3}?(?P<mine>left|right)\b(?: side| court)?"
    r"(?: and| n| but| so| while)? (?P<her>he|she) (?:\w+ ){0,3}?(?P<hers>left|right)\b"
)


_HAND = r"(?:left|right)(?: ?hand(?:ed|er)|y)|leftie|rightie"
_MY_HAND = regex(rf"me (?:(?:being|as|is|am|a|the) )*(?:{_HAND})\b")
_WORDS_TO_MY_HAND = 6
_BEFORE_ME = word_set("clause_starters") | {"with", "handed", "hander", "lefty", "righty"}
"""What may stand before "me right handed"; "he hits at me left handed" tells of him."""

_OUR_HANDS = regex(
    rf"\bme (?:(?:being|as|is|am|a) )*(?:{_HAND})(?: (?:and|with|but|n|while))?"
    rf" (?:her|him|she|he|shes|hes) (?:(?:being|as|is|a) )*(?:{_HAND})\b"
    rf"|\b(?:her|him) (?:(?:being|as|is|a) )*(?:{_HAND})(?: (?:and|with|but|n|while))?"
    rf" me (?:(?:being|as|is|am|a) )*(?:{_HAND})\b"
)


def tells_my_hand(said: Sequence[Word], place: int) -> bool:
    """Whether "me being right handed" stands there, told of nobody else's stroke at me."""
    ahead = folded_line(said[place : place + _WORDS_TO_MY_HAND])
    begins = not place or set(said[place].gap) & _MARKS or said[place - 1].folded in _BEFORE_ME
    return bool(begins) and _MY_HAND.match(ahead) is not None


def tells_apart(sense: Sense, line: Sequence[str]) -> bool:
    """Whether words that sound like both hands tell of one side and not, or not hers, the other."""
    return sense.value is Value.AMBIDEXTROUS and bool(_ANOTHER & set(line))


def tells_a_fact(said: Sequence[Word], place: int) -> bool:
    """Whether a hand or a side is told right behind the place, before any mark."""
    ahead = said[place : place + _WORDS_TO_THE_FACT]
    stop = next((at for at, word in enumerate(ahead) if at and set(word.gap) & _MARKS), len(ahead))
    line = " ".join(word.folded for word in ahead[:stop])
    is_told = any(any_of(f"{what}.{side}").search(line) for what in _FACTS for side in _SIDES)
    return is_told or (line in _I_AM_THERE and shares_the_court(said))


_FACTS = ("hand", "side")
_SIDES = ("left", "right")
_I_AM_THERE = ("im left", "im right")
"""Told of a side where who plays beside me is told of the other: else "im right" agrees."""


def shares_the_court(said: Sequence[Word]) -> bool:
    """ "She plays left i play right": who has the other side than I is my partner. So is whose hand
    is told in one breath with mine: "me right handed and her left handed"."""
    line = folded_line(said)
    if _OUR_HANDS.search(line):
        return True
    found = _LEFT_AND_RIGHT.search(line)
    if found is None:
        return False
    return (found["one"] or found["hers"]) != (found["other"] or found["mine"])


_TOLD_TO_DO = regex(
    r"\b(?:he|she) (?:wont|will not|doesnt|does not|isnt|refuses to|never|still (?:wont|doesnt))"
    r" (?!stop\b|call\b|wait\b|serve\b|give\b|replay\b).*"
    r"\b(?:told|asked|reminded|tell|telling|asking) (?:him|her)"
    r" (?:twice|again|already|before|so|often|to|three"
    r"|\d|all|every|many|a (?:few|hundred|million|couple))\b"
)


def is_told_to_do(said: Sequence[Word]) -> bool:
    """ "He won't poach, told him twice": what somebody does not do though told is my partner's."""
    return _TOLD_TO_DO.search(folded_line(said)) is not None
