"""Where the other one of us goes when one poaches: across behind, into the side left open.

Common practice, no source: whoever goes has gone; the other fills, and stays only for a fake.
"""

from __future__ import annotations

from typing import Final

from knowledge.advice import Advice, Choice
from knowledge.regex import regex
from knowledge.tactics.told_ball import plain_words
from knowledge.tactics.told_reasons import plain
from knowledge.vocabulary import Topic

CROSS_BEHIND: Final = "Cross behind, at once: the open side is yours."
ONLY_A_FAKE: Final = "Only a fake? Stay: your own side is covered"
BY_SIGNAL: Final = "A signal before the serve: then both know"
NOBODY_STANDS: Final = "Nobody stands and looks: two on one side lose the rally"
UNSURE: Final = "Not sure they go on? Stay, and call it."

_POACHES = (
    r"(?:poach\w*|cross(?:es|ed|ing)?|goes|jumps|take[sn]? (?:my|the) (?:balls?|middle|shots?))"
)
_ASKS = regex(
    r"(?:(?:so|ok|and|but|then|also|hey) )*"
    r"(?:(?:whats|what is|wheres|where is) (?:my|the) (?:position|place|job|spot|role)"
    r"|where (?:do|should|must|shall|am) i (?:be |go |stand |move |run |supposed to (?:be|go) )*"
    r"|what (?:do|should|must) i (?:do|cover)"
    r"|(?:do|should|must|shall) i (?:cross|switch|go|move|cover|stay|swap|change)"
    r"(?: (?:over|back|across|sides?|then|behind|his|her|or|stay|cross|switch|too))*) ?"
    rf"(?:when|if|after|once|while|as) (?P<who>\w+|my partner) {_POACHES}"
    r"(?: (?:over|across|in front|of me|again|the middle|my ball|a ball|now))*"
)


_OF_MY_PLACE = regex(
    r"\bmy (?:position|place|job|spot|role)\b|\b(?:do|should|must|shall) i (?:cross|switch|swap)\b"
)


def is_of_a_partner(text: str) -> bool:
    """Whether it speaks of places that only partners share: then "he" is one of us."""
    return _OF_MY_PLACE.search(plain_words(text)) is not None


def who_crosses(text: str) -> str | None:
    """Who is said to poach, where it is asked what the other does then; None for anything else."""
    found = _ASKS.fullmatch(plain_words(text))
    who = None if found is None else found["who"]
    return None if who in ("they", "i", "we", "you", "anybody", "somebody") else who


def advise() -> Advice:
    """Across behind, unless it was a fake."""
    return Advice(
        topic=Topic.BEING_TARGETED,
        call=CROSS_BEHIND,
        reasons=plain(ONLY_A_FAKE, BY_SIGNAL, NOBODY_STANDS),
        unless=UNSURE,
        choices=(
            Choice(label="the middle", topic=Topic.COVER_MIDDLE),
            Choice(label="stack?", topic=Topic.STACK_OR_NOT),
        ),
    )
