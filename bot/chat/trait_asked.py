"""Which trait a report is asked for: "is ruiz the lefty or hale", "what side does okafor play".

Such a question is a note that is not sure of itself: "are they both lefties?" claims what "they
are both lefties" claims.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.better_asked import skill_compared
from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.notes import read_note
from bot.chat.said import Certainty, Claim
from bot.chat.trait_holders_said import claims_of
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.trait_asked import TraitAsked
from knowledge.vocabulary import TRAITS, PlayerId, Trait, TraitKind

LONGEST = 12
"""Words of a question that asks after one trait and nothing else. Our own bound."""

_WIDER = regex(
    r"\b(?:what|whats|how|hows|where|when|why|tell|give|show|anything|about|know|should|could|can"
    r"|if|because|me|us|we|our|i|my)\b"
)
"""What asks for more than whether it is so, or about us."""

_OF_A_FACT = (
    (regex(r"\b(?:what|which|whats) (?:side|half)\b(?!.*\b(?:we|i|us|serve|should)\b)"),
     Trait.SIDE_PLAYED),
    (regex(r"\b(?:what|which|whats) handed\b|\b(?:what|which) hand (?:is|does)\b"), Trait.HAND),
)  # fmt: skip
_OPENS = r"(?:hows|how is|how are|how good (?:is|are)|whats|what is|what about|how about)"
_HOW_IS = regex(
    rf"(?:(?:so|and|ok|hey) )*(?P<opens>{_OPENS} )?{NAME} (?P<what>\w+(?: \w+){{0,2}}?)"
    r"(?: (?:like|today|now|really))*"
)
"""`hows okafor's hands`, `okafor hands?`: what is named of him, strong or weak, is all that is
asked; behind "how do we" or "where" stands another question."""

_DOES = regex(rf"(?:(?:so|and|ok|hey) )*(?:does|do) {NAME} (?P<what>\w+(?: \w+)?)")
"""`does okafor lob`: how often is not said, and is what is asked."""

_AIMED = frozenset(
    ["serve", "return", "lob", "dink", "drop", "drive", "attack", "speed up", "speedup", "target"]
)
"""`okafor speed up?`: a shot of ours at him, where nothing opens as "how is" does."""

_SOMEBODY = PlayerId(-1)

_CONFIRMED = regex(
    r"\b(?:still|really|actually)\b|\b(?:right|correct|true|isnt (?:he|she|it)"
    r"|doesnt (?:he|she))$"
)
"""`lindqvist still poaches a lot, right?`: it wants no advice, only to know whether it is so."""


def wants_confirming(message: Message) -> bool:
    """Whether somebody by name is said to be so, and we are asked whether that holds."""
    line = " ".join(word.folded for word in message.said)
    is_named = any(not one.pronoun for one in message.mentions)
    return is_named and len(message.said) <= LONGEST and _CONFIRMED.search(line) is not None


def trait_asked(message: Message, chat: ChatView) -> TraitAsked | None:
    """The one trait asked after; None where none is, or several are."""
    line = " ".join(word.folded for word in message.said)
    if len(message.said) > LONGEST or not message.mentions:
        return None
    named = next((trait for form, trait in _OF_A_FACT if form.search(line)), None)
    if named is not None:
        return TraitAsked(trait=named)
    if (compared := skill_compared(message, chat)) is not None:
        return TraitAsked(trait=compared)
    of_him = _named_of_him(message, chat)
    if of_him is not None:
        return TraitAsked(trait=of_him)
    if _WIDER.search(line):
        return None
    does = _DOES.fullmatch(named_line(message.said, message.mentions))
    if does is not None and not message.note.claims:
        verb, _, rest = does["what"].partition(" ")
        ending = "es" if verb.endswith(("ch", "sh", "s", "x")) else "s"
        told = claims_of(f" {verb}{ending} {rest} a lot".replace("  ", " "), chat)
        habits = {(one.trait, one.value) for one in told}
        if len(habits) == 1 and not told[0].denied:
            ((trait, value),) = habits
            return TraitAsked(trait=trait, value=value)
    claims = message.note.claims or _with_names_settled(message, chat)
    said = {(one.trait, one.value) for one in claims}
    traits = {trait for trait, _ in said}
    if len(traits) != 1:
        return None
    (trait,) = traits
    if TRAITS[trait].kind is TraitKind.FACT and (len(said) > 1 or _weighs_values(line)):
        return TraitAsked(trait=trait)
    values = {value for _, value in said}
    return TraitAsked(trait=trait, value=values.pop()) if len(values) == 1 else None


def _named_of_him(message: Message, chat: ChatView) -> Trait | None:
    """The one trait that is named of somebody with neither strong nor weak."""
    found = _HOW_IS.fullmatch(named_line(message.said, message.mentions))
    if found is None or (found["opens"] is None and found["what"] in _AIMED):
        return None
    if message.note.claims and not (found["opens"] or "").startswith("how good"):
        return None
    traits = {one.trait for one in claims_of(f" has a weak {found['what']}", chat)}
    return traits.pop() if len(traits) == 1 else None


_WEIGHED = regex(r"\b(?:left|lefty|lefties|right|righty|tall|short|one|two)\b.* or \b.*"
                 r"\b(?:left|lefty|right|righty|tall|short|one|two)\b")  # fmt: skip


def _weighs_values(line: str) -> bool:
    """ "Left or right handed": which of the two, and not whether it is so."""
    return _WEIGHED.search(line) is not None


def _with_names_settled(message: Message, chat: ChatView) -> tuple[Claim, ...]:
    """What it would claim, were it known which of several alike is meant."""
    if all(one.certainty is Certainty.SURE for one in message.mentions):
        return ()
    known = [
        replace(one, certainty=Certainty.SURE, players=one.players[:1] or (_SOMEBODY,))
        for one in message.mentions
    ]
    return read_note(message.text, message.said, known, chat).claims
