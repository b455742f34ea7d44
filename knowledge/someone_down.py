"""Somebody down on court: play stops, whoever it is and whatever else is asked.

Who falls and stays down, or falls and hurts, needs help; who only falls, or whose side is down in
the score, does not. Two signs are looked for apart: a fall, and that it was a bad one.
"""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex

_NO = r"(?:can ?t|cannot|can not|couldn ?t|could not|won ?t|isn ?t|not|hasn ?t|unable to|never)"
_GROUND = r"(?:ground|floor|deck|court|concrete|asphalt)"
_PART = (
    r"(?:knees?|legs?|ankles?|foot|feet|shins?|cal(?:f|ves)|achilles|hamstrings?|thighs?|groin|hips?"
    r"|backs?(?! ?hand)|necks?|heads?|faces?|eyes?|nose|chest|ribs?|stomach|shoulders?|elbows?"
    r"|wrists?|arms?|hands?)"
)
_SOMEBODY = (
    r"(?:he|she|hes|shes|he s|she s|im|i m|i am|partner|partners|opponent|opp|opps|player|guy|man|"
    r"woman|lady|kid|somebody|someone|one of them|one of the opps)(?: is| s)?"
)

_SAYINGS: Final = (
    r"(?:fall(?:s|ing|en)?|fell) (?:apart|behind|for|short|asleep|off|back|to pieces|away|in|into)",
    r"(?:we|they|us|them|team)(?: (?:all|both|just|re|are|were|have|had|ve))* "
    r"(?:go|goes|going|gone|went|down|fell|fall)",
    r"(?:balls?|shots?|drives?|drops?|dinks?|lobs?|serves?|returns?|slices?) "
    r"(?:(?:is|are|was|just|that) )*(?:fell|falls?|stays? down|stayed down|went down)",
    r"(?:go|goes|going|gone|went|hit\w*|attack\w*|speed\w*|play\w*|is|was|it) down "
    r"(?:the|my|our|his|her|their|middle|line|to|by|on|at|low|in (?:the|game|g))",
    r"(?:it )?(?:went|going|gone|go) down (?:hard in|badly)",
    r"(?:go|goes|going|gone|went|com(?:e|es|ing)|came|walk\w*|step\w*|run\w*) "
    r"(?:up (?:and|or|n) )?down (?:(?:the|a|some|my|any) )?"
    r"(?:stairs?|staircase|steps?|stairwell|hills?|ramp|slopes?|escalator|curbs?|kerbs?)",
    r"(?:swelling|pain|ache|bump|bruise|fever|temperature|soreness|tightness|energy|level)"
    r"(?: \w+){0,3} (?:goes|going|gone|went) down",
    r"going down(?= (?:still |also |really |just )?(?:hurts|aches|is|feels|gives|for|low)\b)",
    r"(?:hurts?|aches?|sore|pain\w*)(?: \w+){0,3} going down(?! hard)",
    r"down (?:by |to |at |in |on |a )?"
    r"(?:\d+|love|game|match|one|two|three|set|big|early|late|points?)",
    r"hurt(?:s|ing)? (?:us|them|you|me|our|their (?:game|serve|chances))",
    r"(?:lazy|grumpy|sulk\w*|moody|annoyed|angry|bored|stubborn|flat ?footed)"
    r"(?: (?:today|now|out there))?(?: and| so| n)? (?:(?:he|she|hes|shes|he s|she s)(?: is)? )?"
    r"(?:not|isn ?t) moving",
)
"""Falls and hurts that are none: a score, a line, a level; feet that a mood keeps still."""

_FALLS: Final = (
    r"(?:fell|falls|fallen|fall|falling)",
    rf"(?:hit|hits) the (?:hard )?{_GROUND}",
    rf"{_SOMEBODY} (?:\w+ )?(?:down|on the {_GROUND})",
    rf"(?:still|is) (?:down|on the {_GROUND})",
    r"(?:went|goes|going|gone|face) down",
    r"down (?:and )?(?=hurt|injured|hold|clutch|grabb|in pain|scream|crying|not\b|isn ?t)",
    r"(?:tripped|slipped|tumbled|collided|crashed into|ran into|wiped out)",
    r"(?:face ?plant\w*|took a (?:\w+ )?(?:fall|spill|tumble|dive)|dropped (?:to|like) \w+)",
    r"(?:lying|laying|lies|lays) (?:there|on|down|still|flat)",
)

