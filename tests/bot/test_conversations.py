"""Golden conversations: what is typed at a court, and the whole reply as a phone shows it."""

from __future__ import annotations

from pathlib import Path

import conversations
import pytest

ROOT = Path(__file__).parents[2]
CONVERSATIONS = sorted((ROOT / "tests" / "cases" / "conversations").glob("*.txt"))


def test_there_are_conversations() -> None:
    assert len(CONVERSATIONS) >= 5


@pytest.mark.parametrize("path", CONVERSATIONS, ids=lambda path: path.stem)
def test_conversation_as_written(path: Path) -> None:
    wanted = conversations.read(path.read_text(encoding="utf-8"))
    assert conversations.written(conversations.replay(wanted)) == conversations.written(wanted)


def test_the_readme_conversation_is_true() -> None:
    wanted = conversations.read(conversations.fenced(ROOT / "README.md", "conversation"))
    assert len(wanted) >= 4
    assert conversations.written(conversations.replay(wanted)) == conversations.written(wanted)
