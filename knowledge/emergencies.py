"""Words of an emergency: what must stop play before anything else is said.

Better once too often than once too seldom, but a figure of speech is none: sayings are taken
out before the signs are looked for.
"""

from __future__ import annotations

import re
from enum import StrEnum
from typing import Final

from knowledge.denied_signs import Denials
from knowledge.face_hits import FACE_HIT_SIGNS, NO_FACE_HIT_SAYING
from knowledge.head_hits import HEAD_HIT_SIGNS, fell_from_a_height, shows_a_knock
from knowledge.regex import regex
from knowledge.said_phrases import without_accents
from knowledge.someone_down import is_down


class Emergency(StrEnum):
    """What kind of help comes first, gravest first; `KNOCKED` is a head hit that shows."""

    LIFE = "life"
    KNOCKED = "knocked"
    DOWN = "down"
    SUGAR = "sugar"
    THINNER = "thinner"
    HEAT = "heat"
    HEAD = "head"
    EYE = "eye"
    FACE = "face"
    INJURY = "injury"


_WHO = r"(?:me|him|her|them|us|my partner|partner|she|he|i|you|somebody|someone)"
_WHOSE = r"(?:my|the|his|her|their|your|partners|partner s)"
_HIT = r"(?:hit|hits|hitting|struck|smacked|banged|bumped|cracked|knocked|whacked|nailed|smashed)"
_BONE = r"(?:arm|leg|wrist|ankle|finger|hand|bone|nose|elbow|collarbone|hip|foot|toe|rib)s?"

_STING = r"(?:stung|stings?|bees?|wasps?|hornets?|ant bites?|allerg\w+|peanuts?)"
_SWELLS = (
    r"(?:swell\w*|swollen|puff\w*|throat|tongue|lips?|rash|itch\w* all|tight|breath\w*|wheez\w+)"
)
_SUGAR = r"(?:sugars?|glucose|diabet\w+|hypos?|hypogly\w+|insulin|cgm)"
_SHAKY = (
    r"(?:shak\w+|trembl\w+|dizz\w*|faint\w*|woozy|wobbl\w+|sweat\w+|clammy|confus\w+|weak|"
    r"light ?headed|blurr\w+|foggy|jittery|spinning|pass\w* out|odd|funny|weird|strange)"
)
_HEAD_HURTS = (
    r"head (?:\w+ ){0,2}(?:hurts|hurting|aches|aching|pounding|pounds|throbs|throbbing)\b"
    r"(?! from (?:who|what|think|all|his|her|their))"
)
"""Not "stacking makes my head hurt", "my head hurts from who stands where"."""
_IN_HEAT = r"(?:hot|heat|humid|boiling|roasting|sun)"
_THINNER = r"(?:blood thinn?(?:er|ers|ing)\b|thinners|warfarin|anticoagul\w+)"
_KNOCK = (
    r"(?:fell|fall\w*|tripped|tumbl\w+|went down|landed|hit|bang\w*|bump\w*|knock\w*|bruis\w+|"
    r"cut|gash|slipped|collided)"
)

_NO_SIGHT = r"(?:can ?t|cannot|can not|can hardly|can barely) see"
_WELL = (
    r"(?:well|properly|clearly|right(?! now))\b(?! (?:if|whether|where|who|how|what|the|it|enough))"
)
_LIGHT = (
    r"(?:suns?|sunny|glare|lights?|bright|dark|dusk|fog\w*|rain\w*|shade\w*|glass\w*|goggles|lens\w*"
    r"|caps?|visors?|refs?|referees?|umpires?|backgrounds?|walls?)"
)
"""What else than an eye keeps somebody from seeing well."""

