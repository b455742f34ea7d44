"""Several rallies told one after another: asked as a whole, never the first of them alone."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import RemarkSaid

WON, LOST = True, False


@pytest.fixture
def serving(demo: Talk) -> Talk:
    demo.say("next: ruiz and hale")
    demo.say("we serve 4-2-1")
    return demo


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("lost it then won one then lost two", (LOST, WON, LOST, LOST)),
        ("lost won lost lost", (LOST, WON, LOST, LOST)),
        ("one to us, two to them", (WON, LOST, LOST)),
        ("won it hale netted, lost the next he drove at me", (WON, LOST)),
        ("hale served out then we won two", (WON, WON, WON)),
        ("side out then won two", ()),
        ("no it was we lost one then won two then lost one", ()),
    ],
)
def test_rallies_told_in_order_are_asked(serving: Talk, said: str, told: tuple[bool, ...]) -> None:
    stored = serving.stored()
    serving.say(said)
    remark = serving.heard and serving.heard.understood
    assert isinstance(remark, RemarkSaid)
    assert remark.in_order == told
    assert serving.stored() == stored


def test_one_tap_counts_all_of_them(serving: Talk) -> None:
    asked = serving.say("lost it then won one then lost two")
    assert asked.startswith("4 rallies: them, you, them, them? Tap where that leads")
    assert serving.tap("they serve at 3-5-1").startswith("3-5-1. They serve")


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("we lost it they won it", "4-2-2."),
        ("i popped it up then they put it away", "4-2-2."),
        ("won it, our point", "5-2-1."),
        ("lost again", "4-2-2."),
        ("won 2-1", "Won 2-1."),
    ],
)
def test_one_rally_told_twice_is_one(serving: Talk, said: str, then: str) -> None:
    assert then in serving.say(said)
