"""Time-outs in words: one that was taken ("they called a timeout"), and how many are left."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import TimeoutSaid
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_LAST = r"(?:last|final|only remaining|both)"
_TIMEOUT = rf"(?:a |the |our |their |of |another |first |second |{_LAST} )*time ?outs?"
_TOOK = r"(?:just |have |has |ve )*(?:called|calls?|took|takes?|used|uses?|burned|burnt)"
_THAT_WAS = r"(?:(?:that was|that is|thats|was) )?"
_OURS = regex(
    rf"{_THAT_WAS}(?:we {_TOOK}|our) {_TIMEOUT}(?: gone)?|our time ?out"
    rf"|time ?out (?:for )?(?:we|us|ours)|{_TOOK} {_TIMEOUT}|time ?out (?:taken|called)"
)
_THEIRS = regex(
    rf"{_THAT_WAS}(?:they {_TOOK}|their) {_TIMEOUT}(?: gone)?|their time ?out"
    r"|time ?out (?:for )?(?:they|them|theirs)"
)
_IS_LAST = regex(rf"\b{_LAST} (?:of )?(?:our |their |the )?time ?outs?\b")
_TO_SAY = (
    r"(?:(?:so|and|now|quick|ok) )*what(?:s| is)?"
    r"(?: now| next| (?:do|should|can|shall|could|would|to|the|our|one)\b.*)?"
)
_FEW_THINGS = (
    r"(?:(?:just|only|give|me|us|gimme|tell|quick|quickly|the|top|best|i|we|need|want|max|at most"
    r"|no more than) )*(?:one|1|two|2|three|3|four|4|(?:a )?couple(?: of)?|(?:a )?few)"
    r" (?:things?|tips?|keys?|cues?)"
    r"(?: (?:max|only|please|pls|now|quick|tops|at most|no more|to (?:do|remember|say|tell \w+)))*"
)
_WITH_QUESTION = regex(
    rf"(?P<told>{_OURS.pattern}|{_THEIRS.pattern}) (?P<asks>{_TO_SAY}|{_FEW_THINGS})"
)
"""`they called a timeout, what do i tell tom`: taken, and what to change in it."""

_FEW_IN_IT = regex(
    rf"(?:{_OURS.pattern}|{_THEIRS.pattern}|{_TIMEOUT}) {_FEW_THINGS}"
    rf"|{_FEW_THINGS} (?:for|in|during) {_TIMEOUT}(?: (?:please|pls|now))*"
)
_ONE_THING = regex(r"\b(?:one|1) (?:thing|tip|key|cue)\b")

_IN_ONE = regex(
    r"(?:(?:so|and|now|quick|ok) )*what (?:do|should|can|shall|to) (?:(?:i|we) )?"
    r"(?:say|tell|talk|discuss|fix|change|do|agree)\b.* (?:in|during|at|on|for) "
    rf"{_TIMEOUT}(?: now)?"
)

_LEFT = regex(
    r"(?:any |how many |our |their |do (?:we|they|i) (?:still )?have (?:any )?)*time ?outs?"
    r"(?: (?:do|have|are|did) (?:we|they|i|there|you))*(?: still)?(?: have| got)?"
    r" (?:left|remaining|to go)(?: (?:for )?(?:we|us|they|them))?"
    r"|(?:how many|any)(?: (?:left|remaining|are left))? (?:of )?(?:our |their |the )?time ?outs"
    r"(?: (?:left|remaining|now))?"
)
_BESIDE_LEFT = words_in("ok so and now here we i have got are is ve just already left all only oh")
_FILLING = frozenset(["ok", "so", "and", "now", "here", "right"])


def timeouts_asked(message: Message) -> bool:
    """Whether the message asks how many time-outs are left, and nothing else."""
    line = _line(message)
    return _LEFT.fullmatch(line) is not None


def timeout_said(message: Message, chat: ChatView) -> TimeoutSaid | None:
    """The message, if it says of the running match that a time-out was taken, and nothing else."""
    if not chat.match_on or "?" in message.text:
        return None
    line = _line(message)
    ours, theirs = _OURS.fullmatch(line), _THEIRS.fullmatch(line)
    if ours is None and theirs is None:
        return None
    is_last = _IS_LAST.search(line) is not None
    return TimeoutSaid(text=message.text, ours=ours is not None, is_last=is_last)


def asks_what_to_say(message: Message) -> bool:
    """Whether it asks what to say in a time-out, told beside it or not: one change answers it."""
    line = _line(message)
    return bool(_WITH_QUESTION.fullmatch(line) or _IN_ONE.fullmatch(line))


def things_wanted(message: Message) -> Topic | None:
    """The plan, or the one line, where a break is named with how many things are wanted in it.

    Whoever limits what is said has taken it: whether to take one is no longer asked.
    """
    line = _line(message)
    if _FEW_IN_IT.fullmatch(line) is None:
        return None
    return Topic.CUE if _ONE_THING.search(line) else Topic.GAME_PLAN


def tells_what_is_left(message: Message) -> bool:
    """Whether it tells how many time-outs we have left, and nothing else: "no more t/os"."""
    breaks = message.told.breaks
    rest = [word.folded for at, word in enumerate(message.told.words) if at not in breaks.places]
    return breaks.timeouts_left is not None and _BESIDE_LEFT.issuperset(rest)


def timeout_before_question(message: Message, chat: ChatView) -> TimeoutSaid | None:
    """The time-out told before that question, in a running match."""
    found = _WITH_QUESTION.fullmatch(_line(message)) if chat.match_on else None
    if found is None:
        return None
    return TimeoutSaid(text=message.text, ours=_THEIRS.fullmatch(found["told"]) is None)


def _line(message: Message) -> str:
    return " ".join(word.folded for word in message.told.words if word.folded not in _FILLING)