_SAYINGS: Final = (
    r"heart of the (?:court|kitchen|plan|match|game|matter)",
    r"(?:by|in|at|to|off by) heart",
    r"patience of a \w+",
    r"sting (?:out|off)",
    r"eyes? (?:on|off) (?:the|their|your|my|his|her|it)\b",
    r"(?:eye|eyes) contact",
    r"(?:sun|glare) (?:(?:gets|is|shines|shining|me|right|straight|directly|dead) ){0,4}"
    r"in (?:my|the) eyes?",
    r"(?:sun|glare|wind|light|lights|sweat) in (?:my|our|your|the|his|her|their) eyes?",
    r"bleed(?:ing)? (?:points|pts|rallies|errors)",
    r"(?:stop|stops|stopped|stem) the bleeding",
    r"(?:chest|shoulder|head|eye) (?:high|height|level)",
    r"(?:over|above|at) (?:my|our|his|her|their|the|your) heads?",
    r"(?:balls?|serves?|paddles?|strings?|net|game|match) (?:is |are |was |got )?(?:broke|broken)",
    r"broke (?:the|their|our|his|her|my) (?:ball|serve|paddle|net|rhythm|game|streak|run)",
    r"broken (?:ball|paddle|net|serve|rhythm|play)|sick of",
    r"(?:pop|pops|popped|popping) (?:it |them |the ball |balls? )?up",
    r"knocked out of (?:the )?\w+",
    r"(?:confused|confusion) (?:about|by|over|who|whose|which|where|on|when|between|with)\b",
    r"(?:they|them|opponents|these two|those two|enemy) (?:\w+ ){0,2}confused",
    r"we (?:were|got|get|are|keep getting) (?:both )?confused",
    r"(?:stack|switch|swap|shift)\w* (?:\w+ ){0,6}(?:confused|confusion)",
    r"(?:worth|causes?|creates?|avoids?) (?:the |any )?confusion",
    r"(?:nearly|almost) (?:fell|went down)",
    r"throw(?:s|ing)? up (?:a|the|another|high|lobs?)\b",
    r"(?:break|breaks|broke|breaking) (?:his|her|their|our|my) heart",
    NO_FACE_HIT_SAYING,
)

