"""Who is ahead and how many points are missing: "are we ahead", "how many more do we need"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.numbers import groups
from bot.chat.said import BookSaid, BookVerb, ScoreSaid, Understood
from bot.chat.settled_forms import settled
from bot.chat.several_questions import part_of
from bot.chat.view import ChatView
from knowledge.regex import regex

OF_LEAD = "lead"
"""Said with the score that is asked for: by how much, and what is missing."""

LONGEST = 16
"""Words of such a question behind a score."""

_ROUND = r"(?: (?:now|still|then|here|please|pls|at the moment|right now|again))*"
_LEADS = r"(?:ahead|behind|up|down|in front|in the lead|leading|trailing|level)"
_POINTS = r"(?:points?|pts?)"
_MISSING = r"(?:need|require|have to (?:get|make|win|score)|must (?:get|make|win|score)|lack|miss)"
_TO_WIN = r"(?: (?:to win|to go|for the game|for game|for the match|to win the game|to close it))?"
_ASKED = regex(
    r"(?:(?:so|ok|and|but|wait|hey|sorry) )*(?:"
    rf"(?:are|r) (?:we|they)(?: still| even)? {_LEADS}(?: or(?: are we)? (?:not|{_LEADS}))?"
    r"|(?:who|whos|who is) (?:is )?(?:leading|leads|ahead|in front|in the lead)"
    rf"|how many (?:more )?(?:{_POINTS} )?(?:more )?(?:(?:do|does|did|have|will) )?(?:we|they|i)"
    rf"(?: still| yet)? {_MISSING}(?: more| still)*{_TO_WIN}"
    rf"|how many (?:more )?{_POINTS} (?:more )?(?:(?:are|is) )?(?:left|missing|to go|to win|short"
    rf"|remain|remaining)(?: for (?:us|them|we|they))?"
    rf"|how many (?:more )?{_POINTS} (?:are|were) we (?:short|away|missing)"
    rf"){_ROUND}"
)


def lead_asked(message: Message, chat: ChatView) -> tuple[Understood, ...]:
    """The question for the lead of the running match, behind the score where one stands before it.

    It has to be the whole of what is asked, so that "are we ahead in the middle" stays another's.
    """
    if not chat.match_on or chat.forwarded or not message.said:
        return ()
    numbers = groups(message.said)
    last = len(message.said)
    begins = range(max(numbers[-1].stop, last - LONGEST), last) if numbers else [0]
    for at in begins:
        line = " ".join(word.folded for word in message.said[at:])
        if _ASKED.fullmatch(line):
            return _after(message, at, chat)
    return ()


def _after(message: Message, at: int, chat: ChatView) -> tuple[Understood, ...]:
    asked = BookSaid(text=message.text, verb=BookVerb.SCORE, words=OF_LEAD)
    if not at:
        return (asked,)
    called = part_of(message, 0, at, chat)
    score = settled(called.text.rstrip(" ,;"), called, chat)
    return (score, asked) if isinstance(score, ScoreSaid) else ()
