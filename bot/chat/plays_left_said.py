"""Who of ours plays left, as a message says or supposes it: "im right sunniva left", "what if she
plays left", "were stacking so tom is always left".

"Left" is a verb as well, and so is a side that somebody is asked about: without "plays", "on the"
or the other of us on the right, a name before it tells nothing here, nor behind "should" and "who".
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat.one_of_us import ONE, token, whom
from bot.chat.said import Mention, OurPlace
from bot.chat.words import Word
from knowledge.regex import regex
from knowledge.vocabulary import Side

_ASKS = (
    r"(?<!do )(?<!does )(?<!should )(?<!shall )(?<!can )(?<!could )(?<!would )(?<!is )(?<!are )"
    r"(?<!am )(?<!or )(?<!why )"
)
_OFTEN = r"(?:(?:always|usually|now|today|then|just|still|mostly|normally|stays?|will|ill|be) )*"
_PLAYS = (
    r"(?:(?:play|plays|playing|played|stand|stands|standing|take|takes|taking|have|has|having|got"
    r"|go|goes|going|be|is|are|am|on|at|stay|stays|move|moves|keep|keeps|was)"
    r" (?:(?:on|to|at|over|in|the|always|now|all|stacked|my|her|his) )*)"
)
_SIDE = (
    r"(?P<side>left|right)(?: (?:hand )?(?:side|court|half))?\b"
    r"(?! (?:hand|handed|hander|handers|or|of|shoulder|hip|knee|foot|leg|arm|ankle|wrist|after|when"
    r"|me|us|her|him|it|the|now so|away|behind)\b)"
)
_TELLS = regex(rf"{_ASKS}(?P<who>{ONE}) {_OFTEN}{_PLAYS}{_SIDE}")
"""`she plays left`, `i have the right`."""

_BARE = r"(?: (?:on|at|the|is|am|plays?|always|playing|to))*"
_BOTH = regex(
    rf"{_ASKS}(?P<who>{ONE}){_BARE} {_SIDE}(?: (?:and|with|so))*"
    rf" (?P<other>{ONE}){_BARE} (?P<others>left|right)\b(?! (?:hand|or)\b)"
)
"""`me on the right her on the left`, `im right sunniva left`: the one tells the other."""

_ALONE = regex(
    rf"(?:(?:ok|okay|so|and|then|well|its|it|is|today|with|yes|no|put|lets say|say) )*"
    rf"(?P<who>{ONE}){_BARE} {_SIDE}(?: (?:then|today|now|please|always|for now|side|player))*"
)
"""`colm left`: the words of our buttons, where whose side it is was just spoken of."""

_WEIGHS = regex(
    r"\b(?:left or right|right or left|left or the right|(?:who|which|whos) (?:\w+ ){0,3}"
    r"(?:left|right)|should (?:me|you|@\d+|partner)\b(?:(?! if )(?! when ).)* (?:left|right)"
    r"|(?:want|wants|rather|prefer|prefers|better|like|likes) (?:\w+ ){0,2}(?:on|to)?\b.*"
    r"(?:left|right))"
)
"""Where the side is what is asked, or wished: "who plays left", "she wants to play left"."""

_ME: Final = frozenset(["i", "im", "me", "ive", "ill"])
_PARTNER: Final = frozenset(
    ["partner", "partners", "pard", "pardner", "she", "her", "he", "him", "shes", "hes"]
)


def our_place_said(
    said: Sequence[Word], ours: Sequence[Mention], *, alone: bool = False
) -> OurPlace | None:
    """One of us and their side; None if it is not said. `alone`: a name and a side are enough.

    "She" is taken for the partner, so this holds only where our own places are spoken of.
    """
    line = " ".join(token(word, ours, me=_ME, partner=_PARTNER) for word in said)
    if _WEIGHS.search(line):
        return None
    both = _BOTH.search(line)
    if both is not None and (both["who"] == both["other"] or both["side"] == both["others"]):
        return None
    found = both or (_ALONE.fullmatch(line) if alone else None) or _TELLS.search(line)
    if found is None:
        return None
    return OurPlace(who=whom(found["who"], ours), side=Side(found["side"]))
