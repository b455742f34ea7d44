"""What a message says of runs of rallies lost and of time-outs left."""

from __future__ import annotations

import re

from bot.chat.spoken_line import NUMBER, SpokenLine, count
from knowledge.dataclass import dataclass
from knowledge.regex import regex

_ROW = (
    r"(?:in a row|straight|on the trot|on the bounce|running|unanswered|in succession"
    r"|consecutive|back to back)"
)
_POINTS = r"(?:points?|pts?|rallies|rally)"
_THEY = r"(?:they|theyve|theyre|opponents)"
_THEY_DO = r"(?:won|win|wins|got|get|scored|score|run|ran|took|take|taken|had|have|reeled|rattled)"
_WE_LOSE = (
    r"(?:lost|lose|losing|dropped|drop|dropping|given (?:up|away)|gave (?:up|away)|coughed up)"
)
_FILL = r"(?:(?:ve|have|just|now|already|off|the|last|past|us|like|about|another|on|a|up)\b ?)*"
_THEIR_RUN = regex(
    rf"\b{_THEY} {_FILL}{_THEY_DO} {_FILL}(?P<a>{NUMBER}) (?:{_POINTS} )?{_ROW}\b"
    rf"|\b{_THEY} {_FILL}{_THEY_DO} (?:the |these )?(?:last|past) (?P<b>{NUMBER})\b"
    rf"|\b{_WE_LOSE} {_FILL}(?P<c>{NUMBER}) (?:{_POINTS} )?{_ROW}\b"
    rf"|\b{_WE_LOSE} (?:the |these |our |us the )?(?:last|past) (?P<d>{NUMBER})\b"
    rf"|\b(?P<e>{NUMBER}) (?:{_POINTS} )?{_ROW}(?: {_POINTS})?"
    r" (?:against (?:us|we)|to (?:them|they)|for (?:them|they)|theirs|them|they)\b"
    rf"|\b(?:the )?last (?P<f>{NUMBER}) (?:{_POINTS} )?(?:went to (?:them|they)|were theirs|theirs"
    r"|to (?:them|they)|against us)\b"
    rf"|\b{_THEY} {_FILL}(?:are )?(?:on|had|made|have)? ?(?:an? )?(?:little )?"
    rf"(?:run of (?P<g>{NUMBER})|(?P<h>{NUMBER}) (?:point|pt) run)\b"
)
_OUR_RUN = regex(
    rf"\b(?:we|weve) {_FILL}(?:won|win|got|scored|run|ran|took|have) {_FILL}(?P<a>{NUMBER})"
    rf" (?:{_POINTS} )?{_ROW}\b"
    rf"|\b(?:we|were|we are) {_FILL}(?:are )?on (?:a|an|our) (?:\w+ ){{0,3}}run\b"
    r"|\b(?:we|weve) (?:\w+ ){0,2}(?:the )?momentum\b"
    rf"|\b(?:we|weve) (?:have )?(?:won|got) the last (?P<b>{NUMBER})\b"
)
_TO_NIL = regex(r"\b(?P<a>\d{1,2}) (?P<b>\d{1,2}) run\b")
_SHORT_RUN = regex(rf"\b(?:run|streak) of (?P<a>{NUMBER})\b|\b(?P<b>{NUMBER}) (?:point|pt) run\b")

