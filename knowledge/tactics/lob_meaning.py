"""Which question about lobs the words ask: ours, a desperate one, or theirs and what of it."""

from __future__ import annotations

import re
from enum import StrEnum

from knowledge.ball_facts import Depth, Footing
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.vocabulary import BallQuality


class LobMeaning(StrEnum):
    ATTACK = "attack"
    DESPERATE = "desperate"
    THEIRS = "theirs"
    WHO_RUNS = "who_runs"
    WHAT_BACK = "what_back"
    BOUNCE = "bounce"


_THEY = r"(?:they|them|their|theirs|he|she|his|opponents?|these two|those two|those guys)"

_HANDLES_LOBS = regex(
    r"\b(?:handle|defend|deal with|stop|prevent|beat|answer|counter|return|read|chase|track down)"
    r" (?:\w+ ){0,2}lob"
)
_IN_THE_AIR = regex(
    r"(?<!\bi )(?<!\bwe )\blobs? (?:(?:deep|high|short|up|again|so|and) )*"
    r"(?:(?:what (?:now|next|then)|now what|what (?:do|should|can) (?:i|we) do|what to do|help)$|"
    r"coming|incoming|going up\b|defen[cs]e|defending)|"
    r"\bwhat (?:(?:to|do|should|can) (?:i |we )?do |now |)(?:about|against|vs|on|with|when)"
    r" (?:a |the |that |this |every |those |these )?lobs?$|"
    r"\bdefen[cs]e (?:against|on|of) (?:the )?lobs?\b"
)
"""A lob that is up already, and what now: whoever hits one of our own asks when and over whom."""
_WHO_RUNS = regex(
    r"\bwho(?:se|s)?\b(?!.*\b(?:to|should we|should i|do we|do i) lob\b)"
    r".*\b(?:lobs?|overheads?|it)\b|"
    r"\bover (?:my|our|his|her|your|the|partners) (?:head|heads|partner)\b.*\bwho\b|"
    r"\bwhose (?:ball|lobs?)\b|\b(?:mine|yours)\b|"
    r"\b(?:we|i|us) or (?:we|i|us)\b.*\b(?:take|get|run|chase|cover|fetch|go)\w*\b.*\blobs?\b"
)
"""The last form: two of ours by name, who are "we" here ("is mira or tom better to take lobs")."""

_OVER_WHOM = regex(r"\bover whom?\b|\bwhom?\b.*\bto lob")
_SURELY_OURS = regex(
    r"\blob (?:over )?(?:him|her|them)(?: then| now| more)?$|"
    r"\b(?:my|our) lobs?\b|\b(?:should|do|can|could) (?:i|we) lob\b(?! back)|\bhow many lobs\b|"
    r"(?<!they )(?<!he )(?<!she )\bis lobbing\b|\bwho(?:s| is) (?:worse|worst|weak\w*|slower|bad)\b"
)
_WEIGHED = regex(
    r"\bworth (?:it )?(?:to )?(?:(?:trying|risking|hitting|throwing up|putting up|sending up) )?"
    r"(?:lob\b|lobbing|(?:a|an|one|the odd) (?:\w+ )?lob\b)|"
    r"(?:\b(?:what|how) (?:about|bout)|\b(?:thoughts|views|opinions?) (?:on|about)|"
    r"\bthinking (?:of|about)|\b(?:idea|sense|point|use) (?:of|in)|\bpoint|\bbother|"
    r"\b(?:i|we|us) (?:\w+ )?(?:keep|start|stop|try|be|go)) lobbing\b(?! (?:us|me|our|my)\b)|"
    r"^(?:(?:so|ok|and|but|or) )*lobbing (?:over )?(?:him|her|them|em)\b"
)
"""A lob that is thought about, of which the words name no hitter: it is ours to hit."""

_SHOULD_ONE_OF_US = regex(r"\b(?:should|shall) (?:i|we|he|she) (?:\w+ )?lob\b(?! back)")
"""A partner's or a coach's question; nobody asks whether an opponent should."""

