"""How often a rules question finds its rule: python tests/support/rules_asked.py [read...]."""

from __future__ import annotations

import sys
import tomllib
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from knowledge.rulebook import Found, find_rule

LINES = Path(__file__).parents[1] / "cases" / "rules_asked.toml"


class Outcome(StrEnum):
    SURE_RIGHT = "sure and right"
    SURE_WRONG = "sure and wrong"
    UNSURE_RIGHT = "unsure and right"
    UNSURE_OFFERED = "unsure, the right one on the button"
    UNSURE_WRONG = "unsure and wrong"
    NONE_WRONG = "none, though there is a rule"
    NONE_RIGHT = "none, and there is none"


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedLine:
    """A question with the rules that answer it; `before` is the one that it goes on from."""

    writer: str
    read: str
    text: str
    rules: tuple[str, ...]
    before: str = ""

    def outcome(self) -> Outcome:
        return outcome_of(find_rule(self.text, before=self.before), self.rules)


def outcome_of(found: Found, wanted: tuple[str, ...]) -> Outcome:
    if found.rule is None:
        return Outcome.NONE_WRONG if wanted else Outcome.NONE_RIGHT
    is_right = found.rule.name in wanted
    if found.is_sure:
        return Outcome.SURE_RIGHT if is_right else Outcome.SURE_WRONG
    if is_right:
        return Outcome.UNSURE_RIGHT
    offered = any(other.name in wanted for other in found.others)
    return Outcome.UNSURE_OFFERED if offered else Outcome.UNSURE_WRONG


def asked_lines() -> tuple[AskedLine, ...]:
    rows = tomllib.loads(LINES.read_text(encoding="utf-8"))["line"]
    return tuple(AskedLine(**{**row, "rules": tuple(row["rules"])}) for row in rows)


def outcomes(lines: Iterable[AskedLine]) -> Counter[Outcome]:
    return Counter(line.outcome() for line in lines)


def main(reads: list[str]) -> None:
    for read in reads or ["voice", "tuning", "later"]:
        lines = [line for line in asked_lines() if read in (line.read, line.writer)]
        sys.stdout.write(f"{read}: {len(lines)} lines\n")
        for outcome, count in outcomes(lines).most_common():
            sys.stdout.write(f"  {outcome}: {count}\n")


if __name__ == "__main__":
    main(sys.argv[1:])
