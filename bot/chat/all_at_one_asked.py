"""Whether to play everything at one of them: "do i hit it at hale all the time (its 8-7 us)".

That is whom to play at and how much of it, whatever score stands beside it and whatever was spoken
of before. Whether it is allowed is the rulebook's, and a serve or a dink has its own page.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.numbers import number
from knowledge.regex import regex

_LEAD = r"(?:(?:so|ok|okay|and|but|then|now|well|hm+|also) )*"
_ASKS = (
    r"(?:(?:is it|its|would it be|is that) (?:ok|okay|alright|all right|fine|fair|smart|wise|worth"
    r"|good|bad|mean|unfair|dumb|stupid|silly)(?: idea)?(?: to| if (?:i|we))?"
    r"|(?:do|should|can|could|shall|must|may) (?:i|we))"
)
_PLAY = (
    r"(?:(?:just|still|keep|really|always) )*(?:hit|hitting|play|playing|send|sending|go|going|put"
    r"|putting|keep|keeping|aim|aiming|pick|picking|target|targeting)"
)
_ALL = r"(?:everything|every(?: single)? ball|all(?: of)?(?: the| our| my)? balls|all|it all)"
_ONE = (
    rf"(?:{NAME}|him|her|(?:just |only )?(?:the same|one)(?: (?:person|player|one|guy|woman|man))?"
    r"(?: of (?:them|they))?)"
)
_ALWAYS = (
    r"(?:all (?:the time|day|game|match)|(?:every|each) (?:time|ball|rally|point)|always|constantly"
    r"|the (?:whole|entire) (?:time|game|match)|non ?stop|again and again)"
)
_AT = r"(?:at|to|on|after)"
_BEHIND = (
    r"(?: (?:now|then|or not|or mix(?: it)?(?: up)?|its|it is|were|we are|at|us|they|them|up|down"
    r"|all|game (?:one|two|three)|#))*"
)
_FORM = regex(
    rf"{_LEAD}{_ASKS} {_PLAY} (?:(?:it|the ball|them) )?{_AT} {_ONE} {_ALWAYS}{_BEHIND}"
    rf"|{_LEAD}{_ASKS} {_PLAY} {_ALL} {_AT} {_ONE}(?: {_ALWAYS})?{_BEHIND}"
)


def asks_all_at_one(message: Message) -> bool:
    """Whether nothing but that is asked."""
    numbers = {word.folded for word in message.said if number(word) is not None} - {"one"}
    line = named_line(message.said, message.mentions).split()
    return _FORM.fullmatch(" ".join("#" if word in numbers else word for word in line)) is not None
