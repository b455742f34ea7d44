"""How one of ours is to vary: "how do i get her to mix it up"; the shot named, or else the dink."""

from __future__ import annotations

from bot.chat.message import Message
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_VARY = (
    r"(?:vary|varies|mix (?:(?:it|them|things|her shots|his shots) )?up|mix it|be less predictable"
    r"|change (?:the|her|his) (?:targets?|direction|places?))"
)
_MORE = r"(?: (?:more|it|them|her|his|the|balls?|shots?|dinks?|serves?|returns?|better|now))*"
_ASKED = regex(
    r"\bhow (?:do|can|could|should|shall|would) (?:i|we) (?:get|make|teach|help|bring|tell)"
    rf" (?:we|they|she|he|her|him)(?: to)? {_VARY}{_MORE}$"
    rf"|\bhow (?:do|does|can|could|should|shall|would) (?:we|i|she|he) {_VARY}{_MORE}$"
)
_SHOTS = (
    (regex(r"\bserv(?:e|es|ing)\b"), Topic.AIM_SERVE),
    (regex(r"\breturn(?:s|ing)?\b"), Topic.AIM_RETURN),
)


def vary_asked(message: Message) -> Topic | None:
    """The topic whose answer says where to, and the change-up with its sign; whoever is played at
    does not ask for variety, and what they vary is not ours to ask so."""
    line = " ".join(word.folded for word in message.told.words)
    if _ASKED.search(line) is None:
        return None
    return next((topic for shot, topic in _SHOTS if shot.search(line)), Topic.AIM_DINK)
