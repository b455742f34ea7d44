"""Who is like that: "who is a lefty", "who has the weakest third", "any bangers in the pool".

Such a question is a note with a hole: with somebody put in for "who" it claims a trait.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.message import Message
from bot.chat.notes import read_note
from bot.chat.said import Among, Certainty, Claim, CompareAsked, Compared, Mention
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex
from knowledge.vocabulary import TRAITS, PlayerId, Trait, TraitKind, Value

LONGEST = 11
"""Words of such a question."""

_SOMEBODY = PlayerId(-1)
_STANDS_IN = "Zq"

_PEOPLE = r"(?:players?|ones?|opponents?|guys?|of (?:them|these|those)|people)"
_SCOPE = regex(
    r" (?:(?:of|in|among|from|out of|on|across) (?:them all|all(?: of them)?|everyone|them|the two"
    r"|(?:the|my|our|this|these|those) (?:pool|book|group|field|bracket|draw|lot|tournament|notes"
    r"|pairs|players|opponents|three|four|five|six|seven|eight|nine|ten|twelve|\d+)"
    r"(?: players| pairs)?)|overall|there|here)$"
)
_OPENINGS = (
    (regex(rf"(?:who|which)(?: {_PEOPLE})? (?:is|are)(?: all)?(?: the| our)?(?= )"), " is"),
    (regex(r"whos(?: all)?(?: the)?(?= )"), " is"),
    (regex(rf"(?:who|which)(?: {_PEOPLE})? (?:has|have|got|has got)(?: the| a)?(?= )"), " has a"),
    (regex(r"(?:is|are)(?: there)? any(?:one|body)?(?: of them)?(?: a| the)?(?= )"), " is"),
    (regex(r"(?:do we have |have we got |are there |got )?any(?= lefties\b| lefty\b)"), " is"),
    (regex(r"do(?:es)? any(?:one|body)?(?: of them)?(?= )"), ""),
    (regex(rf"(?:who|which)(?: {_PEOPLE})?(?= )"), ""),
)
_POSITIVE = {
    "weakest": "weak", "worst": "bad", "best": "good", "strongest": "strong", "shakiest": "shaky",
    "tallest": "tall", "slowest": "slow", "fastest": "quick", "quickest": "quick", "most": "a lot",
    "deepest": "deep", "shortest": "short", "softest": "weak", "biggest": "big",
    "hardest": "hard", "poorest": "poor", "lefties": "a lefty", "lefthanders": "a lefty",
    "righties": "a righty", "bangers": "a banger", "lobbers": "a lobber",
    "poachers": "a poacher", "often": "a lot",
}  # fmt: skip
_MOST = frozenset(_POSITIVE) - {
    "lefties", "lefthanders", "righties", "bangers", "lobbers", "poachers", "often"
}  # fmt: skip
_OF_US = frozenset(
    ["i", "im", "me", "my", "we", "us", "our", "ours", "you", "your", "should", "would", "could",
     "do", "does", "did", "can", "will", "shall", "if", "or", "to", "against", "today", "first",
     "now", "were", "weve", "may", "might", "which", "when", "both",
     "take", "takes", "cover", "covers", "gets", "calls", "call", "serves", "starts", "goes"]
)  # fmt: skip
"""Words of another question: "who should ...", "who plays left, me or him"."""

_SIDES = frozenset([Trait.SIDE_PLAYED])
"""Who plays where is asked of a pair on court."""


def holder_asked(message: Message, chat: ChatView, among: Among) -> CompareAsked | None:
    """The trait whose bearer is asked for; None where no trait is, or we are meant."""
    said = [word.folded for word in message.said]
    line = " ".join(one for one in said if one not in ("so", "ok", "and", "hey"))
    bare = _SCOPE.sub("", line)
    broken = any(set(word.gap) & set(",;.:") for word in message.said[1:])
    if len(said) > LONGEST or broken or message.note.about_body:
        return None
    claim = _claim(bare, chat)
    if claim is None or claim.denied or claim.trait in _SIDES:
        return None
    most = any(word in _MOST for word in bare.split())
    is_fact = TRAITS[claim.trait].kind is TraitKind.FACT
    is_wider = bare != line and among is not Among.THEM
    if not (most or is_fact or is_wider):
        # Of those on court, on either side, the topics answer, with what to do about it.
        return None
    return CompareAsked(
        text=message.text,
        what=Compared.WHO,
        among=among,
        most=most,
        weakest=claim.value in (Value.WEAKNESS, Value.RARELY),
        trait=claim.trait,
        value=claim.value,
    )


def _claim(line: str, chat: ChatView) -> Claim | None:
    """The only trait that the line claims with somebody put in for "who"."""
    for opening, verb in _OPENINGS:
        found = opening.match(line)
        if found is None:
            continue
        rest = line[found.end() :].split()
        if _OF_US & set(rest):
            return None
        claims = claims_of(" ".join([verb, *(_POSITIVE.get(word, word) for word in rest)]), chat)
        return claims[0] if claims else None
    return None


def claims_of(told: str, chat: ChatView) -> tuple[Claim, ...]:
    """What a note claims that says this of somebody: " is a lefty", " poaches a lot"."""
    text = f"{_STANDS_IN}{told}"
    who = Mention(
        typed=_STANDS_IN,
        span=(0, len(_STANDS_IN)),
        certainty=Certainty.SURE,
        players=(_SOMEBODY,),
    )
    return read_note(text, words(text), (who,), replace(chat, focus=())).claims
