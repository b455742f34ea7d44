"""A rule is told in the numbers of the game that is played.

Official Rulebook 2025: 5.B ends, 12.B scoring (rally scoring provisional, its winning point on
serve, which the 2026 edition drops), 4.B.3 one server in rally scoring.
"""

from __future__ import annotations

import pytest

from knowledge.advice import Advice
from knowledge.game import GameFormat, MatchState, Scoring, start, state_at
from knowledge.rulebook.answer import advise
from knowledge.situation import Asked, Situation
from knowledge.vocabulary import Topic

RALLY_21 = GameFormat(target=21, scoring=Scoring.RALLY)
SINGLE_15 = GameFormat(target=15, best_of=1)


def answered(words: str, format: GameFormat | None, points: tuple[int, int] = (0, 0)) -> Advice:
    match = None
    if format is not None:
        game = start(format, we_serve=True)
        if points != (0, 0):
            ours, theirs = points
            server = 1 if format.has_two_servers else None
            game = state_at(format, ours=ours, theirs=theirs, we_serve=True, server=server)
        match = MatchState(game=game)
    asked = Asked(words=words)
    return advise(Situation(topic=Topic.RULES_QUESTION, asked=asked, match=match))


def text(advice: Advice) -> str:
    reasons = [reason.text for reason in advice.reasons]
    return "\n".join(filter(None, [advice.call, *reasons, advice.now, advice.unless]))


@pytest.mark.parametrize(
    ("words", "says", "never"),
    [
        ("win by 2?", "to 21, no cap", "serving side scores"),
        ("do we win by two", "20-20? Play on", "10-10"),
        ("can we score when we receive", "Score on every rally", "Receivers win the serve"),
        ("do receivers score a point", "and they serve", "No point"),
        ("what do the three numbers mean", "two numbers", "server 1 or 2"),
        ("does the game start with second server", "Elsewhere: right if", "0-0-2"),
        ("switch ends at 11?", "at 11 (to 21)", "at 6"),
        ("freeze at 20?", "2025: the winning point only on serve", "0-0-2"),
        ("is there a freeze", "2026 drops that", "10 seconds"),
        ("do we freeze at game point", "2025: the winning point only on serve", "10-10"),
    ],
)
def test_rally_scoring_to_21(words: str, says: str, never: str) -> None:
    found = text(answered(words, RALLY_21))
    assert says in found
    assert never not in found


def test_a_freeze_the_event_has_is_told_as_its_own() -> None:
    format = GameFormat(target=21, scoring=Scoring.RALLY, freeze_on_serve=True)
    assert "At 20 and receiving" in text(answered("freeze at 20?", format))


@pytest.mark.parametrize(
    ("format", "points", "now"),
    [
        (RALLY_21, (0, 0), "Not in this game: change after it."),
        (RALLY_21, (11, 4), "Not in this game: change after it."),
        (GameFormat(), (6, 2), "Not in this game: change after it."),
        (SINGLE_15, (7, 2), "In this game: when one side reaches 8."),
        (SINGLE_15, (8, 2), "Change now; the same player goes on serving."),
        (None, (0, 0), "Change now; the same player goes on serving."),
    ],
)
def test_ends_are_changed_in_the_decider_only(
    format: GameFormat | None, points: tuple[int, int], now: str
) -> None:
    assert answered("do we change ends now", format, points).now == now


@pytest.mark.parametrize(
    ("format", "says"),
    [
        (GameFormat(target=15), "14-14? Play on until one side leads by two."),
        (GameFormat(target=11, cap=15), "10-10? By two, or first to 15."),
        (GameFormat(target=15, win_by=1), "Win by one: this one is to 15, no cap."),
    ],
)
def test_how_this_game_is_won(format: GameFormat, says: str) -> None:
    assert says in text(answered("win by 2?", format))


@pytest.mark.parametrize("words", ["win by 2?", "can we score when we receive", "who scores"])
def test_the_common_game_is_told_as_the_rulebook_has_it(words: str) -> None:
    assert text(answered(words, GameFormat())) == text(answered(words, None))
