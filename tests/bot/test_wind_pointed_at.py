"""The wind that was told is meant by "it"; how it blows at our end chooses no end."""

from __future__ import annotations

from dataclasses import replace

from talk import Talk
from topic_examples import VIEW

from bot.chat.message import read_message
from bot.chat.wind_pointed_at import shot_into_it, wind_pointed_at
from knowledge.situation import Wind

SAID = {
    "what if its across": Wind.ACROSS,
    "and if it's behind us": Wind.BEHIND_US,
    "or into it": Wind.AGAINST_US,
    "what if she hits across": None,
    "and across to him": None,
}


def test_it_is_the_wind_once_one_was_told() -> None:
    windy = replace(VIEW, windy=True)
    for said, wind in SAID.items():
        assert wind_pointed_at(read_message(said, windy), windy) is wind, said
        assert wind_pointed_at(read_message(said, VIEW), VIEW) is None
    assert shot_into_it("drop or drive my third into it")
    assert not shot_into_it("do i run into it")


def test_what_hangs_on_the_wind_is_told_in_it(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("who covers the middle")
    assert "let high ones bounce" in demo.say("and if its windy")
    assert demo.say("its gusting into our end now").startswith("Hit through it")
    assert demo.say("which end do we want").startswith("Start into the wind")
    demo.say("can i lob in this")
    assert "Cross wind" in demo.say("what if its across")


def test_swirling_is_the_wind(demo: Talk) -> None:
    assert demo.say("its swirling no idea where its going").startswith("Find the wind")
