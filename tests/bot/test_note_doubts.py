"""What a note does not vouch for: opinions denied, doubts, what others think. Wordings: dictated
notes of coaches, our own; no source."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import IN_TALK, PEOPLE

from bot.chat.said import Claim, NoteSaid, Question
from bot.chat.understand import understand, understand_note
from knowledge.vocabulary import Seen


def told(claim: Claim) -> str:
    name = PEOPLE[claim.player - 1].removesuffix(" (Bones)").split()[-1]
    return f"{name}: {claim.trait} {claim.value}{' denied' if claim.denied else ''}"


def read(text: str) -> set[str]:
    return set(map(told, understand_note(text, chat=IN_TALK).claims))


def offered(text: str) -> set[str]:
    return set(map(told, understand_note(text, chat=IN_TALK).offered))


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("i dont think ruiz has a good backhand", {"Ruiz: backhand_dink weakness"}),
        ("i dont think hale is slow he just looks it", {"Hale: foot_speed weakness denied"}),
        ("i dont think hale poaches", {"Hale: poaching rarely"}),
        ("i wouldnt say hale is slow", {"Hale: foot_speed weakness denied"}),
        ("im not saying hale is slow", {"Hale: foot_speed weakness denied"}),
        ("i doubt hale is a lefty", {"Hale: hand left denied"}),
        ("its not that hale is slow", {"Hale: foot_speed weakness denied"}),
        ("honestly i dont think hale's backhand is weak", {"Hale: backhand_dink weakness denied"}),
        (
            "i dont think hale and ruiz are quick",
            {"Hale: foot_speed weakness", "Ruiz: foot_speed weakness"},
        ),
        ("i dont think there is any topspin from ruiz", {"Ruiz: topspin rarely"}),
        ("no doubt hale is quick", {"Hale: foot_speed strength"}),
        ("i think hale is quick", {"Hale: foot_speed strength"}),
    ],
)
def test_an_opinion_denied_denies_what_is_thought(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize("text", ["i dont think we should lob hale", "dont think you can lob hale"])
def test_what_we_should_not_do_is_nothing_of_them(text: str) -> None:
    assert read(text) == set()


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("neither hale nor ruiz lobs", {"Hale: lob rarely", "Ruiz: lob rarely"}),
        ("neither hale or ruiz poaches", {"Hale: poaching rarely", "Ruiz: poaching rarely"}),
        (
            "neither hale nor ruiz is slow",
            {"Hale: foot_speed weakness denied", "Ruiz: foot_speed weakness denied"},
        ),
        ("hale doesnt lob and neither does ruiz", {"Hale: lob rarely", "Ruiz: lob rarely"}),
        ("hale doesnt lob nor does ruiz", {"Hale: lob rarely", "Ruiz: lob rarely"}),
        ("hale isnt lefty, neither is ruiz", {"Hale: hand left denied", "Ruiz: hand left denied"}),
        (
            "hale doesnt poach, ruiz doesnt either",
            {"Hale: poaching rarely", "Ruiz: poaching rarely"},
        ),
        ("hale never lobs nor poaches", {"Hale: lob rarely", "Hale: poaching rarely"}),
    ],
)
def test_neither_denies_it_of_both(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize(
    ("text", "open_"),
    [
        ("not sure if hale is left handed", {"Hale: hand left"}),
        (
            "not sure if hale is left handed or just uses both hands on the backhand",
            {"Hale: hand left", "Hale: two_handed_backhand yes"},
        ),
        ("im not sure hale is left handed", {"Hale: hand left"}),
        ("i wonder if hale is a lefty", {"Hale: hand left"}),
        ("unsure whether ruiz has a two handed backhand", {"Ruiz: two_handed_backhand yes"}),
        ("hale is slow dont quote me on it", {"Hale: foot_speed weakness"}),
        (
            "ruiz is slow today but she is just tired so dont read much into it",
            {"Ruiz: foot_speed weakness"},
        ),
    ],
)
def test_a_doubt_is_only_offered(text: str, open_: set[str]) -> None:
    assert read(text) == set()
    assert open_ <= offered(text)


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("no idea if brandt poaches but ruiz poaches a lot", {"Ruiz: poaching often"}),
        ("not sure why but hale poaches a lot", {"Hale: poaching often"}),
        ("hale lobs a lot not sure why", {"Hale: lob often"}),
        ("hale is so quick i dont know how he does it", {"Hale: foot_speed strength"}),
        ("hale might be a lefty", {"Hale: hand left"}),
    ],
)
def test_what_is_not_in_doubt_is_told(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize(
    "text",
    [
        "tom thinks hale has a good forehand i dont agree",
        "hank thinks hale has a good forehand i dont agree its average",
        "mira said ruiz has a weak backhand dont buy it",
        "tom says hale is slow but i disagree",
        "tom says hale has a good serve thats rubbish",
    ],
)
def test_what_somebody_disagrees_with_is_neither_told_nor_offered(text: str) -> None:
    assert read(text) == set()
    assert offered(text) == set()


@pytest.mark.parametrize(
    "text",
    [
        "brandt speeds it up off the forehand and its lethal you dont see it coming",
        "hales backhand is a mess thats rubbish",
    ],
)
def test_words_of_disagreement_may_judge(text: str) -> None:
    assert read(text)


@pytest.mark.parametrize(
    "text",
    ["tom says hale lobs a lot", "hank thinks hale lobs a lot", "people say hale lobs a lot"],
)
def test_what_others_think_is_hearsay(text: str) -> None:
    said = understand_note(text, chat=IN_TALK)
    assert said.seen is Seen.HEARSAY
    assert set(map(told, said.claims)) == {"Hale: lob often"}


@pytest.mark.parametrize(
    "text", ["hale thinks too much", "i think hale lobs a lot", "hale is slow"]
)
def test_what_one_saw_is_none(text: str) -> None:
    assert understand_note(text, chat=IN_TALK).seen is Seen.LIVE


def test_an_opinion_is_a_note_and_asks_nothing() -> None:
    said = understand("tom thinks hale has a good forehand i dont agree", chat=IN_TALK)
    assert [type(one) for one in said] == [NoteSaid]
    asked = understand("tom thinks hale lobs where do i stand", chat=IN_TALK)
    assert any(isinstance(one, Question) for one in asked)


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        (
            "hale hit two balls into the net off a backhand dink but they were really good dinks"
            " from us so dont read much into it",
            set(),
        ),
        (
            "hale missed the drops because of really good returns from us",
            {"Hale: third_shot_drop weakness"},
        ),
        ("hale cant handle pace from us", {"Hale: handles_pace weakness"}),
    ],
)
def test_good_shots_of_ours_are_none_of_theirs(text: str, claims: set[str]) -> None:
    assert read(text) == claims


def test_a_doubt_can_be_taken_up(demo: Talk) -> None:
    before = demo.claims("Hale")
    assert demo.say("not sure if hale is left handed").startswith("Noted as words.")
    assert demo.claims("Hale") == before
    demo.tap("left-handed?")
    assert ("hand", "left", False) in demo.claims("Hale")
