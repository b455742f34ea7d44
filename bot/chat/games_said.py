"""The score in games: "one game all", "we won the first", "up a game and 5-3 in the second"."""

from __future__ import annotations

import re

from bot.chat.spoken_line import SpokenLine, count
from knowledge.dataclass import dataclass
from knowledge.regex import regex

_WON = r"(?:won|win|winning|took|take|taken|taking|grabbed|stole|got)"
_LOST = r"(?:lost|lose|losing|dropped|dropping|blew|threw)"
_ORDINAL = {"first": 1, "1st": 1, "opener": 1, "second": 2, "2nd": 2, "third": 3, "3rd": 3,
            "fourth": 4, "4th": 4, "fifth": 5, "5th": 5}  # fmt: skip
_NTH = (
    r"(?:(?:the )?(?P<nth>first|1st|opener|second|2nd|third|3rd|fourth|4th)(?: game| set| one)?"
    r"|(?:game|set) (?P<numbered>one|two|three|four|1|2|3|4)|g(?P<short>[1-4]))\b"
    r"(?! (?:point|points|rally|rallies|serve|server|time|timeout|break|shot|ball|two|three|few"
    r"|\w+ (?:points|rallies|serves)|dink|drop|drive|volley|return|lob|place|step|bounce))"
)
_GAME_WON = regex(
    rf"\b(?P<they>they |opponents )?(?:have |ve |just |already )*"
    rf"(?:(?P<won>{_WON})|(?P<lost>{_LOST})) {_NTH}"
)
_ALL = regex(
    r"\b(?:one|1|a) (?:game|set) (?:all|each|apiece)\b|\b(?:one|1) (?:all|each|1) in games\b"
    r"|\bwon (?:one|1)(?: game)? (?:and |we )*lost (?:one|1)\b"
    r"|\blost (?:one|1)(?: game)? (?:and |we )*won (?:one|1)\b"
    r"|\b(?:won|have) (?:one|a) (?:game )?each\b|\bsplit (?:the )?(?:first )?(?:two|games)\b"
    r"|\bsplit (?:(?:so|and|now|it|its|is|are|at|thats|that|makes) )*(?:one|1) (?:all|each|one|1)\b"
    r"|\b(?:we|they) (?:just |have |ve )*split(?=$| ,|(?: \w+){0,3} \d)"
    r"|\b(?:we|they) won (?:one|1) (?:and )?(?:we|they) won (?:one|1)\b(?! (?:rally|point|more))"
    r"|\b(?:tied|level|even|square) (?:at )?(?:one|a|1) games?(?: (?:each|all|apiece))?\b"
    r"|\beach won (?:one|a|1)(?: game)?\b(?! (?:rally|point))"
)
_TWO_ALL = regex(r"\b(?:two|2) games? (?:all|each|apiece)\b|\b2 2 in games\b")
_COUNT = r"(?:one|two|1|2|0|zero|love|nil|none|nothing)"
_TALLY = regex(
    rf"\b(?P<side>up|down|ahead|behind|leading|trailing|lead|trail|winning|losing) (?:by )?"
    rf"(?P<a>one|two|a|1|2) (?:games?|sets?)(?: to (?P<b>{_COUNT}))?\b"
    rf"|\b(?P<c>one|two|a|1|2) (?:games?|sets?)(?: to (?P<d>{_COUNT}))? "
    r"(?P<after>up|down|ahead|behind)\b"
    rf"|\b(?P<e>one|two|1|2) (?:games?|sets?) to (?P<f>{_COUNT})\b"
    r"|\b(?P<g>[0-2]) (?P<h>[0-2]) (?P<late>up |down )?in (?:games|sets)\b"
    r"|\b(?:games|sets) (?P<i>[0-2]) (?P<j>[0-2])\b"
)
_DOWN = frozenset(["down", "behind", "trailing", "trail", "losing"])
_NOW = regex(
    r"\b(?:in|into|start|starting|started|begin|beginning) (?:the )?"
    r"(?P<nth>second|2nd|third|3rd|fourth|4th|fifth|5th)\b(?: game| set)?"
    r"(?! (?:shot|ball|drop|drive|server?|serving|time|row|point|rally))"
    r"|\b(?:the )?(?P<named>second|2nd|third|3rd|fourth|4th|fifth|5th) (?:game|set)\b"
    r"|\b(?:in )?(?:game|set) (?P<numbered>two|three|four|five|2|3|4|5)\b"
    r"|\b(?:in )?g(?P<short>[2-5])\b"
    r"|\b(?:the )?(?P<last>decider|deciding game)\b"
)


_TELLING = regex(
    r"\b(?:games?|sets?|g[1-5]|first|1st|second|2nd|third|3rd|fourth|4th|fifth|5th|opener|decider"
    r"|split|each|won one|lost one|won 1|lost 1)\b"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundGames:
    """Games won, ours first; None where only the number of this game is known. And the words."""

    games: tuple[int, int] | None
    places: frozenset[int]


def find_games(line: SpokenLine) -> FoundGames | None:
    """What the line says of the games so far; `places` hold no number of the current game."""
    if not _TELLING.search(line.text):
        return None
    tally, all_ = _TALLY.search(line.text), _ALL.search(line.text) or _TWO_ALL.search(line.text)
    single = list(_GAME_WON.finditer(line.text))
    now = [one for one in _NOW.finditer(line.text) if not _inside(one, single)]
    if not (tally or all_ or single or now):
        return None
    return FoundGames(
        games=_games(tally, all_, single, now), places=line.covered(tally, all_, *single, *now)
    )


def _inside(one: re.Match[str], others: list[re.Match[str]]) -> bool:
    return any(other.start() < one.end() and one.start() < other.end() for other in others)


def _games(
    tally: re.Match[str] | None,
    all_: re.Match[str] | None,
    single: list[re.Match[str]],
    now: list[re.Match[str]],
) -> tuple[int, int] | None:
    if all_ is not None:
        return (2, 2) if all_.re.pattern == _TWO_ALL.pattern else (1, 1)
    if tally is not None:
        return _tallied(tally)
    won = {_number(one): (one["won"] is not None) is not bool(one["they"]) for one in single}
    ours, theirs = sum(won.values()), len(won) - sum(won.values())
    current = max((_number(one) for one in now), default=len(won) + 1)
    if current in (3, 5) and ours + theirs < current - 1:
        # A third or fifth game is only played when the games before it are shared.
        return (current // 2, current // 2)
    return (ours, theirs) if won else None


def _tallied(found: re.Match[str]) -> tuple[int, int]:
    numbers = [found[name] for name in "abcdefghij" if found[name] is not None]
    first, second = count(numbers[0]), count(numbers[1]) if len(numbers) > 1 else 0
    side = found["side"] or found["after"] or (found["late"] or "").strip()
    if not side:
        return first, second
    low, high = sorted((first, second))
    return (low, high) if side in _DOWN else (high, low)


def _number(found: re.Match[str]) -> int:
    named = found.groupdict()
    if named.get("last"):
        return 3
    nth = named.get("nth") or named.get("named")
    return _ORDINAL[nth] if nth else count(named["numbered"] or named["short"] or "1")
