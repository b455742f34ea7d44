"""Whether a message asks of our own shake and bake or of theirs: who does it decides the answer."""

from __future__ import annotations

from knowledge.regex import regex

_IT = r"shak(?:e|ing) (?:and|n|an|y|in) bak(?:e|ing)"
_THEIRS = regex(
    rf"\b(?:they|theyre|he|she|their|stop|beat|handle|defend|counter|against us)\b.*\b{_IT}"
)
_OURS = regex(rf"\b(?:we|i|us|me|our)\b.*\b{_IT}\b")
_NOW = regex(
    rf"\b{_IT}(?: (?:a|the|good))*"
    r" (?:idea|play|on|off|for (?:us|we|me)|here|now|yes or no|y n)\b"
)
_WHO = regex(
    r"(?:(?:so|ok|and) )*(?:who|which of us)(?: of us)?(?: (?:should|does|do))?"
    r"(?: drives?(?: and)?(?: (?:who|which one))?)? crash(?:es)?\b(?! (?:of|for) they\b).*"
)


def asks_our_crash(line: str) -> bool:
    """Whether the folded words, with names as "we" and "they", ask of our own.

    `should we shake and bake`, `who drives who crashes`; "how do we stop shake and bake" does not.
    """
    if _THEIRS.search(line):
        return False
    return any(form.search(line) for form in (_OURS, _NOW)) or _WHO.fullmatch(line) is not None
