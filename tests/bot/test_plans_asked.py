"""Ways to ask for a plan again, its second half, what is new, or a copy: cases as data."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest
from talk import demo_talk

from bot.chat.said import PlanAsk, PlanSaid, Question
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.planning.shifts import COVER, POACH, SWAP, TAKES
from knowledge.vocabulary import Topic

CASES: dict[str, Any] = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "plans_asked.toml").read_text(encoding="utf-8")
)
ASKED = [
    (line, PlanAsk({"plan_b": "b"}.get(what, what)))
    for what in ("again", "plan_b", "since", "share", "student")
    for line in CASES[what]["lines"]
]
CUES = [
    (line, what == "cue_serving")
    for what in ("cue_serving", "cue_receiving")
    for line in CASES[what]["lines"]
]


@pytest.fixture(scope="module")
def view() -> ChatView:
    with demo_talk().book() as book:
        roster = book.players()
        ours = tuple(row.player for row in roster if row.ours)[:2]
        theirs = [row.player for row in roster if row.name.endswith(("Okafor", "Lindqvist"))]
        version = book.version()
    return ChatView(
        book=1, version=version, roster=tuple(roster), ours=ours, theirs=(theirs[0], theirs[1])
    )


@pytest.mark.parametrize(("line", "what"), ASKED)
def test_what_is_wanted_of_the_plan(line: str, what: PlanAsk, view: ChatView) -> None:
    (said,) = understand(line, chat=view)
    assert isinstance(said, PlanSaid)
    assert said.what is what


CHANGES = [
    (line, change)
    for change in (SWAP, TAKES, COVER, POACH)
    for line in CASES[f"plan_b_{change}"]["lines"]
]


@pytest.mark.parametrize(("line", "change"), CHANGES)
def test_plan_b_for_the_change_that_is_asked_about(line: str, change: str, view: ChatView) -> None:
    (said,) = understand(line, chat=view)
    assert isinstance(said, PlanSaid)
    assert (said.what, said.change) == (PlanAsk.PLAN_B, change)


@pytest.mark.parametrize(("line", "serving"), CUES)
def test_a_reminder_before_a_rally_is_the_cue(line: str, serving: bool, view: ChatView) -> None:
    (said,) = understand(line, chat=view)
    assert isinstance(said, Question)
    assert (said.topic, said.slots.serving) == (Topic.CUE, serving)


@pytest.mark.parametrize(("line", "topic"), CASES["other"]["lines"])
def test_what_only_looks_like_it_stays_elsewhere(line: str, topic: str, view: ChatView) -> None:
    found = understand(line, chat=view)
    assert not any(isinstance(one, PlanSaid) for one in found)
    topics = {one.topic.value for one in found if isinstance(one, Question)}
    assert not topic or topics == {topic}
