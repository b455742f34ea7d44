"""Notes in which a word names a trait only out of its phrase. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


def told(talk: Talk, text: str) -> set[str]:
    talk.say(text)
    assert talk.heard is not None
    return {f"{one.trait} {one.value}" for one in talk.heard.trace["claims"]}


@pytest.mark.parametrize(
    ("text", "torn"),
    [
        ("hale never hits down the line always cross", "poaching"),
        ("hale never goes down the line", "gets_low"),
        ("okafor drives it well off a high ball", "overhead"),
        ("hale misses returns when the serve is deep", "serve"),
        ("hale misses returns long when the serve is deep 4 out of 6 just now", "serve"),
        ("hale returns well when we serve deep", "serve"),
        ("hale has a wicked spin serve", "handles_spin"),
        ("okafor loves the atp and the erne from the left side", "side_played"),
        ("okafor made 7 of 9 drops from the right side", "side_played"),
        ("okafor poaches a lot as soon as his partner hits a good drop", "third_shot_drop"),
        ("okafor poaches everything in the middle as soon as his partner hits it", "crash"),
        ("hale just hit a great lob over sven", "lob_defense"),
    ],
)
def test_a_word_out_of_its_phrase_claims_nothing(demo: Talk, text: str, torn: str) -> None:
    found = told(demo, text)
    assert not [one for one in found if one.split()[0] == torn], found
    assert demo.last[-1].text.startswith("Noted")


@pytest.mark.parametrize(
    ("text", "claim"),
    [
        ("hale crosses all the time", "poaching often"),
        ("hale poaches whenever her partner lobs", "poaching often"),
        ("when his partner drives, hale charges in behind it", "crash often"),
        ("okafor attacks well off a bad dink", "speed_up strength"),
        ("hale hits great overheads off lobs", "overhead strength"),
        ("hale has a weak return but his serve is deep", "serve strength"),
        ("hale handles spin serves really well", "handles_spin strength"),
        ("hale has good answers to spin", "handles_spin strength"),
        ("hale plays the left side", "side_played left"),
        ("hale hates right hip balls", "body_jam weakness"),
        ("hale hates moving left", "moves_left weakness"),
        ("hale is slow to her left hip", "moves_left weakness"),
        ("hale runs down every lob over her head", "lob_defense strength"),
    ],
)
def test_in_its_phrase_it_does(demo: Talk, text: str, claim: str) -> None:
    assert claim in told(demo, text)


@pytest.mark.parametrize(
    ("text", "right", "wrong"),
    [
        ("hale keeps missing her drops 3 of 9", "third_shot_drop weakness", "often"),
        ("hale keeps netting his drops", "third_shot_drop weakness", "often"),
        (
            "lindqvist made 8 of 10 returns but only three were deep",
            "return_depth weakness",
            "return_depth strength",
        ),
        ("only two of okafors returns were deep", "return_depth weakness", "strength"),
        ("none of hales drops were good", "third_shot_drop weakness", "strength"),
        (
            "lindqvist cannot volley to save his life, forehand volley is decent though",
            "forehand_volley strength",
            "forehand_volley weakness",
        ),
        (
            "hales dinks are shaky, forehand dink is solid",
            "forehand_dink strength",
            "forehand_dink weakness",
        ),
        ("hale just hit a great lob over sven", "lob strength", "lob_defense"),
    ],
)
def test_a_phrase_that_says_the_contrary_is_heard(
    demo: Talk, text: str, right: str, wrong: str
) -> None:
    found = told(demo, text)
    assert right in found
    assert not [one for one in found if wrong in one], found


@pytest.mark.parametrize(
    ("text", "claim"),
    [
        ("all three of hales returns were deep", "return_depth strength"),
        ("hale hit just 3 good drops", "third_shot_drop strength"),
        ("hale missed 5 of 7 drops", "third_shot_drop weakness"),
    ],
)
def test_counts_that_say_what_they_say_stay(demo: Talk, text: str, claim: str) -> None:
    assert claim in told(demo, text)