_SIGNS: Final = (
    (
        Emergency.LIFE,
        (
            rf"{_WHOSE} chest (?:\w+ ){{0,2}}(?:hurt\w*|pain\w*|tight\w*|pressure|ach\w+|burn\w*)",
            r"chest (?:pains?|pressure|tight\w*|hurts?|is tight)",
            r"chest feels? (?:tight|heavy|funny|weird)",
            r"(?:pain|pressure|tightness|tight) (?:\w+ )?in (?:my|the|his|her) chest",
            r"(?:can ?t|cannot|can not|couldn ?t|can hardly|can barely|hard to|trouble|"
            r"difficulty|struggl\w+ to|unable to) (?:\w+ )?breath\w*",
            r"short(?:ness)? of breath",
            r"(?:can ?t|cannot) (?:get|catch) (?:my|his|her|a|their)?\s?(?:breath|air)",
            r"(?:not|isn ?t|stopped|stops|quit) breathing",
            r"no (?:pulse|heart ?beat)",
            r"heart (?:\w+ ){0,3}beating (?:\w+ ){0,2}(?:fast|weird\w*|hard|out|odd\w*)",
            r"(?:tight|crush\w+|squeez\w+|burning) (?:\w+ ){0,3}chest"
            r"(?! (?:high|height|level|pass))",
            r"(?:elephant|weight) (?:\w+ )?on (?:my|his|her) chest",
            r"heart (?:s |is |was |keeps |feels )?(?:attack|pains?|hurts?|rac\w+|pounding|"
            r"flutter\w*|skipp\w+|stopped|problem|irregular)",
            r"(?:irregular|uneven) heart ?beat",
            r"asthma attack",
            r"(?:can ?t|cannot|won ?t) stop (?:wheez\w+|coughing)",
            r"allergic reaction",
            r"(?:hit|struck) by lightning",
            r"(?:left |right )?arm (?:\w+ ){0,2}(?:pains?|hurts?|numb\w*|tingl\w+|aches?|aching|"
            r"went dead|feels? (?:dead|heavy|numb))",
            r"(?:pain|numbness|tingling) (?:\w+ ){0,3}(?:left |right )?(?:arm|jaw)",
            r"(?:not|isn ?t|lost|losing) (?:\w+ )?conscious(?:ness)?",
            r"(?:unconscious|unresponsive|seizure|convuls\w+|slurr\w+|having a stroke|anaphyla\w+)",
            r"face (?:\w+ ){0,3}(?:droop\w*|numb|went dead)",
            r"having (?:a|some kind of) fit\b",
            r"(?:he|she|hes|shes|he s|she s|partner|player) (?:is |was )?seizing(?! up)",
            r"down (?!a |in |by |low |\d)(?:\w+ ){0,4}(?:not|isn ?t|won ?t|can ?t) "
            r"(?:mov\w+|respond\w*|get up|react\w*)(?! (?:well|fast|his|her|their|up|for|to)\b)",
            r"(?:not|isn ?t|doesn ?t|stopped) (?:respond(?:ing)? (?:to me|to us|when|at all)|"
            r"responsive)",
            r"(?:dropped|lying|laying) (?:\w+ ){0,3}(?:not|isn ?t|doesn ?t) (?:respond|mov)\w*",
            r"(?:epi ?pens?|hives|palpitations?)",
            rf"{_STING} (?:\w+ ){{0,9}}{_SWELLS}",
            rf"{_SWELLS} (?:\w+ ){{0,6}}{_STING}",
            r"allerg\w+ (?:\w+ ){0,6}(?:stung|stings?)",
            r"(?:stung|sting) (?:\w+ ){0,6}allerg\w+",
            r"chok\w+ on (?:\w+ ){0,2}(?:gel|food|gum|water|bar|snack|pill|candy|banana|nut)s?\b",
            r"(?:can ?t|cannot) swallow",
            r"(?:turning|going|gone|lips are|went) blue",
            r"collaps(?:ed|ing)",
            r"(?:won ?t|not|doesn ?t|can ?t) wake up",
            r"(?:throat|tongue) (?:is )?(?:closing|swell\w+)",
        ),
    ),
    (
        Emergency.SUGAR,
        (
            rf"{_SUGAR} (?:\w+ ){{0,8}}{_SHAKY}",
            rf"{_SHAKY} (?:\w+ ){{0,8}}{_SUGAR}",
            r"(?:having|got|is|its|it s) (?:a )?hypo\b",
        ),
    ),
    (
        Emergency.THINNER,
        (
            rf"{_THINNER} (?:\w+ ){{0,8}}{_KNOCK}\b",
            rf"{_KNOCK} (?:\w+ ){{0,12}}{_THINNER}",
        ),
    ),
    (
        Emergency.HEAT,
        (
            r"(?:heat|sun) ?stroke",
            r"(?:stopped|not|no longer|isn ?t) sweat\w+",
            r"(?:doesn ?t|don ?t|does not) sweat (?:\w+ )?(?:any ?more|at all)",
            r"no (?:more )?sweat (?:any ?more|at all|on (?:him|her|me))",
            r"(?:he|she|hes|shes|he s|she s|partner|player) (?:\w+ ){0,3}"
            r"(?:not making|makes no|making no|isn ?t making|doesn ?t make) (?:any )?sense",
            r"(?:hot|sun|heat|stagger\w+|stumbl\w+|sweat\w*|skin) (?:\w+ ){0,9}"
            r"(?:making|makes|make) (?:no |any )?sense",
            r"(?:hot|sun|heat|stagger\w+|stumbl\w+|sweat\w*) (?:\w+ ){0,6}"
            r"(?:nonsense|gibberish|mumbling)",
            r"(?:talk\w*|speak\w*|mumbl\w+) gibberish",
            r"stagger(?:s|ing)\b(?! (?:the|our|your|feet|stance|start))",
            r"(?:stumbl\w+|wobbl\w+) (?:\w+ ){0,5}(?:heat|hot|sun)",
            r"can ?t walk straight",
            r"(?:hot|red) (?:and |but )?dry skin",
            r"skin (?:\w+ ){0,3}(?:hot|red) (?:and|but) (?:\w+ )?dry",
            r"skin (?:\w+ ){0,3}dry (?:and|but) (?:\w+ )?(?:hot|burning)",
            r"(?:been|was|being|is|got) sick (?:\w+ )?(?:twice|again|everywhere|(?:\w+ )?heat)",
            r"(?:dark|brown|cola) (?:coloured |colored )?(?:pee|wee|urine)\b",
            r"(?:pee|peeing|wee|urine) (?:\w+ ){0,3}(?:dark|brown|cola)",
            r"dizz\w*",
            r"faint(?:ed|ing|s)?",
            r"(?:light ?headed|woozy)",
            r"(?:pass(?:ed|ing)|black(?:ed|ing)) out",
            r"vomit\w*",
            r"(?:throw|threw|throwing) up",
            r"(?:puk\w+|nausea|nauseous|delirious)",
            r"(?:confused|disoriented|confusion)",
            r"(?:blurry|blurred|double) (?:vision|sight)",
            r"(?:sees?|seeing|vision|sight) (?:\w+ ){0,2}(?:double|blurry|blurred)",
            r"shiver\w+ (?:\w+ ){0,3}(?:heat|hot|sun)",
            r"chills? (?:\w+ ){0,4}(?:headache|hot|heat)",
            rf"{_IN_HEAT} (?:\w+ ){{0,9}}(?:headache|{_HEAD_HURTS})",
            rf"(?:headache|{_HEAD_HURTS}) (?:\w+ ){{0,6}}{_IN_HEAT}",
        ),
    ),
    (
        Emergency.HEAD,
        (
            r"concuss\w*",
            r"(?:see|seeing|saw|sees) stars",
            rf"{_HIT} (?:\w+ ){{0,2}}{_WHOSE} (?:head|skull|temple)",
            rf"(?:fell|fall|landed|went down) (?:\w+ )?on {_WHOSE} (?:head|face)",
            rf"{_WHOSE} head (?:\w+ )?{_HIT}",
            rf"{_HIT} {_WHO} (?:\w+ ){{0,3}}in the (?:head|temple)",
            rf"(?:{_HIT}|got it|took one|took it) (?:\w+ )?(?:in|on|to) the (?:head|temple)",
            r"(?:head injury|knocked out cold|knocked out$)",
            r"(?:bad|pounding|splitting|terrible|my|sudden) headache",
            rf"{_WHOSE} {_HEAD_HURTS}",
            r"(?:have|has|got|getting) a (?:\w+ )?headache",
            r"(?:worst headache|headache (?:\w+ ){0,4}stiff neck)",
            r"ringing (?:\w+ )?(?:ears?|head)",
            r"neck (?:\w+ )?(?:hurts?|pain|numb)",
            *HEAD_HIT_SIGNS,
        ),
    ),
    (
        Emergency.EYE,
        (
            rf"(?:{_HIT}|poked|caught|took|got|ball|paddle) (?:\w+ ){{0,5}}(?:in|on|to) "
            rf"(?:{_WHOSE} )?(?:left |right )?eyes?\b",
            rf"(?:{_HIT}|poked) {_WHOSE} (?:left |right )?eyes?\b",
            rf"(?:{_HIT}|ball|paddle) (?:\w+ ){{0,5}}(?:in|into) \w+ ?s (?:left |right )?eye\b",
            r"(?:in|to) the eye\b",
            r"eyes? (?:\w+ ){0,2}(?:hurts?|pain\w*|bleed\w*|swell\w*|swollen|injur\w+)",
            r"(?:can ?t|cannot) see (?:\w+ ){0,3}(?:eyes?|anything|nothing)",
            r"(?:can ?t|cannot|couldn ?t) see (?:\w+ ){0,2}(?:out of|through|from) "
            r"(?:\w+ ){0,3}(?:eyes?|it)\b",
            r"(?:can ?t|cannot|couldn ?t) see (?:\w+ ){0,3}(?:with|on|in) "
            r"(?:my |his |her |the )?(?:one|left|right|other|that) (?:eye|side)\b",
            rf"^(?!.*\b{_LIGHT}\b).*\b{_NO_SIGHT} (?:(?:very|too|so|that|really) )?{_WELL}",
            r"(?:lost|losing|loss of|lose) (?:\w+ ){0,3}(?:vision|sight)",
            r"(?:blind|nothing|black|dark) in (?:\w+ )?(?:left |right |other )?eye",
            r"(?:went|going|gone|go) blind\b",
            r"black eye",
            r"flashes (?:\w+ ){0,3}eyes?",
            r"vision (?:is |s |went |gone )?(?:\w+ )?(?:cloudy|gone|black)",
        ),
    ),
    (Emergency.FACE, FACE_HIT_SIGNS),
    (
        Emergency.INJURY,
        (
            r"(?:bleed\w*|nose ?bleeds?|blood(?! (?:pressure|thinn?ers?|thinning|sugars?|glucose|"
            r"tests?))|bloody (?:nose|knee|hand|arm|leg|face))",
            rf"(?:broke|broken|fractured?) (?:\w+ ){{0,2}}{_BONE}\b",
            rf"{_BONE} (?:\w+ ){{0,2}}(?:broke|broken|fractured)\b",
            r"(?:broken bone|fracture|dislocat\w+)",
            r"(?:heard|felt|hear|was|hearing) (?:a|something|it) (?:\w+ )?(?:pop|snap|crack)\w*",
            r"(?:knee|ankle|calf|achilles|hamstring|shoulder|hip|elbow|wrist|back) "
            r"(?:just )?(?:popped|snapped|gave out|tore)",
            r"achilles (?:\w+ )?(?:tear|torn|ruptur\w+|snap\w*|pop\w*)",
            r"(?:tore|ruptured) (?:my|his|her|their) \w+",
            r"(?:can ?t|cannot) (?:walk|put weight|stand on|feel my|move my|move his|move her)",
        ),
    ),
)

