"""What was noted of me, or how I did, asked by one of us: "what did i note about me", "how was i".

"Me" is no name, so that such a question would be answered of the opponents. Where it isn't known
which of the two writes, it is of both. "What do you know about me" tells what is kept (privacy).
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention, Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_LEAD = r"(?:(?:so|ok|and|but|hey|please|pls|now|can you|show me|tell me|give me|read me) )*"
_US = regex(r"\b(?:us|ourselves)\b")
_ME = r"(?:me|myself|my (?:game|play|own game|own play)|us|ourselves)"
_WHEN = r"(?: (?:so far|today|this morning|now|then|again|please|pls|in (?:the|that) match))*"
_NOTES = regex(
    rf"{_LEAD}what (?:all )?(?:did|have|had) (?:i|we) (?:noted?|wrote|written|write|said?|say"
    rf"|told (?:you|u)|tell (?:you|u))(?: down)? (?:about|on|of) {_ME}{_WHEN}"
    rf"|{_LEAD}(?:(?:all|the|my|our) )*notes (?:about|on|of) {_ME}{_WHEN}"
)
_REPORT = regex(
    rf"{_LEAD}how (?:did|am|was|were|have) i (?:do|doing|done|play|playing|played|been doing|go)"
    rf"{_WHEN}|{_LEAD}how was (?:i|my (?:game|play)){_WHEN}"
    rf"|{_LEAD}(?:a |the |my )?(?:report|sheet|read|scouting) (?:about|on|of|for) {_ME}{_WHEN}"
    rf"|{_LEAD}what (?:do (?:you|u) (?:have|got)|(?:have )?(?:you|u) got|do u know"
    r"|do you know(?! about me)) (?:about|on|of)"
    rf" {_ME}{_WHEN}"
    rf"|{_LEAD}what(?:s| is| are)? (?:my (?:(?:biggest|main|worst) )?(?:weakness(?:es)?"
    rf"|weak (?:spots?|points?|sides?)|strengths?)|(?:weak|strong|bad|good) about {_ME}){_WHEN}"
)


def of_myself_asked(message: Message, chat: ChatView) -> BookSaid | Question | None:
    """The notes or the report asked for, of whoever writes; None for all else."""
    line = " ".join(word.folded for word in message.said)
    notes = _NOTES.fullmatch(line) is not None
    if not notes and _REPORT.fullmatch(line) is None:
        return None
    is_mine = chat.asker in chat.ours and _US.search(line) is None
    mine = (chat.asker,) if is_mine else chat.ours
    span = (message.said[-1].span[0], message.said[-1].span[1])
    mentions = tuple(
        Mention(typed="me", span=span, certainty=Certainty.SURE, players=(one,))
        for one in mine
        if one is not None
    )
    if not mentions:
        return None
    if notes:
        return BookSaid(text=message.text, verb=BookVerb.SHOW_NOTES, mentions=mentions)
    slots = find_slots(message.said, mentions, message.told)
    topic = Topic.OPPONENT_REPORT
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
