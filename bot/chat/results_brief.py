"""Results in hardly a word: who won without a score, and a game told by its number and winner."""

from __future__ import annotations

import re
from typing import NamedTuple

from bot.chat.forms import any_of, word_set
from bot.chat.said import ResultSaid
from bot.chat.serve_told import OURS, THEIRS, forms_of_a_side, with_sides
from knowledge.game import GameFormat
from knowledge.regex import regex

LEAST_WON = 11
LEAST_LEAD = 2
"""Of a game told without the word that it is over, by the common formats."""

MOST_WORDS_AFTER = 6
"""After "we lost": more than such a sigh is a story, or asks something."""


_SAID_OF_A_RALLY = frozenset(["won", "win", "it", "this"])
"""Last words of such a result that are said of a rally as well."""


def match_won(line: str) -> bool | None:
    """Whether we won the match that a line says is over, told without any score.

    "They won", and then something else than a sigh, is as readily one rally: that closes nothing.
    """
    sided = with_sides(line)
    for key, won in (("result.we_won", True), ("result.we_lost", False)):
        if any_of(key).search(sided):
            return won
    ending = _ending(sided)
    return ending.won if ending is not None and ending.is_sure else None


def perhaps_won(line: str) -> bool | None:
    """The same for "they won so easily", where it may have been only a rally that they won."""
    sided = with_sides(line)
    if any_of("result.perhaps_lost").search(sided):
        return False
    ending = _ending(sided)
    return None if ending is None or ending.is_sure else ending.won


class _Ending(NamedTuple):
    won: bool
    is_sure: bool


def _ending(sided: str) -> _Ending | None:
    ours, theirs = _sided("result.won", OURS, sided), _sided("result.won", THEIRS, sided)
    found = ours or theirs
    if found is None or (ours and theirs):
        return None
    tail = found.string[found.end() :].split()
    if len(tail) > MOST_WORDS_AFTER:
        return None
    is_bare = found[0].rsplit(maxsplit=1)[-1] in _SAID_OF_A_RALLY
    sighs = word_set("after_result")
    return _Ending(won=ours is not None, is_sure=not is_bare or sighs.issuperset(tail))


def _sided(key: str, side: re.Pattern[str], line: str) -> re.Match[str] | None:
    return forms_of_a_side(key).match(side.sub("@", line))


def names_a_game(line: str) -> bool:
    """Whether a line tells of a game as one that is over: "g1 us 11-7", "second set gone"."""
    is_over = any_of("result.game").search(line) is not None
    return is_over and any_of("result.going_on").search(line) is None


def is_over(first: int, second: int) -> bool:
    return max(first, second) >= LEAST_WON and abs(first - second) >= LEAST_LEAD


def game_won(line: str) -> bool | None:
    """Whether such a game is said to be ours."""
    sided = with_sides(line)
    ours = forms_of_a_side("result.game_of").search(OURS.sub("@", sided)) is not None
    theirs = forms_of_a_side("result.game_of").search(THEIRS.sub("@", sided)) is not None
    if any_of("result.game_lost").search(sided):
        return False
    return None if ours is theirs else ours


_SCORE_THEN_WON = regex(
    r"\s*(\d{1,2})(?:\s*[-–:]\s*|\s+)(\d{1,2})\s*,?\s+(?:won|win)\W*", re.IGNORECASE
)


def score_then_won(text: str, format: GameFormat) -> ResultSaid | None:
    """ "15-11 won" where that ends a game: "won" is not the server's number said aloud."""
    found = _SCORE_THEN_WON.fullmatch(text)
    if found is None:
        return None
    low, high = sorted((int(found[1]), int(found[2])))
    if not format.is_won(high, low):
        return None
    return ResultSaid(text=text, games=((high, low),), won=True)
