"""One incident told to have it ruled on: "dario stepped in the kitchen after his smash. fault?".

What happened once is nobody's habit, and a ruling is all that is asked for. Words that tell how
often it happens ("every time", "keeps") make a note of it still.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Claim, Question, Unclear
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.rulebook.landed_in import lands_in_kitchen
from knowledge.vocabulary import TRAITS, Topic, Trait, TraitKind, Value

_FAULTS = Trait.FOOTWORK_KITCHEN_FAULTS
"""The habit that a single fault reads like; the ball it happened at may read like another."""

_OFTEN = words_in(
    "always often constantly every keep keeps kept lot lots tends usually mostly again all each"
    " never rarely regularly sometimes times twice whenever"
)

_RULING = (
    r"(?:legal|illegal|(?:a )?(?:foot )?faults?|allowed|permitted|(?:a )?let|replay|(?:a )?carry)"
)
_FOR_A_RULING = regex(
    rf"\b(?:(?:is|was|isnt|wasnt) (?:that|it|this|he|she) |that |thats |its |or )?(?:even |still )?"
    rf"{_RULING}(?: or (?:not|no|{_RULING}))?(?: (?:right|then|or what|ref))?$"
)
"""`..., legal?`, `... is that a fault or not`: what it ends with asks for nothing else."""


def is_ruled_on(question: Question | Unclear, message: Message) -> bool:
    """Whether a rule is asked for, and a note would claim nothing but habits of one ball told: of
    a fault, or of anything on which the message ends by asking for a ruling."""
    if not isinstance(question, Question) or question.topic is not Topic.RULES_QUESTION:
        return False
    if not _OFTEN.isdisjoint(word.folded for word in message.said):
        return False
    claims = message.note.claims
    is_fault = any(one.trait is _FAULTS for one in claims)
    line = " ".join(word.folded for word in message.said)
    is_told = is_fault or _FOR_A_RULING.search(line) is not None
    return is_told and all(_is_of_a_habit(one) for one in claims)


def _is_of_a_habit(claim: Claim) -> bool:
    """Whether it claims how often somebody does a thing, which one ball does not tell."""
    return TRAITS[claim.trait].kind is TraitKind.HABIT or claim.value is Value.OFTEN


def asks_of_landing_in(message: Message) -> bool:
    """ "Okoye ernes and falls in the kitchen. Fault or not": told of one ball for its ruling."""
    line = " ".join(word.folded for word in message.said)
    is_once = _OFTEN.isdisjoint(word.folded for word in message.said)
    return is_once and bool(_FOR_A_RULING.search(line)) and lands_in_kitchen(message.text)
