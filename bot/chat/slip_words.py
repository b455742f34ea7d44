"""How players take back what they just said: "no wait", "oops", "that was wrong"."""

from __future__ import annotations

import re

from knowledge.regex import regex

SLIP = (
    r"(?:(?:no|nope|nah|naw|oops|whoops|wait|actually|sorry|wrong|correction|hang on|hold on|i mean"
    r"|i meant|my bad|ah|oh|ok|um|uh) )"
)
"""One such word before what is right."""

CORRECTS = regex(
    r"^(?:(?:ah|oh|ok|um|uh) )*(?:no|nope|nah|naw|oops|whoops|wait|actually|wrong|correction|i mean"
    r"|i meant|hang on|hold on|sorry no|scratch that|strike that)\b"
    r"(?! (?:way|chance|doubt|idea|point|luck|problem))"
)
"""At the start of a message that says what is right instead of what was said."""

_STEP = r"(?:one|1|a)(?: (?:step|rally|point|pt|tap))?"
_ONE_BACK = rf"(?:please )?(?:(?:go )?back {_STEP}|go {_STEP} back)(?: please)?"
"""`back one step`; "one step back" alone says where to stand."""

TAKES_BACK = regex(
    rf"{SLIP}*(?:oops|whoops|go back|take back|{_ONE_BACK}|wrong|wrong (?:button|one|tap|key)"
    r"|(?:i )?(?:hit|pressed|tapped) the wrong (?:button|one)|(?:that|it)(?: was|s| is)? wrong"
    r"|thats wrong|that was a mistake|not that|mis ?tap(?:ped)?|mistake|typo)"
)
"""Nothing but that a slip happened; what is right is not said."""

WRONG_PERSON = regex(
    rf"{SLIP}*(?:(?:that|it|you have|you got|this)(?: was| is)? )?(?:the )?wrong"
    r" (?:guy|girl|player|person|man|woman|lady|name|dude|opponent)\b"
)
"""At the start of a message that says who somebody was, and nothing of whose a rally was."""

OF_A_TAP = regex(r"\b(?:oops|whoops|button|tap|mistap|mistapped)\b")
"""A slip of the finger, even where it has just ended the match."""

EVERYTHING = regex(
    rf"{SLIP}*(?:undo|take back) (?:everything|it all|all of it|all|them all)"
    r"(?: the (?:rallies|points|taps))?"
)


_UNDOES = (
    r"(?:undo|take back|scratch|delete|remove|cancel|strike|(?:take|put) (?:that|it) back|redo)"
    r"(?: (?:that|it|this|the|last|one|rally|point|pt|again|back))*"
)
_A_LET = (
    r"(?:lets?|replay(?:ed|ing)?|do ?over|hinder\w*|hindrance|interference|interrupt\w+|stray ball"
    r"|ball on (?:the )?court|(?:doesnt|didnt|dont|does not|did not|shouldnt) count|no point)"
)
_RALLY = r"(?: (?:it|that|the (?:rally|point)))?"
_AGAIN = (
    rf"(?:(?:replay(?:ed|ing)?|redo|re ?do|do ?over|play(?:ed|ing)?{_RALLY} (?:again|over))"
    rf"{_RALLY})"
)
_BETWEEN = (
    r"(?:(?:because|cause|cos|bc|since|as|so|that|it|this|there|was|is|were|its|thats|we|they|are|"
    r"called|call|got|had|a|an|the|just|only|actually|to|gonna|have|came|rolled|on|it|then|and) )*"
)
WAS_A_LET = regex(
    rf"{SLIP}*{_UNDOES} {_BETWEEN}{_A_LET}(?: {_BETWEEN}{_AGAIN})?"
    rf"|{SLIP}*{_BETWEEN}{_A_LET} {_BETWEEN}(?:{_UNDOES}|{_AGAIN} {_UNDOES})"
    rf"|{SLIP}+{_BETWEEN}(?:{_A_LET} )?{_BETWEEN}{_AGAIN}"
    rf"|{SLIP}+(?:that|it|this) (?:was|is) (?:an? )?lets?"
)
"""The rally just counted is to be played again: "undo that, it was a let", "no let, play it again".
Without a word that takes back, the let may be of a rally that nobody counted."""

A_LET = regex(rf"{SLIP}*(?:{_BETWEEN}{_A_LET}(?: {_BETWEEN}{_AGAIN})?|{_BETWEEN}{_AGAIN})")
"""What a rally turns out to be, told behind it: "won it, no wait it was a let, we replay"."""


def starts_corrected(line: str, at: int) -> bool:
    """Whether the words before place `at` of the line do no more than take back."""
    begun = CORRECTS.match(line)
    if begun is None:
        return False
    between = line[begun.end() : at]
    return (
        re.fullmatch(rf" {SLIP}*(?:(?:thats|it|that|this|its|the) (?:was |is |s )?)?", between)
        is not None
    )
