"""What our pair settles, told in words: "we agreed forehand takes the middle"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.said import AgreementSaid
from bot.chat.words import Word, folded_line
from knowledge.regex import regex
from knowledge.vocabulary import AgreementKey

_AGREED = regex(
    r"^(?:so |ok |okay |btw |fyi |note )*(?:we(?:ve| have)? (?:just )?(?:agreed?|decided?"
    r"|settled|said|do it)"
    r"|agreed|agreement|our (?:rule|agreement|deal|plan) is|deal|settled|decided"
    r"|from now on)\b[:,]?"
    r"(?: that| on)?\s*(.*)$"
)
_AGREEMENT_WORDS = (
    (
        r"\bfirst serv\w*|\b(?:starts?|starting|begins?) (?:the )?serv\w*|\bserves? first",
        AgreementKey.FIRST_SERVER,
    ),
    (r"\b(?:time ?outs?|calls? time|to call time)\b", AgreementKey.TIMEOUT_CALLER),
    (r"\b(?:poach\w*|signals?|fist|open hand|fingers behind)\b", AgreementKey.POACH_SIGNAL),
    (r"\b(?:stack\w*)\b", AgreementKey.STACK),
    (r"\b(?:lobs?|lobbed|overhead|overheads)\b", AgreementKey.LOBS),
    (r"\b(?:middle|center|centre|seam|between us|down the gut)\b", AgreementKey.MIDDLE),
    (
        r"\b(?:left side|right side|plays? left|plays? right|on the left|on the right|sides?"
        r"|left (?:and )?\w+ right|right (?:and )?\w+ left)\b",
        AgreementKey.SIDES,
    ),
)


def agreement_said(text: str, said: Sequence[Word]) -> AgreementSaid | None:
    """What our pair settles; `value` keeps the words after "we agreed"."""
    found = _AGREED.match(folded_line(said))
    if found is None or "?" in text:
        return None
    for words, key in _AGREEMENT_WORDS:
        if re.search(words, found[1]):
            return AgreementSaid(text=text, key=key, value=found[1])
    return None
