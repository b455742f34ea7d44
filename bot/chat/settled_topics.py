"""Short messages whose form settles their topic, where their words alone would mislead."""

from __future__ import annotations

import re
from functools import cache

from bot.chat.message import Message
from bot.chat.question import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from knowledge.tactics.changes import troubles
from knowledge.vocabulary import Topic

_HOW_BIG = "how (?:high|tall|low|wide|deep|long|big)"
_SIZE = "(?:height|width|depth|length|size|dimensions|measurements)"
_PLACE = "(?:in|at) the (?:middle|centre|center|sides?|sidelines?|posts?|ends?)"
_THING = (
    "(?:the |a )?(?:pickleball )?"
    f"(?:court|net(?: posts?)?|kitchen|nvz|non volley zone|service (?:box|court))(?: {_PLACE})?"
)
_MEASURES = re.compile(
    rf"(?:{_HOW_BIG} (?:is|are) {_THING}(?: supposed to be| meant to be)?"
    rf"|{_HOW_BIG} should {_THING} be"
    rf"|(?:(?:what is|whats) )?(?:the )?{_SIZE} of {_THING}"
    rf"|(?:(?:what is|whats) )?(?:the )?(?:court|net|kitchen) {_SIZE})"
)
"""`how high is the net`: the rulebook's measure; how high to hit over it is another question."""

_WHOSE = "(?:the|that|this|their|there|his|her|hers|theirs)"
_TOO_GOOD = "(?:(?:just|way|so|far) )?too (?:hard|fast|quick|heavy|good|big|strong|much|spinny)"
_FOR_US = "(?:for (?:me|us)|to return|to get back)"
_HELP = "(?:help|what now|what do (?:i|we) do|how do (?:i|we) return it)"
_THEIR_SERVE = re.compile(
    rf"(?:{_WHOSE} )?serves? (?:is|are|r|just) {_TOO_GOOD}(?: {_FOR_US})?(?: {_HELP})?"
)
"""`serve is too hard`: who finds a serve so receives it; "my serve is too hard" does not fit."""


_ENDS_AT = re.compile(
    r"(?:when |do |should )?(?:do )?(?:we )?(?:switch|change|swap) (?:sides|ends) at \d+"
    r"(?: in (?:the )?(?:game (?:three|3)|third(?: game)?|decider|last game|game))?"
)
"""`switch sides at 6 in game 3`: the rulebook's change of ends; who plays where has no score."""


_OF_BARS = "(?:the|a|show|me|give|see|strengths?|strong|weak|good|bad|and|picture|chart|points|of)"
_REPORT = re.compile(
    rf"(?:{_OF_BARS} )*(?:bars?|(?:strong|weak|good|bad) (?:points|sides)) (?:of|for|on|about) "
    r"(?P<who>.+)"
)
"""`bars for okafor`, `strong and weak points of okafor`: the sheet that a report brings."""


@cache
def _troubles() -> frozenset[str]:
    """What hurts, as the buttons under "what to change" say it: typed, it is the same answer."""
    return frozenset(one.label.replace("-", " ") for one in troubles())


def _asks_for_bars(message: Message, line: str) -> bool:
    """Whether it names nothing but whose report is wanted."""
    found = _REPORT.fullmatch(line)
    if found is None or not message.mentions:
        return False
    start = min(one.span[0] for one in message.mentions)
    asked = sum(word.span[0] < start for word in message.said)
    return asked == len(line[: found.start("who")].split())


def settled_topic(message: Message) -> Question | None:
    """The question that such a message is; None unless it is all that is said."""
    line = " ".join(word.folded for word in message.said)
    topic = None
    if _MEASURES.fullmatch(line):
        topic = Topic.RULES_QUESTION
    elif _THEIR_SERVE.fullmatch(line):
        topic = Topic.AIM_RETURN
    elif _ENDS_AT.fullmatch(line):
        topic = Topic.RULES_QUESTION
    elif _asks_for_bars(message, line):
        topic = Topic.OPPONENT_REPORT
    elif line in _troubles():
        topic = Topic.ADJUST
    if topic is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
