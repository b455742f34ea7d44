"""Points of another court, another pair or another day never move the score of our match."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from coach_talks import coach_at_a_match, new_coach
from talk import Talk


@pytest.fixture
def match() -> Iterator[Talk]:
    """Ilka and Noor lead Petra and Joost 4-2; Saskia and Wim are in the book, Bram is not."""
    talk = coach_at_a_match()
    talk.say("we serve")
    talk.say("4-2")
    yield talk
    talk.store.close()


@pytest.mark.parametrize(
    "said",
    [
        "watching court 3: saskia and wim up 8-3",
        "saskia/wim are up 9-4 over there",
        "saskia and wim up 9-4 on court 3",
        "saskia n wim won 11-6 on court 3",
        "wim and saskia just went up 10-2",
        "wim and saskia are 10 all",
        "saskia and wim lead 7-5",
        "saskia and wim beat bram and lotte 11-7 11-9",
        "bram and lotte lost 11-4 on 5",
        "bram/lotte up 9-4",
        "court 2 is at 6-6",
        "saskia up 5-1 next door",
        "beat saskia and wim 11-4 11-6",
        "they beat us last month 11-5 11-6, saskia and wim",
        "lost to them last month 11-5 11-6",
        "last time petra and joost beat us 11-5 11-6",
        "we lost to saskia and wim 11-3 11-4 in march",
        "saskia and her partner lost to the sisters 11-7",
        "on court 6 the sisters won 11-7 against two men",
    ],
)
def test_points_of_others_are_kept_as_words(match: Talk, said: str) -> None:
    told = match.say(said).splitlines()
    assert told[0] == "Another match's points: kept as words, not counted."
    assert told[1] == "Yours stands: 4-2-2. We serve."
    assert match.notes()[0].text == said
    match.tap("undo")
    assert match.notes() == ()


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("petra and joost up 7-4", "7-4-1. They serve."),
        ("we're up 5-3 on court 3", "5-3-2. We serve."),
        ("noor and ilka up 5-2", "5-2-2. We serve."),
        ("petra and joost won 11-4", "Game 1 theirs, 4-11."),
        ("drops and drives 5-2", "5-2-2. We serve."),
        ("we won 11-7 against the wind", "Game 1 ours, 11-7."),
    ],
)
def test_points_of_ours_count_as_before(match: Talk, said: str, stands: str) -> None:
    assert match.say(said).startswith(stands)


def test_a_game_is_told_as_usual_after_points_of_others(match: Talk) -> None:
    match.say("saskia n wim won 11-6 on court 3")
    assert match.say("lost first 11-9").startswith("Game 1 theirs, 9-11.")
    assert match.say("2nd game 11 5 to us").startswith("Game 2 ours, 11-5.")


def test_a_match_of_last_month_is_kept_with_no_match_on() -> None:
    talk = new_coach()
    told = talk.say("they beat us last month 11-5 11-6, saskia and wim")
    assert told == "Another match's points: kept as words, not counted."
    talk.store.close()
