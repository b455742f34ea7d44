"""What to do about drives of theirs at one of us: "how does one do when hale drives at tom"."""

from __future__ import annotations

from bot.chat.message import Message
from knowledge.regex import regex

_DRIVES = r"(?:driv(?:e|es|ing)|bang(?:s|ing)?|rip(?:s|ping)?|hammer(?:s|ing)?|blast(?:s|ing)?)"
_DO = (
    r"(?:(?:do|does|did|should|shall|can|could|would|to|best|best way|one|we|i|us|you|it|this|that"
    r"|handle|deal|with|answer|cope|about|against|react|respond|solve) )+"
)
_ASKED = regex(
    rf"(?:(?:so|ok|and|but|well) )*(?:what|how) {_DO}(?:when|if|as|while|now that) they"
    rf" (?:(?:is|are|s|re|just|always|only|keeps?|all|on|still|constantly) )*{_DRIVES}"
    r" (?:(?:it|the|every|all|each|their|his|her|thirds?|balls?|shots?|hard|straight|right"
    r"|everything|fast) )*(?:at|on|into|to) (?:we|us|me|i|our|my)(?: \w+){0,3}"
)


def asks_of_their_drives(message: Message) -> bool:
    """Whether nothing but that is asked: how to take them, and no third of ours. Whoever asks what
    to hit, where to stand or who takes it says so in other verbs."""
    return _ASKED.fullmatch(" ".join(word.folded for word in message.told.words)) is not None
