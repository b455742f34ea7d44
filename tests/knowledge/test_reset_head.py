"""Clearing the head: what happened picks the reset; luck or leak is computed; then the next ball.

The routines are common practice, no source.
"""

from __future__ import annotations

import tomllib
from dataclasses import replace
from typing import Any

import pytest
from noted_players import MIRA, TOM, match, often_noted, player
from voices import CASES

from knowledge.advice import CALL_LIMIT, Advice
from knowledge.cautions import HEAT_DEFERS
from knowledge.chances import stretch_chance
from knowledge.game import GameFormat, MatchState, PlayedRally, start
from knowledge.general_rule import LINE_LIMIT
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics import reset_head
from knowledge.tactics.bad_stretch import bad_stretch
from knowledge.vocabulary import Side, Topic

OKAFOR = player(3, "Okafor", Side.LEFT)
LINDQVIST = player(4, "Lindqvist", Side.RIGHT, *often_noted("third_shot_drop weakness"))

SAID: dict[str, Any] = tomllib.loads((CASES / "resets.toml").read_text(encoding="utf-8"))
EXAMPLES = [(id, text) for id, row in SAID.items() for text in row["said"]]

NUMBER_LIMIT = 2 * LINE_LIMIT
"""The luck-or-leak line may take two lines of a phone."""


def ask(words: str, *theirs: OnCourt, **asked: Any) -> Advice:
    situation = match(Topic.RESET_HEAD, *theirs)
    return reset_head.advise(replace(situation, asked=Asked(words=words, **asked)))


def _played(results: str, tag: str = "") -> tuple[PlayedRally, ...]:
    """Rallies by result, "w" or "l", played on in one game; lost ones carry the tag."""
    state, played = start(GameFormat(target=21), we_serve=True), []
    for result in results:
        tags = (tag,) if tag and result == "l" else ()
        rally = PlayedRally(before=state, won_by_us=result == "w", tags=tags)
        played.append(rally)
        state = rally.next
    return tuple(played)


@pytest.mark.parametrize(("id", "text"), EXAMPLES)
def test_what_happened_picks_the_reset(id: str, text: str) -> None:
    situation = Situation(topic=Topic.RESET_HEAD, asked=Asked(words=text), ours=(MIRA, TOM))
    assert reset_head.find_reset(situation).id == id


def test_every_reset_has_an_example() -> None:
    assert {one.id for one in reset_head.resets()} == set(SAID)


@pytest.mark.parametrize("id", sorted(SAID))
def test_each_has_a_call_one_to_keep_one_to_change_and_words(id: str) -> None:
    advice = ask(SAID[id]["said"][0])
    keep, change, say = (reason.text for reason in advice.reasons)
    assert keep.startswith("Keep")
    assert change.startswith("Change")
    assert say.startswith("Say")
    assert len(advice.call) <= CALL_LIMIT
    assert all(len(text) <= LINE_LIMIT for text in (keep, change, say))


def test_the_next_opponents_come_with_a_first_ball() -> None:
    advice = ask("we lost", OKAFOR, LINDQVIST)
    assert advice.unless == "Next, Okafor/Lindqvist: Return deep at Lindqvist. Run in."


def test_without_notes_the_first_ball_is_the_plain_one() -> None:
    advice = ask("we lost", OKAFOR, player(4, "Hale", Side.RIGHT))
    assert advice.unless == "Next, Okafor/Hale: return deep, thirds to the middle."


def test_without_opponents_their_names_are_asked_for() -> None:
    assert ask("we lost").unless == "Next opponents? Name them: I give one ball."


def test_in_a_running_match_it_is_the_next_ball() -> None:
    situation = replace(
        match(Topic.RESET_HEAD, OKAFOR, LINDQVIST),
        asked=Asked(words="im so angry"),
        match=MatchState(game=start(GameFormat(), we_serve=True)),
    )
    advice = reset_head.advise(situation)
    assert advice.unless is not None
    assert advice.unless.startswith("Next ball: Return deep")
    assert Topic.TIMEOUT_NOW in {one.topic for one in advice.choices}


def test_a_run_said_is_weighed_against_chance() -> None:
    """Even rallies at the usual rates average one half: counted by the same exact sweep."""
    advice = ask("lost 5 in a row", lost_in_a_row=5)
    assert advice.number == "Lost 5 in a row: luck alone in 47 of 100 games: keep playing."
    rallies = 43  # a usual game to 11: expected_rallies, tested for itself
    expected = stretch_chance([0.5] * rallies, lost=5, of=5)
    assert advice.numbers["stretch_chance"] == pytest.approx(expected, abs=0.03)


@pytest.mark.parametrize(
    ("results", "words"),
    [
        ("wwwlll", "3 in a row"),
        ("wwllwll", "4 of the last 5"),
        ("wwllwllwllwl", "7 of the last 10"),
        ("wlwlwlw", None),
        ("lll" + "w", None),
        ("", None),
    ],
)
def test_the_stretch_is_read_from_the_log(results: str, words: str | None) -> None:
    situation = replace(match(Topic.RESET_HEAD), played=_played(results))
    found = bad_stretch(situation)
    assert (None if found is None else found.words) == words


def test_a_rare_stretch_asks_for_a_change_and_a_common_one_for_none() -> None:
    rare = ask("head", lost_in_a_row=12).number
    common = ask("head", lost_in_a_row=4).number
    assert rare is not None
    assert rare.endswith("change one thing.")
    assert common is not None
    assert common.endswith("keep playing.")


def test_the_same_error_three_times_is_a_leak_whatever_chance_says() -> None:
    situation = replace(match(Topic.RESET_HEAD), played=_played("wwlll", tag="third net"))
    advice = reset_head.advise(situation)
    assert advice.reasons[1].text == "Change: third net, the same error again"
    assert advice.number is not None
    assert "a leak" in advice.number
    other = replace(situation, played=_played("wwlll"))
    assert "leak" not in (reset_head.advise(other).number or "")


@pytest.mark.parametrize("run", range(3, 20))
def test_the_line_on_luck_fits(run: int) -> None:
    number = ask("head", lost_in_a_row=run).number
    assert number is not None
    assert len(number) <= NUMBER_LIMIT


@pytest.mark.parametrize(
    ("words", "line"),
    [
        ("12 minutes to the next match", "12 minutes: sip water, shade, one plan."),
        ("next match in half an hour", "30 minutes: drink, shade, a small bite."),
        ("twenty min and we are on again", "20 minutes: drink, shade, a small bite."),
        ("half hour to the next one", "30 minutes: drink, shade, a small bite."),
        ("2 hours till we play", "120 minutes: eat light now, drink, shade."),
        ("we lost", None),
    ],
)
def test_the_time_until_the_next_match_is_used(words: str, line: str | None) -> None:
    assert ask(words).assumed == line


def test_heat_and_shaking_bring_the_usual_caution() -> None:
    assert ask("we lost", hot=True).caution == HEAT_DEFERS
    assert ask("we lost").caution is None
    assert "chest pain" in (ask("my hands are shaking").caution or "")
