"""A score told side by side, "us 6 them 4", and the lines that scores are looked for in."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.numbers import Group, number, points
from bot.chat.said import SaidScore
from bot.chat.score_serving import server_told, serving_side
from bot.chat.score_words import DENIED, EACH_SAID, SERVER_WORDS, THEY, WE
from bot.chat.serve_told import with_sides
from bot.chat.words import Word
from knowledge.game import ScoreCall

_OPENERS = frozenset(["we", "they", "weve", "theyve", "us", "them"])
_HOLDS = frozenset(["have", "has", "got", "are", "is", "at", "had"])
MOST_OF_A_CALL, MOST_NUMBERS = 3, 7
"""Numbers of a message in which a score is said once more, whose points are whose."""


def each_side(said: Sequence[Word], line: str) -> SaidScore | None:
    """Both sides' points, each told with its side; of several such the last."""
    return _each_said(said, line) or _each_at_last(said, line)


def score_line(said: Sequence[Word], group: Group | None) -> str:
    """The folded words with # for each number of the group, or for all numbers without one."""
    inside = range(group.start, group.stop) if group else range(0)
    return with_sides(
        " ".join(
            "#" if place in inside or (group is None and number(word) is not None) else word.folded
            for place, word in enumerate(said)
        )
    )


def call_for(ours: int, theirs: int, server: int | None, we_serve: bool | None) -> ScoreCall | None:
    """The call of whoever serves; None where that is not known."""
    if we_serve is None:
        return None
    serving, receiving = (ours, theirs) if we_serve else (theirs, ours)
    return ScoreCall(serving=serving, receiving=receiving, server=server)


def _each_said(said: Sequence[Word], line: str) -> SaidScore | None:
    """`us 6 them 4`, `they have 9 we have 7`."""
    kept = _nothing_as_zero(
        [word for place, word in enumerate(said) if not _is_beside(place, said)]
    )
    found = EACH_SAID.search(_with_sides(score_line(kept, None)))
    numbers = [value for at in range(len(kept)) if (value := points(kept, at)) is not None]
    if found is None or len(numbers) != 2:
        return None
    is_ours_first = "W" in found.groups()
    ours, theirs = numbers if is_ours_first else numbers[::-1]
    we_serve, server = serving_side(line), server_told(said, line)
    call = call_for(ours, theirs, server, we_serve)
    return SaidScore(call=call, ours=ours, theirs=theirs, server=server, we_serve=we_serve)


def _each_at_last(said: Sequence[Word], line: str) -> SaidScore | None:
    """`three four no five, we have five and they have three`: the last word counts."""
    told = [at for at, word in enumerate(said) if number(word) is not None]
    if not MOST_OF_A_CALL <= len(told) <= MOST_NUMBERS:
        return None
    for at in reversed(range(1, told[-2])):
        if said[at].folded in _OPENERS and said[at + 1].folded in _HOLDS:
            each = _each_said(said[at:], line)
            if each is not None:
                return each
    return None


def _nothing_as_zero(said: Sequence[Word]) -> list[Word]:
    """`we've got nothing`: no points."""
    had = frozenset(["got", "have", "has"])
    return [
        replace(word, folded="zero")
        if word.folded == "nothing" and place and said[place - 1].folded in had
        else word
        for place, word in enumerate(said)
    ]


def _is_beside(place: int, said: Sequence[Word]) -> bool:
    """Whether a number is a server's, or the one that is not it: "6 not 5", "we dont have 7"."""
    if number(said[place]) is None:
        return False
    before = " ".join(word.folded for word in said[max(0, place - 3) : place])
    ahead = "#" if place + 1 < len(said) and number(said[place + 1]) is not None else ""
    return DENIED.search(f"{before} # {ahead}".rstrip()) is not None or (
        place > 0 and said[place - 1].folded in SERVER_WORDS
    )


def _with_sides(line: str) -> str:
    return re.sub(rf"\b{WE}\b", "W", re.sub(rf"\b{THEY}\b", "T", line))
