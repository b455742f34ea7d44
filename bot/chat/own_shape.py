"""What a team says of its own shape: a line left open, two for one ball, a paddle that hangs.

Such messages name no shot and ask nothing, so that their words alone say little of their topic.
"""

from __future__ import annotations

from typing import Final

from bot.chat.message import Message, names_somebody, opponents
from bot.chat.near_words import mended
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.vocabulary import Topic

SETTLED = 1.0
"""The confidence of a topic that a form settles."""

_US = r"(?:(?:my |our )?(?:partner|pard|pardner|mate)|i|im|ive|we|were|we and (?:i|we)|i and we)"
_OFTEN = (
    r"(?: (?:keeps?|kept|is|am|are|always|just|wont|dont|doesnt|cant|stop|on|often|both|too|way"
    r"|again|so|really|constantly|all|the|time))*"
)
_MIDDLE = r"(?:(?:to|into|in|towards?|at) )?(?:the )?(?:middle|center|centre)"
_DRIFT = (
    r"(?:drift|slid|slide|shad|shade|cheat|lean|creep|crowd|pinch|squeez|squeeze|cover|com|come"
    r"|mov|move|poach|overcover|step)(?:s|es|ed|ing)?"
)
_LEAVE = r"(?:leaves?|leaving|left|opens?|opening)"
_LINE = r"(?:(?:side)?line|alley|side|outside|door|lane)"
_OPEN = r"(?:(?:wide )?(?:open|empty|uncovered|unguarded|free|naked)|(?:uncovered|open) again)"
_WHOSE = r"(?:the |my |our |his |her |their |we |that |own )*"

_GAP = r"(?:a |an )?(?:big |huge |wide |massive |little )?(?:gap|hole|space|room)"

_LINE_LEFT = regex(
    rf"^{_US}{_OFTEN} {_DRIFT}\b.* (?:{_LEAVE} {_WHOSE}(?:wide )?{_LINE}"
    rf"|{_WHOSE}{_LINE} (?:is |are |stays? )*{_OPEN}|down {_WHOSE}line)\b"
    rf"|^{_US}{_OFTEN} {_DRIFT} (?:too (?:far|much) )?{_MIDDLE}(?: (?:again|too much|too far))?$"
    rf"|^{_US}{_OFTEN} {_LEAVE} (?:me )?(?:{_GAP} (?:down|on|at|in|along) )?{_WHOSE}{_LINE}\b"
    rf"|\b(?:hole|gap) (?:down|on|at|in) {_WHOSE}{_LINE}\b.* {_US}{_OFTEN} {_DRIFT}\b"
    rf"|^(?:our|my|we) {_LINE}(?: is)?(?: always| wide| left| again)* (?:open|uncovered)\b"
)
"""`my partner keeps drifting middle leaving the line open`: who follows the ball, and who stays."""

_BALL = r"(?:the )?(?:same |middle )*(?:it|ball|balls|shot|shots|one|ones)"
_BOTH_GO = regex(
    r"^(?:(?:and|ugh|so|again|because) )*"
    rf"(?:we both|both of us|{_US} and {_US} both|we|we two|i and we)"
    r"(?: (?:keep|kept|are|were|both|always|just))* (?:"
    r"(?:going|go|goes|went|gone|run|running|ran|reach|reaching|reached|swing|swinging|swung)"
    r" (?:for|at|after) (?:the )?same (?:ball|balls|shot|shots|one|ones)"
    r"|(?:collid|clash|bump|crash)(?:e|es|ed|ing)?(?: (?:into each other|paddles|in the middle))*"
    r")(?: (?:again|every time|all the time|help|what now|what do we do|today))*$"
    rf"|^(?:we both|both of us)(?: (?:keep|always|just|are))* "
    r"(?:going|go|went|run|reach|swing|swung|left|leave|watch|watched|wait|waited|stood|stand)"
    rf" (?:for |at |after )?{_BALL}(?: go(?: by| past)?)?"
    r"(?: (?:again|every time|all the time|help|what now))*$"
)
"""`we both go for the same ball`: whose it is was never said."""

_PADDLE = regex(
    r"^where (?:should|do|does|must) (?:(?:i|we|my|our|her|his|have|hold|keep|the) )*paddles?"
    r"(?: (?:be|go|wait|up|at|the|on|by|kitchen|line|net|nvz))*$"
    rf"|^(?:(?:caught|again|{_US}|my|our|her|his|with|the|has|have|had|got|get|gets|is|are|keeps?"
    r"|drops?|dropped|dropping|holds?|always|too|we|we both) )*"
    r"(?:paddles?(?: (?:is|are|was|were|keeps?|stays?|gets|always|too|way|so|drops?|hangs?))*"
    r"(?: (?:down|low|dropping|hanging|by (?:the|my|his|her) (?:side|knees?)))?"
    r"|paddle (?:up or down|position|height|ready position))"
    r"(?: (?:again|at|on|by|the|in|net|nvz|kitchen|line|up|there|help|what now))*$"
)
"""`paddle down at the kitchen`: the ready position at the line."""
_LOW = regex(r"\b(?:where|down|low|drops?|dropped|dropping|hang\w*|by|position|height)\b")

_HOW_BOLD = regex(
    r"^(?:(?:so|ok|at|its|we are|were|up|down) )*(?:\d+ ){2,3}(?:so |and )?how "
    r"(?:aggressive|agressive|agresive|aggresive|hard|bold|brave|risky|safe|careful|cautious|greedy"
    r"|big)"
    r"(?: (?:do|should|can|shall|to|must) )?(?:(?:i|we) )?(?:go|play|be|swing)?"
    r"(?: (?:here|now|for it|at it))*$"
)
"""`4-2-1 how aggressive`: the score's own question, however few its words."""

_SLIPS: Final = words_in(
    "drifting drifts middle center leaving leaves sideline poaching paddle paddles kitchen partner "
    "collide colliding clashing aggressive going keeps uncovered"
)
"""Words of such messages that a slip is mended in."""


def own_shape(message: Message, chat: ChatView) -> Question | None:
    """The question behind what is said of ourselves; None where they are spoken of too."""
    if opponents(message.mentions, chat):
        return None
    topic = _topic_of(_line(message))
    if topic is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=topic, confidence=SETTLED, slots=slots)


def settled_shape(message: Message, chat: ChatView) -> Question | None:
    """The same where nobody is named, so that there is no note to keep beside it."""
    return None if names_somebody(message) else own_shape(message, chat)


def asks_how_bold(message: Message) -> bool:
    """Whether it is a score and how hard to go at it; the score is told as well."""
    return _HOW_BOLD.search(_line(message)) is not None


def _line(message: Message) -> str:
    return " ".join(mended(word.folded, _SLIPS) for word in message.told.words)


def _topic_of(line: str) -> Topic | None:
    if _LINE_LEFT.search(line):
        return Topic.WHERE_TO_STAND
    if _BOTH_GO.search(line):
        return Topic.COVER_MIDDLE
    hangs = _PADDLE.search(line) and _LOW.search(line)
    return Topic.WHERE_TO_STAND if hangs else None
