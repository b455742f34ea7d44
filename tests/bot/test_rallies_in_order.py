"""Several rallies told one after another: asked as a whole, never the first of them alone."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import RallySaid, RemarkSaid, ResultSaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

OKAFOR, LINDQVIST = PlayerId(3), PlayerId(4)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)
WON, LOST = True, False


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("lost won lost lost", (LOST, WON, LOST, LOST)),
        ("one to us, two to them", (WON, LOST, LOST)),
        ("won it okafor netted, lost the next he drove at me", (WON, LOST)),
        ("okafor served out then we won two", (WON, WON, WON)),
        ("side out then won two", ()),
        ("no it was we lost one then won two then lost one", ()),
    ],
)
def test_rallies_told_in_order_are_asked(said: str, told: tuple[bool, ...]) -> None:
    (remark,) = understand(said, chat=MATCH)
    assert isinstance(remark, RemarkSaid)
    assert remark.in_order == told


def test_one_tap_counts_all_of_them(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say("we serve 4-2-1")
    asked = demo.say("lost it then won one then lost two")
    assert asked.startswith("4 rallies: them, you, them, them? Tap where that leads")
    assert demo.say("score").startswith("4-2-1.")
    demo.say("lost it then won one then lost two")
    assert demo.tap("they serve at 3-5-1").startswith("3-5-1. They serve")


@pytest.mark.parametrize(
    ("said", "kind"),
    [
        ("we lost it they won it", RallySaid),
        ("i popped it up then they put it away", RallySaid),
        ("lost again", RallySaid),
        ("won 2-1", ResultSaid),
    ],
)
def test_one_rally_told_twice_is_one(said: str, kind: type) -> None:
    assert any(isinstance(one, kind) for one in understand(said, chat=MATCH))
