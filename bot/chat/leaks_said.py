"""A review by leak, and one to share with a student: "leaks", "review for a student"."""

from __future__ import annotations

from rapidfuzz.distance import OSA

from bot.chat.said import ListAsked, ListedVerb
from bot.chat.words import words
from knowledge.regex import regex

LONGEST = 12
"""Words of such a wish."""

_SLIPS = 1
_SHORTEST_SLIPPED = 6
"""Letters of a word in which one slip still leaves it itself: "leans" is not "leaks"."""

_REVIEW = frozenset(["review", "recap", "reviews", "summary", "leaks", "drills", "debrief"])
_STUDENT = frozenset(
    ["student", "students", "pupil", "pupils", "learner", "learners", "trainee", "lesson",
     "mentee", "client", "clients"]
)  # fmt: skip
_SHARES = frozenset(["share", "sharing", "shareable", "handout"])
_NAMELESS = regex(
    r"\b(?:without|w o|no|hide|minus|leave out)(?: the| any| their)? (?:names?|notes?|people)\b"
    r"|\banonym\w*\b|\bnameless\b"
)
_LEAKS = regex(
    r"(?:(?:show|list|see|give me|me|the|our|my|please|pls|all|what|whats|are|were|which|any)"
    r" )*(?:leaks?|leeks|laeks|drills?|dril+s)"
    r"(?: (?:and|with|by|list|drills?|leaks?|times?|please|pls|again|from|the|video|vid|now|so far"
    r"|for|us|in|today))*"
    r"|(?:(?:show|list|the|our|my|me|see|please) )*(?:video|vid|film) (?:review|leaks|recap|list)"
    r"|(?:review|recap|list|sort|group)(?: (?:the|our|my|it|them|all|rallies|video|vid|points))*"
    r" (?:by leaks?|video|vid|film)"
    r"|(?:what|which|wat|wot)(?: drills?)? (?:should|shd|shld|shud|do|can|shall|must)"
    r" (?:we|i|they) (?:(?:need|have|want|got) to )?(?:drill|practi[cs]e"
    r"|train|work on)(?: (?:next|now|after this|tomorrow|this week))?"
    r"|what did the (?:video|vid|film) (?:show|say|tell)"
)
_WORST = regex(
    r"(?:(?:so|ok|and|now) )*(?:which|what)(?: (?:one|ones))?(?: (?:of|was|were|is|are))*"
    r" (?:my|our) (?:(?:biggest|worst|main|most common|most frequent|usual|commonest) )?"
    r"(?:errors?|mistakes?|misses)"
    r"(?: (?:was|were|is|did|cost|are|the|most|worst|biggest|us|me|today|so far|cost us|of all))*"
    r"|what (?:(?:did|do) (?:i|we) miss (?:most|the most)|did i do wrong)"
    r"(?: (?:today|so far))*"
    r"|(?:so |and )?how (?:was|were) (?:i|we)(?: (?:honest|honestly|really|today|be honest))*"
)
"""`which of my errors was the biggest`: what the log counts, worst first."""


def leaks_said(text: str) -> ListAsked | None:
    """What of the review is asked for; None for anything else."""
    said = [word.folded for word in words(text[:200])]
    if not 0 < len(said) <= LONGEST:
        return None
    line = " ".join(said)
    reviews = _has(said, _REVIEW)
    if reviews and (_has(said, _STUDENT) or _has(said, _SHARES) or _NAMELESS.search(line)):
        return ListAsked(text=text, verb=ListedVerb.FOR_STUDENT)
    if _LEAKS.fullmatch(line) or _WORST.fullmatch(line):
        return ListAsked(text=text, verb=ListedVerb.LEAKS)
    return None


def _has(said: list[str], meant: frozenset[str]) -> bool:
    return any(_is(word, one) for word in said for one in meant)


def _is(word: str, meant: str) -> bool:
    """The word, or with one slip of the finger in it."""
    if word == meant:
        return True
    if len(meant) < _SHORTEST_SLIPPED:
        return False
    return OSA.distance(word, meant, score_cutoff=_SLIPS) <= _SLIPS
