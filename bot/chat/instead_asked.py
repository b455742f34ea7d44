"""What to do in place of a shot: "what instead of speeding up at hale" is answered without it.

The shot named is the one that is given up, so its own page would answer with it. In place of one
at somebody the other of them is played at, or another ball is chosen.
"""

from __future__ import annotations

from typing import Final

from bot.chat.message import Message, opponents, read_message, weighed_note
from bot.chat.named_line import NAME, named_line
from bot.chat.note_or_question import begins_as_note
from bot.chat.partner_trouble import line_of_us
from bot.chat.said import Question, Understood
from bot.chat.settled_topics import settled_topic
from bot.chat.several_questions import part_of
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN, likely_question
from bot.chat.view import ChatView
from bot.chat.words import folded_line
from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_LEAD = r"(?:(?:so|ok|okay|and|but|then|now|well|hm+) )*"
_WHAT = (
    r"(?:what|which (?:shot|ball)|anything|something)(?: (?:else|shot|ball))?"
    r"(?: (?:do|can|could|should|shall|would|to|is there|is better|is good|works))?"
    r"(?: (?:i|we|you|he|she|they))?(?: (?:do|hit|play|use|try|go for|best|better))?(?: else)?"
)
_INSTEAD = r"(?:instead(?: of)?|rather than|other than|in place of|if not)"
_ON = (
    rf"(?: {NAME}| (?:at|to|on|against|vs|with|from|for) (?:{NAME}|him|her|them"
    r"|(?:the |my |our )?\w+)| it| up| so much| all the time| every time| any ?more| now| then"
    r"| here)*"
)
_GIVEN_UP: Final = (
    (r"(?:speed ?ups?|speeding(?: (?:it|them|the ball))? up|attack(?:s|ing)?|flick(?:s|ing)?)",
     Topic.AIM_DINK),
    (r"(?:overheads?|smash(?:es|ing)?)", Topic.TAKE_OR_LET_BOUNCE),
    (r"(?:lobs?|lobbing)", Topic.AIM_DINK),
    (r"(?:dinks?|dinking)", Topic.AIM_ATTACK),
    (r"(?:driv(?:es?|ing)|bang(?:s|ing)?|drop(?:s|ping)?|thirds?)(?: (?:my|the|our) thirds?)?",
     Topic.THIRD_SHOT),
    (r"(?:counters?|countering|blocks?|blocking)", Topic.RESET_OR_COUNTER),
    (r"(?:stack(?:s|ing)?)", Topic.STACK_OR_NOT),
)  # fmt: skip
_AT_SOMEBODY = regex(
    rf"{_LEAD}{_WHAT} {_INSTEAD} (?:(?:the|a|my|our|all|more) )*"
    r"(?:speed ?ups?|speeding(?: (?:it|them|the ball))? up|attack(?:s|ing)?|flick(?:s|ing)?"
    r"|hitting(?: (?:it|everything|so much))?|playing(?: (?:it|everything))?|going|targeting"
    rf"|picking on)(?: (?:at|to|on|after))? (?:{NAME}|him|her){_ON}"
)
_FORMS: Final = tuple(
    (regex(rf"{_LEAD}{_WHAT} {_INSTEAD} (?:(?:the|a|my|our|all|more) )*{shot}{_ON}"), topic)
    for shot, topic in _GIVEN_UP
)


_AT_ITS_END = regex(
    r"\b(?:so |and |then )?what(?: else)? (?:to do |can \w+ do )?instead(?: then)?$"
)
_OF_US = regex(r"(?:(?:so|ok|and|but|ugh|man|help) )*(?:ourname|i|we|im|were|my|our)\b")
_NOW = " what now"
SHORTEST = 3
"""Words that tell what goes wrong: fewer name a shot only."""


def told_and_instead(message: Message, chat: ChatView) -> tuple[Understood, ...]:
    """ "Brody keeps netting it. what instead": what to change, and the note where it is one.

    Of ours alone: what one of theirs does is answered as a habit.
    """
    if chat.forwarded or begins_as_note(message.said):
        return ()
    line = folded_line(message.said)
    found = _AT_ITS_END.search(line)
    at = len(line[: found.start()].split()) if found else 0
    if at < SHORTEST or opponents(message.mentions, chat):
        return ()
    told = part_of(message, 0, at, chat)
    if told.asks or _OF_US.match(line_of_us(told, chat)) is None or complains(told.text):
        return ()
    again = read_message(told.text.rstrip(" ,.;:-") + _NOW, chat, mentions=told.mentions)
    asked = settled_topic(again) or likely_question(again, chat)
    topic = Topic.ADJUST if asked is None else asked.topic
    slots = find_slots(message.said, message.mentions, message.told)
    question = Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
    return (weighed_note(told, chat), question) if told.note.claims else (question,)


def instead_asked(message: Message, chat: ChatView) -> Question | None:
    """The question of what is left to play; None unless that is all that is asked."""
    if chat.forwarded:
        return None
    line = named_line(message.said, message.mentions)
    topic = Topic.WHOM_TO_TARGET if _AT_SOMEBODY.fullmatch(line) else None
    topic = topic or next((topic for form, topic in _FORMS if form.fullmatch(line)), None)
    if topic is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
