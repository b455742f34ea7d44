"""Notes that tell of two players at once. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import NoteSaid


def told(talk: Talk, text: str) -> set[str]:
    """What is claimed of whom: "Okafor serve weakness"."""
    talk.say(text)
    assert talk.heard is not None
    assert isinstance(talk.heard.understood, NoteSaid), talk.heard.understood
    names = {talk.player(one): one for one in ("Okafor", "Lindqvist", "Hale")}
    return {
        f"{names[one.player]} {one.trait.value} {one.value.value}{' denied' * one.denied}"
        for one in talk.heard.understood.claims
    }


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        (
            "lindqvist and okafor both hate a fast ball at the body okafor more than lindqvist",
            {"handles_pace weakness", "body_jam weakness"},
        ),
        (
            "lindqvist and okafor both hate a fast ball at the body, lindqvist more than okafor",
            {"handles_pace weakness", "body_jam weakness"},
        ),
        ("lindqvist and okafor are both slow, lindqvist even more", {"foot_speed weakness"}),
        ("lindqvist and okafor are both slow but okafor a bit more", {"foot_speed weakness"}),
    ],
)
def test_what_both_do_is_of_both_whoever_does_it_more(
    demo: Talk, text: str, claims: set[str]
) -> None:
    both = {f"{who} {claim}" for who in ("Okafor", "Lindqvist") for claim in claims}
    assert told(demo, text) == both


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("lindqvist not okafor serves short", {"Lindqvist serve weakness"}),
        ("okafor not lindqvist is the lefty", {"Okafor hand left"}),
        ("lindqvist rather than okafor serves short", {"Lindqvist serve weakness"}),
        ("okafor and not lindqvist is slow", {"Okafor foot_speed weakness"}),
    ],
)
def test_who_is_only_set_off_is_not_meant(demo: Talk, text: str, claims: set[str]) -> None:
    assert told(demo, text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("hale stacks lindqvist doesnt", {"Hale stacks often", "Lindqvist stacks rarely"}),
        (
            "lindqvist takes the middle okafor never does",
            {"Lindqvist squeezes_middle often", "Okafor squeezes_middle rarely"},
        ),
        (
            "okafor doesnt poach lindqvist does but only on his forehand",
            {"Okafor poaching rarely", "Lindqvist poaching often"},
        ),
        (
            "okafor doesnt poach but lindqvist does",
            {"Okafor poaching rarely", "Lindqvist poaching often"},
        ),
        (
            "lindqvist is slow okafor isnt",
            {"Lindqvist foot_speed weakness", "Okafor foot_speed weakness denied"},
        ),
        (
            "lindqvist made 6 of 8 drops and okafor 2 of 8",
            {"Lindqvist third_shot_drop strength", "Okafor third_shot_drop weakness"},
        ),
        (
            "lindqvist made 2 of 8 drops okafor made 6 of 8",
            {"Lindqvist third_shot_drop weakness", "Okafor third_shot_drop strength"},
        ),
    ],
)
def test_the_other_is_told_of_in_a_word(demo: Talk, text: str, claims: set[str]) -> None:
    assert told(demo, text) == claims


def test_a_comparison_weighs_less_and_says_nothing_of_its_measure(demo: Talk) -> None:
    assert told(demo, "lindqvist is not as quick as okafor") == {"Lindqvist foot_speed weakness"}
    assert isinstance(demo.heard and demo.heard.understood, NoteSaid)
    assert demo.heard is not None
    assert [one.weight for one in demo.heard.trace["claims"]] == [0.5]
    assert told(demo, "neither is as quick as hale") == set()
    assert told(demo, "neither is quicker than hale") == set()


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("okafor is slower than lindqvist", {"Okafor foot_speed weakness"}),
        ("okafor lobs more than lindqvist", {"Okafor lob often"}),
        ("lindqvist serves short not okafor", {"Lindqvist serve weakness"}),
        ("its okafor who poaches not lindqvist", {"Okafor poaching often"}),
        (
            "okafor and lindqvist are a lefty and a righty",
            {"Lindqvist hand left", "Okafor hand right"},
        ),
        (
            "okafor and lindqvist stack okafor plays left",
            {"Okafor stacks often", "Lindqvist stacks often", "Okafor side_played left"},
        ),
    ],
)
def test_what_is_told_of_one_stays_with_one(demo: Talk, text: str, claims: set[str]) -> None:
    assert told(demo, text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("lindqvist same as okafor but slower", {"Lindqvist foot_speed weakness"}),
        ("lindqvist like okafor but slower", {"Lindqvist foot_speed weakness"}),
        ("okafor is just like lindqvist only slower", {"Okafor foot_speed weakness"}),
        (
            "lindqvist and okafor are slow",
            {"Lindqvist foot_speed weakness", "Okafor foot_speed weakness"},
        ),
    ],
)
def test_whom_somebody_is_measured_by_is_told_nothing_of(
    demo: Talk, text: str, claims: set[str]
) -> None:
    assert told(demo, text) == claims
