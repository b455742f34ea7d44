"""What we complain of ourselves: a ball that keeps coming at our hip, one that keeps popping up.

Told of us, the first asks how to answer it, never where we should aim; the second what to change.
A rally, a rule and a body that hurts have such words too: each of them is left to its own reader.
"""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.named_line import NAME, named_line
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.vocabulary import Topic

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


_GET_HIT = (
    r"(?:i|im|ive|we|were)(?: (?:just|always|really|all|been|am|was|were|are|be|get|got|gets"
    r"|getting|keep|kept|have))* "
    r"(?:hit|tagged|jammed|drilled|nailed|pegged|caught|tied up|handcuffed|beaten)"
)
_FAST = r"(?:speed ?ups?|speedups?|attacks?|flicks?|counters?|body ?shots?|put ?aways?|smash\w*)"
_HIT_BY = regex(rf"\b{_GET_HIT}\b.*\b(?:by|with|from|on|off)\b.*\b{_FAST}\b")
_TIMES = regex(
    r"\b(?:\d+|two|three|four|five|six|many|several) times\b|\b(?:twice|all the time|again|a lot)\b"
)
_TO_ME = regex(
    r"(?:(?:ok|so|and|now|help|ugh|oh) )*they (?:(?:have|are|just|now|all|both|do|always|keep"
    r"|started|start|only) )*"
    r"(?:chang\w*|switch\w*|turn\w*|shift\w*|mov\w*|go|goes|going|come|came|coming|play\w*|hit\w*"
    r"|back)(?: (?:it|all|over|back|everything|only|balls?))* (?:to|at|on|onto) me"
    r"(?: (?:again|now|all the time|every time|more|today|too|only|always|every ball|a lot))*"
    r"(?: with (?:(?:the|their|her|his|soft|slow|high|hard|fast|short|deep|low|easy) )*"
    r"(?:balls?|dinks?|drops?|shots?|drives?|lobs?|returns?|thirds?|speed ?ups?))?"
    r"(?: (?:again|now|all the time|every time|today|what (?:do|should|can) (?:i|we) do))*"
)
"""`they change to me again, with soft balls`: where they play, and no dink of ours."""


_HIDES = regex(
    r"(?:(?:so|ok|and) )*(?:(?:how|where) )?(?:(?:do|can|should|could|must|shall) (?:i|we|you) )?"
    rf"(?:best )?(?:hide|shield|protect) (?:me|myself|us|{NAME}|my partner)"
    r"(?: (?:better|here|now|then|today|from them|on court|from that))*"
)
"""`how do i hide myself`: of us; that they hide one of theirs is a plan of theirs."""


def hit_at_us_told(message: Message, chat: ChatView) -> Question | None:
    """What it asks that we are hit again and again, whoever of theirs does it; None for others.

    It may be a note too: what they hit us with is worth keeping, by a tap.
    """
    named = [one for one in message.mentions if not one.pronoun]
    if complains(message.text):
        return None
    ours = [one for one in named if is_ours(one, chat.ours)]
    line = " ".join(word.folded for word in message.said)
    topic = None
    if _TO_ME.fullmatch(line) or _HIDES.fullmatch(named_line(message.said, ours)):
        topic = Topic.BEING_TARGETED
    elif not ours and _HIT_BY.search(line) and (_TIMES.search(line) or _OFTEN.search(line)):
        topic = None if _ELSE.search(line) else Topic.RESET_OR_COUNTER
    if topic is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    may_note = len(named) > len(ours)
    return Question(
        text=message.text, topic=topic, confidence=CERTAIN, slots=slots, may_note=may_note
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
