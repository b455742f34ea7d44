"""Cases of serve and return as data: a situation in short words, and what its answer must hold."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from noted_players import TODAY, player

from knowledge.game import GameFormat, GameState, Lineup, after, start
from knowledge.situation import Asked, Formation, OnCourt, Situation, Wind
from knowledge.vocabulary import BallQuality, Level, PlayerId, Side, Topic

Case = Mapping[str, Any]

FIRST_OF_THEIRS = 3


def cases(name: str) -> list[Case]:
    """The cases of a file under tests/cases."""
    path = Path(__file__).parents[1] / "cases" / name
    found: list[Case] = tomllib.loads(path.read_text(encoding="utf-8"))["case"]
    return found


def situation_of(case: Case, topic: Topic) -> Situation:
    """`us` and `them` are lists of {name, side, notes}; a note may be repeated as "3 x note"."""
    ours = _pair(case.get("us", [{"name": "Mira"}, {"name": "Tom"}]), first=1)
    theirs = _pair(case.get("them", []), first=FIRST_OF_THEIRS)
    asked = Asked(
        words=case.get("words", ""),
        about=tuple(one.player for one in theirs if one.name in case.get("about", ())),
        ball=BallQuality(case["ball"]) if "ball" in case else None,
        striker_side=Side(case["from"]) if "from" in case else None,
        sun=case.get("sun"),
    )
    asker = next((one.player for one in ours if one.name == case.get("asker")), None)
    return Situation(
        topic=topic,
        asked=asked,
        ours=ours,
        theirs=theirs,
        asker=asker,
        striker=asker,
        game=_game(case, ours, theirs),
        their_formation=Formation(case["formation"]) if "formation" in case else None,
        level=Level(case["level"]) if "level" in case else None,
        wind=Wind(case["wind"]) if "wind" in case else None,
        today=TODAY,
        recent_aims={topic: tuple(case["recent"])} if "recent" in case else {},
        aims_won={topic: (None,) * len(case["recent"])} if "recent" in case else {},
    )


def _pair(people: list[dict[str, Any]], *, first: int) -> tuple[OnCourt, ...]:
    found = []
    for number, one in enumerate(people, start=first):
        side = Side(one["side"]) if "side" in one else None
        notes = [each for note in one.get("notes", ()) for each in _repeated(note)]
        found.append(player(number, one["name"], side, *notes))
    return tuple(found)


def _repeated(note: str) -> list[str]:
    times, is_many, claim = note.partition(" x ")
    return [f"{claim} by watcher{n}" for n in range(int(times))] if is_many else [note]


def _game(case: Case, ours: tuple[OnCourt, ...], theirs: tuple[OnCourt, ...]) -> GameState | None:
    """`serving` is "us" or "them" from 0-0-2, then `rallies`: "+" won by us, "-" by them."""
    if "serving" not in case:
        return None
    lineup = Lineup(
        our_starter=ours[0].player,
        our_partner=ours[1].player,
        their_starter=theirs[0].player,
        their_partner=theirs[1].player,
    )
    state = start(GameFormat(), we_serve=case["serving"] == "us", lineup=lineup)
    for rally in case.get("rallies", ""):
        state = after(state, won_by_us=rally == "+")
    return state


def number_of(name: str, situation: Situation) -> PlayerId:
    return next(one.player for one in situation.theirs if one.name == name)
