"""Sentences about one ball with the facts they must give (tests/cases/ball_facts.toml)."""

from __future__ import annotations

import sys
import tomllib
from dataclasses import fields
from pathlib import Path
from typing import Any

from voices import EVENING

from bot.chat.message import read_message
from bot.chat.slots import find_slots
from knowledge.ball_facts import BallFacts
from knowledge.ball_places import FROM_NET_M, HeightName, PlaceName, height_m

METRES_PER_SECOND_IN_A_MPH = 0.44704
"""Exact, by the definition of the international mile."""

NEAR_ENOUGH = 0.01
"""Metres, or metres a second."""

CASES: dict[str, list[dict[str, Any]]] = tomllib.loads(
    (Path(__file__).parent.parent / "cases" / "ball_facts.toml").read_text("utf-8")
)


def facts_in(said: str) -> BallFacts:
    message = read_message(said, EVENING)
    return find_slots(message.said, message.mentions, message.told).facts


def expected(case: dict[str, Any]) -> dict[str, Any]:
    """The fields of BallFacts that a case lists; `fault` only whether there is one."""
    wanted = {key: value for key, value in case.items() if key != "said"}
    if "height" in wanted:
        wanted["height_m"] = height_m(HeightName(wanted.pop("height")))
    if "place" in wanted:
        wanted["from_net_m"] = FROM_NET_M[PlaceName(wanted.pop("place"))]
    for what in ("pace", "wind"):
        if f"{what}_mph" in wanted:
            wanted[f"{what}_mps"] = wanted.pop(f"{what}_mph") * METRES_PER_SECOND_IN_A_MPH
    return wanted


def wrong_fields(case: dict[str, Any]) -> list[str]:
    """The fields that are read otherwise than the case says, or read where it says nothing."""
    found, wanted = facts_in(case["said"]), expected(case)
    return [
        field.name
        for field in fields(BallFacts)
        if not _is_same(field.name, getattr(found, field.name), wanted.get(field.name))
    ]


def _is_same(name: str, found: Any, wanted: Any) -> bool:
    if name == "fault":
        return (found is not None) is bool(wanted)
    if isinstance(found, float) and isinstance(wanted, float | int):
        return abs(found - wanted) < NEAR_ENOUGH
    return bool(found == wanted)


def main() -> None:
    """How many lines of each half are read right in every field, and what the others get wrong."""
    for half, cases in CASES.items():
        wrong = [(case["said"], found) for case in cases if (found := wrong_fields(case))]
        silent = [case for case in cases if not expected(case)]
        right = len(cases) - len(wrong)
        sys.stdout.write(f"{half}: {right} of {len(cases)} right ({len(silent)} say nothing)\n")
        for said, found in wrong:
            sys.stdout.write(f"  {said} {found}\n")


if __name__ == "__main__":
    main()
