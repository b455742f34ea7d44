"""The blind voices' cases that may be read, and how understanding is scored on them.

The voices `ilse`, `kay`, `roz` and `teun` are never read: only the logged held-out command scores
them.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import time
from pathlib import Path
from typing import Any

from rosters import roster_of

from bot.chat.format_said import SaidFormat
from bot.chat.said import (
    FormatTold,
    MatchMoved,
    MatchSaid,
    RallySaid,
    ResultSaid,
    SaidScore,
    ScoreSaid,
    Understood,
)
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.game import GameFormat, Scoring
from knowledge.vocabulary import PlayerId
from scouting_db.names import Alike, Found, NameIndex
from scouting_db.values import PlayerRow

OPEN_VOICES = ("nova", "gaffer", "walt", "rex", "dot", "sid")

SLOT_VOICES = ("pip", "zed")
"""Written later, for slots, scores and names only."""

LATER_SLOT_VOICES = ("moss", "tala")
"""Written later still, for names, scores and notes; read while the readers were mended."""

UNREAD_SLOT_VOICE = "june"
"""The third of them, never read: only the logged held-out command scores it."""

UNREAD_NAME_VOICES = ("bert", "yuki")
"""Their names and scores were never read either; their notes were."""

FRESH_NAME_VOICES = ("amos", "bibi", "cruz", "dora", "emre", "fern")
FRESH_SCORE_VOICES = ("jo", "kurt", "lia")
"""Names, and scores, written last; read while the readers were mended."""

UNREAD_FRESH_NAME_VOICES = ("gil", "hedda", "ivo")
LATEST_UNREAD_NAME_VOICES = ("quin", "rhea", "sol", "tove")
UNREAD_FRESH_SCORE_VOICES = ("mo", "nan", "otto")
"""Written beside them and never read: only the logged held-out command scores them."""

CASES = Path(__file__).parent.parent / "cases"
VOICES = CASES / "voices"
SLOT_CASES = CASES / "voices_slots"
SECOND_LABELS = CASES / "second_labels"

_OF_SLOTS = frozenset(
    (
        *SLOT_VOICES,
        *LATER_SLOT_VOICES,
        UNREAD_SLOT_VOICE,
        *UNREAD_NAME_VOICES,
        *FRESH_NAME_VOICES,
        *FRESH_SCORE_VOICES,
        *UNREAD_FRESH_NAME_VOICES,
        *LATEST_UNREAD_NAME_VOICES,
        *UNREAD_FRESH_SCORE_VOICES,
    )
)

PEOPLE = (
    "Mira Vance",
    "Tom Alder",
    "Chidi Okafor",
    "Sven Lindqvist",
    "Ana Ruiz",
    "Ben Hale (Bones)",
    "Lotte Brandt",
    "Gina Castellano",
    "Kim Nguyen-Brandt",
    "Tess O'Dell",
    "Joost van der Meer",
    "Marek Szymanski",
)

EVENING = ChatView(
    book=1,
    version=1,
    roster=tuple(
        PlayerRow(player=PlayerId(number), name=name, ours=number <= 2)
        for number, name in enumerate(PEOPLE, start=1)
    ),
    ours=(PlayerId(1), PlayerId(2)),
    asker=PlayerId(1),
)
"""A chat with the voices' people on its roster and no match on."""

IN_TALK = replace(EVENING, focus=(PlayerId(3),))
"""The same just after Okafor was spoken of, who is meant where a note names nobody."""


def cases(voice: str, kind: str) -> Iterator[Mapping[str, Any]]:
    """The lines of one file: `names`, `notes`, `scores`, `questions` or `slots`."""
    folder = SLOT_CASES if voice in _OF_SLOTS else VOICES
    lines = (folder / f"{voice}.{kind}.jsonl").read_text(encoding="utf-8").splitlines()
    return (json.loads(line) for line in lines if line.strip())


