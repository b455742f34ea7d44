"""Whose each of several games told at once was: by the side beside its points, or as shared."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.games_said import find_games
from bot.chat.results_games import GameTold
from bot.chat.serve_told import with_sides
from bot.chat.spoken_line import line_of
from bot.chat.words import Word, folded_line
from knowledge.regex import regex

_OURS = frozenset(["we", "us", "ours", "our"])
_SIDE = r"(?:for |to |by |was |is |went |goes |it )*(?P<side>we|us|ours?|they|them|theirs?)"
_AFTER = regex(rf"^{_SIDE}\b(?! (?:won|win|took|take|got|lost|lose|dropped|beat|had|have))")
_BEFORE = regex(rf"\b{_SIDE}(?: (?:was|is|by|had|have|at|with|first|second|third|game|set|one))*$")
_LEVEL = (1, 1)


def whose_each(
    said: Sequence[Word], told: Sequence[GameTold], by_words: Sequence[bool | None]
) -> list[bool | None]:
    """The side right behind each game's points, else `by_words`, else the side right before them.

    One place for all of them: in "us 11-9 them 11-6" the side stands before, for the last as well.
    Of two games told as shared one follows from the other.
    """
    if len(told) == 1 or None not in by_words:
        return list(by_words)
    after, before = _after_each(said, told), _before_each(said, told)
    is_behind = after[0] is not None and before[0] is None
    found = after if is_behind else _first_known(by_words, before)
    if len(found) == sum(_LEVEL) and found.count(None) == 1 and are_shared(said):
        return [not found[1 - at] if one is None else one for at, one in enumerate(found)]
    return _first_known(found, by_words)


def _first_known(first: Sequence[bool | None], second: Sequence[bool | None]) -> list[bool | None]:
    return [b if a is None else a for a, b in zip(first, second, strict=True)]


def _after_each(said: Sequence[Word], told: Sequence[GameTold]) -> list[bool | None]:
    stops = [*(one.start for one in told[1:]), len(said)]
    between = [said[one.stop : stop] for one, stop in zip(told, stops, strict=True)]
    return [_side(_AFTER.search(_line(part))) for part in between]


def _before_each(said: Sequence[Word], told: Sequence[GameTold]) -> list[bool | None]:
    starts = [0, *(one.stop for one in told[:-1])]
    between = [said[start : one.start] for start, one in zip(starts, told, strict=True)]
    return [_side(_BEFORE.search(_line(part))) for part in between]


def is_told_otherwise(said: Sequence[Word], games: Sequence[tuple[int, int]]) -> bool:
    """Whether two games are told as one each, though by their points one side won both."""
    if len(games) != sum(_LEVEL) or (games[0][0] > games[0][1]) is not (games[1][0] > games[1][1]):
        return False
    return are_shared(said)


def are_shared(said: Sequence[Word]) -> bool:
    """Whether the words tell the games as one each: "we split", "one game all"."""
    found = find_games(line_of(said))
    return found is not None and found.games == _LEVEL


def _line(said: Sequence[Word]) -> str:
    return with_sides(folded_line(said))


def _side(found: re.Match[str] | None) -> bool | None:
    return None if found is None else found["side"] in _OURS
