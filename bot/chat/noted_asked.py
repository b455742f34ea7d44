"""What was noted of somebody, asked after in a form that nothing else has: "how often does she
poach", "how many of her returns were deep", "why do you say he is slow", "who is slower, a or b".

Such a question names a shot or a habit of theirs, and what to do about it is asked otherwise: by
"should", by "we" or "i". Whoever tells something of them does not open with such words.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.said import Claim, Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.trait_holders_said import claims_of
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.trait_asked import TraitAsked
from knowledge.vocabulary import TRAITS, Topic, Trait, TraitKind, Value

LONGEST = 14
"""Words of such a question. Our own bound."""

_LEAD = r"(?:(?:so|ok|and|but|hey|again|remind me|tell me|do you know) )*"
_DOES = r"(?:do|does|did|is|are|was|were|has|have)"
_HOW_OFTEN = regex(rf"{_LEAD}(?:how often|how much|when) {_DOES} {NAME} (?P<does>\w+(?: \w+)*)")
_HOW_MANY = regex(
    rf"{_LEAD}(?:how many|(?:what|which) (?:share|part|percent(?:age)?))"
    r"(?P<does>(?: \w+)+)"
)
_WHY_SAID = regex(
    rf"{_LEAD}(?:why (?:do|did|would) you (?:say|think|reckon|believe|claim|have it)"
    r"|what makes you (?:say|think)|how do you know|who (?:says|said)"
    rf"|where (?:do|did) you get)(?: that| it that)? (?P<does>(?=.*\b{NAME}\b)\w+(?: \w+)*)"
)
_WHO_MORE = regex(
    rf"{_LEAD}(?:who|which (?:one|player|of (?:them|the two)))"
    r"(?P<verb>s got| has got| got| has| have| is|s)?(?: the)?"
    r" (?P<more>\w+(?: (?!at\b|to\b|for\b)\w+){0,3}?)(?: out of| of| between)?"
    rf" {NAME} (?:or|and) {NAME}"
)
_HAD = ("has", "have", "got", "has got", "s got")
_MORE = {
    "slower": "slow", "faster": "quick", "quicker": "quick", "better": "good", "worse": "bad",
    "weaker": "weak", "stronger": "strong", "bigger": "big", "softer": "soft", "harder": "hard",
    "taller": "tall", "shorter": "short", "deeper": "deep", "steadier": "steady",
    "safer": "safe", "more": "a lot", "shakier": "shaky",
}  # fmt: skip
_OTHERWISE = regex(
    r"\b(?:should|could|can|would|might|must|need|if|because|me|us|we|our|i|my|im|were|its?"
    r"|balls?|rall(?:y|ies)|points?|games?|times?|time ?outs?|serves? to|notes?|what|how|where)\b"
)
"""What asks for more than what they do, or is counted of the match."""

_OF = regex(rf"\b(?:(?:of|from|by) {NAME}|of|the|{NAME}|is|are|was|were|did|do|does|has|have)\b")
_WENT_IN = regex(
    r" (?:go(?:es)?|went|lands?|landed|comes?|came|stay(?:s|ed)?|work(?:s|ed)?|miss(?:es|ed)?"
    r"|fail(?:s|ed)?)(?: (?:in|out|long|wide|over|off))?$"
)
_WERE = regex(r"\bwere\b")


def noted_asked(message: Message, chat: ChatView) -> Question | None:
    """The report on them with that trait in front; None for any other message."""
    if len(message.said) > LONGEST or not message.mentions or _is_broken(message):
        return None
    trait = _asked(named_line(message.said, message.mentions), message, chat)
    if trait is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(
        text=message.text,
        topic=Topic.OPPONENT_REPORT,
        confidence=CERTAIN,
        slots=slots,
        trait=trait,
    )


def _is_broken(message: Message) -> bool:
    """Two sentences, of which the other may ask or tell something else."""
    return any(set(word.gap) & set(";.:!?") for word in message.said[1:])


def _asked(line: str, message: Message, chat: ChatView) -> TraitAsked | None:
    for form, read in (
        (_HOW_OFTEN, _done),
        (_HOW_MANY, _counted),
        (_WHY_SAID, _claimed),
        (_WHO_MORE, _more),
    ):
        found = form.fullmatch(line)
        if found is not None:
            return read(found, message, chat)
    return None


Found = re.Match[str]


def _done(found: Found, message: Message, chat: ChatView) -> TraitAsked | None:
    does = found["does"]
    if _OTHERWISE.search(does):
        return None
    verb, *rest = does.split()
    return _one(message.note.claims) or _one(
        claims_of(" ".join([f" {verb}s", *rest, "a lot"]), chat)
    )


def _counted(found: Found, message: Message, chat: ChatView) -> TraitAsked | None:
    does = found["does"]
    if NAME not in does.split() or _OTHERWISE.search(_WERE.sub("", does)):
        return None
    bare = " ".join(_OF.sub("", does).split())
    shot = _WENT_IN.sub("", bare)
    return (
        _one(message.note.claims)
        or _one(claims_of(f" {bare}", chat))
        or (_one(claims_of(f" has a weak {shot}", chat)) if shot != bare else None)
    )


def _claimed(_: Found, message: Message, _chat: ChatView) -> TraitAsked | None:
    return _one(message.note.claims)


def _more(found: Found, _: Message, chat: ChatView) -> TraitAsked | None:
    """Compared in one thing; who is "better" or "weaker" as a player is asked of the topics."""
    more = found["more"].split()
    if not any(word in _MORE for word in more) or more in (["better"], ["worse"], ["weaker"]):
        return None
    is_had = (found["verb"] or "").strip() in _HAD
    verb = " has a" if is_had else " is" if found["verb"] else ""
    told = " ".join([verb, *(_MORE.get(word, word) for word in more)])
    return _one(claims_of(told, chat))


def _one(claims: Iterable[Claim]) -> TraitAsked | None:
    """The one trait; of a habit with a value, by which it is told from how well it is done."""
    said: set[tuple[Trait, Value]] = {(one.trait, one.value) for one in claims}
    traits = {trait for trait, _ in said}
    if len(traits) != 1:
        return None
    (trait,) = traits
    is_fact = TRAITS[trait].kind is TraitKind.FACT
    value = None if is_fact else min(value for _, value in said)
    return TraitAsked(trait=trait, value=value, is_open=True)
