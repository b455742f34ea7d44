"""What the words say of a jump at the corner or a ball round the post: whose, and how it stands."""

from __future__ import annotations

import re
from collections.abc import Iterable
from enum import StrEnum

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.told_ball import plain_words

_DEFENDS = regex(
    r"\b(?:stop|stops|stopping|defend\w*|defen[cs]e|handle|prevent|avoid|beat|counter|against|"
    r"deal with|protect|return a|answer)\b"
)
_DOES = (
    r" (?:keeps? |always |just |often |then |really )*"
    r"(?:ern(?:e|ie|es|ies|ed|ieing|eing)?|jump(?:s|ed)?|"
    r"hops?|leaps?|(?:goes|go|going|went) (?:round|around)|hits? (?:an )?atps?|"
    r"hits? (?:it |one |the ball )?(?:round|around)|atps?)\b"
)
_THEY_DO = regex(
    rf"\b(?:they|he|she|opponents?|these two|those two|those guys){_DOES}|"
    r"\b(?:ern(?:ie|e)d|ern(?:ie|e)s|erneing) (?:us|me|every|all)\b|"
    r"\b(?:their|his|her) (?:ern\w*|atps?)\b|"
    r"\bdo it to us\b|\b(?:ern\w*|atps?) us\b|\bon us\b"
)
_THEIR_POST = regex(
    r"\batps? (?:is |as )?(?:a |an |the |his |her |their )?(?:threat|danger|weapon|risk|coming)\b"
    r"|\b(?:threat|danger|risk|scared|afraid|worried) (?:of|about) (?:the |an |his |her |their )?"
    r"atps?\b"
    r"|\bwhen(?:ever)? (?:i|we) (?:dink|go|hit|pull|push) (?:\w+ ){0,2}wide\b"
)
"""A ball round the post to be feared, or one that our own wide dink gives the angle for."""

_POST = regex(r"\b(?:post|pole|atps?|(?:round|around) the net)\b")
_CORNER = regex(r"\b(?:ern\w*|erny|earnie|jump\w*|hop\w*|leap\w*|corner|bert|burn e)\b")
_WHERE_TO_HIT = regex(
    r"\bwhere (?:do|should|to|can)\b(?: \w+){0,2} (?:hit|aim|put)\b|\baim\b|\bat whom\b"
)
_WHO_COVERS = regex(r"\bwho covers\b|\bcover (?:his|her|that|the) side\b|\bcover behind")

_SET_UP = regex(
    r"\b(?:eyes|head) down\b|\blook(?:s|ing)? down\b|\bclosed (?:the )?shoulder\b|"
    r"\bshoulder (?:is )?closed\b|\b(?:off|after|from) (?:my|our|a) wide\b|"
    r"\bi (?:dinked|pulled|pushed|went) (?:\w+ ){0,2}wide\b|"
    r"\b(?:i see|see it|it is|its|shes|hes|he is|she is) (?:\w+ ){0,3}(?:coming |dinking |going )?"
    r"(?:down the )?line (?:coming|now)\b|\bdink line coming\b|\bpulled (?:him|her|them) wide\b"
)
_NOT_SET_UP = regex(
    r"\bnever (?:dinks?|goes|hits?) (?:down )?(?:the )?line\b|\b(?:sees?|watch(?:es|ing)?) me\b|"
    r"\b(?:head|eyes) up\b|\bshoulder (?:is )?open\b|\bopen shoulder\b|"
    r"\boff (?:a|my|our|the) middle\b|\bfrom the middle\b"
)
_OVERUSED = regex(
    r"\bevery (?:time|ball|dink)\b|\bkeep (?:trying|jumping|ern\w*)\b|\bgot burned\b|"
    r"\b(?:they|he|she) (?:know|knows|expect|expects|wait|waits)\b|\bagain and again\b"
)
_IN_THE_AIR = regex(
    r"\bin (?:the|mid) ?air\b|\bmid ?air\b|\balready (?:gone|jump\w*|moving|up)\b|"
    r"\b(?:while|when|as|if) (?:he|she|they|hes|shes|theyre)(?: is| are)? jumping\b"
)
_PARTNER_COVERS = regex(r"\bpartner (?:covers|takes|has|knows)\b|\bmiddle is covered")
_LINE_GUARDED = regex(r"\b(?:guards?|covers?|sits on|waits on) (?:the|that|his|her) line\b")


