"""Complaints of a body that a message tells of, whatever else it asks: they carry a caution along.

Narrower than the words that pick an answer about bodies: these are looked for in every message,
so a hip that is only a target, or an elbow that only bends, must tell of nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from knowledge.regex import regex
from knowledge.said_phrases import fold
from knowledge.struck import is_struck_badly

_PART = (
    r"(?:elbows?|shoulders?|knees?|wrists?|ankles?|backs?|hips?|necks?|hands?|feet|foot|toes?|heels?|"
    r"cal(?:f|ves)|hamstrings?|groin|thumbs?|fingers?|arms?|forearms?|legs?|thighs?|shins?|quads?|"
    r"achilles|ribs?|stomach|belly|tummy|head|eyes?|chest|rotator cuff|rotator|cuff|tendon|"
    r"glutes?|bicep|triceps?|jaw|ears?|tooth|muscles?)"
)
_ACHES = (
    r"(?:hurts?|hurting|pains?|painful|paining|sore|ach(?:e|es|y|ing)|stiff\w*|tight\w*|"
    r"swell(?:s|ing|ed)?|swollen|swelled|puffy|twing\w+|throb\w*|sting(?:s|ing)?|bark(?:s|ing)|"
    r"kill(?:s|ing) (?:me|him|her)|acting up|playing up|flar\w+ up|giv(?:es|ing) out|gave out|"
    r"gave way|locked(?: up)?|seized|seizing|spasm\w*|twisted|tweaked|strained|sprained|pulled|"
    # "at his hip, he popped it": who pops a ball up complains of nothing.
    r"(?<!he )(?<!they )popped|popped(?! (?:it|them|one|up|balls?))|"
    r"click\w*|pinch(?:es|ing)|numb|tingl\w+|burn(?:s|ing)|shot|cramp\w*|bruised|inflamed|"
    r"bothering (?:me|him|her)|not (?:right|good|great|happy)|bad|bleed\w*|went|is gone|is dodgy|"
    r"dodgy|torn|tore|complain\w*|angry|grumbl\w+|screaming)"
)
_JOINT = (
    r"(?:cal(?:f|ves)|knees?|ankles?|achilles|hamstrings?|groin|hips?|thighs?|quads?|shoulders?|"
    r"elbows?|wrists?|back)"
)
_OUR = r"(?:my|our|his|her|their|\w+s)"
_HAS = r"(?:have|has|having|had|got|gets|get|with|feel|feels|felt|feeling|ive got|i got)"

_SAYINGS: Final = (
    r"(?:hit|hits|hitting|serve|serves|dink|dinks|ball|balls|drive|drives|lob|lobs|attack|"
    r"attacks|speed|speeds|shot|shots) (?:\w+ ){0,4}(?:at|on|in|into|to|off|over) "
    rf"(?:\w+ ){{0,2}}{_PART}\b",
    rf"(?:at|off|over) {_OUR} (?:right |left )?{_PART}\b",
    r"(?:good|bad|soft|quick|fast|slow|great|hot|cold|tight|back|left|right|other|paddle|off) "
    r"hands?(?! (?:\w+ )?(?:hurt|pain|numb|cramp|sore|swol))",
    # How fast somebody's hands are; only of one's own they may be what hurts.
    r"(?<!my )(?<!our )hands (?:(?:are|is|were|got|get|look|looked|not|arent|really|so|too|very|"
    r"pretty|just|that|all|a bit|still|always) )*(?:bad|good|great|shot)\b",
    # Not without its "a": of "his knee is bad, backhand only" the knee must stay.
    r"(?:a|his|her|their) (?:(?:really|very|pretty|bit) )?(?:bad|dodgy) (?:back|fore) ?hands?\b",
    r"head to head|cold feet|heavy feet|back ?hands?|fore ?hands?|back (?:up|to|in|at|line|court)",
    r"side ?(?:line|out|by side)|(?:left|right|their|our|his|her|my|other|odd|even) side",
    r"(?:hurts?|hurting|kills?|killing|burns?|burning) (?:us|them|you)\b",
    r"pain in the (?:neck|butt|arse|ass|backside)",
    r"sore (?:loser|point|spot)",
    r"(?:turn|turns|turned|turning|roll|rolls|rolled) (?:his|her|their|my) (?:backs?|eyes?)",
    r"(?:on|to) (?:the|my|his|her|their) bad (?:arm|side|hand|wing)",
    r"(?:way|both|one|back|deep|far|far too|too far) back\b",
    # Where somebody stands on court: "quist stands back", "they hang further back".
    r"(?:stand|stay|play|hang|sit|drop|step|move|fall|run|go|camp|wait|live|hug)(?:s|es|ing|ped|ed)?"
    r"(?: (?:way|right|well|far|further|too far|deep|just|always|a step|so far))? back\b",
    r"(?:stood|ran|went|fell|sat|hung) (?:(?:way|well|far|further|too far) )?back\b",
    # The stroke, where "his back is shot" is none.
    r"(?:a|an|the|her|his|their|my|our|bad|good|poor|big|weak|hard|soft|first|second|third|fourth|"
    r"fifth|next|every|each|any|no|that|this|drop|trick) shots?\b",
    r"(?:bad|poor) (?:\w+ )?(?:shots?|serves?|returns?|dinks?|drops?|lobs?|drives?|thirds?|resets?|"
    r"volleys?|overheads?)\b",
)

_SIGNS: Final = (
    rf"{_PART} (?:\w+ ){{0,4}}{_ACHES}\b",
    rf"{_HAS} (?:\w+ ){{0,3}}{_ACHES} (?:\w+ ){{0,3}}{_PART}\b",
    rf"{_ACHES} (?:in|on|of|at|to) (?:\w+ )?{_PART}\b",
    rf"(?:pulled|twisted|tweaked|strained|sprained|jammed|hurt|injured|tore|bruised|"
    rf"banged|popped|wrecked|did|done|knackered|iced?|icing|taped?|taping) "
    rf"{_OUR} (?:\w+ )?{_PART}\b",
    rf"(?:hurts|hurting|bothers|kills|killing) {_OUR} (?:\w+ )?{_PART}\b",
    r"(?:im|am|is|are|hes|shes|got|gets|partner) (?:really |badly |so )?hurt"
    r"(?! (?:by|us|them|you|when|if|most|more|on|at))",
    rf"(?:rolled|turned) {_OUR} (?:\w+ )?ankle",
    # Who fell on a wrist tells of the wrist, and says so before it hurts.
    rf"(?<!ball )(?<!balls )(?<!it )(?<!lob )(?<!drop )(?<!serve )(?<!shot )(?:fell|fallen|landed|"
    rf"landing|(?:came|went|goes|comes) down) (?:\w+ ){{0,2}}on(?:to)? {_OUR} (?:\w+ )?{_PART}",
    rf"(?:banged|bashed|bumped|jammed|slammed|smacked|whacked|cracked|scraped) {_OUR} (?:\w+ )?"
    rf"{_PART}",
    rf"{_ACHES} {_PART}\b",
    rf"{_HAS} (?:\w+ ){{0,3}}(?:cramps?|blisters?|fever|flu|asthma|tennis elbow|tendin\w+|"
    r"plantar\w*|tendonitis|shin splints|surgery|injur\w+|pain|pains|stitch|migraine|bursitis|"
    r"arthritis|sciatica)",
    r"(?:cramping|cramped up|cramps up|injured|limping|(?<!ball )limp(?:s|ed)|hobbling|hobbles|"
    r"(?:a|the|got|has) dead leg|unwell|poorly|nauseous|in pain|"
    r"(?:feel|feels|feeling) (?:\w+ )?(?:ill|sick)|pregnant|diabetic|feverish|dehydrated|"
    r"overheated|overheating)",
    r"(?:pulled|strained) (?:a )?(?:muscle|something)",
    r"(?:in|wear|wears|wearing) (?:a|an|his|her) (?:\w+ )?(?:cast|splint|sling|walking boot)",
    rf"{_OUR} (?:left |right |bad )?{_JOINT} (?:is |s |was |feels |felt |got |gets |getting )+"
    r"(?:\w+ )?(?:worse|done|finished|toast|fried|cooked)",
    r"(?:i|im|partner|mate|husband|wife) (?:\w+ )?(?:cant|cannot|can not|hardly|barely|not able to)"
    r" (?:\w+ )?(?:push off|put (?:any |my |much )?weight|lunge|stand on)",
    r"tennis elbow|golfers elbow|plantar fasci\w+|shin splints|frozen shoulder",
    r"play(?:ing)? through (?:the |this |it )?(?:pain|injury)",
)

_A_PART = regex(rf"\b(?:{_PART}|body|bodies|{_JOINT}|skin|throat|nose|heart|breath\w*)\b")
_SAYING = regex(r"\b(?:" + "|".join(_SAYINGS) + ")")
_SIGN = regex(r"\b(?:" + "|".join(_SIGNS) + r")\b")


_OURS = regex(r"\b(?:i|im|ive|my|me|mine|our|we|were|us|partners?)\b")


def names_a_part(words: str) -> bool:
    """Whether a part of a body is named, hurt or not."""
    return _A_PART.search(fold(words)) is not None


def complains_of_us(words: str, *, names: Iterable[str]) -> bool:
    """Whether it may be one of us, of these `names`, who hurts; opponents have their own staff."""
    said = fold(words)
    is_us = _OURS.search(said) or any(fold(name) in said for name in names)
    return bool(is_us) and complains(words)


def complains(words: str) -> bool:
    """Whether the words tell that somebody's body hurts or fails, or took a blow that may."""
    return is_struck_badly(words) or _SIGN.search(_SAYING.sub(" ~ ", fold(words))) is not None
