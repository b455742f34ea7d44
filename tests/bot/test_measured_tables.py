"""The benchmarks' own tables: parts stay where they were not measured anew, stages exist."""

from __future__ import annotations

import importlib
from pathlib import Path
from typing import Any

import pytest
from turn_stages import STAGES

BENCHMARKS = Path(__file__).resolve().parents[1] / "benchmarks"
README = (
    "# It\n<!-- measured -->\nold machine\n\n(a) one\n\n| x |\n\n(c) three\n"
    "<!-- /measured -->\nrest\n"
)


@pytest.fixture
def every(monkeypatch: pytest.MonkeyPatch) -> Any:
    monkeypatch.syspath_prepend(str(BENCHMARKS))
    return importlib.import_module("all")


def test_parts_are_put_in_order_and_others_stay(every: Any) -> None:
    found = {"b": "(b) two\n\n| y |\n\n", "c": "(c) third\n\n"}
    assert every.written(README, found, "new machine") == (
        "# It\n<!-- measured -->\nnew machine\n\n(a) one\n\n| x |\n\n(b) two\n\n| y |\n\n"
        "(c) third\n"
        "<!-- /measured -->\nrest\n"
    )


def test_a_readme_without_marks_is_refused(every: Any) -> None:
    with pytest.raises(SystemExit, match="measured"):
        every.written("# It\n", {}, "machine")


def test_every_part_has_tables(every: Any) -> None:
    for module in every.PARTS.values():
        source = (BENCHMARKS / f"{module}.py").read_text(encoding="utf-8")
        assert "\ndef tables(" in source, module


def test_the_marks_stand_in_the_readme(every: Any) -> None:
    readme = every.README.read_text(encoding="utf-8")
    assert every.written(readme, {}, "m").count(every.BEGIN) == 1


@pytest.mark.parametrize(("stage", "owner", "name"), STAGES)
def test_a_stage_is_a_function_that_exists(stage: str, owner: Any, name: str) -> None:
    assert callable(getattr(owner, name, None)), stage