_PAST = regex(
    r"\b(?:past|beyond|outside|wide of) (?:the |my |our )?(?:side ?line|court)\b|\boff the court\b"
)
_INSIDE = regex(
    r"\b(?:inside|not past|short of|still in) (?:it|(?:the |my |our )?(?:side ?line|court))\b"
)


class Kind(StrEnum):
    """Which of the four questions it is."""

    OUR_ERNIE = "our_ernie"
    THEIR_ERNIE = "their_ernie"
    OUR_POST = "our_post"
    THEIR_POST = "their_post"


@dataclass(frozen=True, slots=True, kw_only=True)
class ErnieSaid:
    """The question as told; None is not said.

    `set_up`: my dink pulled the hitter wide, head down. `overused`: they expect it by now.
    `in_the_air`: their jumper has gone. `covered`: our partner takes the middle, or asks to.
    `line_guarded`: they wait for the ball round the post. `past`: the ball is past our sideline.
    """

    kind: Kind
    set_up: bool | None = None
    overused: bool = False
    in_the_air: bool = False
    covered: bool | None = None
    line_guarded: bool | None = None
    past: bool | None = None
    asks_who_covers: bool = False
    asks_where: bool = False


def ernie_said(situation: Situation) -> ErnieSaid:
    """What the words ask, with what they tell of the ball."""
    words = plain_words(situation.asked.words)
    return ErnieSaid(
        kind=_kind(words, situation),
        set_up=_set_up(words),
        overused=bool(_OVERUSED.search(words)),
        in_the_air=bool(_IN_THE_AIR.search(words)),
        covered=_covered(words, situation),
        line_guarded=True if _LINE_GUARDED.search(words) else None,
        past=_past(words, situation),
        asks_who_covers=_asks_who_covers(words, situation),
        asks_where=bool(_WHERE_TO_HIT.search(words)),
    )


def _kind(words: str, situation: Situation) -> Kind:
    is_post = bool(_POST.search(words)) and not _CORNER.search(words)
    is_post |= situation.asked.facts.past_sideline is True
    if _is_theirs(words, situation) or (is_post and _THEIR_POST.search(words)):
        return Kind.THEIR_POST if is_post else Kind.THEIR_ERNIE
    return Kind.OUR_POST if is_post else Kind.OUR_ERNIE


def _is_theirs(words: str, situation: Situation) -> bool:
    """Whether they do it: said so, or one of them is named as who does ("okafor ernies")."""
    they_do = _says_of(situation.theirs, _DOES, words)
    return they_do or bool(_DEFENDS.search(words)) or bool(_THEY_DO.search(words))


def _says_of(pair: Iterable[OnCourt], what: str, words: str) -> bool:
    """Whether one of them, by name, stands right before this."""
    names = "|".join(re.escape(plain_words(one.name)) for one in pair if one.name)
    return bool(names) and re.search(rf"\b(?:{names}){what}", words) is not None


def _asks_who_covers(words: str, situation: Situation) -> bool:
    """Who covers, or one of ours by name: "do I cover Tom's side"."""
    if _WHO_COVERS.search(words):
        return True
    return bool(re.search(r"\bcover\b", words)) and _says_of(situation.ours, r"s? side\b", words)


def _past(words: str, situation: Situation) -> bool | None:
    told = situation.asked.facts.past_sideline
    if told is not None:
        return told
    if _INSIDE.search(words):
        return False
    return True if _PAST.search(words) else None


def _set_up(words: str) -> bool | None:
    if _NOT_SET_UP.search(words):
        return False
    return True if _SET_UP.search(words) else None


def _covered(words: str, situation: Situation) -> bool | None:
    if _PARTNER_COVERS.search(words) or _says_of(situation.ours, " covers the middle", words):
        return True
    return situation.asked.facts.partner_set
