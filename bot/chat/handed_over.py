"""A note told to be of another, with more behind the name: "no thats Dez, she comes in fine".

What follows either tells the same again ("no wait that's Dez who pops up dinks"), or how it is with
the one whom the note was of.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import Certainty, Mention
from bot.chat.words import Word, folded_line, words_in
from knowledge.dataclass import dataclass
from knowledge.regex import regex

_LEADS = regex(
    r"(?:(?:ok|ah|oh|and|but|so|um|uh) )*"
    r"(?:(?:no|nope|nah|sorry|oops|whoops|wait|actually|hang on|hold on"
    r"|wrong(?: (?:one|player|guy|name))?) )+(?:(?:thats|that|its|it)(?: (?:is|was|were))?"
    r"(?: (?:really|actually|all))*|i mean|i meant)"
    r"|i meant?"
)
_WHO = words_in("who that whos thats")
_DOES_THAT = regex(
    r"(?:always )?(?:does|did|is|was)(?: (?:that|it|this|those|so|them|all the time|a lot|always))*"
)
_SHE = words_in("he she hes shes his her")


@dataclass(frozen=True, slots=True, kw_only=True)
class HandedOver:
    """`right` is whom the note was of, `behind` the text after the name; `retells` what it told."""

    right: Mention
    behind: str
    retells: bool

    @property
    def says_no_more(self) -> bool:
        """ "Who does that", which sounds like a question."""
        return self.retells and _DOES_THAT.fullmatch(self.behind.lower()) is not None


def handed_over(text: str, said: Sequence[Word], mentions: Sequence[Mention]) -> HandedOver | None:
    """Whom the note was of, and what is told behind it; None where nothing is, or it asks."""
    named = [one for one in mentions if not one.pronoun]
    if "?" in text or not named or named[0].certainty is not Certainty.SURE:
        return None
    right, others = named[0], named[1:]
    lead = folded_line([word for word in said if word.span[0] < right.span[0]])
    if _LEADS.fullmatch(lead) is None:
        return None
    behind = _without_whom_not([word for word in said if word.span[0] >= right.span[1]], others)
    if not behind:
        return None
    first = behind[0]
    tells_on = first.folded in _SHE or any(one.span[0] == first.span[0] for one in others)
    retells = first.folded in _WHO or (lead.startswith("i ") and not tells_on)
    if not (tells_on or retells):
        return None
    begins = behind[1 if first.folded in _WHO and len(behind) > 1 else 0].span[0]
    return HandedOver(right=right, behind=text[begins : behind[-1].span[1]], retells=retells)


def _without_whom_not(behind: Sequence[Word], others: Sequence[Mention]) -> Sequence[Word]:
    """The words without a "not doug" at their end: whom the note was not of is known."""
    last = others[-1] if others else None
    if last is None or not behind or behind[-1].span[1] > last.span[1]:
        return behind
    left = [word for word in behind if word.span[0] < last.span[0]]
    return left[:-1] if left and left[-1].folded == "not" else behind
