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