@dataclass(frozen=True, slots=True, kw_only=True)
class NameScore:
    """Names told right (or rightly asked about), and those silently matched to somebody else."""

    typed: int
    right: int
    silently_wrong: tuple[str, ...]


def score_names(voice: str) -> NameScore:
    typed = right = 0
    wrong: list[str] = []
    for case in cases(voice, "names"):
        typed += 1
        is_right, is_silent = judge_name(case["typed"], case["roster"], case["right"])
        right += is_right
        wrong += [case["typed"]] if is_silent and not is_right else []
    return NameScore(typed=typed, right=right, silently_wrong=tuple(wrong))


def score_names_under_either(voice: str) -> NameScore:
    """The same where a second, blind labeller's answers count as well."""
    typed = right = 0
    wrong: list[str] = []
    for case, answers in zip(cases(voice, "names"), second_answers(voice, "names"), strict=True):
        typed += 1
        judged = [
            judge_name(case["typed"], case["roster"], one) for one in (case["right"], *answers)
        ]
        is_right = any(one for one, _ in judged)
        right += is_right
        wrong += [case["typed"]] if not is_right and any(silent for _, silent in judged) else []
    return NameScore(typed=typed, right=right, silently_wrong=tuple(wrong))


def second_answers(voice: str, kind: str) -> Iterator[tuple[Any, ...]]:
    """Line by line what the second labeller held for right, the likeliest first."""
    path = SECOND_LABELS / f"{voice}.{kind}.jsonl"
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.strip():
            told = json.loads(line)
            yield (told["right"], *told.get("also", ()))


def judge_name(
    typed: str, roster: list[str], right: str | list[str] | None, *, supposing: bool = True
) -> tuple[bool, bool]:
    """Whether the look-up is right, and whether it named one player without asking.

    `supposing`: whether it counts who is only supposed, or what the rules alone tell.
    """
    match = NameIndex(roster_of(*roster)).lookup(typed)
    if isinstance(match, Found):
        return match.player.name == right, True
    if isinstance(match, Alike) and match.likeliest is not None and match.likeliest.name == right:
        return True, False  # the reply names them in full and goes ahead
    if isinstance(match, Alike):
        asked = {row.name for row in match.players}
        return isinstance(right, list) and set(right) <= asked, False
    named = {row.name for row in match.supposed} if supposing else set()
    if len(named) > 1:
        return isinstance(right, list) and set(right) <= named, False
    return right == next(iter(named), None), False  # the reply says whom it took the name for


def score_scores(voice: str) -> tuple[int, int]:
    """How many lines of scores and matches are read right, of how many."""
    told = list(cases(voice, "scores"))
    return count_right(told), len(told)


def score_scores_under_either(voice: str) -> tuple[int, int]:
    """The same where a second, blind labeller's answers count as well."""
    told = list(cases(voice, "scores"))
    answers = second_answers(voice, "scores")
    right = sum(
        any(_reads_right({**one, "text": case["text"]}) for one in (case, *others))
        for case, others in zip(told, answers, strict=True)
    )
    return right, len(told)


def count_right(told: Collection[Mapping[str, Any]]) -> int:
    """How many of such lines are read right."""
    return sum(_reads_right(case) for case in told)


def _reads_right(case: Mapping[str, Any]) -> bool:
    said = understand(case["text"], chat=_where_said(case))[-1]
    got, right = fields_of(said), dict(case)
    kind = {"result": "match", "none": None}.get(right["kind"], right["kind"])
    if right["kind"] == "score" and "games" in right and isinstance(said, ResultSaid):
        kind = "match"  # finished games and the running score, in one value
    if kind != got.get("kind"):
        return False
    same = all(right[key] == got.get(key) for key in _COMPARED[right["kind"]] if key in right)
    if "opponents" in right and isinstance(said, MatchSaid):
        same = same and len(right["opponents"]) == got["opponents"]
    return same and _same_time(right.get("time"), got.get("time"))