_SAYING = regex(r"\b(?:" + "|".join(_SAYINGS) + ")")
_KINDS: Final = tuple((kind, regex(r"\b(?:" + "|".join(signs) + r")\b")) for kind, signs in _SIGNS)


_DENIALS: Final = Denials(tuple(sign for _, signs in _SIGNS for sign in signs))


def emergency_of(words: str) -> Emergency | None:
    """The gravest emergency that the words tell of and don't deny; None if none does."""
    told = _told(_folded(words))
    undenied = None if told is None else _DENIALS.without(words)
    return told if undenied is None else _told(undenied)


def without_denied(words: str) -> str | None:
    """The words without the alarm that they deny, folded; None where they deny none."""
    rest = _DENIALS.without(words)
    return None if rest is None or _told(rest) or not _told(_folded(words)) else rest


def _told(folded: str) -> Emergency | None:
    said = _SAYING.sub(" ~ ", folded)
    told = [kind for kind, signs in _KINDS if signs.search(said)]
    if Emergency.LIFE not in told and is_down(folded):
        told.insert(0, Emergency.DOWN)
    if Emergency.LIFE not in told and shows_a_knock(said, is_unwell=Emergency.HEAT in told):
        return Emergency.KNOCKED
    return next(iter(told), Emergency.HEAD if fell_from_a_height(said) else None)


def _folded(words: str) -> str:
    """Lower case without accents or punctuation, one blank between words."""
    return " ".join(re.sub(r"[^a-z0-9]+", " ", without_accents(words)).split())
