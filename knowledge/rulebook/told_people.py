"""Rules that who speaks to whom decides: a coach to players, the other pair to us, us to a caller.

In play only a partner may advise (2025 edition, section 13); talk between partners is no
distraction, talk across the net may be one (2020-24 editions, 11.J); a call is the caller's to
change, and with a referee it may be appealed (2022 edition, 6.D).
"""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.bad_calls import BAD_CALL
from knowledge.rulebook.touching import plain

COACHING: Final = "coaching"
COACH_IN_BREAKS: Final = "coach in breaks"
TALK_TO_PARTNER: Final = "talk to partner"
DISTRACTION: Final = "distraction"
CHANGED_CALL: Final = "changed call"

_SAYS: Final = (
    r"(?:talk\w*|speak\w*|say\w*|tell\w*|shout\w*|yell\w*|call out|advise|coach|instruct"
    r"|signal\w*|help|hint\w*|(?:give|make|pass)\w*)"
)
_TO_PLAYERS: Final = (
    r"(?:(?:my|the|our) (?:players?|pair|team|two|girls|guys|boys|women|men|kids|ladies|lot)|them)"
)
_MAY: Final = regex(
    r"\b(?:(?:can|may|could|should) i|(?:am i|is it|is that) (?:\w+ )?(?:allowed|permitted|legal|ok"
    r"|okay|fine)|do i get to|i am (?:not )?allowed|im (?:not )?allowed)\b"
)
_ADVISES: Final = regex(rf"\b{_SAYS} (?:\w+ ){{0,3}}?{_TO_PLAYERS}\b")
_COACHES: Final = regex(
    r"\b(?:(?:im|i am|as|me) (?:(?:the|a|an|their|our|just|only) )*coach(?:ing)?"
    r"|(?:can|may|could|should) i coach|my (?:players?|pair|team|girls|boys|kids|ladies))\b"
)
_IN_PLAY: Final = regex(
    r"\bbe+tween (?:(?:the|their|all|two) )*(?:points?|pts?|rall(?:y|ies)|serves?|balls)\b"
    r"|\b(?:b4|before|after) (?:each|every|a|the|their) (?:point|rally|serve)\b"
    r"|\b(?:mid|during|in|while|whilst|when) ?(?:(?:the|a|they|theyre|are|it|is|its) )*"
    r"(?:play(?:ing)?|rall(?:y|ies)|points?|live|on court)\b"
)
_IN_A_BREAK: Final = regex(
    r"\b(?:time ?outs?|breaks?|be+tween (?:the )?(?:games|matches)|after the (?:game|match)"
    r"|at the (?:change|switch|end))\b"
)
_TO_A_PARTNER: Final = regex(r"\b(?:partners?|each other|opponents?|other (?:team|pair|side))\b")

_ACROSS: Final = regex(r"\b(?:across|over|through) the net\b")
_TALKS: Final = regex(
    r"\b(?:talk(?:s|ed|ing)?|chat(?:s|ted|ting)?|says?|saying|said|shouts?|shouting|yell(?:s|ing)?"
    r"|mutter(?:s|ing)?|whisper(?:s|ing)?|mak(?:e|es|ing) (?:\w+ )?(?:comments?|remarks?|noises?)"
    r"|trash ?talk(?:s|ing)?|chirp(?:s|ing)?|comment(?:s|ing)?|taunt(?:s|ing)?|banter(?:s|ing)?"
    r"|teas(?:es|ing)|laugh(?:s|ing)?)\b"
)
_REACHES: Final = regex(r"\b(?:reach\w*|follow\w*|swing\w*|paddle|lean\w*|ball)\b")

_TAKEN_BACK: Final = regex(
    r"\b(?:can|could|may|do|will|would|should) (?:we|i|they|you|u|he|she|it|that|this"
    r"|(?:the|a|that|her|his|their)(?: \w+)? call)"
    r" (?:(?:be|get|have|make|ask|to|it|that|her|him|them|the|their|his|call|line|a|still|ever) )*"
    r"(?:revers\w+|overturn\w*|overrul\w+|(?<=her )change|(?<=him )change|(?<=them )change"
    r"|(?<=get it )changed)(?: (?:it|that|the|her|his|their|this|call|line|now|then|or|not|by|ref"
    r"|referee|a))*"
)
_OWN_CALL: Final = regex(r"\b(?:my|our|own)\b")
_OF_A_CALL: Final = regex(r"\b(?:call\w*|revers\w+|overturn\w*|overrul\w+)\b")


_WAS_IN: Final = regex(
    r"\bcall(?:s|ed)? (?:\w+ ){0,3}(?:out|long|wide) (?:(?:and|but|when|though|although) )+"
    r"(?:it|the ball|that|mine|ours) (?:(?:was|is|landed|clearly|def|definitely|so|just|way) )+"
    r"(?:in|good|on the line)\b"
)
_WE_CALLED: Final = regex(r"\b(?:i|we|partner|me) (?:\w+ )?call|\b(?:then|chang\w+|after all)\b")


def rule_of_people(words: str, found: str | None, *, before: str = "") -> str | None:
    """The rule's name where who speaks to whom decides it; else None. `found`: the likeliest."""
    said = plain(words)
    if _coaches(said, found):
        return COACHING
    if _talks_across(said):
        return DISTRACTION
    if found == CHANGED_CALL and _WAS_IN.search(said) and not _WE_CALLED.search(said):
        return BAD_CALL  # that it was in is ours to say, and no second thought of the caller's
    return BAD_CALL if asks_to_take_back(words, before=before) else None


_IF_ALLOWED: Final = regex(
    r"\b(?:legal|illegal|allowed|permitted|ok|okay|fair|fine|a fault|rules?|distraction|warning"
    r"|(?:can|should|could|may) (?:we|i) (?:\w+ )?(?:do|say|complain|report|stop|ask|claim))\b"
)


def asks_of_talk_across(words: str) -> bool:
    """Whether it is asked what may be done about talk across the net."""
    said = plain(words)
    return _talks_across(said) and _IF_ALLOWED.search(said) is not None


def _talks_across(said: str) -> bool:
    is_talk = _ACROSS.search(said) is not None and _TALKS.search(said) is not None
    return is_talk and _REACHES.search(said) is None


def asks_to_take_back(words: str, *, before: str = "") -> bool:
    """Whether it is asked if another's call can be undone: nobody but the caller takes it back."""
    said = plain(words)
    if _TAKEN_BACK.fullmatch(said) is None or _OWN_CALL.search(said):
        return False
    return _OF_A_CALL.search(said) is not None or "call" in plain(before)


def _coaches(said: str, found: str | None) -> bool:
    """Whether a coach asks to speak to players while a game goes on.

    "Them" alone are players too, unless a player speaks of the other pair: `found` tells that
    talk to somebody is asked about at all, and a pause named is another rule.
    """
    if _IN_PLAY.search(said) is None or _IN_A_BREAK.search(said) or _TO_A_PARTNER.search(said):
        return False
    if _COACHES.search(said):
        return _ADVISES.search(said) is not None or "i coach" in said
    is_of_talk = found in (TALK_TO_PARTNER, COACHING, COACH_IN_BREAKS, None)
    return is_of_talk and _MAY.search(said) is not None and _ADVISES.search(said) is not None
