"""Who a note was really of, told right behind it: "no she doesn't, that was Dez", "i mixed them".

What is denied of the one is what the other does: the note moves over, and stands of nobody twice.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import Certainty, Mention
from bot.chat.words import Word, folded_line
from knowledge.dataclass import dataclass
from knowledge.regex import regex

_DENIES = regex(
    r"\b(?:never|isnt|arent|wasnt|doesnt|dont|didnt|cant|wont|hardly|barely|aint)\b"
    r"|\b(?:he|she|they|hes|shes|theyre|is|are|was|does|do|did)(?: really)? not\b"
)
_IT_WAS = regex(
    r"(?:that|it|this|thats|its)(?: (?:was|is|were|be))?"
    r"(?: (?:really|actually|all|just|always|of course))?"
)
_I_MEANT = regex(
    r"(?:(?:sorry|oops|wait|no) )*i (?:meant?|was (?:thinking of|on about|talking about|thinking))"
)
_IN_MIND = (
    r"(?:who |that )?i (?:meant?|was (?:thinking (?:of|about)|on about|talking about|after)"
    r"|had in mind)"
)
_BEHIND = regex(rf"(?:(?:not|sorry|instead|who (?:does|did|is|was)|(?:him|her)|{_IN_MIND}|ofc) ?)*")
_HAD_IN_MIND = regex(rf"{_IN_MIND}\b")
_NO = regex(r"(?:(?:no|nope|nah|actually|sorry|oops|wait|hang on|ah|oh) ?)*")

_EXCHANGED = regex(
    r"\bi (?:(?:have|had|ve|just|must have|totally) )*(?:mix|confuse|muddle|swap|switch)(?:ed|d)?"
    r" (?:up )?(?:them|those(?: two)?|these(?: two)?|the (?:two|names|players)|both|A and A|A)"
    r"(?: (?:up|around|round))?\b"
    r"|\bi (?:(?:have|had|just|must have) )*got (?:them|those(?: two)?|the (?:two|names)|A and A)"
    r" (?:mixed up|confused|muddled|swapped|backwards|(?:the )?(?:other|wrong) way (?:a?round))"
)


_LONGEST_LEAD = 6
"""Words before the right name: "sorry no i was thinking of"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WhoseItWas:
    """`denied` are the words of what the one does not do, none where only the name is put right;
    `right` is the one who does. `may_slip`: "he can't lob, i meant Dez" may as well tell of Dez
    what it says, unless the note before says otherwise."""

    denied: str
    right: Mention
    may_slip: bool = False


def whose_it_was(text: str, said: Sequence[Word], mentions: Sequence[Mention]) -> WhoseItWas | None:
    """The denial and the right name; None unless the message ends on "that was NAME" or "i meant
    NAME".

    Nothing but the name may stand behind "that was": "she didn't lob, that was a drive" names
    nobody, and "was that dez?" asks. Without a denial, "nah that's dez i was thinking of" has to
    say that another was in mind: "no that was dez" is a correction of questions as well.
    """
    named = [one for one in mentions if not one.pronoun]
    if "?" in text or not named or named[-1].certainty is not Certainty.SURE:
        return None
    right = named[-1]
    before = [word for word in said if word.span[1] <= right.span[0]]
    behind = folded_line([word for word in said if word.span[0] >= right.span[1]])
    if not _BEHIND.fullmatch(behind):
        return None
    for length in range(1, _LONGEST_LEAD + 1):
        lead, denied = folded_line(before[-length:]), before[:-length]
        is_meant = _I_MEANT.fullmatch(lead) is not None
        if not (is_meant or _IT_WAS.fullmatch(lead)):
            continue
        if denied and _DENIES.search(folded_line(denied)):
            return WhoseItWas(denied=text[: denied[-1].span[1]], right=right, may_slip=is_meant)
        if _HAD_IN_MIND.search(behind) and _NO.fullmatch(folded_line(denied)):
            return WhoseItWas(denied="", right=right)
    return None


def tells_of_exchange(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether it says that two were taken for each other: what was noted of one is the other's."""
    named = [one for one in mentions if not one.pronoun]
    line = " ".join(dict.fromkeys(_as_names(said, named)))
    return _EXCHANGED.search(line) is not None


def _as_names(said: Sequence[Word], named: Sequence[Mention]) -> list[str]:
    return [
        "A" if any(one.span[0] <= word.span[0] < one.span[1] for one in named) else word.folded
        for word in said
    ]