_BREAK = r"(?:time ?outs?|tos?|t o s?|breaks?|breathers?|pauses?)"
_QUANTITY = r"(?:no|none|zero|a|one|two|three|both|0|1|2|3)"
_LEFT = r"(?:left|remaining|in hand|to spare|to go|still|unused)"
_LEFT_OVER = regex(
    rf"\b(?P<a>{_QUANTITY}) (?:more |of our )?{_BREAK} {_LEFT}\b"
    rf"|\b(?:got|have|ive got|weve got|only|with|has) (?:only |still )?"
    rf"(?P<b>one|two|three|1|2|3|both) {_LEFT}\b|^(?P<c>[0-3]|one|two|three|none) {_LEFT}\b"
    rf"|\b(?:got|have|only|we) (?:only |still )*(?:got |have )?(?P<d>{_QUANTITY})"
    rf" (?:more )?{_BREAK}\b"
    r"(?! (?:too|earlier|each|apiece|per|a|every)\b)"
    r"|\bonly have (?P<e>one|two|1|2)\b(?! [a-z]*(?:hand|ball|shot|player))"
    rf"|\b(?P<f>one|two|1|2|both|none) left\b"
    r"(?! (?:hand\w*|side|foot|court|paddle|player|one|of|in the))"
    rf"|\bhave (?P<g>both)\b(?! (?:of (?:them|they)|guys|players|opponents))"
)
_LAST = regex(rf"\blast {_BREAK}\b|\b(?:our|my) last one\b")
_BREAKS = r"(?:time ?outs|tos|t os|breathers)"
_MORE = r"(?:(?:more|both|all|our|my|of|the|any|two) )*"
_OUT = regex(
    rf"\b(?:used|spent|burned|burnt|blew|blown|wasted|taken|took|gone through) (?:up )?"
    rf"{_MORE}{_BREAKS}\b(?! (?:well|wisely|right|early|badly))"
    rf"|\b(?:no|zero|dont have|do not have|havent got|aint got|have not got|without)(?: any)?"
    rf"(?: more| other)? {_BREAKS}\b"
    rf"|\b{_BREAKS} (?:are |is |were )?(?:both |all |already )*"
    r"(?:gone|used|spent|burned|burnt|done)\b"
    rf"|\bout of {_BREAK}\b|\b(?:used (?:up )?(?:both|all)|burned both|burnt both|spent both)"
    rf"(?: of)?(?: our| my| the)?(?: {_BREAK})?\b"
)
_USED_ONE = regex(
    r"\b(?:used|burned|burnt|spent) (?:up )?(?:the |our |my )?(?:one|first)\b(?! (?:when|of their))"
)
_ALL_LEFT = regex(rf"\b(?:havent|have not|not) (?:used|taken|called) (?:any|one|a)(?: {_BREAK})?")
_THEIRS = regex(rf"\b(?:{_THEY}|their|theirs)(?: (?!we\b|weve\b|i\b|ive\b)\w+){{0,3}}$")


_IN_A_ROW = regex(rf"\b{_ROW}\b")
_TOLD_RUN = regex(
    rf"\b(?:won|win|took|got|down|lost|dropped) {_FILL}{NUMBER} (?:{_POINTS} )?{_ROW}\b"
)

_OF_RUNS = regex(rf"\b(?:{_ROW}|last|past|runs?|streak|momentum)\b")
_OF_BREAKS = regex(
    rf"\b(?:{_BREAK}|{_LEFT}|have|only|out of|used|burned|burnt|spent|last one|taken)\b"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundBreaks:
    """Rallies lost in a row (0 where the run is ours), our time-outs left, and the words."""

    lost_in_a_row: int | None
    timeouts_left: int | None
    places: frozenset[int]


def find_breaks(line: SpokenLine) -> FoundBreaks:
    run, lost = _run(line.text) if _OF_RUNS.search(line.text) else (None, None)
    rest = _blanked(line.text, run)
    left, timeouts = _left(rest) if _OF_BREAKS.search(rest) else (None, None)
    return FoundBreaks(lost_in_a_row=lost, timeouts_left=timeouts, places=line.covered(run, left))


def without_runs(text: str) -> str:
    """The text without a run of rallies: the "lost" of "lost 4 straight 5-7" is no game's."""
    if not _IN_A_ROW.search(text):
        return text
    theirs, ours = _THEIR_RUN.search(text), _OUR_RUN.search(text)
    return _blanked(text, theirs or ours or _TOLD_RUN.search(text))


def _blanked(text: str, found: re.Match[str] | None) -> str:
    """The text with a finding as commas, so that places stay: its "they" is of the run alone."""
    if found is None:
        return text
    return text[: found.start()] + "," * len(found[0]) + text[found.end() :]


def _run(text: str) -> tuple[re.Match[str] | None, int | None]:
    """How many rallies in a row they have won, from whoever is said to be on the run."""
    theirs, ours = _THEIR_RUN.search(text), _OUR_RUN.search(text)
    if theirs is not None:
        return theirs, _counted(theirs)
    if ours is not None:
        return ours, 0
    to_nil = _TO_NIL.search(text)
    if to_nil is not None and "0" in (to_nil["a"], to_nil["b"]):
        return to_nil, max(int(to_nil["a"]), int(to_nil["b"]))
    short = _SHORT_RUN.search(text)
    return (short, _counted(short)) if short else (None, None)


def _left(text: str) -> tuple[re.Match[str] | None, int | None]:
    """Our time-outs left; what is said of theirs is none of ours."""
    for found in _LEFT_OVER.finditer(text):
        if not _THEIRS.search(text[: found.start()].rstrip()):
            return found, _counted(found)
    for rule, value in ((_ALL_LEFT, 2), (_OUT, 0), (_LAST, 1), (_USED_ONE, 1)):
        found_at = rule.search(text)
        if found_at is not None and not _THEIRS.search(text[: found_at.start()].rstrip()):
            return found_at, value
    return None, None


def _counted(found: re.Match[str]) -> int:
    return count(next(word for word in found.groups() if word is not None))
