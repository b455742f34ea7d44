"""Whose a rally was by how it is told, and whose serve it is after a side-out."""

from __future__ import annotations

from bot.chat.forms import any_of, word_set
from bot.chat.serve_told import OURS, THEIRS, forms_of_a_side
from knowledge.regex import regex

_NAMED_ALONE = frozenset(["we", "they", "me", "i", "he", "she", "him", "her", "his", "hers"])
"""A name alone, which only names somebody: whose rally it was is "ours" or "us". "And his" asks on
about his shoulder, as two play every rally.
"""

_BESIDE_A_NAME = word_set("beside_a_name")
"""Words beside a name that say nothing of a rally: "and lindqvist", "ok tom then"."""

_GOES_ON = frozenset(["and", "or", "but", "so"])
_SIDES = frozenset(["us", "them"])
"""Behind "and" a side alone goes on from what was asked: "and them"; a rally is "and theirs"."""


ASKS_ON = regex(r"(?:(?:and|but|or|what about|how about) )+(?:theirs|ours|his|hers|mine)")
"""`and theirs`: behind a question it goes on from it; behind a rally it tells the next."""

_TARGET = regex(
    r"(?:\b(?:at|past|over|behind|against)|(?<=serve )to|(?<=served )to|(?<=return )to"
    r"|(?<=returned )to) (?:we|they|us|them|me|him|her)\b"
)
"""Whom a ball went at: what follows is not theirs ("speed up at Okafor, winner")."""


_OPENED = regex(
    r"(?:(?:ok|so|and|ugh|nice|yes|no|damn|argh) )*(?:we )?(?:just )?"
    r"(?:(?P<how>lost|loss|l|won|win|w)"
    r"(?: (?:it|that|that one|this one|the rally|the point|that rally|that point))?(?: again| too)?"
    r"(?: (?:ugh|argh|damn|dammit|man|shit|nice))*"
    r"|dropped that (?:one|rally|point)(?: again| too)?)"
)
"""`lost, mira netted it`: said in so many words, before what happened in it."""


_WHO_ERRED = regex(
    r"\b(?P<noun>one|more|another|point|pt|rally) (?:we|they|i|he|she) "
    r"(?:(?!(?:we|us|they|them|i|he|she|won|win|wins|got|get|gets|take|takes|took|had)\b)\w+ ){0,3}"
    r"(?:netted|nets|missed|misses|dumped|whiffed|shanked|framed|popped|sailed|faulted|mishit|fault"
    r"|error|long(?! (?:rally|point|one|dink))|wide|out(?! of)|(?:into|in) the (?:net|tape))\b"
)
"""`another one okafor long again`: who is named there does what ends it, and it is not theirs."""


def won_by_us(clauses: tuple[str, ...]) -> bool | None:
    """Who won the rally that the clauses tell; None where they do not say, or say both.

    Whose it is said to be counts before what happened: "ruiz missed, so it's ours", and so does
    a "lost" or "won" that opens it, whoever is told to have missed.
    """
    opened = _OPENED.fullmatch(clauses[0]) if len(clauses) > 1 else None
    if opened is not None and not any(_owned(clause) is not None for clause in clauses[1:]):
        return opened["how"] in ("won", "win", "w")
    whole = " ".join(clauses)
    for read, lines in (
        (_owned, clauses),
        (_ball_after, (whole,)),
        (_acted, clauses),
        (_acted, (whole,)),
        (_unowned, clauses),
    ):
        told = {won for line in lines if (won := read(line)) is not None}
        if told:
            return told.pop() if len(told) == 1 else None
    return None


def is_owned(clauses: tuple[str, ...]) -> bool:
    """Whether one of the clauses says in so many words whose rally it was."""
    is_ball_told = _ball_after(" ".join(clauses)) is not None
    return is_ball_told or any(_owned(clause) is not None for clause in clauses)


def is_unowned(clauses: tuple[str, ...]) -> bool:
    """Whether one of the clauses only says that it was won or lost: "lost it"."""
    return any(_unowned(clause) is not None for clause in clauses)


def is_side_out(line: str) -> bool:
    return any_of("side_out.told").search(line) is not None


def serving_after(line: str) -> bool | None:
    """Whether we serve after the side-out that a line tells; None where it does not say."""
    named = _one_side("side_out.surely_to", line)
    if named is not None:
        return named
    against = _one_side("side_out.against", line)
    if against is not None:
        return not against
    to = _one_side("side_out.to", line)
    if to is None and any_of("side_out.unowned").search(line):
        return any_of("side_out.won_back").search(line) is not None
    return to


def _owned(clause: str) -> bool | None:
    if _only_names(clause):
        return None
    return _one_side("rally.owned", _WHO_ERRED.sub(r"\g<noun>", clause))


def _only_names(clause: str) -> bool:
    """Whether nothing is said but who: that asks about them, and tells of no rally."""
    said = clause.split()
    rest = {word for word in said if word not in _BESIDE_A_NAME}
    return bool(rest) and rest <= (_NAMED_ALONE | _SIDES if said[0] in _GOES_ON else _NAMED_ALONE)


def _ball_after(line: str) -> bool | None:
    """ "That was out, our ball": who has the ball after a rally that ended so has won it."""
    return _one_side("rally.ball_after", line)


def _acted(clause: str) -> bool | None:
    """By what somebody did; a winner hit off an error is the winner's."""
    clause = _TARGET.sub(" ", clause)
    gain, loss = _one_side("rally.gain", clause), _one_side("rally.loss", clause)
    if gain is not None:
        return gain
    return None if loss is None else not loss


def _unowned(clause: str) -> bool | None:
    gain = any_of("rally.unowned_gain").search(clause)
    loss = any_of("rally.unowned_loss").search(clause)
    return None if bool(gain) is bool(loss) else gain is not None


def _one_side(key: str, clause: str) -> bool | None:
    """Whether the forms are told of us, and not of them; None for neither or both."""
    forms = forms_of_a_side(key)
    ours = forms.search(OURS.sub("@", clause)) is not None
    theirs = forms.search(THEIRS.sub("@", clause)) is not None
    return None if ours is theirs else ours
