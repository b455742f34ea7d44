"""One rally of the running match in a few words: "they hit it out", "our error", "ace"."""

from __future__ import annotations

import re

from bot.chat.forms import word_set
from bot.chat.message import Message
from bot.chat.rally_clauses import told_rally
from bot.chat.rally_told import ASKS_ON
from bot.chat.said import Certainty, RallySaid, RemarkSaid, ScoreRemark, Understood
from bot.chat.slip_words import SLIP, starts_corrected
from bot.chat.view import ChatView
from bot.chat.words import folded_line
from knowledge.regex import regex

_WE = r"(?:we|i)(?: just| have| ve)?"
_THEY = r"they(?: just| have| ve)?"
_WHERE = r"(?:out|long|wide|short|into the net|in the net|into net|into the tape|past the line)"
_BALL = r"(?:it|that|that one|the ball|one|the (?:return|serve|drop|drive|dink|volley|lob))"
_MISS = (
    rf"(?:hits?|puts?|sent|sends|dumped|dumps|dinked|drove|served|popped|pushed)"
    rf" (?:{_BALL} )?{_WHERE}|serves? (?:{_BALL} )?(?!wide|short){_WHERE}"
    rf"|(?:missed|misses|netted|nets|faulted|faults|whiffed|whiffs|shanked|shanks|dumped|dumps"
    rf"|foot faulted|double faulted)(?: {_BALL})?"
    r"|(?:hit|hits|touched|touches) the net|gave (?:that|it|one|1)(?: one)? away"
)
"""What ends a rally. Who "serves short" does so always: of one serve it is told in the past."""
_SHOT = r"(?:serve|return|drop|drive|dink|lob|volley|third|smash|shot|ball)"
_WENT = rf"{_SHOT} (?:just )?(?:went|goes|was|is|landed|sailed|flew) (?:way |just )?{_WHERE}"
_SECOND = (
    r"(?:are |re )?(?:down to|on to|onto) (?:our |their |the )?(?:server 2|(?:second|2nd)"
    r"(?: server)?)"
)
_ERROR = r"(?:(?:unforced )?(?:error|mistake|fault|miss))"
_WINNER = r"(?:hit|made|got|served) (?:a |an )?(?:clean |easy )?(?:winner|ace)"
_OUR_LOSS = regex(
    rf"(?:{_WE} )?gave (?:one|1) away|{_WE} (?:{_MISS})|(?:our|my) {_WENT}|{_WE} {_SECOND}"
    rf"|our {_ERROR}|my {_ERROR}|{_ERROR} (?:on|by|from|for) (?:us|we|me)"
    rf"|{_ERROR} (?:us|we|ours)|{_THEY} (?:{_WINNER}|aced (?:us|me|we))|their (?:winner|ace)"
    r"|(?:ace|winner) (?:by |for |from )?(?:them|they|theirs)"
)
_OUR_GAIN = regex(
    rf"{_THEY} (?:{_MISS})|their {_WENT}|(?:{_THEY}|them) {_SECOND}"
    rf"|their {_ERROR}|{_ERROR} (?:on|by|from|for) (?:them|they)"
    rf"|{_ERROR} (?:them|they|theirs)|{_WE} (?:{_WINNER}|aced (?:them|they))"
    r"|(?:our|my) (?:winner|ace)|(?:ace|winner) (?:by |for |from )?(?:us|we|ours|me)"
)
_PLUS = re.compile(r"\s*\+\s*1\s*(?:(?:for |to )?(?P<whose>us|ours|them|theirs))?[\s.!]*")
"""`+1`, `+1 them`: a point added; what `-1` means is asked."""

_OURS, _THEIRS = frozenset(["ours", "us"]), frozenset(["theirs", "them"])
"""Whose it was, after "no" or "wait"."""

