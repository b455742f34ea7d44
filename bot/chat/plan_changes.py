"""A change of theirs that a message asks the answer to: "what if they swap sides"."""

from __future__ import annotations

from knowledge.planning.shifts import COVER, DEEP, POACH, SWAP, TAKES
from knowledge.regex import regex
from knowledge.situation import Asked, Situation
from knowledge.tactics.symptoms import find_symptoms
from knowledge.vocabulary import Topic

_WHO = (
    r"(?:they|theyre|theyve|them|he|she|hes|shes|N"
    r"|(?:the )?(?:strong|better|stronger|weak|weaker|other) (?:one|guy|player|partner))"
)
_NOW = r"(?: (?:now|then|suddenly|all of a sudden|again|today|just|on us|halfway|mid ?match))*"
_SWAPS = (
    r"(?:(?:swap|swaps|swapped|swapping|switch|switches|switched|switching|trade|traded)"
    r"(?: their)? (?:sides?|places?|courts?)|swap|swapped"
    r"|(?:move|moves|moved)(?: over)? to the other side"
    r"|(?:go|goes|went|going|move|moves|moved|moving|shift|shifts|shifted)(?: over)?"
    r"(?: to)?(?: the)? (?:left|right)(?: side)?(?= (?:then|now|what|plan|do|should)|$))"
)
_TAKES = (
    r"(?:(?:hide|hides|hiding|hid|bury|park|parks|parking)(?: (?:the )?(?:weak|weaker)"
    r" (?:one|player|guy|partner)| N| him| her)?|(?:take|takes|taking|took|play|plays|cover|covers"
    r"|covering|run|runs)(?: \w+)? (?:everything|every ball|all (?:the |of the )?balls"
    r"|(?:most|more|all|two thirds|three quarters|the whole)(?: of)?(?: the)?(?: court| balls?)?)"
    r"|(?:take|takes|taking|took) over|hogs?(?: the court)?)"
)
_COVERS = (
    r"(?:(?:cover|covers|covering|covered|shield|shields|shielding|protect|protects|protecting"
    r"|help|helps|helping)(?: (?:for )?(?:N|him|her|the (?:weak|weaker) (?:one|player|guy)))"
    r"|(?:slides?|slid|moves?|moved|moving|shifts?|shifted|shifting) over"
    r"(?! to (?:the|my|our|his|her))(?: to (?:cover|help)(?: (?:N|him|her|out))?)?"
    r"|squeezes?|squeezing|(?:take|takes) (?:the |away the )?middle)"
)
_POACHES = (
    r"(?:(?:start|starts|started|begin|begins) (?:to )?(?:poach|poaching|crossing|cross)"
    r"|poach|poaches|poaching)"
)
_DEEP = (
    r"(?:(?:start|starts|started) )?(?:(?:return|returning|returns)(?: it)? deep|hit deep returns)"
)

_CHANGES = {
    SWAP: regex(
        rf"\b{_WHO}{_NOW}(?: (?:have|had|are|is|ve|both|just|all|start|started))*{_NOW} {_SWAPS}\b"
    ),
    TAKES: regex(
        rf"\b{_WHO}{_NOW}(?: (?:is|are|have|has|just|start|started|starts|to))*{_NOW} {_TAKES}\b"
    ),
    COVER: regex(
        rf"\b{_WHO}{_NOW}(?: (?:is|are|have|has|just|start|started|starts|to))*{_NOW} {_COVERS}\b"
    ),
    POACH: regex(rf"\b{_WHO}{_NOW}(?: (?:is|are|have|has|just))*{_NOW} {_POACHES}\b"),
    DEEP: regex(rf"\b{_WHO}{_NOW}(?: (?:is|are|have|has|just))*{_NOW} {_DEEP}\b"),
}
_SUPPOSES = regex(r"\b(?:if|when|once|in case|suppose|say|should)\b")
_PLAN_B = regex(
    r"\b(?:plan ?b|planb|b plan|backup|fallback|plan|what (?:then|now|next|do (?:we|i) do|we do"
    r"|to do|do we change|should we do)|then what|now what|what if)\b"
    r"|^(?:and |so |ok |but )*what when\b"
)
_DONE_ALREADY = regex(
    rf"(?:ok |so |and |hey )*{_WHO}(?: (?:have|just|both|ve))* (?:swapped|switched|changed)"
    rf"(?: their)? (?:sides?|places?){_NOW}"
)
"""Said of what has happened, with nothing asked: the answer to it is wanted all the same."""


def change_asked(line: str, *, after_plan: bool) -> str:
    """Its name, where the line asks for the plan then; else nothing.

    `after_plan`: a plan was told last, so that "and if they poach?" goes on from it.
    """
    if _DONE_ALREADY.fullmatch(line):
        return SWAP
    if after_plan and _HIDES.fullmatch(line):
        return TAKES
    if not (_PLAN_B.search(line) or (after_plan and _GOES_ON.match(line))):
        return ""
    found = next((name for name, rule in _CHANGES.items() if rule.search(line)), "")
    is_supposed = _SUPPOSES.search(line) is not None
    return found if is_supposed or _ASKS_THEN.search(line) else ""


_POACHER_MET = regex(
    r"\b(?:what|how) (?:do|should|can|could|to)\b.* (?:vs|against|with|about|when|beat|handle|stop)"
    rf" {_WHO}(?: is| are| keeps?| always)* poach(?:es|ing)?\b"
)
_MAY_CHANGE = regex(r"\b(?:if|start\w*|begin\w*|plan\w*|suddenly|once|suppose)\b")


def poacher_met(line: str) -> bool:
    """Whether the answer to a poacher of theirs is asked for: "what do i do when N poaches".

    That one poaches already; what they may start to do is a change of theirs.
    """
    return _POACHER_MET.search(line) is not None and _MAY_CHANGE.search(line) is None


_HIDES = regex(
    r"(?:(?:and|or|so|ok|what about) )*(?:they )?(?:hide|hiding|bury|park) (?:N|him|her)"
)
"""`hide okafor` after a plan: what if they do."""

_IF_THEY = regex(rf"\b(?:if|when|once|in case) (?P<what>{_WHO}\b.+)$")
_OF_THE_PLAN = regex(r"\b(?:chang|adjust|adapt|catch|figur|cover|read|swap|switch|poach|hide)\w*")


def habit_asked(line: str) -> bool:
    """Whether a plan B is wanted against a habit that has an answer of its own: "if they bang"."""
    found = _IF_THEY.search(line)
    if found is None or _OF_THE_PLAN.search(found["what"]):
        return False
    words = found["what"].replace("N ", "they ")
    asked = Situation(topic=Topic.ANSWER_PATTERN, asked=Asked(words=words))
    return bool(find_symptoms(asked))


_GOES_ON = regex(r"(?:and |but |so |ok )*(?:if|when|once|in case) ")
_ASKS_THEN = regex(r"\b(?:what (?:then|now|next|do we do|to do)|then what|now what|plan ?b)\b")
