"""Cards, reports and reviews asked for in many wordings and with slips; and what is neither."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from talk import Talk, demo_talk

from bot.chat.said import BookSaid, BookVerb, Question, Understood
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.vocabulary import Topic

CASES = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "scouting_said.toml").read_text(encoding="utf-8")
)


@pytest.fixture(scope="module")
def view() -> ChatView:
    talk: Talk = demo_talk()
    with talk.book() as book:
        roster = tuple(book.players())
    theirs = tuple(one.player for one in roster if one.name in ("Chidi Okafor", "Sven Lindqvist"))
    ours = tuple(one.player for one in roster if one.ours)
    talk.store.close()
    return ChatView(book=1, version=1, roster=roster, ours=ours, theirs=theirs)


def _what(said: Understood) -> str:
    if isinstance(said, BookSaid):
        return said.verb.value
    return said.topic.value if isinstance(said, Question) else type(said).__name__


@pytest.mark.parametrize(
    ("kind", "line"),
    [(kind, line) for kind in ("scout", "report", "review", "day") for line in CASES[kind]],
)
def test_it_arrives(view: ChatView, kind: str, line: str) -> None:
    wanted = {
        "scout": BookVerb.SCOUT,
        "review": BookVerb.REVIEW,
        "day": BookVerb.DAY_RECORD,
        "report": Topic.OPPONENT_REPORT,
    }
    assert _what(understand(line, chat=view)[0]) == wanted[kind]


@pytest.mark.parametrize("line", CASES["other"])
def test_a_near_miss_opens_no_card_and_no_review(view: ChatView, line: str) -> None:
    verbs = [one.verb for one in understand(line, chat=view) if isinstance(one, BookSaid)]
    assert not {BookVerb.SCOUT, BookVerb.REVIEW} & {*verbs}
