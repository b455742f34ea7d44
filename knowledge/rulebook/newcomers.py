"""Rules that somebody new asks for in everyday words: the three numbers, the kitchen, who begins.

"Why is it 2", "can i go in the kitchen at all", "can we swap sides or is that cheating": the words
are those of play, so whole questions are known here by their form. Numbers and who begins: 2025
edition, 4.B.6, 4.J and 5.A; standing anywhere: 4.B.6; a score in doubt: 2021-22 edition, 4.K.
"""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.touching import plain

_LEAD = (
    r"(?:(?:so|ok|okay|but|and|wait|um|hey|sorry|hang on|please|still|i (?:still )?(?:dont|do not)"
    r" (?:get|understand)(?: it| this| that)?) )*"
)
_TAIL = (
    r"(?: (?:again|then|please|anyway|really|exactly|though|tho|for|at the start|here|right|now))*"
)
_SCORE = r"(?:\d+ \d+ [12]|zero zero two|(?:the|these|those|all)? ?(?:three|3) numbers?)"
_LAST_NUMBER = (
    r"(?:the )?(?:(?:third|3rd|last|final|extra) number(?: (?:in|of) the score)?|[12] at the end)"
)
_NUMBERS: Final = regex(
    rf"{_LEAD}(?:what|whats) (?:(?:do|does|is|are) )?(?:(?:they|it|that|you|people) )?"
    rf"(?:mean(?:s|t)? )?(?:(?:by|with|when they say|saying) )?{_SCORE}"
    rf"(?: (?:mean|stand for|about))?{_TAIL}"
    rf"|{_LEAD}(?:what|whats) (?:(?:do|does|is|are) )?{_LAST_NUMBER}(?: (?:mean|stand for))?"
    rf"{_TAIL}"
    rf"|{_LEAD}why (?:(?:do|does|are|is) )?(?:(?:they|there|you|we|it) )?(?:(?:say|call|have) )?"
    rf"(?:three|3) numbers{_TAIL}"
)
_SECOND = r"(?:(?:the |a )?(?:server )?(?:2|two|second)(?: server)?)"
_BEGINS_AT_TWO: Final = regex(
    rf"{_LEAD}(?:why|how come) (?:(?:is|does|do|did|am|are) )?"
    r"(?:(?:it|they|you|we|i|the (?:game|score|match)|(?:the|my|our) first (?:server|serve)) )?"
    r"(?:(?:already|always|have to|start|starts|begin|begins|call|called|calls|say|says|at|on|with"
    rf"|as|in|0 0|zero zero|not|the|one|1) )*{_SECOND}{_TAIL}"
    rf"|{_LEAD}if (?:we|they|i|you) (?:lose|loses|lost|miss) the (?:very )?first"
    r" (?:rally|point|one)(?: of the (?:game|match))?(?: then)?(?: (?:do|does|is|will))?"
    r" (?:(?:they|we|you|it|its) )?(?:(?:just|straight) )?(?:serves?|get (?:the )?serve"
    rf"|side ?out|over)(?: (?:already|straight ?away|is that it|and thats it|or|right|not))*{_TAIL}"
)

_MAY = (
    r"(?:(?:can|may|could) (?:i|we|you|u|one|anyone|my partner)"
    r"|(?:am i|are we|are you|is one) (?:ever |even )?(?:allowed|permitted) to"
    r"|is it (?:ok|okay|allowed|legal|fine) to)"
)
_IN_IT = r"(?:go|step|stand|be|walk|stay|come|get|set foot)"
_KITCHEN = r"(?:kitchen|nvz|non volley zone)"
_MAY_ENTER: Final = regex(
    rf"{_LEAD}{_MAY} (?:(?:ever|even|actually|just|still) )*{_IN_IT} (?:in|into|inside|on)"
    rf" (?:the )?{_KITCHEN} (?:at all|ever|or not|any ?time|at any time|period)"
    rf"|{_LEAD}(?:whats|what is|what was) the {_KITCHEN} rule(?: again| then)?"
    rf" {_MAY} (?:(?:ever|even|actually|just|still) )*{_IN_IT} (?:in|into|inside|on) it(?: at all)?"
)

_SWAPS: Final = regex(
    r"\b(?:swap|switch|change|trade)(?:s|ing|ping)? (?:sides|places|positions|courts|spots)\b"
)
_IF_LEGAL: Final = regex(
    r"\b(?:cheat(?:ing)?|allowed|legal|illegal|against the rules|permitted|a fault)\b"
)
_OF_ENDS: Final = regex(
    r"\b(?:ends?|at \d+|when|how often|sun|wind|net|they|them|their|opponents?|serv\w+)\b"
)
_LONGEST: Final = 20
"""Words of such a question; a longer one tells an incident. Our own bound."""

_HOW_DECIDED = (
    r"how (?:do|does|is|are) (?:(?:they|you|it|that|people|one) )?(?:decide[ds]?|chosen?|choose"
    r"|picked|pick|settled?|determined?)"
)
_WHO_BEGINS: Final = regex(
    rf"{_LEAD}(?:who|which (?:team|side|pair)) (?:serves?|starts?|begins?|goes"
    rf"|gets (?:to|the) serve) first (?:and )?{_HOW_DECIDED}{_TAIL}"
    rf"|{_LEAD}{_HOW_DECIDED} (?:who|which (?:team|side|pair)) (?:serves?|starts?|begins?|goes)"
    rf"(?: first)?{_TAIL}"
    rf"|{_LEAD}how do we decide (?:which (?:team|side|pair)|if we or they) (?:serves?|starts?)"
    rf"(?: first)?{_TAIL}"
)
_SCORE_DIFFERS: Final = regex(
    r"(?=.*\b(?:disagree\w*|differ\w*|argu(?:e|ing)|(?:dont|cant|do not|cannot) agree)"
    r" (?:about|on|over) (?:the |what the )?score\b)(?=.*\b(?:what|who|whose|how|which)\b)"
)


def rule_of_a_newcomer(words: str) -> str | None:
    """The name of the rule that such a question asks for; None for any other."""
    said = plain(words)
    found = next((rule for form, rule in _FORMS if form.fullmatch(said)), None)
    if found is None and _SCORE_DIFFERS.match(said):
        return "wrong score"
    return found or ("stack" if _asks_if_we_may_swap(said) else None)


def _asks_if_we_may_swap(said: str) -> bool:
    is_short = len(said.split()) <= _LONGEST
    asked = is_short and _SWAPS.search(said) is not None and _IF_LEGAL.search(said) is not None
    return asked and _OF_ENDS.search(said) is None


_FORMS: Final = (
    (_NUMBERS, "score call"),
    (_BEGINS_AT_TWO, "zero zero two"),
    (_MAY_ENTER, "kitchen enter"),
    (_WHO_BEGINS, "toss"),
)
