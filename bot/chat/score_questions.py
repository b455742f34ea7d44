"""Questions about a score that nobody has yet: what it is worth, and who serves after a rally."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import RemarkSaid, ScoreRemark
from bot.chat.view import ChatView
from knowledge.regex import regex

_LEAD = r"(?:(?:so|ok|okay|and|but|wait|hey|hm|then) )*"
_CALL = r"\d+ \d+(?: [12])?"
_WHOSE = r"(?: (?:us|them|we|they|ours|theirs|our|their|my|serve|serving|ball))*"
_WORTH_IF = regex(
    rf"{_LEAD}(?:whats|what is|what would be|how much is|how big is)"
    r" (?:it|this|that|the (?:game|match|rally|point)|(?:this|that) (?:rally|point|one))(?: worth)?"
    r" (?:if|when|at|once)(?: (?:its|it is|it was|it were|we are|were|we were|the score is|at))*"
    rf" {_CALL}{_WHOSE}"
)
"""`whats it worth if its 13-13-1 them`."""

_NOW_AT = regex(
    rf"{_LEAD}what(?: (?:now|changes|do we do|do we play|should we do))+ at {_CALL}{_WHOSE}"
)
"""`what now at 20-20`: how to play that point."""

_ENDS_AT = regex(
    rf"{_LEAD}(?:{_CALL}{_WHOSE} )?(?:(?:at|so|and) )?\d+(?: (?:is when|means|we|and|they|teams))*"
    r" (?:switch|change|swap)(?:e?s)?(?: (?:sides|ends))(?: (?:right|yes|yeah|correct|isnt it|or no"
    r"|or not|no))*"
)
"""`9-7 us, 11 switches ends right?`."""

_LOST = r"(?:lose|lost|miss|missed|drop|dropped|net|dump|fault|err|blow)"
_WON = r"(?:win|won|get|take|score)"
_RALLY = (
    r"(?: (?:it|this|that|one|(?:this|that|the|the next|our|my|a|their)"
    r" (?:one|rally|point|pt|serve|ball|return)))?"
)
_IF = rf"if (?P<side>we|they|i) (?:(?P<lost>{_LOST})|{_WON}){_RALLY}(?: now)?"
_HAVE = r"(?:get|have|keep|take|hold|lose|win)"
_SERVES = (
    r"(?:(?:do|would|will|does) (?:they|we|i) (?:then |still )?"
    rf"(?:{_HAVE}(?: (?:the|our|their|a|it))* (?:serve|ball)|serve)"
    r"|(?:who|whos|whose)(?: (?:will|would|is|has|gets|does|it|the))*"
    r" (?:serves?|serving|serve is it|ball is it|ball)"
    r"|is it (?:a )?(?:side ?out|(?:their|our) (?:serve|ball)))(?: (?:back|next|then|now|after))*"
)
_FORMS = (regex(rf"{_LEAD}{_SERVES} {_IF}"), regex(rf"{_LEAD}{_IF} {_SERVES}"))


def asks_worth_at(message: Message) -> bool:
    """Whether it asks what a score is worth that nobody has yet."""
    return _WORTH_IF.fullmatch(_line(message)) is not None


def asks_how_at(message: Message) -> bool:
    """Whether it asks how to play at a score, and nothing else."""
    return _NOW_AT.fullmatch(_line(message)) is not None


def asks_ends_at(message: Message) -> bool:
    """Whether it asks if ends are changed at those points."""
    is_asked = message.asks or "?" in message.text
    return is_asked and _ENDS_AT.fullmatch(_line(message)) is not None


def serve_after_asked(message: Message, chat: ChatView) -> RemarkSaid | None:
    """Who serves after a rally of ours, or theirs; None for any other message."""
    if not chat.match_on or chat.forwarded:
        return None
    line = _line(message)
    found = next((one for form in _FORMS if (one := form.fullmatch(line)) is not None), None)
    if found is None:
        return None
    is_ours = (found["side"] != "they") is (found["lost"] is None)
    return RemarkSaid(text=message.text, remark=ScoreRemark.SERVE_AFTER, ours=is_ours)


def _line(message: Message) -> str:
    return " ".join(word.folded for word in message.told.words)
