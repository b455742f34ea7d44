"""Short questions about the day itself: what comes next, how it went, what a way of scoring is."""

from __future__ import annotations

from bot.chat.last_meeting_said import last_meeting_said
from bot.chat.message import Message
from bot.chat.review_said import own_review_said, review_said
from bot.chat.said import BookSaid, BookVerb, Question, Understood
from bot.chat.short_forms import in_full
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import folded_line
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_NEXT = regex(
    r"(?:ok )?(?:(?:what|whats|what is|who|whos|who is|who do we play) )?"
    r"(?:next|up next|next up|next match|our next match|next opponents?)"
    r"(?: (?:for us|on the list|today|then|pls|please))*"
)
_WHEN = regex(
    r"(?:(?:so|ok|hey|and) )*"
    r"(?:what time|whens?|when and where|where (?=do we play|are we playing|is (?:our|my|the))"
    r"|(?:what|which) (?:court|ct)|(?:what|whats) the time)"
    r" ?(?:is|are|do|does|was|of)? ?(?:we|our|my|i|the|it)?"
    r"(?: (?:next(?: (?:one|opponents?))?|play|playing|on|up|match|game|start|starts|starting"
    r"|again|at|scheduled|go|tomorrow|tmrw|today|tonight|first|please|pls|then))*"
    r"|(?:(?:so|ok|hey|and) )*(?:our |my )?next(?: (?:match|game|one))?(?: is)?"
    r" (?:when|what time|where|(?:what|which) (?:court|ct))"
)
_HOW_LONG = regex(
    r"(?:(?:so|ok|hey|and) )*(?:how (?:long|much time|many minutes|soon)|whats the time)"
    r"(?: (?:is it|is there|do we have|have we got|left|to go))?"
    r"(?: (?:until|till|til|before|to|do|are|is) (?:we|our|my|i|the)"
    r"(?: (?:next|first|play|playing|on|up|match|game|start|starts|starting|go|are|have to))*)"
)
_NAMES_A_START = regex(r"\b(?:play|playing|match|game|on|up|start|starts|starting)\b")
_WHEN_ALONE = regex(
    r"(?:(?:so|ok|hey|and) )*(?:(?:whens|when is|what time is) it|(?:what|which) (?:court|ct|crt))"
    r"(?: (?:again|now|then))*"
)
"""`when is it`, `what ct`: of the match announced; without one it may be of anything."""
_WHOM = regex(
    r"(?:(?:so|ok|hey|and) )*(?:who|whom|whos) (?:do|are|is) (?:we|i) "
    r"(?:play|playing|facing|up against|against)"
    r"(?: (?:next|now|first|today|tomorrow|tmrw|again|then"
    r"|(?:and|n) (?:when|what time|where|(?:what|which) court)"
    r"|in the (?:play ?offs?|semis?|semi ?finals?|quarters?|quarter ?finals?|finals?|next round)))*"
    r"|(?:(?:so|ok|hey|and) )*(?:who are|whos|who is) (?:our|my) (?:next )?opponents?"
    r"|(?:(?:so|ok|hey|and) )*(?:who|whom|whos) (?:is |do we play |are we playing )?next and when"
    r"(?: (?:is it|do we play|are we on))?"
)
"""Asked whom, it is no question of whom to play at."""

_PLAY = regex(r"\b(?:play|playing|match|game|on|up|start|starts|starting|scheduled|next)\b")
_WAY_OF_SCORING = regex(
    r"(?:ask|explain|tell me about|what|whats|what is|how does|how do|how is)(?: about)? "
    r"(?:rally|side ?out|traditional) scor(?:ing|e)(?: (?:work|works|mean|go|done))?"
)
"""Asked what it is; told with a match ("to 21, rally scoring") it is the match's."""


def day_question(message: Message, chat: ChatView) -> Understood | None:
    """What such a message asks; None unless it is all that is said."""
    line = folded_line(message.said)
    if _WAY_OF_SCORING.fullmatch(line):
        return Question(text=message.text, topic=Topic.RULES_QUESTION, confidence=CERTAIN)
    if _WHEN.fullmatch(line) and _PLAY.search(line):
        return BookSaid(text=message.text, verb=BookVerb.WHEN)
    if _HOW_LONG.fullmatch(line) and _NAMES_A_START.search(line):
        return BookSaid(text=message.text, verb=BookVerb.WHEN)
    if _WHEN_ALONE.fullmatch(line) and (chat.match_on or chat.pool_on):
        return BookSaid(text=message.text, verb=BookVerb.WHEN)
    if _NEXT.fullmatch(line) and chat.match_on:
        return Question(text=message.text, topic=Topic.GAME_PLAN, confidence=CERTAIN)
    if _NEXT.fullmatch(line):
        return BookSaid(text=message.text, verb=BookVerb.NEXT)
    if _WHOM.fullmatch(folded_line(in_full(message.said))):
        return BookSaid(text=message.text, verb=BookVerb.WHEN)
    met = last_meeting_said(message, chat) or own_review_said(message, chat.ours)
    return met or review_said(message)