_COMPARED = {
    "score": ("ours", "theirs", "server", "we_serve", "call"),
    "rally": ("won_by", "side_out"),
    "match": ("court", "target", "best_of", "rally_scoring"),
    "result": ("games", "won"),
    "none": (),
}
"""Beside a whole score, who won the rally before it says nothing more; after a rally, who serves
and as which server follows from the log."""


def _where_said(case: Mapping[str, Any]) -> ChatView:
    """A score and a rally are told in a match: against those they name, in the format they tell."""
    if case["kind"] not in ("score", "rally"):
        return EVENING
    said = SaidFormat(
        target=case.get("target"), scoring=Scoring.RALLY if case.get("rally_scoring") else None
    )
    named = case.get("opponents", ())
    theirs = [PlayerId(at) for at, name in enumerate(PEOPLE, start=1) if _is_named(name, named)]
    return replace(EVENING, match_on=True, theirs=tuple(theirs), format=said.playable)


def _is_named(name: str, surnames: Collection[str]) -> bool:
    return any(name.removesuffix(" (Bones)").endswith(f" {one}") for one in surnames)


def _same_time(right: str | None, got: str | None) -> bool:
    """The same face of the clock: half past two is `14:30` to one voice and `2:30` to another."""
    if right is None:
        return True
    if got is None:
        return False
    (hour, minute), (got_hour, got_minute) = right.split(":"), got.split(":")
    return minute == got_minute and int(hour) % 12 == int(got_hour) % 12


def fields_of(said: Understood) -> dict[str, Any]:
    """What a score or match message settles, under the names the voices' files use."""
    match said:
        case ScoreSaid(side_out=True, score=score):
            return {"kind": "rally", "side_out": True, **_won_by_server(score)}
        case ScoreSaid(all_at=int() as level):
            return {"kind": "score", "ours": level, "theirs": level}
        case ScoreSaid(score=score) if score is not None:
            call = score.call
            is_level = call is not None and call.serving == call.receiving
            both = call.serving if call is not None and is_level else None
            numbers = [] if call is None else [call.serving, call.receiving, call.server]
            return {
                "kind": "score",
                "ours": both if score.ours is None else score.ours,
                "theirs": both if score.theirs is None else score.theirs,
                "server": score.server,
                "we_serve": score.we_serve,
                "call": [number for number in numbers if number is not None],
            }
        case RallySaid(won_by_us=ours):
            return {"kind": "rally", "won_by": "us" if ours else "them"}
        case ResultSaid(games=games, won=won):
            running = (
                {} if said.running is None else fields_of(ScoreSaid(text="", score=said.running))
            )
            return running | {"kind": "match", "games": [list(game) for game in games], "won": won}
        case MatchSaid():
            return _match_fields(said)
        case MatchMoved(at=at, court=court):
            return {"kind": "match", "opponents": 0, "time": _clock(at), "court": court}
        case FormatTold(format=format):
            return {"kind": "match", **_format_fields(format)}
        case _:
            return {"kind": None}


def _won_by_server(score: SaidScore | None) -> dict[str, str]:
    """Whoever serves after a side-out has won the rally."""
    return {} if score is None else {"won_by": "us" if score.we_serve else "them"}


def _clock(at: time | None) -> str | None:
    return None if at is None else f"{at.hour}:{at.minute:02d}"


def _match_fields(said: MatchSaid) -> dict[str, Any]:
    return {
        "kind": "match",
        "opponents": len(said.mentions),
        "time": _clock(said.at),
        "court": said.court,
        **_format_fields(said.format),
    }


def _format_fields(format: GameFormat | SaidFormat | None) -> dict[str, Any]:
    return {
        "target": None if format is None else format.target,
        "best_of": None if format is None else format.best_of,
        "rally_scoring": format is not None and format.scoring is Scoring.RALLY,
    }
