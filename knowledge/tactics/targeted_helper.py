"""Whether a name beside "they play at one of us" gets the balls or is asked to help.

`should noor squeeze` names the helper; `they pick on noor` names the one who gets the balls.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.conditions import other_of

_HELPS = (
    r"(?:help\w*|squeez\w*|pinch\w*|poach\w*|slid\w*|shift\w*|cover\w*|com(?:e|es|ing)"
    r"|step\w*|cheat\w*|lean\w*|mov(?:e|es|ing)|jump\w*|cross(?:es|ing)?|tak(?:e|es|ing)|cut\w*"
    r"|crash\w*|stay\w*|hold\w*|do|does|doing|react\w*)"
)
_ASKS_IF = (
    r"(?:should|shall|can|could|would|does|is|will|must|may|do i (?:tell|have|want|send)|tell|have"
    r"|send|let|get|want|ask)"
)
_UNNAMED = r"(?:i|we|they|you|it|there|that|this|them|us|me|ball|balls)"
_DOES = regex(
    rf"\b{_ASKS_IF} (?!{_UNNAMED}\b)\w+(?: \w+)??(?: (?:to|just|also|have to|then|now))* {_HELPS}\b"
    rf"|\b(?!{_UNNAMED}\b)\w+ (?:should|must|can|to|has to|needs to|wants to) {_HELPS}\b"
    r"|\bwhat about \w+(?: then)?$|\bwhats \w+(?: \w+)? (?:job|role|part|do)\b"
    r"|\b(?:job|role) (?:for|of) \w+"
    rf"|\b(?:for|on) (?!{_UNNAMED}\b)\w+ to {_HELPS}\b"
)
"""Somebody named is asked to do something, where the one who gets the balls has done enough."""

_SQUEEZES = regex(r"\b(?:squeez\w*|pinch\w*|step\w* in|help|slid\w*|shift\w*|cheat\w*)\b")
_AT = (
    r"(?:at|on|to|after|against|target\w*|isolat\w*|pick\w* on|attack\w*|hit\w*|bomb\w*|feed\w*"
    r"|help(?:s|ing)?|for|behind|batter\w*|hunt\w*|lob(?:s|bing)?(?: over)?|over)"
)


def names_the_helper(words: str) -> bool:
    """Whether the folded words ask one who is named to do something, and put nobody else at the
    end of it."""
    return _DOES.search(words) is not None


def asks_to_squeeze(words: str) -> bool:
    """Whether the folded words ask about stepping in beside the one who gets the balls."""
    return _SQUEEZES.search(words) is not None


def gets_them_by_name(situation: Situation, words: str) -> OnCourt | None:
    """The one of ours whom the folded words put at the end of it: "at noor", "help noor"."""
    for one in situation.ours:
        name = re.escape(one.name.casefold())
        if one.name and re.search(rf"\b{_AT} (?:the |our )?{name}s?\b", words):
            return one
    return None


def gets_them(
    situation: Situation, named: Sequence[OnCourt], words: str, before: str
) -> OnCourt | None:
    """Who gets the balls where a helper is asked about: by these words, by those before, or else
    the other one than the only one `named`. None where no helper is asked about."""
    if not names_the_helper(words):
        return None
    told = gets_them_by_name(situation, words)
    earlier = (gets_them_by_name(situation, line) for line in reversed(before.splitlines()))
    known = told or next(filter(None, earlier), None)
    return known or (other_of(named[0], situation.ours) if len(named) == 1 else None)
