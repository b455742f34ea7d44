"""Our record asked for: what was won and lost, to whom, and whether it is enough to go through."""

from __future__ import annotations

from bot.chat.day_asked import OF_THE_DAY
from bot.chat.said import BookSaid, BookVerb, PoolAsked, PoolVerb, Understood
from bot.chat.view import ChatView
from knowledge.regex import regex

_LEAD = r"(?:(?:ok|okay|so|and|hey|wait|um|right|remind me|tell me|again|pls|please) )*"
_TAIL = (
    r"(?: (?:so far|now|then|again|today|yet|overall|pls|please|(?:in|of) (?:the |our |this )?"
    r"(?:pool|group|rr|round robin|day)|(?:from|out of) (?:the |our )?(?:pool|group)))*"
)
_WON = r"(?:won|win|wins|lost|lose|losses|beat|beaten|dropped|played)"
_THINGS = r"(?:records?|results|scores|tally|wins|losses|w ?l)"
"""One "score" or "result" is of the match at hand."""
_RECORD = (
    rf"(?:(?:what|whats|what is|what was|what were|what are|hows|how is|give me|show(?: me)?) )?"
    rf"(?:our|the|my) (?:pool )?{_THINGS}(?:(?: and| n| or)? (?:our |the )?{_THINGS})*"
)
_COUNT = (
    rf"how many (?:(?:matches|games|wins|losses|of them|pool matches) )?(?:have|did|do) we "
    rf"(?:already )?(?:{_WON}|have|got)"
)
_WHOM = (
    rf"(?:who|whom|which (?:teams?|pairs?|ones?)) (?:did|have) we (?:already )?{_WON}(?: (?:to"
    rf"|against))?"
    r"|(?:who|which (?:teams?|pairs?)) (?:beat|has beaten) us"
)
_SCORES = r"what (?:were|was) the (?:scores|results)(?: of (?:the|our) (?:matches|games))?"
_OF_A_POOL = regex(rf"{_LEAD}(?:{_RECORD}|{_COUNT}|{_WHOM}|{_SCORES}){_TAIL}")

_THROUGH = (
    r"(?:through|thru|threw|in the (?:bracket|playoffs?|knockouts?|next round)|qualified|out)"
)
_GO_ON = (
    r"(?:go(?:ing)? (?:through|thru|on)|make (?:it|the (?:bracket|playoffs?|knockouts?|cut))"
    r"|making it|get (?:through|thru|out)|advance|advancing|qualify|move on|moving on)"
)
_TOLD = r"(?:(?:we are|were|at|its|we went|we finished|with) )?(?:\d+ \d+ )?"
_AM_THROUGH = regex(
    rf"{_LEAD}{_TOLD}(?:(?:in|out of|from) (?:the |our )?(?:pool|group|rr) )?{_LEAD}"
    rf"(?:(?:are|r|did|do|will|can|have) we (?:still |even |now )?(?:{_THROUGH}|{_GO_ON}"
    rf"|gone through)"
    rf"|(?:is|was) (?:that|it|this|\d+ \d+) (?:enough|good enough)"
    rf"(?: to {_GO_ON})?|what place are we(?: in)?|where did we finish){_TAIL}"
)
"""`1-2 in pool. are we thru`: our count is known; who goes on the event decides."""


def record_asked(text: str, line: str, chat: ChatView) -> Understood | None:
    """The pool's table while one is on, else the matches of the day; `line` is all that is said.

    Whether we go through is asked of a pool only.
    """
    if chat.pool_on and (_OF_A_POOL.fullmatch(line) or _AM_THROUGH.fullmatch(line)):
        return PoolAsked(text=text, verb=PoolVerb.STANDING)
    if _OF_A_POOL.fullmatch(line):
        return BookSaid(text=text, verb=BookVerb.REVIEW, words=OF_THE_DAY)
    return None