_THEY_DO = regex(
    r"\b(?:they|he|she|opponents?|these two|those two|those guys|somebody|someone)"
    r"(?: (?:always|just|keep|keeps|do|is|are|will|would|then|all|both|often|suddenly|start|try"
    r"|to))*"
    r" lob(?:s|bed|bing)?\b"
)
"""`if they lob him`: whom "him" means is one of us."""
_BOUNCE = regex(
    r"\bbounce (?:it )?or\b|\bor (?:let (?:\w+ ){1,2})?bounce\b|\bor smash\b|"
    r"\bsmash (?:it|that|(?:the|their) lob)\b"
)
_WHAT_BACK = regex(
    r"\b(?:lob|drive|drop|hit|play|send) (?:it|that|one|the ball)? ?back\b|"
    r"\bwhat\b.*\b(?:hit|play|do|send)\b.*\b(?:off|from|after|on|with|back)\b.*\blob|"
    r"\b(?:after|off|on|from|chas\w+|ran|run) (?:\w+ ){0,3}lob\w*\b"
    r".*\b(?:drive|drop|lob back|reset)|"
    r"\bi (?:got|get|reach|chased)\b.*\blob\b.*\bwhat"
)
_OUR_LOB = regex(
    r"\b(?:should|when|can|could|do|may|where|whom?|which|how often|is it|time to|try|want to|good)"
    r"\b.*\b(?:i|we|to|a|my|our)\b.*\blob|\bwhom? (?:do|should|can|to) .*\blob|\blob over who|"
    r"\bover (?:whom|who|which)\b|\b(?:i|we) (?:should )?lob\b"
)
_THEIR_LOB = regex(
    rf"\b{_THEY}\b(?: (?!so\b)\w+){{0,4}} lob|\blobs\b|\blob+(?:e?d|ers?|ing?)\b|"
    r"\bover (?:my|our|me|us)\b|"
    r"\b(?:it|its|ball|lob|overhead|smash|one)(?: \w+)? (?:behind|past) (?:me|us|my|our)\b|"
    rf"\blob(?: \w+){{0,2}} {_THEY}\b.*\bus\b|\b(?:their|his|her) lobs?\b|\bgoes for the lob|"
    r"\btakes? the lob|\bgets? the lob|\blob(?:bed)? (?:us|me)\b"
)
_DESPERATE = regex(
    r"\b(?:desperate|desperation|stretched|in trouble|off the court|scrambl\w+|defensive|"
    r"out of position|buy time|emergency|last resort|pulled (?:wide|off))\b"
)


def meaning(situation: Situation) -> LobMeaning:
    """What is asked. Our own lob off a ball that we stretch for or run back for is a desperate one.

    Somebody of theirs named first ("okafor lobs") is their lob.
    """
    found = _of_words(_sided(_bare(situation.asked.words), situation), situation)
    if found is LobMeaning.ATTACK and _is_in_trouble(situation):
        return LobMeaning.DESPERATE
    return found


def asks_of_their_lob(text: str) -> bool:
    """Whether a question about lobs is about theirs and who gets it, whoever is on court."""
    words = _bare(text)
    if _is_surely_ours(words) or _OVER_WHOM.search(words):
        return False
    return any(form.search(words) for form in (_WHO_RUNS, _HANDLES_LOBS, _IN_THE_AIR, _THEIR_LOB))


def _bare(text: str) -> str:
    return " ".join(re.findall(r"[\w%]+", text.casefold().replace("'", "")))


def _sided(words: str, situation: Situation) -> str:
    """The words with whoever lobs by name called "they" or "we", and "mira or tom" "we or we"."""
    for said, pair in (("they", situation.theirs), ("we", situation.ours)):
        for one in pair:
            name = re.escape(one.name.casefold()) if one.name else r"(?!)"
            if said == "they":
                words = re.sub(
                    rf"(?<=\blobbing ){name}\b|(?<=\blobbing over ){name}\b", "them", words
                )
            words = re.sub(rf"\b{name}(?= (?:(?:is|keeps?|always) )?lob)", said, words)
            if said == "we":
                words = re.sub(rf"\b{name}(?= or )|(?<= or ){name}\b", said, words)
    return words


def _of_words(words: str, situation: Situation) -> LobMeaning:
    if _is_over_one_of_us(words, situation):
        return LobMeaning.WHO_RUNS
    is_ours = _is_surely_ours(words)
    if _WHO_RUNS.search(words) and not _OVER_WHOM.search(words) and not is_ours:
        return LobMeaning.WHO_RUNS
    if _WHAT_BACK.search(words):
        return LobMeaning.WHAT_BACK
    if is_ours:
        return LobMeaning.DESPERATE if _DESPERATE.search(words) else LobMeaning.ATTACK
    if _BOUNCE.search(words):
        return LobMeaning.BOUNCE
    if _HANDLES_LOBS.search(words) or _IN_THE_AIR.search(words):
        return LobMeaning.THEIRS
    if _OUR_LOB.search(words) and not _THEIR_LOB.search(words):
        return LobMeaning.DESPERATE if _DESPERATE.search(words) else LobMeaning.ATTACK
    if _THEIR_LOB.search(words):
        return LobMeaning.THEIRS
    if _DESPERATE.search(words):
        return LobMeaning.DESPERATE
    return LobMeaning.THEIRS if _names_them_first(words, situation) else LobMeaning.ATTACK


def _is_surely_ours(words: str) -> bool:
    if _SHOULD_ONE_OF_US.search(words):
        return True
    is_ours = _SURELY_OURS.search(words) or _WEIGHED.search(words)
    return is_ours is not None and _THEY_DO.search(words) is None


def _is_in_trouble(situation: Situation) -> bool:
    facts = situation.asked.facts
    return (
        facts.footing is Footing.BACKWARD
        or facts.ours is Depth.BOTH_BACK
        or (situation.asked.ball is BallQuality.STRETCHED and facts.footing is not Footing.STILL)
    )


def _is_over_one_of_us(words: str, situation: Situation) -> bool:
    return any(f"over {one.name.casefold()}" in words for one in situation.ours if one.name)


def _names_them_first(words: str, situation: Situation) -> bool:
    """Whether one of them is who does it: "okafor lob" rather than "lob okafor"."""
    return any(words.startswith(one.name.casefold()) for one in situation.theirs if one.name)
