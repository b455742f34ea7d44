"""Several rallies told at once: "our rally x3", "2 more for us", "they won two in a row"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.dictated import SOUNDS_LIKE
from bot.chat.message import Message
from bot.chat.numbers import number
from bot.chat.said import RemarkSaid, SaidScore, ScoreRemark
from bot.chat.serve_told import with_sides
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex

_SIDE = r"(?:(?:for|to|by|go to|goes to) )?(?P<side>we|us|ours?|they|them|theirs?)"
_RALLIES = r"(?:rall(?:y|ies)|points?|pts?)"
_MANY = r"(?P<n>[2-9])"
_TIMES = (rf"x ?{_MANY}", rf"{_MANY} ?x", rf"{_MANY} times", rf"times {_MANY}")
_RUN = rf"(?:an? )?{_MANY} (?:to )?(?:0|nothing|zip|none|zilch) (?:run|streak|spurt)"
_WON = r"(?:won|win|got|get|took|take|scored?)"
_LOST = r"(?P<lost>lost|lose|dropped|gave away)"
_HAVE = r"(?:just |have |has |ve )*"
_QUICK = r"(?:more |quick |easy |cheap )*"
_RUNNING = r"(?:in a row|in row|strai(?:gh)?t|str8|on the trot|back to back|running)"
_OF_SIDE = rf"{_SIDE} {_HAVE}(?:{_WON}|{_LOST})"
_ROW = rf"(?:{_RALLIES}|(?:{_RALLIES} )?{_RUNNING})"
_FEW = r"(?:(?:a )?(?:few|couple|bunch)|some|sum|several|many)(?: of)?"
_BODIES = (
    *(rf"{_SIDE} (?:{_RALLIES} )?{times}" for times in _TIMES),
    *(rf"{times} (?:{_RALLIES} )?{_SIDE}" for times in _TIMES),
    rf"(?:another )?{_MANY} more(?: {_RALLIES})? {_SIDE}",
    rf"another {_MANY}(?: {_RALLIES})? {_SIDE}",
    rf"{_MANY} (?:{_RALLIES} )?in a row {_SIDE}",
    rf"{_SIDE} (?:just |have |ve )?{_WON} {_MANY} more(?: {_RALLIES})?",
    rf"{_OF_SIDE} (?:the )?(?:last |next )?{_MANY} {_QUICK}{_ROW}",
    rf"{_OF_SIDE} (?:the )?(?:last |next )?{_MANY}",
    rf"{_OF_SIDE} (?:the )?(?:last |next )?{_FEW}(?: {_QUICK}{_ROW})?",
    rf"(?:just )?(?P<bare>{_WON}|{_LOST}) (?:the )?(?:last |next )?{_MANY} {_QUICK}{_RUNNING}",
    rf"{_SIDE} {_HAVE}scored? (?P<twice>twice)(?: (?:now|more|in a row))?",
    rf"{_RUN} {_SIDE}",
    rf"{_SIDE} (?:are |re |go |went |just |on |have |with )*{_RUN}",
)
_FORMS = tuple(
    regex(
        rf"(?:(?:ok|so|and|now|then|its|that|is|thats) )*{body}(?: (?:now|again|there|in a row))*"
    )
    for body in _BODIES
)
_HEARD = regex(
    r"(?:(?<=won )|(?<=got )|(?<=lost )|(?<=took )|(?<=last ))"
    rf"(?:{'|'.join(word for word, many in SOUNDS_LIKE.items() if many > 1)})"
    rf"(?= {_QUICK}(?:{_RALLIES}|{_RUNNING})\b|$)"
)
"""`won too in a row`: what dictation writes for a number, where rallies are counted."""

_BESIDE_A_SCORE = regex(
    rf"\b(?P<side>we|they) (?:just |have |ve )*{_WON} (?:the )?(?:last |next )?"
    rf"(?:[2-9] |a few |some |several )(?:more |quick |easy )*"
    rf"(?:straight|in a row|{_RALLIES}|more)\b"
)
_ONE_BESIDE = regex(
    r"\b(?P<side>we|they) (?:just |have |ve )*"
    r"(?:(?:got|get|gets|made) (?:(?:1|one|another)(?: more)?"
    r"(?: (?:point|pt)\b|(?=\s*[.,;:!]\s))|a(?:nother)? (?:point|pt)\b)"
    r"|scored?(?: (?:1|one|again|a point|a pt))?(?=\s*[.,;:!]))"
)
"""`they got 1. 1-1-1`: a number of its own, since in "they got 1-1-1" it is the score's."""

_LOST_BESIDE = regex(
    r"(?<!they )(?<!they have )\b(?:lost|dropped|gave up|given up|down) (?:the )?(?:last )?"
    rf"(?:[2-9] |a few |some |several )(?:{_RALLIES} )?(?:straight|in a row|running|on the trot)\b"
)
"""`lost 4 straight, 5-7`: theirs, whoever is not named."""

_OURS = frozenset(["we", "us", "our", "ours"])


def several_rallies(message: Message, chat: ChatView) -> RemarkSaid | None:
    """The message, if it tells nothing but of so many rallies that one side won."""
    if not chat.match_on or "?" in message.text:
        return None
    line = _HEARD.sub(lambda one: str(SOUNDS_LIKE[one[0]]), _line(message.said))
    found = next((one for form in _FORMS if (one := form.fullmatch(line)) is not None), None)
    if found is None:
        return None
    return RemarkSaid(
        text=message.text,
        remark=ScoreRemark.SEVERAL_RALLIES,
        number=_number(found),
        ours=_is_ours(found) is not bool(found.groupdict().get("lost")),
    )


def _number(found: re.Match[str]) -> int | None:
    told = found.groupdict()
    return 2 if told.get("twice") else int(told["n"]) if told.get("n") else None


def _is_ours(found: re.Match[str]) -> bool:
    """Whether it is told of us: so is "lost 3 in a row", which names nobody."""
    told = found.groupdict()
    return told.get("bare") is not None or told.get("side") in _OURS


def scored_beside(message: Message) -> bool | None:
    """Whose points a score was reached by: "they took two straight, its 5-7"; None if not told."""
    one = _ONE_BESIDE.search(with_sides(message.text.lower()))
    found = _BESIDE_A_SCORE.search(_line(message.said)) or one
    return None if found is None else found["side"] == "we"


def after_lost_run(score: SaidScore, said: Sequence[Word]) -> SaidScore:
    """ "Lost 4 straight, 5-7": told ours first, and who won the last of them serves."""
    if (
        score.we_serve is not None
        or score.server is not None
        or not _LOST_BESIDE.search(_line(said))
    ):
        return score
    ours, theirs = score.ours, score.theirs
    if ours is None and theirs is None and score.call is not None:
        ours, theirs = score.call.serving, score.call.receiving
    return SaidScore(ours=ours, theirs=theirs, we_serve=False)


def _line(said: Sequence[Word]) -> str:
    numbers = ((number(word), word.folded) for word in said)
    return with_sides(" ".join(word if many is None else str(many) for many, word in numbers))
