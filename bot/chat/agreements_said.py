"""What our pair settles, told in words: "we agreed forehand takes the middle".

Who of us takes the middle on which ball is settled by saying it, "tom takes mid on dinks, mira on
drives": of two partners that is no scouting. Both must be named, each with a ball, and nothing more
may be told or asked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.message import Message, is_ours
from bot.chat.named_line import NAME, named_line
from bot.chat.said import AgreementSaid, Mention
from bot.chat.view import ChatView
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
_WE_STACK = regex(
    r"^(?:so |ok |okay |btw |fyi |and |but |no )*we "
    r"(?P<value>(?:(?:only|just|always|usually) )*stack (?=.*\b(?:serv\w*|return\w*)\b)"
    r"(?:(?:only|just) )*(?:on|when|behind|for|off)\b"
    r"(?!.* (?:or|but|should|what|why)\b).*)$"
)
"""`we stack on tom's serve only`: a habit of ours, told as what we do."""

_AGREEMENT_WORDS = (
    (
        r"\bfirst serv\w*|\b(?:starts?|starting|begins?) (?:the )?serv\w*|\bserves? first",
        AgreementKey.FIRST_SERVER,
    ),
    (r"\b(?:time ?outs?|calls? time|to call time)\b", AgreementKey.TIMEOUT_CALLER),
    (r"\b(?:poach\w*|signals?|fist|open hand|fingers behind)\b", AgreementKey.POACH_SIGNAL),
    (r"\b(?:stack\w*)\b", AgreementKey.STACK),
    (r"\b(?:lobs?|lobbed|overhead|overheads)\b", AgreementKey.LOBS),
    (r"\b(?:mid|middle|center|centre|seam|between us|down the gut)\b", AgreementKey.MIDDLE),
    (
        r"\b(?:left side|right side|plays? left|plays? right|on the left|on the right|sides?"
        r"|left (?:and )?\w+ right|right (?:and )?\w+ left)\b",
        AgreementKey.SIDES,
    ),
)


_MIDDLES = frozenset(["mid", "mids", "middle", "middles", "seam"])
_SLOW = frozenset(["slow", "soft", "dink", "dinks"])
_FAST = frozenset(["fast", "hard", "drive", "drives", "speedups"])
_SHARED = 4
"""Words of two names, each with its kind of ball."""
_OF_A_SPLIT = word_set("shares_out_the_middle")


def middle_shared_out(message: Message, chat: ChatView) -> AgreementSaid | None:
    """Whose the middle is on slow and on fast balls, where each of us is named with one."""
    named = [one for one in message.mentions if not one.pronoun]
    ours = all(is_ours(one, chat.ours) for one in named)
    if message.asks or "?" in message.text or not (named and ours):
        return None
    told = named_line(message.said, message.mentions).split()
    rest = {*told} - {NAME} - _MIDDLES - _SLOW - _FAST - _OF_A_SPLIT
    if rest or _MIDDLES.isdisjoint(told):
        return None
    names = iter(named)
    row = [_first_name(next(names), chat) if word == NAME else word for word in told]
    share = [word for word, kind in zip(row, told, strict=True) if kind in {NAME, *_SLOW, *_FAST}]
    whose = {
        "slow" if _SLOW & {one, other} else "fast": other if {one} & (_SLOW | _FAST) else one
        for one, other in zip(share[::2], share[1::2], strict=False)
        if len({one, other} & (_SLOW | _FAST)) == 1
    }
    if len(share) != _SHARED or set(whose) != {"slow", "fast"} or len({*whose.values()}) == 1:
        return None
    value = f"slow {whose['slow']}, fast {whose['fast']}"
    return AgreementSaid(text=message.text, key=AgreementKey.MIDDLE, value=value)


def _first_name(mention: Mention, chat: ChatView) -> str:
    return next(row.name for row in chat.roster if row.player in mention.players).split()[0]


def agreement_said(text: str, said: Sequence[Word]) -> AgreementSaid | None:
    """What our pair settles; `value` keeps the words after "we agreed"."""
    line = folded_line(said)
    stacked = _WE_STACK.match(line)
    if stacked is not None and "?" not in text:
        return AgreementSaid(text=text, key=AgreementKey.STACK, value=stacked["value"])
    found = _AGREED.match(line)
    if found is None or "?" in text:
        return None
    for words, key in _AGREEMENT_WORDS:
        if re.search(words, found[1]):
            return AgreementSaid(text=text, key=key, value=found[1])
    return None
