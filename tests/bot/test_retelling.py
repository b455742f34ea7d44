"""The last answer told otherwise: why, more, shorter, again."""

from __future__ import annotations

import pytest
from talk import Talk

ALL_TOLD = "That's all I have on it. Ask the next one:"
ASK_FIRST = "Ask me something first"


@pytest.mark.parametrize(
    "said", ["more", "tell me more", "anything else?", "go on", "what else", "can you elaborate"]
)
def test_more_gives_the_reasons_in_full_and_then_says_that_is_all(demo: Talk, said: str) -> None:
    demo.say("where do I dink okafor")
    why = demo.say("why?")
    demo.say("where do I dink okafor")
    assert demo.say(said) == why
    assert demo.say(said) == ALL_TOLD
    assert [one.label for one in demo.buttons] == ["the middle", "game plan", "one-line cue"]


def test_more_in_a_match_gives_the_long_answer_first(demo: Talk) -> None:
    long = demo.say("where do I dink okafor")
    demo.say("/mode match")
    short = demo.say("where do I dink okafor")
    assert len(short.splitlines()) < len(long.splitlines())
    assert demo.say("more") == long
    assert "maths" in demo.say("more")
    assert demo.say("more") == ALL_TOLD


def test_shorter_comes_down_to_the_call(demo: Talk) -> None:
    lines = demo.say("where do I dink okafor").splitlines()
    short = demo.say("shorter").splitlines()
    assert short[:2] == lines[:2]
    assert len(short) < len(lines)
    for _ in range(2):
        assert demo.say("too long").splitlines() == lines[:1]
    assert demo.say("more").splitlines() == lines


@pytest.mark.parametrize("said", ["again", "repeat that", "say that again please", "once more?"])
def test_again_repeats_what_was_told_as_it_was_told(demo: Talk, said: str) -> None:
    first = demo.say("where do I dink okafor")
    assert demo.say(said) == first
    short = demo.say("shorter")
    assert demo.say(said) == short
    why = demo.say("why")
    assert demo.say(said) == why


def test_why_tells_what_an_answer_weighed_and_the_notes_behind_it(demo: Talk) -> None:
    demo.say("where do I serve okafor?")
    why = demo.say("why")
    assert why.startswith("Serve Okafor")
    assert "Okafor jams at the body (book" in why
    assert "“hates balls at the body”, Mira, 3 days ago" in why
    assert demo.say("more") == ALL_TOLD


def test_a_formation_has_every_position_told_for_why(demo: Talk) -> None:
    demo.say("should we stack?")
    why = demo.say("why")
    assert why.startswith("Stack on both: Mira always left")
    assert "Mira returns right: Tom waits outside right; then Mira left, Tom right." in why
    assert demo.say("more") == ALL_TOLD


@pytest.mark.parametrize("said", ["why?", "why"])
def test_why_before_anything_was_asked(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith(ASK_FIRST)


def test_thanks_in_between_changes_nothing(demo: Talk) -> None:
    demo.say("where do I dink okafor")
    why = demo.say("why?")
    demo.say("where do I dink okafor")
    demo.say("thanks!")
    demo.say("hello")
    assert demo.say("why?") == why


def test_nothing_is_stored_by_any_of_it(demo: Talk) -> None:
    demo.say("where do I dink okafor")
    before = demo.stored()
    for said in ("more", "shorter", "again", "why", "thanks", "you suck"):
        demo.say(said)
    assert demo.stored() == before


def test_somebody_who_only_reads_may_ask_for_more(demo: Talk) -> None:
    demo.is_group = True
    demo.chat = "evening"
    demo.bind_new_book()
    demo.say("who covers the middle")
    guest = demo.of("Guest")
    assert guest.say("more").splitlines()[0] == demo.say("again").splitlines()[0]


@pytest.mark.parametrize("asked", ["only the first line", "just the call", "first line only"])
def test_only_the_first_line_is_one_line(demo: Talk, asked: str) -> None:
    whole = demo.say("game plan").splitlines()
    assert demo.say(asked).splitlines() == whole[:1]
    assert len(whole) > 1


HOW_SURE = [
    "how sure",
    "how sure is that",
    "how certain are you",
    "are you sure about that?",
    "you sure?",
    "sure?",
    "ok but how sure are you of that",
    "how sure are u abt that",
    "how sure would you be of that",
    "how reliable is that call",
    "how much can i trust that",
    "how likely is that right",
    "how sure r u, 1 to 10",
]


@pytest.mark.parametrize("said", HOW_SURE)
def test_how_sure_tells_the_chance_that_the_call_is_best_and_what_it_rests_on(
    demo: Talk, said: str
) -> None:
    call = demo.say("where do I dink okafor").splitlines()[0]
    best = next(line for line in demo.say("why").splitlines() if "the best" in line)
    told = demo.say(said).splitlines()
    assert told[:2] == [call, best]
    assert told[2] == "It leans that way, no more."
    assert "Okafor's backhand dink is weak (book: 4 notes)" in told[3]


def test_how_sure_of_a_target_is_no_repeat_of_why(demo: Talk) -> None:
    call, *_ = demo.say("who do we target").splitlines()
    sure, why = demo.say("how sure is that"), demo.say("why")
    assert sure.startswith(f"{call}\nThe chance that this call is the best: ")
    assert len(sure.splitlines()) < len(why.splitlines())


def test_how_sure_of_a_chance_is_how_far_it_may_be_off(demo: Talk) -> None:
    demo.say("win chance")
    assert "8 times in 10 between" in demo.say("how sure is that")


@pytest.mark.parametrize("said", ["how sure are you", "are you sure?"])
def test_how_sure_before_anything_was_asked_is_no_answer_of_mine(demo: Talk, said: str) -> None:
    assert "the best" not in demo.say(said)


@pytest.mark.parametrize(
    "said",
    ["sure", "ok sure", "we are confident", "sure thing", "how sure is it that we win",
     "are you sure its out", "that is solid"],
)  # fmt: skip
def test_what_agrees_or_asks_of_something_else_is_not_how_sure(demo: Talk, said: str) -> None:
    demo.say("where do I dink okafor")
    assert "that this call is the best" not in demo.say(said)


@pytest.mark.parametrize("said", ["why 3 of 10", "why drive 3 of 10?", "how come 3 in 10"])
def test_why_so_often_tells_the_mix_and_what_varying_is_worth(demo: Talk, said: str) -> None:
    demo.say("drive or drop")
    mix = demo.say("exact mix")
    assert "3 drive" in mix
    assert demo.say(said) == mix


def test_why_a_chance_is_what_it_is_tells_its_reasons(demo: Talk) -> None:
    demo.say("win chance")
    why = demo.say("why")
    demo.say("win chance")
    assert demo.say("why only 4 in 10?") == why
