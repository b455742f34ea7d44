"""How often we poach and off which ball, where nothing is said of them playing at one of us.

Common practice, no source, but for the rule of two bounces: about one in four, one early so that
they look (the team's coaching review, fourth section).
"""

from __future__ import annotations

from types import MappingProxyType
from typing import Final

from knowledge.advice import MAX_REASONS, Advice, Choice, Confidence, Reason
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.aim_words import assumed, short
from knowledge.tactics.told_ball import plain_words
from knowledge.tactics.told_reasons import plain, ruled
from knowledge.vocabulary import Topic, Trait

USUAL: Final = 0.25
OFTEN_FROM: Final = 0.35
SELDOM_BELOW: Final = 0.15

USUAL_CALL = "Poach about one in four; one in the first four."
NOT_THE_RETURN = "Their return must bounce: poach from the fifth on."
NEW_SIGNAL = "Change the signal; fake once, then go later."
WHICH_BALL = "Go off a floater, else stay"
SHOWN = "Shown once, they look: then fake"
PAYS_MOST = "It pays off their third, from the line"
STAY = "They go behind you twice? Stay home for four."
MORE = (
    "Poaching everything opens two lanes: they want that.",
    "Signal before the serve; the partner slides into the gap.",
    "Go before they hit and they see it: leave as they look down.",
)

_POACH = regex(r"\bpoach(?:ing|es)?\b")
_THEIRS = regex(
    r"\b(?:they|theyre|he|hes|she|shes|their|his|her|them)\b(?: \w+){0,3}? poach\w*|"
    r"\b(?:stop|beat|against|behind|past|handle|around|counter|punish|over|read|reads|avoid)"
    r" (?:\w+ ){0,2}poach\w*|\bpoachers?\b"
)
_PLAYED_AT = regex(r"\b(?:pick\w*|target\w*|isolat\w*|fr[eo]ez\w*|froz\w*|play\w* at|hit\w* at)\b")
_STROKE = r"(?:returns?|thirds?|3rds?|fifths?|drops?|drives?|dinks?|backhands?|forehands?|bh|fh)"
_WHOSE = r"(?:(?:the|their|his|her|a|they) )"
_ASKS = regex(
    r"^(?:(?:so|ok|and|do we|do i|should we|should i|to) )*poach(?:ing)? or\b|"
    r"\b(?:stay|hold|shade|wait) or poach|"
    r"\bhow (?:often|much|many times) (?:do|should|can|to|must|shall)\b.*\bpoach|"
    r"\bpoach\w*\b.*\bhow (?:often|much|many times)\b|"
    r"\bwhen (?:to|do (?:we|i)|should (?:we|i)|can (?:we|i)) poach|"
    r"\bpoach\w* (?:rate|frequency|percentage)\b|"
    r"\bpoach\w*(?: \w+){0,3} (?:\d+%|\d+ percent|\d+ (?:in|of) \d+)|"
    r"\b(?:\d+%|\d+ percent)(?: \w+){0,2} poach|"
    r"\b(?:worth|are we|am i|were) poaching\b|"
    r"\b(?:do|are|is) (?:we|i|us) poach\w*(?: \w+)? (?:too (?:much|often|little)|enough)|"
    r"\b(?:we|us) poach (?:more|less)\b|^(?:so |and )?poach less\b|"
    rf"^(?:(?:so|and|do|should|can|we|i) )*poach (?:off |on |at )?{_WHOSE}?(?:\w+ )?{_STROKE}\b"
)
_THEY_READ_IT = regex(
    r"\b(?:they|theyre|both|he|she)(?: \w+){0,2} (?:read|see|know|guess|reading|reads|sees|knows)"
    r"(?:ing)? (?:our|my|the) (?:poach\w*|signals?|fakes?|switch(?:es)?)\b"
)
_OFF_A_RETURN = regex(r"\breturns?\b")
_RATE = regex(
    r"\b(?P<hundred>\d{1,3})(?:%| percent)|\b(?P<times>\d{1,2}) (?:in|of) (?P<all>[1-9]\d?)\b"
)


_OTHER_MORE_OR_LESS = regex(
    r"(?:(?:so|ok|and|but|then|hey) )*(?:should|shall|can|must) (?!they\b)(?:my )?\w+ "
    r"(?:be )?(?:just )?poach(?:ing)?"
    r"(?: (?:more|less|now|at all|a lot|a bit|often|here|much|today))+"
)
"""`should bram poach less`: nobody is asked what an opponent should do."""

