"""A running score put right in words: "no they have 5", "make it 5", "other way round"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.message import Message
from bot.chat.numbers import groups, number
from bot.chat.said import RemarkSaid, SaidScore, ScoreRemark, ScoreSaid, Understood
from bot.chat.scores import said_score, stray_words
from bot.chat.slip_words import SLIP
from bot.chat.turned_round import turned_round
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex

_ONE_SIDE = regex(
    rf"{SLIP}*(?P<side>we|they|us|them|weve|theyve|were|theyre)"
    r" (?:(?:only|have|has|got|are|is|had|at|on|the) )*#(?: points?)?(?: now)?"
)
_OWNED = regex(
    rf"{SLIP}*(?:(?P<before>ours|theirs)(?: is| are| on| at)? #"
    r"|# (?:for )?(?P<after>us|ours|them|theirs))"
    r"(?: now)?"
)
"""`ours is 6`, `10 them`: one side's points; with one or two it is a rally ("1 us")."""

FEWEST_OWNED = 3

_ONE_NUMBER = regex(
    rf"{SLIP}*(?:make (?:it|that)|its|it is|it should be|should be|that should be|i meant?) #"
    r"(?: points?)?"
)
_LEADS_UP = regex(
    rf"{SLIP}+(?:(?:its|it is|it was|it should be|should be|that should be|it should have been"
    r"|make it|make that|the score is|score is|i said|we are|were) )?"
    r"|(?:please )?(?:set|change|put|correct|update) (?:(?:it|that|the score|score) )?(?:to|at"
    r"|back to) "
    r"|(?:it should be|that should read|should read|should be|that should be|it should have been"
    r"|make it|make that"
    r"|correct(?:ed)?(?: score)?(?: is| to)?|fix(?: the)?(?: score)?(?: to)?) "
)
_IT_WAS = regex(
    r"(?:(?:actually|really|so|ok|the score) )*"
    r"(?:(?:it|that|the score|score) (?:was|is|should be)|its|thats|we were|were|we are)? ?"
)
"""Before a score told instead of another."""

_NOT_THAT = regex(r"\b(?:(?:and|but) )?(?:not|(?:instead|rather) (?:of|than)) ")


def score_fixed(message: Message, chat: ChatView) -> Understood | None:
    """What the message says the running score should be, if that is all it says."""
    if not chat.match_on or "?" in message.text:
        return None
    said = message.told.of_score
    line = " ".join("#" if _is_points(word) else word.folded for word in said)
    turned = turned_round(line)
    if turned is not None:
        won = None if turned.says_they and chat.own_pairs else turned.won
        return RemarkSaid(text=message.text, remark=ScoreRemark.TURNED_ROUND, ours=won)
    side = _ONE_SIDE.fullmatch(line)
    if side is not None:
        is_ours = side["side"] in ("we", "us", "weve", "were")
        points = _number(said)
        score = SaidScore(ours=points if is_ours else None, theirs=None if is_ours else points)
        return ScoreSaid(text=message.text, score=score)
    owned, points = _OWNED.fullmatch(line), _number(said)
    if owned is not None and points is not None and points >= FEWEST_OWNED:
        is_ours = (owned["before"] or owned["after"]) in ("ours", "us")
        score = SaidScore(ours=points if is_ours else None, theirs=None if is_ours else points)
        return ScoreSaid(text=message.text, score=score)
    if _ONE_NUMBER.fullmatch(line):
        return RemarkSaid(text=message.text, remark=ScoreRemark.ONE_NUMBER, number=_number(said))
    return _whole_score(message, said)


def _whole_score(message: Message, said: Sequence[Word]) -> ScoreSaid | None:
    """ "Wait it should be 4-4-1": what follows the leading words is a score and nothing else."""
    line = " ".join(word.folded for word in said) + " "
    denied = _denied(said)
    leading = _LEADS_UP.match(line) or (denied and _IT_WAS.match(line))
    if not leading:
        return None
    opens = len(leading[0].split())
    rest = [word for at, word in enumerate(said) if at >= opens and at not in denied]
    found = said_score(rest)
    if found is None or stray_words(rest):
        return None
    return ScoreSaid(text=message.text, score=found[0])


def _denied(said: Sequence[Word]) -> frozenset[int]:
    """Where the score stands that it was not: "4-0 not 2-1", "5-2 instead of 4-2"."""
    line = "".join(f"{word.folded} " for word in said)
    behind = {line.count(" ", 0, one.end()): one for one in _NOT_THAT.finditer(line)}
    return frozenset(
        at
        for group in groups(said)
        if (one := behind.get(group.start)) is not None
        for at in range(line.count(" ", 0, one.start()), group.stop)
    )


def _is_points(word: Word) -> bool:
    """A number of points; "we got one" tells of a rally."""
    return number(word) is not None and word.folded != "one"


def _number(said: Sequence[Word]) -> int | None:
    return next((value for word in said if (value := number(word)) is not None), None)
