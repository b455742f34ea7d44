"""Partners who tell a ball differently: by their names, which the words of the rule don't know.

Where they differ the ball is in (2022 edition, 6.D.9), whatever one of them saw for sure.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from knowledge.rulebook.touching import plain

PARTNERS_DISAGREE: Final = "partners disagree"

_OURSELVES: Final = ("i", "me")
_PARTNER: Final = ("my partner", "partner")
_LINKS: Final = r"(?:(?:it|that|the|ball|one|was|is|as|landed|land|clearly|definitely|just|well) )*"
_TELLS: Final = (
    r"(?:(?:clearly|just|definitely|also|had|has|have|only) )*"
    r"(?:saw|sees?|seen|says?|said|calls?|called|thinks?|thought|swears?|had)"
)
_IN: Final = frozenset(["in", "good", "on"])


def partners_differ(words: str, names: Sequence[str]) -> bool:
    """Whether two of us tell the one ball in and the other out; `names` are ours, as typed.

    "Okafor says in, i say out" tells of nobody's partner: what they see at our end is no call.
    """
    told: dict[str, bool] = {}
    for who, verdict in _claim(tuple(name.casefold() for name in names)).findall(plain(words)):
        person = who if who not in _OURSELVES else "i"
        told.setdefault(person, verdict in _IN)
    return len(told) > 1 and len({*told.values()}) > 1


def _claim(names: tuple[str, ...]) -> re.Pattern[str]:
    who = "|".join(re.escape(one) for one in (*_PARTNER, *names, *_OURSELVES))
    return re.compile(rf"\b({who}) {_TELLS} {_LINKS}(in|good|on|out|long|wide)\b")