_SCORED = regex(
    r"(?P<side>we|they) (?:just |have |ve )?(?:scored?|(?:got|get|gets|made) (?:a|one|another)"
    r"(?: more)? (?:point|pt))(?: (?:a|one|another) (?:point|pt))?"
)
_NTH = regex(
    r"(?:(?:but|and|then|so|ok) )*(?:(?P<side>we|they) )?(?:just |have |ve )?"
    r"(?P<how>won|win|took|got|lost|dropped)"
    r" (?:the )?(?:very )?(?:(?:first|1st|opening|last|next) (?:rally|point|pt|ball)|next(?: one)?)"
    r"(?: too| again)?"
)
"""`we won the first rally`: whole, since behind a reason it tells of a rally long counted."""
_WHOSE = regex(
    r"(?:an? |the |that was an? |what an? |clean )?(?:ace|point|pt|rally|winner)(?: over| done)?"
)
_FILLING = word_set("rally_filling")
_OF_SERVE = word_set("of_serve")
"""Words that tell after a rally as which server somebody serves: it follows from the score."""


_ANNOUNCES = regex(r"\s*next(?: up| match| game)?\s*[:,-]")
"""`next: okafor and lindqvist again` tells whom we play next, not that they won another rally."""
_COMES_AFTER = regex(r"\s*(?:next|then|after (?:that|this))\W+(?:its|it'?s|it is)\b")
"""`after that its okafor and lindqvist`: the same, where somebody is named."""


def brief_rally(message: Message, chat: ChatView) -> Understood | None:
    """The rally that such a message tells, whole; a longer one is a note or stands by its form."""
    if not chat.match_on or "?" in message.text or _announces(message):
        return None
    if chat.asked_last and ASKS_ON.fullmatch(folded_line(message.said)):
        return None
    return (_brief(message) if _are_on_court(message, chat) else None) or told_rally(message, chat)


def _announces(message: Message) -> bool:
    text = message.text.lower()
    is_named = any(not one.pronoun for one in message.mentions)
    return bool(_ANNOUNCES.match(text) or (is_named and _COMES_AFTER.match(text)))


def _brief(message: Message) -> Understood | None:
    marked = _PLUS.fullmatch(message.text.lower())
    if marked is not None:
        return RallySaid(text=message.text, won_by_us=marked["whose"] not in _THEIRS)
    line = " ".join(word.folded for word in message.told.words if word.folded not in _FILLING)
    bare = re.sub(rf"^{SLIP}+", "", f"{line} ").strip()
    named = tuple(one for one in message.mentions if not one.pronoun)
    corrects = bare != line and starts_corrected(line, len(line) - len(bare))
    for form, won_by_us in ((_OUR_LOSS, False), (_OUR_GAIN, True)):
        is_whose = corrects and bare in (_OURS if won_by_us else _THEIRS)
        if is_whose or _is_told_by(form, bare):
            return RallySaid(
                text=message.text, won_by_us=won_by_us, mentions=named, corrects=corrects
            )
    scored = _SCORED.fullmatch(bare)
    if scored is not None:
        return RallySaid(
            text=message.text,
            won_by_us=scored["side"] == "we",
            mentions=named,
            corrects=corrects,
            scored=True,
        )
    nth = _NTH.fullmatch(bare)
    if nth is not None:
        won = (nth["side"] != "they") is (nth["how"] not in ("lost", "dropped"))
        return RallySaid(text=message.text, won_by_us=won, mentions=named, corrects=corrects)
    if _WHOSE.fullmatch(line):
        return RemarkSaid(text=message.text, remark=ScoreRemark.WHOSE_POINT)
    return None


def _is_told_by(form: re.Pattern[str], line: str) -> bool:
    """Whether the line is such a rally, and beside it at most who serves now."""
    found = form.match(line)
    return (
        found is not None
        and set(line[found.end() :].split()) <= _OF_SERVE
        and (line[found.end() : found.end() + 1] in ("", " "))
    )


def _are_on_court(message: Message, chat: ChatView) -> bool:
    """Whether every name of the message is surely one of the four who play."""
    playing = {*chat.ours, *chat.theirs}
    return all(
        one.certainty is Certainty.SURE and one.players[0] in playing
        for one in message.mentions
        if not one.pronoun
    )
