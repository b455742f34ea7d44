"""What a message says of the format, over what already stands: "singles to 11", "to 15 cap 17"."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import fields, replace
from typing import Any

from bot.chat.caps_worn import is_worn
from bot.chat.freeze_said import freeze_said
from bot.chat.numbers import number_of
from bot.chat.spoken_line import SpokenLine
from bot.chat.words import Word
from knowledge.dataclass import dataclass
from knowledge.game import Discipline, FormatError, GameFormat, Scoring
from knowledge.regex import regex

TARGETS = frozenset([7, 9, 11, 15, 21, 25])
"""What games are usually played to; another number needs "game to" or "first to" before it."""

LARGEST_TARGET = 50
"""Games longer than anybody plays would keep an answer waiting for seconds."""

_TARGET = regex(
    r"\b(?:to|too|till|until) (\w+)(?!-)(?: (teen|one))?\b|\b(?:1x|^rally )(?P<x>11|15|21)\b"
    r"|^(?P<r>11|15|21) rally$"
    r"|(?<!-)\b(?P<points>11|15|21)s?\b(?= (?:win|wb|points?|game))|(?<=\d) of (?P<of>11|15|21)\b"
    r"(?! (?:my |our |his |her )?(?:drops|dinks|serves|returns|thirds|3rds|drives|lobs|balls|in)\b)"
)
_GAME_TO = regex(
    r"\b(?:games? (?:up )?to|playing to|play to|played to"
    r"|first to(?! (?:0|zero|oh|o) (?:0|zero|oh|o)\b)|first side to|rally to|(?:one"
    r"|single|1) set to"
    r"|rally scoring to|singles to|single to|doubles to|scoring to) (?P<minus>minus )?(?P<n>\w+)\b"
    r"|(?:^|^ok |^so |\d-\d+ )to (?P<zero>0|zero)\b"
)
_PLACE = regex(r" (?:of|side|player|person|corner|spot)\b")
_GAMES_SCORE = regex(
    r"\b(?:up|down|lead\w*|trail\w*|behind|ahead|won|lost)(?: by)? (?:one|two|1|2|a) $"
    r"|\b(?:two|2) $"
)
"""Before "game to": the score in games, "up one game to love", "two games to one"."""

_BEST_OF = regex(
    r"\b(?:best )?(?:2|two) (?:out )?(?:of|outta|o) (?:3|three)\b|\bbest (?:of )?(\w+)|\bbo ?(\d)\b"
    r"|\b(?:best (?:of )?|format |fmt )2[- ]3\b|\b1 ?g\b|\b1x(?=(?:11|15|21)\b)|\bone (?:and"
    r"|n) done\b"
    r"|(?<!up )(?<!down )(?<!won )(?<!lost )(?<!dropped )\b(?:(?:one|single|1) game|(?:one"
    r"|single) set)\b"
    r"(?! (?:all|each|apiece|up|down|ahead|behind|to (?:0|1|one|love|nil|zero|none|nothing)\b))"
)
_OF_THREE = regex(r" of | outta | o |2[- ]3")
_RALLY = regex(
    r"\brall?y (?:scor{1,2}in\w*|score|scr|points?)\b|\brally to (?:\d+|eleven|fifteen|twenty)\b"
    r"|^rally (?:11|15|21)\b|^(?:11|15|21) rally$"
    r"|\brallyscoring\b|\brly (?:scr|scoring|score|to \d+)\b|\bto (?:\w+) rally\b"
    r"|\bevery rally(?: \w+)? (?:a )?(?:points?"
    r"|scores|counts)\b|\bfreeze (?:scoring|format)\b"
)
_SIDE_OUT = regex(r"\bside ?out scor\w+|\btraditional\b|\bold scoring\b")
_SINGLES = regex(r"\b(?:singles|skinny singles)\b|\bsingle to (?:\d+|eleven|fifteen|twenty)\b")
_DOUBLES = regex(r"\bdoubles\b")
_WIN_BY = regex(
    r"(?<!\bto )(?<!\bwe )(?<!\bthey )(?<!\bcan )\bwin by (\d+|one|two)\b|\bwb ?(?P<short>[12])\b"
)
_CAP = regex(r"\b(?:hard )?cap(?:ped)?(?: (?:at|of|is))? (\d+)\b")
_TIMEOUTS_EACH = regex(
    r"\b(?P<n>no|zero|one|two|three|[0-9]) (?:time ?outs?|t ?o ?s?)"
    r" (?:each|apiece|(?:per|a|every) (?:game|side|team|pair|set)|each (?:side|team|pair))\b"
)
_NUMBERED = frozenset(["of", "court", "ct", "crt", "cort", "server", "game", "round", "pool"])
_TO_NUMBER = regex(r"\bto (?:minus )?(\w+)\b")
_BEST_OF_NUMBER = regex(r"\b(?:best (?:of )?|format |fmt )\d \d\b|\bbest (?:of )?\w+\b|\bbo ?\d\b")
_TARGETS_EACH = regex(r"\b(?:11|15|21)s\b(?= (?:win|wb))")
_REACHING = frozenset(["get", "gets", "got", "getting", "reach", "back", "goes", "went"])
_ONE_TO = regex(
    r"(?<!\d )(?P<just>\b(?:just|jus|only) )?\b(?:one|1) to (?P<target>11|15|21|eleven|fifteen)\b"
    r"(?!-| \d)"
)
_AGAINST = regex(r"\b(?:against|vs|versus|v|opener|semi\w*|round robin)\b")
_CODE = regex(r"(s?r?)([1-9][0-9]?)")


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidFormat:
    """The parts of a format that were said; None is not said."""

    target: int | None = None
    win_by: int | None = None
    cap: int | None = None
    scoring: Scoring | None = None
    discipline: Discipline | None = None
    best_of: int | None = None
    timeouts_each: int | None = None
    freeze_on_serve: bool | None = None

    def over(self, standing: GameFormat) -> GameFormat:
        """The standing format with what was said; FormatError where that cannot be played.

        A new target leaves the standing cap behind, and side-out scoring the frozen game point.
        """
        if self.target is not None and self.target > LARGEST_TARGET:
            raise FormatError(f"I count games up to {LARGEST_TARGET}, not to {self.target}")
        said = self.to_json()
        if self.target is not None and self.target != standing.target:
            said.setdefault("cap", None)
        if self.scoring is Scoring.SIDE_OUT:
            said.setdefault("freeze_on_serve", False)
        return replace(standing, **said)

    def over_said(self, before: SaidFormat) -> SaidFormat:
        """The parts said before with these; as in `over`, a new target leaves the cap behind."""
        kept = before.to_json()
        if self.target is not None:
            kept.pop("cap", None)
        if self.scoring is Scoring.SIDE_OUT:
            kept.pop("freeze_on_serve", None)
        return SaidFormat.from_json({**kept, **self.to_json()})

    @property
    def fault(self) -> str | None:
        """Why no game can be played so, for a user; None if one can."""
        try:
            self.over(GameFormat())
        except FormatError as error:
            return str(error)
        return None

    @property
    def playable(self) -> GameFormat:
        """The common format with what was said; what makes it unplayable is left out."""
        try:
            return self.over(GameFormat())
        except FormatError:
            win_by = self.win_by if self.win_by in (1, 2) else None
            kept = replace(self, cap=None, win_by=win_by, freeze_on_serve=None)
            if kept.target is not None and not 1 <= kept.target <= LARGEST_TARGET:
                kept = replace(kept, target=None)
            return kept.over(GameFormat())

    def to_json(self) -> dict[str, Any]:
        """The parts said, by name."""
        parts = ((field.name, getattr(self, field.name)) for field in fields(SaidFormat))
        return {name: value for name, value in parts if value is not None}

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> SaidFormat:
        scoring, discipline = stored.get("scoring"), stored.get("discipline")
        return cls(
            target=stored.get("target"),
            win_by=stored.get("win_by"),
            cap=stored.get("cap"),
            scoring=None if scoring is None else Scoring(scoring),
            discipline=None if discipline is None else Discipline(discipline),
            best_of=stored.get("best_of"),
            timeouts_each=stored.get("timeouts_each"),
            freeze_on_serve=stored.get("freeze_on_serve"),
        )

    @classmethod
    def from_code(cls, code: str) -> SaidFormat:
        """The format of a button: "15", "s11" (singles), "r21" (rally); ValueError for others."""
        found = _CODE.fullmatch(code)
        if found is None:
            raise ValueError(f"no format: {code}")
        return cls(
            target=int(found[2]),
            scoring=Scoring.RALLY if "r" in found[1] else None,
            discipline=Discipline.SINGLES if "s" in found[1] else None,
        )


def format_parts(said: Sequence[Word]) -> SaidFormat | None:
    """The parts said; None if nothing of the format is."""
    line = _line(said)
    win_by, cap = _WIN_BY.search(line), _CAP.search(line)
    found = SaidFormat(
        target=_target(line),
        win_by=number_of(win_by[1] or win_by["short"]) if win_by else None,
        cap=int(cap[1]) if cap and not is_worn(said) else None,
        scoring=_scoring(line),
        discipline=_discipline(line),
        best_of=_best_of(line),
        timeouts_each=_timeouts_each(line),
        freeze_on_serve=freeze_said(line),
    )
    return None if found == SaidFormat() else found


def target_places(line: SpokenLine, said: SaidFormat) -> frozenset[int]:
    """The places of "to 11", where that is what games are played to, and of "cap 17"."""
    found = [
        one
        for one in _TO_NUMBER.finditer(line.text)
        if said.target is not None and number_of(one[1]) == abs(said.target)
    ]
    caps = () if said.cap is None else (_CAP,)
    others = (*caps, _BEST_OF_NUMBER, _TARGETS_EACH, _TIMEOUTS_EACH)
    return line.covered(*found, *(form.search(line.text) for form in others))


def _line(said: Sequence[Word]) -> str:
    """The folded words; a score typed tight stays one word, and "-5" is "minus 5"."""
    line = ""
    for word in said:
        is_number = word.folded.isdigit()
        if is_number and word.gap.endswith(" -"):
            line += " minus"
        line += f"-{word.folded}" if is_number and word.gap == "-" else f" {word.folded}"
    return line.strip()


def _scoring(line: str) -> Scoring | None:
    if _RALLY.search(line):
        return Scoring.RALLY
    return Scoring.SIDE_OUT if _SIDE_OUT.search(line) else None


def _discipline(line: str) -> Discipline | None:
    if _SINGLES.search(line):
        return Discipline.SINGLES
    return Discipline.DOUBLES if _DOUBLES.search(line) else None


def _target(line: str) -> int | None:
    """Any number after "game to"; after a bare "to" only one that games are played to."""
    if (single := _one_game_to(line)) is not None:
        return single
    for found in _GAME_TO.finditer(line):
        value = number_of(found["n"] or found["zero"])
        if value is None or _tells_games(line, found) or _tells_place(line, found):
            continue
        if not _is_twenty_one(line, found):
            return -value if found["minus"] else value
    for found in _TARGET.finditer(line):
        coded = found["x"] or found["r"]
        value = number_of(found[1] or found["points"] or found["of"] or coded)
        before = line[: found.start()]
        if value in TARGETS and (found["of"] or coded or not _ends_a_score(before)):
            return value
        if (found[1], found[2]) == ("twenty", "one"):
            return 21
    return None


def _tells_games(line: str, found: re.Match[str]) -> bool:
    is_game = found[0].startswith("game")
    return is_game and (
        _GAMES_SCORE.search(line[: found.start()]) is not None or found["n"] in ("one", "love")
    )


def _tells_place(line: str, found: re.Match[str]) -> bool:
    """`play to one side` tells where to play, not what a game is played to."""
    return bool(_PLACE.match(line[found.end() :]))


def _ends_a_score(before: str) -> bool:
    """`9 to 7` is a score and so is what "it gets to"; `9-8-2 to 11`, `court 7 to 11` are not."""
    last = before.split()[-2:]
    if _REACHING & set(last):
        return True
    numbers = [number_of(word) is not None for word in last]
    stands_alone = len(numbers) < 2 or not (numbers[0] or last[0] in _NUMBERED)
    return numbers[-1:] == [True] and stands_alone


def _is_twenty_one(line: str, found: re.Match[str]) -> bool:
    return found["n"] == "twenty" and line[found.end() :].startswith(" one")


def _one_game_to(line: str) -> int | None:
    """What "one to 15 against them", "just one to 11" is played to; a bare "1 to 11" is a score."""
    found = _ONE_TO.search(line)
    if found is None or not (found["just"] or _AGAINST.search(line)):
        return None
    return number_of(found["target"])


def _timeouts_each(line: str) -> int | None:
    """Of "one time-out each", "2 timeouts a game": "no timeouts left" is not of the format."""
    found = _TIMEOUTS_EACH.search(line)
    if found is None:
        return None
    return 0 if found["n"] == "no" else number_of(found["n"])


def _best_of(line: str) -> int | None:
    if _one_game_to(line) is not None:
        return 1
    found = _BEST_OF.search(line)
    if found is None:
        return None
    typed = found[1] or found[2]
    value = number_of(typed) if typed else 3 if _OF_THREE.search(found[0]) else 1
    return value if value in (1, 3, 5) else None
