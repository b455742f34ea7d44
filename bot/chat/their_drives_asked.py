"""What to do about balls of theirs at one of us: "how does one do when hale drives at tom", "he
keeps hitting at my chest".
"""

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

_KEEPS = (
    r"(?:(?:is|are|s|re|just|really|both|all)? ?(?:keeps?|kept|always|constantly|only|still)"
    r"(?: on)?(?: just)?)"
)
_AT_MY_BODY = regex(
    rf"(?:(?:so|ok|and|but|well|help|ugh) )*(?:they|he|she) {_KEEPS}"
    r" (?:hit(?:s|ting)?|go(?:es|ing)?|aim(?:s|ing)?|driv(?:e|es|ing)|speed(?:s|ing)?(?: it)? up"
    r"|com(?:e|es|ing)|attack(?:s|ing)?|play(?:s|ing)?)"
    r"(?: (?:it|balls?|them|the|every|everything|hard|straight|right|fast|all))*"
    r" (?:at|into|to|in|on|for) (?:my|our|we)(?: (?:right|left|paddle|upper))*"
    r" (?:chest|body|hips?|shoulders?|belly|stomach|ribs?|torso|armpit)"
    r"(?: (?:what|how|do|can|should|i|we|to|now|help|about|it|that|then|any|ideas|fix))*"
)
"""Told or asked: where at them we would hit is another matter, and nobody is told hurt."""


def asks_of_their_drives(message: Message) -> bool:
    """Whether nothing but that is asked: how to take them, and no third of ours. Whoever asks what
    to hit, where to stand or who takes it says so in other verbs."""
    line = " ".join(word.folded for word in message.told.words)
    return _ASKED.fullmatch(line) is not None or _AT_MY_BODY.fullmatch(line) is not None
