"""Pools, coaches, reviews and videos as they are typed (tests/cases/day_lists.toml)."""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from talk import Talk, demo_talk

_CASES = tomllib.loads(
    (Path(__file__).parent.parent / "cases" / "day_lists.toml").read_text(encoding="utf-8")
)
OTHERS: list[Mapping[str, str]] = _CASES["others"]["said"]
POOL = "pool: okafor/lindqvist, ruiz/hale; one game to 15"
COACHED = ("Jo Marsh", "Priya Nair")
_ONCE_A_POOL_IS_ON = ("next", "standing", "result")


def lines() -> Iterator[tuple[str, str, str]]:
    """Group, what it should be read as, and the words."""
    for group, cases in _CASES.items():
        if group != "others":
            for said in cases["said"]:
                yield group, cases["kind"], said


def coach(talk: Talk) -> None:
    """The book has a second pair of ours."""
    with talk.book() as book:
        first, second = (book.add_player(name, ours=True) for name in COACHED)
        book.pair_of(first, second)


def talk_for(group: str) -> Talk:
    """A conversation in which such lines are said."""
    talk = demo_talk()
    if group in _ONCE_A_POOL_IS_ON:
        talk.say(POOL)
    if group == "coach":
        coach(talk)
    return talk


def heard_as(talk: Talk, said: str) -> tuple[str, str]:
    """What it was understood as, and the reply."""
    reply = talk.say(said)
    heard: Any = talk.heard
    return type(heard.understood).__name__, reply


def read_right() -> Mapping[str, tuple[int, int]]:
    """Of each group, how many lines are read as what they are, and how many there are."""
    read: dict[str, list[bool]] = {}
    for group, kind, said in lines():
        read.setdefault(group, []).append(heard_as(talk_for(group), said)[0] == kind)
    return {group: (sum(found), len(found)) for group, found in read.items()}


if __name__ == "__main__":
    sys.stdout.write(f"{read_right()}\n")
