"""Finished games as a message lists them: "11-8 9-11 11-6", each with the place of its words."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from bot.chat.numbers import Group, groups
from bot.chat.results_brief import is_over
from bot.chat.slip_words import SLIP
from bot.chat.words import Word, folded_line
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat
from knowledge.regex import regex

Game = tuple[int, int]

_NO_GAME_AFTER = frozenset(["of", "at", "court", "ct", "from", "not", "was"])


@dataclass(frozen=True, slots=True, kw_only=True)
class GameTold:
    """One game as told: its points in order, and the places of its words."""

    game: Game
    start: int
    stop: int


def games_told(said: Sequence[Word]) -> tuple[GameTold, ...]:
    """The games in the order they are told; what is only put right is left out."""
    found = [one for one in groups(said) if not _is_no_game(one, said)]
    if len(found) == 1 and len(found[0].numbers) > 3 and not len(found[0].numbers) % 2:
        numbers, span = found[0].numbers, found[0]
        return tuple(
            GameTold(game=pair, start=span.start, stop=span.stop)
            for pair in zip(numbers[::2], numbers[1::2], strict=True)
        )
    told = [
        GameTold(game=(one.numbers[0], one.numbers[1]), start=one.start, stop=one.stop)
        for one in found
        if len(one.numbers) == 2
    ]
    told = told[_told_anew_from(told, said) :]
    return tuple(
        one
        for at, one in enumerate(told)
        if at + 1 == len(told) or not _is_put_right(said[one.stop : told[at + 1].start])
    )


_WHOLE = regex(
    r"\b(?:the|our|that|this) (?:whole |entire )?match\b(?! (?:point|ball|is not|isnt))"
    r"|\bmatch (?:over|done|finished|closed)\b|\bthe only game\b|\ball we play(?:ed)?\b"
    r"|\b(?:it|is|its|was|only|just|a) (?:one|1|single|a single) game\b"
    r"(?! (?:all|each|apiece|up|down|left|more|away|in|so|to 0|to (?:zero|love|nil)))"
)


def is_whole(line: str) -> bool:
    """Whether a game is told as all of the match: "lost the match 5-11", "it was one game"."""
    return _WHOLE.search(line) is not None


def _told_anew_from(told: Sequence[GameTold], said: Sequence[Word]) -> int:
    """Where all games are told anew: `11-7 15-13, no 11-7 and 11-9` begins with the first again."""
    for at in reversed(range(1, len(told))):
        between = said[told[at - 1].stop : told[at].start]
        if told[at].game == told[0].game and _is_put_right(between):
            return at
    return 0


_SAID_BEFORE_IT_IS_SEEN = regex(r"(?:\w+ ){1,5}(?:i mean|i meant|no wait|wait no|make that)")


def _is_put_right(between: Sequence[Word]) -> bool:
    """`15-14 wait no 16-14`, `11-9 in the tie break i mean 11-8`: the first was a slip.

    Behind other words only what nobody says between two games counts: "11-9 tight one, sorry 11-6"
    may be two.
    """
    line = folded_line(between)
    is_slip = re.fullmatch(rf"{SLIP}+", line + " ") or _SAID_BEFORE_IT_IS_SEEN.fullmatch(line)
    return bool(between) and is_slip is not None


def _is_no_game(group: Group, said: Sequence[Word]) -> bool:
    """A clock, `best of three to eleven`, `at one twenty`, or a score at some moment ("at 9-8")."""
    before = said[group.start - 1].folded if group.start else ""
    if before == "was" and is_over(*sorted(group.numbers[:2])):
        return False  # "it was eleven nine and then eleven six"
    return ":" in said[group.start + 1].gap or before in _NO_GAME_AFTER


def is_one_game(told: Sequence[GameTold], format: GameFormat) -> bool:
    """ "8-2 then 8-6, lost 4 in a row": one game as it went, for none of them ends a game and the
    points only ever rise.
    """
    games = [one.game for one in told]
    if len(games) < 2 or any(format.is_won(max(one), min(one)) for one in games):
        return False
    return all(before[at] <= now[at] for before, now in pairwise(games) for at in (0, 1))
