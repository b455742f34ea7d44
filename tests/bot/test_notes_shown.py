"""Notes on somebody are all to be had: the newest at once, the older ones behind "more"."""

from __future__ import annotations

import pytest
from talk import Talk

TOLD = ("slow", "a lefty", "tall", "patient", "lazy", "loud", "early")


@pytest.mark.parametrize("text", ["what did i note about hale", "show me all my notes on hale"])
def test_the_older_notes_come_behind_more(fresh: Talk, text: str) -> None:
    fresh.say("new opponent ben hale")
    for one in TOLD:
        fresh.say(f"hale is {one}")
    first = fresh.say(text)
    assert first.endswith("and 2 more")
    assert "hale is slow" not in first
    older = fresh.say("more")
    assert "hale is slow" in older
    assert "hale is a lefty" in older
    assert fresh.say("more").startswith("That's all I have")


def test_few_notes_need_no_page(fresh: Talk) -> None:
    fresh.say("new opponent ben hale")
    fresh.say("hale is slow")
    assert fresh.say("what did i note about hale").splitlines()[0] == "Hale, newest first:"
    assert not fresh.buttons


def test_and_another_by_name_right_after_notes_asks_for_theirs(fresh: Talk) -> None:
    for text in ("new opponent ben hale", "new opponent ana ruiz", "ruiz is a lefty"):
        fresh.say(text)
    fresh.say("where do i serve hale")
    fresh.say("what did i note about hale")
    assert fresh.say("and ruiz?").splitlines()[:2] == ["Ruiz, newest first:", "· ruiz is a lefty"]
    assert fresh.say("ruiz is tall").startswith("Noted. Ruiz: tall.")
    assert fresh.say("and hale").startswith("Serve Hale"), "the question that stood before"


def test_notes_kept_as_words_only_are_told_apart(fresh: Talk) -> None:
    for text in ("new opponent ben hale", "hale is slow", "note: hale wears odd socks"):
        fresh.say(text)
    told = fresh.say("which of my notes do you only have as words").splitlines()
    assert told == ["Kept as words, newest first:", "· note: hale wears odd socks"]


def test_only_the_whole_book_is_exported(fresh: Talk) -> None:
    fresh.say("new opponent ben hale")
    assert "everybody's" in fresh.say("export hale notes")
    assert "everybody's" not in fresh.say("export")
