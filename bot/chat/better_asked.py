"""In which skill two people are compared: "is okafor better than hale on the backhand"."""

from __future__ import annotations

from bot.chat.message import Message, read_message
from bot.chat.named_line import NAME, named_line
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import TRAITS, Trait, TraitKind

_MORE = r"(?:better|worse|stronger|weaker|safer|steadier|(?:as|so) (?:good|bad|strong|weak|safe))"
_COMPARED = regex(
    r"(?:(?:so|ok|and|but|tell me|do you know if) )*"
    rf"(?:(?:is|are|was) {NAME} (?:much |any |really |the )?{_MORE}(?: or {_MORE})?"
    rf" (?:than|as) {NAME}"
    rf"|(?:who|which(?: one| of them)?)(?: is|s)? (?:the )?{_MORE}(?: player)?)"
    r" (?P<at>(?:on|with|at|in|off|under|from) \w+(?: \w+){0,3}?)"
    rf"(?:,? {NAME} or {NAME})?"
)
_FAST_GAME = regex(
    r"\b(?:in|at|with) (?:the |a )?(?:fast|quick)"
    r" (?:game|play|ones?|balls?|exchanges?|rall(?:y|ies))"
)
_HANDS = "in hands battles"
"""What the trade calls the fast game at the net; who is fast there need not run fast."""


def skill_compared(message: Message, chat: ChatView) -> Trait | None:
    """The skill, as a note of weakness in the same words would have it; None for anything else."""
    named = [one for one in message.mentions if not one.pronoun]
    found = _COMPARED.fullmatch(named_line(message.said, message.mentions)) if named else None
    if found is None:
        return None
    at = _FAST_GAME.sub(_HANDS, found["at"])
    told = read_message(f"{named[0].typed} is weak {at}", chat).note.claims
    traits = {claim.trait for claim in told if TRAITS[claim.trait].kind is not TraitKind.FACT}
    return traits.pop() if len(traits) == 1 else None
