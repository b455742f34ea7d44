"""A fault of theirs remembered once the rally is told: "wait he touched the net on that erne".

"Wait" puts right what was said as often as it opens what is odd about it; where a touch of the net,
a foot or a second bounce follows, it is the rule that is wanted. It counts no rally, corrects
nobody's name and is nobody's habit. Faults of ours are left out: they tell how a rally was lost.
"""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.named_line import NAME, named_line
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_WAIT = r"(?:(?:no|oh|but|hey|ok|um) )*(?:wait|hang on|hold on|hold up)(?: (?:but|no|wait|a sec))*"
_THINK = r"(?: (?:i think|i saw|im sure|pretty sure|didnt|actually|surely|that|so))*"
_DID = r"(?: (?:just|clearly|def|definitely|totally|also|had|did|his|her|their))*"
_FAULT = (
    r"(?:(?:touch|touched|brushed|grabbed|nicked|bumped) (?:the |into the )?(?:net|tape)"
    r"|foot ?fault(?:ed)?"
    r"|(?:paddle|shirt|hat|hand|foot|body|arm|leg|shorts|skirt) (?:touched|hit|brushed|was in)"
    r" the net"
    r"|(?:foot |feet |toe |toes |heel )?(?:was|were|stepped|stood|landed|is) (?:\w+ )?"
    r"(?:in|on|into|inside) the (?:kitchen|nvz|kitchen line|line)"
    r"|(?:hit|played|got|took) (?:it|that|that one|the ball) (?:on |after )?"
    r"(?:(?:the |its )?(?:second|2nd|two|2) bounces?|twice)"
    r"|(?:reached|was|came|leaned) over the net|carried it|double hit(?: (?:it|that))?)"
)
_FORM = regex(rf"{_WAIT}{_THINK} {NAME}{_THINK}{_DID} {_FAULT}\b.*")

LONGEST = 16
"""Words of such a message; a longer one tells more than a fault. Our own bound."""


def fault_remembered(message: Message, chat: ChatView) -> Question | None:
    """The question which rule holds; None where nothing of theirs is told so, or no match is on."""
    if not chat.match_on or chat.forwarded or len(message.said) > LONGEST:
        return None
    if any(is_ours(one, chat.ours) for one in message.mentions):
        return None
    if _FORM.fullmatch(named_line(message.said, message.mentions)) is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.RULES_QUESTION
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
