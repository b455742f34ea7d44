"""What our pair settles, told in words: "we agreed forehand takes the middle".

Who of us takes the middle on which ball is settled by saying it, "tom takes mid on dinks, mira on
drives": of two partners that is no scouting. Both must be named, each with a ball, and nothing more
may be told or asked. Whoever writes may be "i", and beside them "he" or "my partner" is the other:
what is kept of the middle holds names, so that nobody is told the opposite of what they settled.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.message import Message, is_ours
from bot.chat.named_line import NAME
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
    named = _named(message)
    if message.asks or "?" in message.text or not all(is_ours(one, chat.ours) for one in named):
        return None
    told, row = _told_of_us(message, chat)
    rest = {*told} - {NAME} - _MIDDLES - _SLOW - _FAST - _OF_A_SPLIT
    is_settled = _AGREED.match(folded_line(message.said)) is not None
    if (rest and not is_settled) or _MIDDLES.isdisjoint(told):
        return None
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


def _named(message: Message) -> list[Mention]:
    """Who is named; in "agreed: i take" the opening word looks like a name that nobody bears."""
    return [one for one in message.mentions if not one.pronoun and one.players]


def _told_of_us(message: Message, chat: ChatView) -> tuple[list[str], list[str]]:
    """The words with N for each of us, and the same words with our first names in those places."""
    names = {one.span: _first_name(one, chat) for one in _named(message)}
    me, other = _both_of_us(chat)
    told: list[str] = []
    row: list[str] = []
    for word, then in zip(message.said, [*message.said[1:], None], strict=True):
        if word.folded == "my" and then is not None and then.folded in _PARTNER:
            continue
        name = next((names[span] for span in names if span[0] <= word.span[0] < span[1]), None)
        if name is None and me is not None:
            name = me if word.folded in _ME else other if word.folded in _OTHER else None
        if name is None or row[-1:] != [name]:
            told.append(NAME if name else word.folded)
            row.append(name or word.folded)
    return told, row


_ME = frozenset(["i", "ill", "im", "me", "my", "mine"])
_PARTNER = frozenset(["partner", "partners"])
_OTHER = _PARTNER | {"he", "she", "hes", "shes", "him", "his", "her", "hers"}


def _both_of_us(chat: ChatView) -> tuple[str | None, str | None]:
    """The first names of whoever writes and of the other; None where it is not known who writes."""
    if chat.asker not in chat.ours:
        return None, None
    names = {row.player: row.name.split()[0] for row in chat.roster if row.player in chat.ours}
    others = [names[one] for one in chat.ours if one != chat.asker and one in names]
    return names.get(chat.asker), others[0] if len(others) == 1 else None


def _first_name(mention: Mention, chat: ChatView) -> str:
    return next(row.name for row in chat.roster if row.player in mention.players).split()[0]


_BY_PRONOUN = regex(r"\b(?:i take|i|ill|me|mine|he|she|hes|shes|his|hers|(?:my )?partners?|my)\b")


def _with_names(value: str, chat: ChatView) -> str:
    """The words with "i" and "he" as names, where it is known who writes."""
    me, other = _both_of_us(chat)
    if me is None or other is None:
        return value

    def name(found: re.Match[str]) -> str:
        if found[0] == "i take":
            return f"{me} takes"
        return me if found[0] in _ME else other

    return _BY_PRONOUN.sub(name, value)


def agreement_said(
    text: str, said: Sequence[Word], chat: ChatView | None = None
) -> AgreementSaid | None:
    """What our pair settles; `value` keeps the words after "we agreed", with names for "i" and "he"
    where that is what they settle the middle by."""
    line = folded_line(said)
    stacked = _WE_STACK.match(line)
    if stacked is not None and "?" not in text:
        return AgreementSaid(text=text, key=AgreementKey.STACK, value=stacked["value"])
    found = _AGREED.match(line)
    if found is None or "?" in text:
        return None
    for words, key in _AGREEMENT_WORDS:
        if re.search(words, found[1]):
            is_of_middle = key is AgreementKey.MIDDLE and chat is not None
            value = _with_names(found[1], chat) if is_of_middle and chat else found[1]
            return AgreementSaid(text=text, key=key, value=value)
    return None
