"""A note told behind the question that it belongs to. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.wording import wording


@pytest.mark.parametrize(
    ("said", "noted"),
    [
        (
            "where do i serve lindqvist and i think his return floats when your deep",
            "Noted. Lindqvist: return weak.",
        ),
        (
            "who do we target and i think okafor has a weak backhand",
            "Noted. Okafor: backhand dink weak.",
        ),
        (
            "where do we dink okafor cause i really think he is slow",
            "Noted. Okafor: foot speed weak.",
        ),
        (
            "where do i serve lindqvist bc he returns short",
            "Noted. Lindqvist: return depth weak.",
        ),
        (
            "i think okafors backhand got better, is it still the plan",
            "Noted. Okafor: backhand dink strong.",
        ),
        ("where do i return and i know okafor poaches", "Noted. Okafor: poaching often."),
    ],
)
def test_it_is_noted_and_the_question_answered(demo: Talk, said: str, noted: str) -> None:
    before = len(demo.notes())
    reply = demo.say(said)
    answer = reply.removeprefix(noted).removeprefix(f"\n{wording('note.hedged')}")
    assert answer != reply
    assert answer.startswith("\n\n")
    assert len(demo.notes()) == before + 1


@pytest.mark.parametrize(
    "said",
    [
        "where do i serve lindqvist, i think he stands too far back",
        "where do i serve lindqvist i think he stands too far back",
    ],
)
def test_what_i_think_of_them_is_kept_as_words(demo: Talk, said: str) -> None:
    reply = demo.say(said)
    assert reply.startswith("Noted, all kept as words: I read no trait in it.\n\nServe Lindqvist")
    assert demo.notes()[0].text == said


@pytest.mark.parametrize(
    "said",
    [
        "where do i serve lindqvist if he returns short",
        "where do i serve when i think okafor is slow",
        "who takes it when okafor lobs and lindqvist poaches",
        "where do i dink okafor and lindqvist",
        "do you think i should serve okafor wide",
        "who serves first i think they do",
        "do we stack and i think tom should take the middle",
        "where do i stand and i think i should move",
    ],
)
def test_what_is_supposed_or_of_us_is_no_note(demo: Talk, said: str) -> None:
    before = demo.notes()
    demo.say(said)
    assert demo.notes() == before


@pytest.mark.parametrize("where", ["your deep", "youre deep", "were deep", "we are deep"])
def test_how_deep_we_stand_is_no_depth_of_theirs(demo: Talk, where: str) -> None:
    demo.say(f"lindqvists return floats when {where}")
    told = {(trait, value) for trait, value, _ in demo.claims("Lindqvist")}
    assert ("return", "weakness") in told
    assert ("return_depth", "strength") not in told
