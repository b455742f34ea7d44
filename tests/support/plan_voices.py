"""How six imagined people ask for plans (tests/cases/plan_voices.toml), and what is read of it."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path

from day_lists import coach
from talk import demo_talk

from bot.chat.said import (
    BookSaid,
    CoachSaid,
    ListAsked,
    PlanSaid,
    PoolAsked,
    PoolSaid,
    Question,
    Understood,
    VideoSaid,
)
from bot.chat.understand import understand
from bot.chat.view import ChatView

_VOICES = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "plan_voices.toml").read_text(encoding="utf-8")
)

ASIDE, OPEN = "aside", "open"

_IN_A_POOL = frozenset({"next", "standing"})


def lines(part: str) -> Iterator[tuple[str, str, str]]:
    """The voice, what it says, and what that should be read as."""
    for voice, parts in _VOICES.items():
        for one in parts.get(part, {"lines": []})["lines"]:
            yield voice, one["said"], one["as"]


@cache
def _view() -> ChatView:
    talk = demo_talk()
    coach(talk)
    with talk.book() as book:
        roster = book.players()
        version = book.version()
    by_name = {row.name.split()[-1]: row.player for row in roster}
    ours = tuple(row.player for row in roster if row.ours)[:2]
    return ChatView(
        book=1,
        version=version,
        roster=tuple(roster),
        ours=ours,
        theirs=(by_name["Okafor"], by_name["Lindqvist"]),
    )


def read_as(said: str, expected: str = "") -> frozenset[str]:
    """Every reading of it, by the names of the cases."""
    view = replace(_view(), pool_on=expected in _IN_A_POOL)
    return frozenset(_named(one) for one in understand(said, chat=view))


def _named(said: Understood) -> str:
    match said:
        case Question():
            return said.topic.value
        case PlanSaid():
            return f"plan:{said.what.value}"
        case ListAsked():
            return f"list:{said.verb.value}"
        case PoolAsked():
            return said.verb.value
        case BookSaid():
            return said.verb.value
        case PoolSaid():
            return "pool"
        case VideoSaid():
            return "video"
        case CoachSaid():
            return "coach"
        case _:
            return type(said).__name__


def is_right(said: str, expected: str) -> bool:
    """One reading is an expected one, and no other one is beside it."""
    found = read_as(said, expected)
    return len(found) == 1 and found <= set(expected.split("|"))


def wrong(part: str) -> Sequence[tuple[str, str, str, frozenset[str]]]:
    """The lines of a part that are read as something else, and as what."""
    return [
        (voice, said, expected, read_as(said, expected))
        for voice, said, expected in lines(part)
        if not is_right(said, expected)
    ]