_BAD: Final = (
    rf"{_NO} (?:\w+ ){{0,2}}(?:get|gets|getting|got|stand|standing|come|coming) (?:back )?up"
    r"(?! (?:to|for|there|quick|quickly|fast|in time|high|early|on|at)\b)",
    rf"{_NO} (?:\w+ ){{0,2}}(?:moving|move|responding|respond|answering|talking|walk|stand)"
    r"(?! (?:his|her|my) feet| well| fast| up| right| left| to)",
    r"(?:hold|clutch|grab|grabb|grip|gripp)(?:s|es|ing|ed)? (?:on to |onto )?"
    rf"(?:my|his|her|their|the|a) (?:\w+ )?{_PART}",
    r"(?:hurt|hurting|hurts|injured)",
    r"in (?:\w+ )?(?:pain|agony)",
    r"(?:screaming|screams|crying|writhing|moaning|groaning)",
)

_GRAVE: Final = (
    rf"^(?:\w+ ){{0,3}}{_NO} (?:even )?get (?:back )?up$",
    rf"{_NO} (?:even )?get (?:back )?up "
    r"(?:he|she|i|what|help|do we|should|stop|off the|from the|after|keep)",
    rf"(?:he|she|hes|shes|he s|she s)(?: is)? {_NO} moving(?:$| (?:help|stop|what|call)\b)",
    rf"{_SOMEBODY} (?:still )?(?:lying|laying) (?:there|on the {_GROUND}|still|down|flat)",
    r"(?:need|needs|call|get|where is|wheres|where s|send)(?: \w+){0,2} "
    r"(?:medics?|paramedics?|ambulance|first aid|emt|defibrillator|aed)",
    r"(?:we need|call|get)(?: \w+){0,2} doctor",
    r"(?:call|dial) (?:911|112|999|000)",
    r"man down",
    r"(?:fell|landed|went down)(?: \w+)? (?:hard|awkward\w*|heav\w+|badly)",
    rf"(?:hit the {_GROUND} hard|is still down$|(?<!ball )(?:lying|laying) on the {_GROUND})",
    r"(?:bad|hard|nasty|heavy|ugly) (?:fall|spill|tumble)",
)
"""What is grave without another sign beside it."""

_ELSEWHERE: Final = (
    r"^(?:what (?:happens |happen )?(?:if|when)|(?:what is|whats|what s) the rule|rule|if (?:a|an|"
    r"somebody|someone|anybody|anyone|any|you|one)\b)",
    r"\b(?:last (?:week|weekend|month|year|night|time|season|spring|summer|winter|tournament)|"
    r"yesterday|(?:days?|weeks?|months?|years?) ago|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b",
    r"\b(?:replay|repeat|do over|winner|whose (?:point|rally|ball)|points? (?:is|s|was)|legal|"
    r"allowed|hinder|fault|counts?|open court|do (?:we|they) (?:get|win|lose)|afraid|scared)\b",
    r"\b(?:without|never|hasn ?t|haven ?t) (?:\w+ ){0,2}fall\w*\b",
)
"""A rule that is asked for, a rally that is told, a day that is over."""


def _any(forms: tuple[str, ...]) -> str:
    return r"\b(?:" + "|".join(forms) + r")(?!\w)"


_SAYING, _FALL, _WORSE = regex(_any(_SAYINGS)), regex(_any(_FALLS)), regex(_any(_BAD))
_ALONE, _NOT_NOW = regex(_any(_GRAVE)), regex("|".join(_ELSEWHERE))

NEAR: Final = 60
"""Characters around a fall in which it is told how bad it was; common practice, no source."""


def is_down(said: str) -> bool:
    """Whether the words tell of somebody down who needs help now.

    `said` is lower case with a blank for everything but letters and figures.
    """
    if _NOT_NOW.search(said):
        return False
    said = _SAYING.sub(" ~ ", said)
    return bool(_ALONE.search(said)) or any(
        _is_bad(said, fall.span()) for fall in _FALL.finditer(said)
    )


def _is_bad(said: str, fall: tuple[int, int]) -> bool:
    """Whether something bad is told near this fall, before it or after."""
    before = said[max(0, fall[0] - NEAR) : fall[0]]
    return any(_WORSE.search(part) for part in (before, said[fall[1] : fall[1] + NEAR]))
