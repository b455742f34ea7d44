"""Rallies as they are typed (tests/cases/rallies_told.toml), and how the reader does on them."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from voices import EVENING

from bot.chat.said import RallyDetails, RallySaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

_CASES = tomllib.loads(
    (Path(__file__).parent.parent / "cases" / "rallies_told.toml").read_text(encoding="utf-8")
)
RALLIES: Sequence[Mapping[str, Any]] = _CASES["rallies"]
NOT_RALLIES: Sequence[str] = _CASES["not_rallies"]
TOLD_PLAINLY: Sequence[Mapping[str, str]] = _CASES["told_plainly"]
TUNED_ON, HELD_BACK = RALLIES[::2], RALLIES[1::2]

NAMES = {"Mira": 1, "Tom": 2, "Okafor": 3, "Lindqvist": 4}
MATCH = replace(EVENING, theirs=(PlayerId(3), PlayerId(4)), match_on=True)
"""Mira and Tom against Okafor and Lindqvist; Mira types."""


def rally_of(said: str) -> RallySaid | None:
    """The rally that the line is understood as, if it is one and nothing else."""
    understood = understand(said, chat=MATCH)
    found = [one for one in understood if isinstance(one, RallySaid)]
    return found[0] if len(found) == 1 == len(understood) else None


def wrong_in(case: Mapping[str, Any]) -> tuple[str, ...]:
    """What of the line is read otherwise than labelled, field by field."""
    rally = rally_of(case["said"])
    if rally is None:
        return ("not a rally",)
    told = {**_told(rally.details), "won": "us" if rally.won_by_us else "them"}
    wanted = _wanted(case)
    return tuple(
        f"{key}: {told[key]} instead of {wanted[key]}" for key in wanted if told[key] != wanted[key]
    )


def _told(details: RallyDetails) -> Mapping[str, Any]:
    return {
        "ending": None if details.ending is None else details.ending.value,
        "by": details.by,
        "stroke": None if details.stroke is None else details.stroke.value,
        "wing": None if details.wing is None else details.wing.value,
        "deep": details.is_deep,
        "forward": details.forward,
        "chose": {one.topic.value: one.option for one in details.choices},
    }


def _wanted(case: Mapping[str, Any]) -> Mapping[str, Any]:
    wanted = {key: case.get(key) for key in ("won", "ending", "stroke", "wing", "deep", "forward")}
    chosen = {}
    for topic, option in case.get("chose", {}).items():
        for name, number in NAMES.items():
            option = option.replace(name, str(number))
        chosen[topic] = option
    return {**wanted, "by": NAMES.get(case.get("by", "")), "chose": chosen}
