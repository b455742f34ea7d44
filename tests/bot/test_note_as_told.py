"""Claims that the words beside them turn, deny or take away. Wordings: our own, no source."""

from __future__ import annotations

from voices import IN_TALK

from bot.chat.understand import understand_note


def claims(text: str) -> set[str]:
    """Each as "trait value", with "not" before a value denied and the condition behind it."""
    return {
        f"{one.trait} {'not ' if one.denied else ''}{one.value}{f' {one.tag}' if one.tag else ''}"
        for one in understand_note(text, chat=IN_TALK).claims
    }


TURNED = {
    "okafor says always 'mine' and then it's not his": "communication weakness",
    "hale calls mine all the time but never goes": "communication weakness",
    "okafor is not so quick as i thought": "foot_speed not strength",
    "hale isnt as fast as we expected": "foot_speed not strength",
    "okafor flicks it from below, very fast": "speed_up strength",
    "okafor's fh spd-up is heavy": "speed_up strength",
    "okafor isnt that slow back": "lob_defense not weakness moving back",
    "okafor's bh is fine when hes set, floaty when hes moving": (
        "backhand_dink weakness when pulled wide"
    ),
    "okafor's bh is fine when set": "backhand_dink not weakness",
    "okafor erned 1 of 5": "ernie rarely",
    "hale misses 1 in 20 serves": "serve not weakness",
    "okafor is 1m95": "height tall",
    "hale is 1.60m": "height short",
}
GONE = [
    "hale serves short mostly, sometimes long",
    "okafor drives hard, very fast",
    "okafor has a little fear of the net",
    "okafor stands 1.50 m behind the line",
]
AS_BEFORE = {
    "hale calls mine early and never leaves it": "communication strength",
    "hale calls mine and it's always his": "communication strength",
    "okafor is not so quick": "foot_speed weakness",
    "okafor lobs a lot, very fast": "foot_speed strength",
    "okafor has fast hands on the fh": "counter_forehand strength",
    "hale is slow back to her side": "foot_speed weakness",
    "okafor's bh is lethal when set": "backhand_dink strength",
    "okafor erned 2 of 3 line dinks": "ernie often",
    "hale misses 4 in 10 serves": "serve weakness",
    "hale serves short": "serve weakness",
    "hale is a little guy": "height short",
    "hale serves short, sometimes way too long": "serve weakness",
}


def test_what_stands_beside_a_claim_turns_it() -> None:
    told = {text: claims(text) for text in TURNED}
    assert told == {text: {claim} for text, claim in TURNED.items()}


def test_what_only_looks_like_it_turns_nothing() -> None:
    told = {text: claims(text) for text in AS_BEFORE}
    assert {text: claim for text, claim in AS_BEFORE.items() if claim not in told[text]} == {}


def test_what_is_said_of_the_shot_is_no_claim_of_the_player() -> None:
    assert {text: claims(text) for text in GONE if claims(text)} == {}
