"""What we complain of ourselves: a ball that keeps coming at our hip, one that keeps popping up.

Told of us, the first asks how to answer it, never where we should aim; the second what to change.
A rally, a rule and a body that hurts have such words too: each of them is left to its own reader.
"""

from __future__ import annotations

from bot.chat.message import Message
from knowledge.complaints import complains
from knowledge.regex import regex

_SIDE = r"(?:(?:left|right|paddle|backhand|forehand|same) )?"
_PLACE = rf"{_SIDE}(?:hip|hips|ribs|armpit|pocket)"
_AT_US = regex(
    rf"\b(?:hit|hits|hitting|jam|jams|jamming|tag|tags|tagging|at|into|in|on|finds?) my {_PLACE}\b"
    rf"|\b(?:hit|hits|hitting|get|gets|getting|jam|jams|jamming|catch|catches|catching) (?:me|us)"
    rf" (?:in|at|on) (?:the|my|our) {_PLACE}\b"
    rf"|\b(?:i|we)\b.* (?:hit|jammed|caught|tied up|tagged) (?:in|at|on) (?:the|my|our) {_PLACE}\b"
)
_OFTEN = regex(
    r"\b(?:keep|keeps|all (?:day|game|match|the time)|every|always|constantly|again and again"
    r"|what (?:do|can|should) i|how do i|cant)\b"
)
_ELSE = regex(
    r"\b(?:lost|won|points?|rally|fault|legal|allowed|rules?|ref|referee|out|replay|apolog\w+)\b"
    r"(?! (?:of )?(?:the )?way)"
)
_POPS = regex(
    r"(?:(?:so|ok|and|but|ugh|help) )*(?:i|we) (?:(?:just|always|still|really|am|are) )*"
    r"(?:keep|keeps|kept|keep on) popping (?:it|them|everything|balls?|the balls?|that|em)"
    r"(?: all)? up(?: (?:high|all day|every time|again|today|lately|and))*"
    r"(?: (?:what (?:do|can|should) (?:i|we) (?:do|change)(?: about it)?|what now|help|why|any fix"
    r"|how (?:do|can) (?:i|we) (?:stop|fix)(?: it| that| them)?))*"
)


def asks_of_our_hip(message: Message) -> bool:
    """Whether it is told of us, again and again, and of nobody by name."""
    if any(not one.pronoun for one in message.mentions) or complains(message.text):
        return False
    line = " ".join(word.folded for word in message.said)
    often = message.asks or _OFTEN.search(line) is not None
    return often and _AT_US.search(line) is not None and _ELSE.search(line) is None


def asks_of_our_pop_ups(message: Message) -> bool:
    """Whether it names no shot: a third or a reset that pops up has its own page."""
    return _POPS.fullmatch(" ".join(word.folded for word in message.said)) is not None
