"""A review asked for: "review", "quick recap pls", "how did we do today", "what worked"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.message import Message, is_ours
from bot.chat.near_words import mended
from bot.chat.said import BookSaid, BookVerb
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId

_SPELT = words_in("review recap debrief worked learn write match game")
_SHORT_SPELT = {"hwo": "how", "waht": "what", "wat": "what", "whta": "what", "howd": "how did"}
_POLITE = words_in(
    "ok hey hi please pls now so lets let us can could i want to do a the our we and then time for "
    "give me quick short"
)
_REST = words_in(
    "quick quickly please pls now then guys today tonight overall again out there time"
)
_REVIEW = (
    r"(?:(?:match|game|after|post|last|short|quick|the) )*(?:review|recap|debrief)"
    r"(?: (?:of|the|that|this|our|last|match|game|it|us|first|second|third|1st|2nd|3rd|1|2|3|one"
    r"|two|three))*"
    r"(?: (?:against|vs|versus|with) N(?: (?:and|n) N)?(?: (?:today|earlier))?)?"
)
_HOW = (
    r"how did (?:we|it|that|this|the)(?: last)?(?: (?:match|game))?(?: (?:do|go|went|play))"
    r"(?: (?:against|vs|with) N)?(?: (?:in|that|this|the|our|last|match|game))*"
)
_WAS = r"how (?:was|went) (?:the|that|this|our)(?: last)? (?:match|game)"
_WHAT = (
    r"what (?:worked|went (?:well|right)|did we (?:learn|do well))"
    r"(?: (?:well|best|for us|in|that|this|the|our|last|match|game))*"
    r"(?: (?:against|vs|versus|with) N(?: (?:and |n )?N)?)?"
)
_REMARK = r"(?:(?:that|it|this|we) (?:was|wasnt|were|werent|is|isnt|played) (?:\w+ ){1,6})?"
"""What is sighed before it: "that wasnt very good was it"."""

_WRONG = (
    rf"{_REMARK}(?:so )?(?:"
    r"what (?:went wrong|did we do wrong|happened (?:there|out there|to us)|lost it)"
    r"|why did we lose|how did we lose|where did (?:we|it) (?:lose|go wrong|all go wrong))"
    r"(?: (?:it|that|this|the|match|game|one|there|last))*"
)
_WRITE = r"what (?:should|do) (?:we|i) write down(?: (?:after|about|of|the|this|that|match|game))*"

_THEN_REVIEW = rf"(?:{_HOW}|{_WAS}|how was (?:it|that|this)|{_WHAT}) (?:and )?{_REVIEW}"
"""`how did we do review`: asked in words, and once more by its name."""

_ASKS = regex(rf"{_REVIEW}|{_THEN_REVIEW}|post match|{_HOW}|{_WAS}|{_WHAT}|{_WRITE}")
"""The whole of the message but courtesies."""

_LOST = regex(_WRONG)
"""`what went wrong`: of the match just over; in a running one it asks what to change."""

COSTS = "costs"
"""The words of a review asked only for what loses us rallies."""

_COSTS = regex(
    r"(?:(?:so|ok|and) )*"
    r"(?:(?:what|whats|what is|what was|what keeps|what has been)(?: (?:really|been))?"
    r" (?:(?:hurts?|hurting) us|(?:costs?|costing|kill(?:s|ing)|los(?:es|ing)|beats|beating)"
    r" (?:us|me))"
    r"|where (?:are|do|did|were) (?:we|i) (?:losing|lose|dropping|leaking|giving away)"
    r"|what (?:are|do|did|were) (?:we|i) (?:losing|lose|keep losing|dropping)"
    r"|whom? (?:are|do|did|have) (?:we|i) (?:losing|lose|lost|dropping|drop|giving)"
    r"(?: (?:up|away))?(?= .*\b(?:points?|rallies)\b)"
    r"|(?:what|which) (?:shots?|strokes?) (?:is|are|do|did) (?:costing us|we miss|we missing)"
    r"|what (?:are|do|did|were) (?:we|i) (?:keep )?(?:missing|miss))"
    r"(?: (?:the|our|most|points?|rallies|rally|games?|match|them|it|this|on|to|from|with|away|now"
    r"|today|here|so far|right|out there))*"
)
"""`what is costing us`: the log tells, and no body hurts."""

_LAST = r"(?:the|that|this|our|my|last)(?: last)? (?:match|game)"
_BOTH_SIDES = regex(
    r"\bwhat (?:worked|went (?:well|right)|was good)(?: (?:and|or|but))? (?:what )?(?:didnt|did not"
    r"|was bad|was not|wasnt|went wrong|not|failed)\b"
    r"|\bwhat (?:can|could|should|did) we (?:take|learn|keep) (?:away )?(?:from|out of) "
    rf"(?:{_LAST}|(?:the|that|this) (?:win|loss|one))\b"
    r"|^(?:\w+ ){0,2}(?:review|recap|debrief)(?: of)? (?:the|that|our|last) (?:match|game)\b"
    r".*\b(?:good|bad|worked|well)\b"
    r"|^(?:(?:so|ok|and|now|well) )*what (?:(?:do|should|can|shall) (?:we|i) )?"
    r"(?:(?:to )?keep(?: doing)?|take (?:away|with us))"
    r"(?: from (?:this|that|today|the match))? (?:for |into )?"
    r"(?:tomorrow|next time|the next (?:one|day|match|tournament))$"
    r"|\b(?:match|game)(?: is| was| all)? (?:over|done|finished|played) (?:\w+ ){0,3}"
    r"(?:review|recap|debrief)\b"
    r"|\bhow (?:did|d) (?:we|us) do (?:against|vs|versus|with) N\b"
    rf"|\b(?:go over|go through|look back (?:at|on)|talk through|run through) {_LAST}\b"
)
"""What only a review tells, wherever in the message it stands."""


def review_said(message: Message) -> BookSaid | None:
    """The request; None unless it is all that is said."""
    line = _line(message)
    if _COSTS.fullmatch(line):
        return BookSaid(text=message.text, verb=BookVerb.REVIEW, words=COSTS)
    if not _ASKS.fullmatch(line) and not _LOST.fullmatch(line) and not _BOTH_SIDES.search(line):
        return None
    lost = "lost" if _LOST.fullmatch(line) else ""
    named = tuple(one for one in message.mentions if not one.pronoun)
    return BookSaid(text=message.text, verb=BookVerb.REVIEW, words=lost, mentions=named)


_OF_OURS = regex(r"(?:match |quick )?(?:review|recap|debrief) (?:(?:of|for) )?N(?: (?:and|n) N)?")


def own_review_said(message: Message, ours: Sequence[PlayerId]) -> BookSaid | None:
    """ "Review lotte and brody": the pair that speaks, so its last match."""
    named = [one for one in message.mentions if not one.pronoun]
    if not named or not all(is_ours(one, ours) for one in named):
        return None
    if not _OF_OURS.fullmatch(_line(message)):
        return None
    return BookSaid(text=message.text, verb=BookVerb.REVIEW)


def _line(message: Message) -> str:
    """The words, mended, N for a name, without the courtesies at either end."""
    line = []
    for word in message.said:
        if any(one.span[0] <= word.span[0] < one.span[1] for one in message.mentions):
            line.append("N")
        else:
            folded = _SHORT_SPELT.get(word.folded, word.folded)
            line += [mended(each, _SPELT) for each in folded.split()]
    while line and line[0] in _POLITE and not _ASKS.fullmatch(" ".join(line)):
        line = line[1:]
    while line and line[-1] in _REST and not _ASKS.fullmatch(" ".join(line)):
        line = line[:-1]
    return re.sub(r"N(?: N)+", "N", " ".join(line))