_MORE_OR_LESS = regex(
    r"(?:(?:so|ok|and|but|then|hey) )*(?:should|shall|can|do|must) (?:i|we) (?:be )?(?:just )?"
    r"poach(?:ing)?(?: (?:more|less|now|at all|a lot|a bit|often|here|much|today))+"
)
"""`should i poach more`, and nothing of whom they play at."""


def asks_whether_to_poach_more(text: str) -> bool:
    """Whether it asks for more or less of our poach, with nothing told beside it."""
    return _MORE_OR_LESS.fullmatch(plain_words(text)) is not None


def asks_of_our_poach(text: str) -> bool:
    """Whether it asks how often, when or off which ball we poach, and of nobody who plays at us.

    That they read it is the same question: what to do about it is how we go.
    """
    words = plain_words(text)
    if _OTHER_MORE_OR_LESS.fullmatch(words) and not _MORE_OR_LESS.fullmatch(words):
        return True
    if _THEY_READ_IT.search(words):
        return True
    if not _POACH.search(words) or _THEIRS.search(words) or _PLAYED_AT.search(words):
        return False
    return _ASKS.search(words) is not None


def tells_of_their_poach(text: str) -> bool:
    """Whether it is they who poach."""
    if _OTHER_MORE_OR_LESS.fullmatch(plain_words(text)):
        return False
    return _THEIRS.search(plain_words(text)) is not None


def advise(situation: Situation) -> Advice:
    """The rate against the one that was asked about, and off whom it pays."""
    words = plain_words(situation.asked.words)
    off = _whose_third(situation)
    return_asked = _OFF_A_RETURN.search(words) is not None
    noted = () if off is None else (_off(off),)
    bounces = (ruled("two bounces", "Earliest volley: the fourth shot", reason=1),)
    reasons = (*(bounces if return_asked else ()), *noted, *plain(*_general(off)))
    return Advice(
        topic=Topic.BEING_TARGETED,
        call=_called(words),
        reasons=reasons[:MAX_REASONS],
        unless=STAY,
        assumed=None if off is not None else assumed(situation, is_general=True),
        confidence=Confidence.GENERAL_RULE if off is None else Confidence.LEAN,
        numbers=MappingProxyType({"usual_share": USUAL}),
        choices=(
            Choice(label="worse", topic=Topic.ADJUST),
            Choice(label="stack?", topic=Topic.STACK_OR_NOT),
        ),
        more=MORE,
    )


def _called(words: str) -> str:
    if _THEY_READ_IT.search(words):
        return NEW_SIGNAL
    return NOT_THE_RETURN if _OFF_A_RETURN.search(words) else _call(_rate(words))


def _rate(words: str) -> float | None:
    """The share that is asked about: "40%", "1 in 3"; None where none is said or it is none."""
    found = _RATE.search(words)
    if found is None:
        return None
    parts, whole = (found["hundred"], "100") if found["hundred"] else (found["times"], found["all"])
    share = int(parts) / int(whole)
    return share if share <= 1 else None


def _call(rate: float | None) -> str:
    if rate is None:
        return USUAL_CALL
    said = f"{100 * rate:.0f} in 100"
    if rate >= OFTEN_FROM:
        return f"{said} is a lot: one in four keeps them guessing."
    if rate < SELDOM_BELOW:
        return f"{said} is little: they need not look. One in four."
    return f"{said} is about right: near one in four."


def _whose_third(situation: Situation) -> OnCourt | None:
    """Whichever of them is noted for the weaker third; None without a note that settles it."""
    weak = [
        one
        for one in situation.theirs
        if (third := one.profile.skill(Trait.THIRD_SHOT_DROP)).is_weak and not third.is_open
    ]
    return min(weak, key=lambda one: one.profile.skill(Trait.THIRD_SHOT_DROP).level, default=None)


def _off(one: OnCourt) -> Reason:
    text = short((f"Off {one.name}'s third: weak third shot", "Off the weak third shot"))
    return Reason(text=text, source=one.profile.skill(Trait.THIRD_SHOT_DROP).source)


def _general(off: OnCourt | None) -> tuple[str, ...]:
    return (WHICH_BALL, SHOWN) if off is not None else (WHICH_BALL, PAYS_MOST, SHOWN)
