"""Which of the two a ball goes to, asked in hardly a word: "okafor or lindqvist on the return"."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat.words import Word
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_SHOTS: Final = (
    (r"returns?|rets?|returning", Topic.AIM_RETURN),
    (r"serves?|srvs?|serving", Topic.AIM_SERVE),
    (r"dinks?|dinking", Topic.AIM_DINK),
    (r"thirds?|3rds?|third shots?|3rd shots?|drops?|drives?", Topic.THIRD_SHOT),
    (r"speed ?ups?|attacks?|putaways?", Topic.AIM_ATTACK),
    (r"overheads?|smash(?:es)?", Topic.AIM_OVERHEAD),
    (r"lobs?", Topic.LOB),
)
_LEAD = r"(?:(?:so|ok|and|do i|do we|should i|should we|i|we) )*"
_OUR = r"(?:the |my |our |a )?"
_THEM = (
    r"(?:they(?: and they)? or (?:the other(?: one| guy)?|his partner|her partner|(?!we\b)\w+)"
    r"|(?!we\b)\w+ or they)"
)
"""Two of them, of whom one may be called by a name that the book does not have."""


def _forms(shot: str) -> str:
    return (
        rf"{_LEAD}(?:return to |serve to |hit |go |target )?{_THEM} (?:on|for|off|with|w) {_OUR}"
        rf"(?:{shot})(?: first| now)?"
        rf"|{_LEAD}{_OUR}(?:{shot})(?: it)?(?: (?:to|at|on|over))? {_THEM}(?: first| now)?"
    )


_ASKED: Final = tuple((regex(_forms(shot)), topic) for shot, topic in _SHOTS)


def which_of_them(sided: Sequence[Word]) -> Topic | None:
    """The shot whose target is asked; `sided` are the words with names told as we and they."""
    line = " ".join(word.folded for word in sided)
    return next((topic for form, topic in _ASKED if form.fullmatch(line)), None)
