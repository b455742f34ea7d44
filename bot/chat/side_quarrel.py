"""Two of us who want the same court: "tom wants to play left and i want the left too".

It is asked who should play where, and nothing of it is kept: what somebody wants is not how they
play, and the other reads the book too.
"""

from __future__ import annotations

from bot.chat.message import Message, opponents
from bot.chat.partner_trouble import line_of_us
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_PARTNER = r"(?:(?:my |our )?(?:partner|pard|pardner)|ourname)"
_JUST = r"(?: (?:is|just|really|always|keeps?|still|also|both|now|again|so|all))*"
_WANT = r"(?:wants?|wanting|insists?|insisting|demands?|demanding|claims?|prefers?|likes?)"
_TO_PLAY = (
    r"(?: (?:to|on|play|playing|be|being|have|having|take|taking|stay|that|he|she|plays|the|in"
    r"|at))*"
)
_COURT = r"(?: (?:left|right|ad|deuce)(?: (?:side|court|half))?)"
_I_TOO = (
    r"\b(?:i|me)(?: (?:really|also|do|just|still|would|d|always))* (?:want|like|prefer|insist|need"
    r"|play it|play the (?:left|right)|play (?:left|right)|as well|too|should|do too)\b"
)
_TOLD = regex(
    rf"\b{_PARTNER}{_JUST} {_WANT}{_TO_PLAY}{_COURT}\b.*{_I_TOO}"
    rf"|\bi{_JUST} (?:want|prefer|like){_TO_PLAY}{_COURT}\b.*\b{_PARTNER}{_JUST} (?:{_WANT}|too)\b"
    rf"|\b{_PARTNER} (?:wont|will not|doesnt|does not|never|refuses to|isnt)(?: (?:even|ever))*"
    rf" (?:lets?|letting) me{_TO_PLAY}{_COURT}\b"
    rf"|\b(?:we|{_PARTNER} and (?:i|me)|(?:me|i) and {_PARTNER}) both want{_TO_PLAY}{_COURT}\b"
    r"|\b(?:we|i)\b.*\b(?:fight|fighting|argue|arguing|argued|disagree|disagreeing|cant agree|row"
    r"|quarrel|quarrelling)(?: (?:over|about|on|with (?:my |our )?(?:partner|ourname)))* "
    r"(?:who (?:plays?|takes?|gets?|is on|should play|has) (?:the |on )*(?:left|right)|our sides"
    r"|the sides|which side|who plays which)\b"
)


def side_quarrel(message: Message, chat: ChatView) -> Question | None:
    """Who of us should play where; None where an opponent is named, or somebody hurts."""
    if "?" in message.text.rstrip(" ?!.") or complains(message.text):
        return None
    if any(not one.pronoun for one in opponents(message.mentions, chat)):
        return None
    if _TOLD.search(line_of_us(message, chat)) is None:
        return None
    slots = find_slots(message.said, (), message.told)
    return Question(text=message.text, topic=Topic.PAIR_UP, confidence=CERTAIN, slots=slots)
