"""What ends a game and what does not, and whose match it was; examples of our own, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest
from voices import EVENING

from bot.chat.results_doubted import is_going_on, may_end
from bot.chat.said import MatchSaid, ResultSaid, ScoreSaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

MATCH = replace(EVENING, match_on=True, theirs=(PlayerId(3), PlayerId(4)))


@pytest.mark.parametrize(
    ("text", "ours", "theirs", "we_serve"),
    [
        ("we're up nine seven but receiving", 9, 7, False),
        ("they won that on a let cord. 8-6 to them, still serving", 6, 8, False),
        ("up 10-7, returning, so nothing is won yet", 10, 7, False),
        ("we lost that one. 4-6 down, they serve", 4, 6, False),
        ("won that rally finally, 5-3 us and serving", 5, 3, True),
        ("they took it at the net, 9-8 them, our serve", 8, 9, True),
        ("10-9 to us, match point, receiving", 10, 9, False),
        ("8-10 down but we got the ball back", 8, 10, True),
        ("10-5 over these two and we serve", 10, 5, True),
        ("we took it 9-7, our serve", 9, 7, True),
    ],
)
def test_a_score_somebody_serves_at_is_no_result(
    text: str, ours: int, theirs: int, we_serve: bool
) -> None:
    [told] = understand(text, chat=MATCH)
    assert isinstance(told, ScoreSaid)
    assert told.score is not None
    assert (told.score.ours, told.score.theirs, told.score.we_serve) == (ours, theirs, we_serve)


@pytest.mark.parametrize(
    ("text", "games"),
    [
        ("lost 9-11, we were serving at the end", ((9, 11),)),
        ("won 11-9 on their serve", ((11, 9),)),
        ("beat them 11-8 serving into the wind", ((11, 8),)),
        ("won 15-13 receiving all day", ((15, 13),)),
        ("lost 11-6, couldnt return anything", ((6, 11),)),
        ("won the first 11-9, lost the second 8-11", ((11, 9), (8, 11))),
        ("11 6 11 7 won", ((11, 6), (11, 7))),
        ("they nicked the first 11-9", ((9, 11),)),
        ("they took the second one eleven eight", ((8, 11),)),
        ("won the game to 15 by 15-11", ((15, 11),)),
        ("we closed the last game out 21-18", ((21, 18),)),
        ("15-13 loss. single game", ((13, 15),)),
        ("eleven two us", ((11, 2),)),
        ("21-17 rally scoring, us", ((21, 17),)),
    ],
)
def test_a_game_that_is_over_is_one(text: str, games: tuple[tuple[int, int], ...]) -> None:
    [told] = understand(text, chat=EVENING)
    assert isinstance(told, ResultSaid)
    assert told.games == games


@pytest.mark.parametrize(
    ("text", "tally"), [("L 0-2", (0, 2)), ("w 2-1", (2, 1)), ("l 1-2", (1, 2)), ("W 2-0", (2, 0))]
)
def test_a_letter_and_the_games_are_a_match(text: str, tally: tuple[int, int]) -> None:
    [told] = understand(text, chat=EVENING)
    assert isinstance(told, ResultSaid)
    assert (told.tally, told.won) == (tally, tally[0] > tally[1])


@pytest.mark.parametrize(
    "text",
    [
        "okafor and ruiz won theirs 11-4 while i was at the car",
        "van der meer lost his first match 8-11, 11-9, 7-11, i heard",
        "on the show court its 9-3",
        "courts 3 to 6 open, 7 to 8 closed",
        "back at 3 15",
        "warm up starts at nine thirty",
        "brandt 0 6 bh",
        "nxt door is 8-8 lol",
        "in 99 i lost a tennis final 6-7 6-7",
        "castellano short srv at 9 9",
    ],
)
def test_what_others_did_is_no_score_of_ours(text: str) -> None:
    told = understand(text, chat=EVENING)[-1]
    assert not isinstance(told, ResultSaid | ScoreSaid | MatchSaid)


@pytest.mark.parametrize(
    "text",
    ["okafor serving at 8 8", "they serve at 8-8", "we serve at 2 5", "9-4 us", "down at 2 8"],
)
def test_a_score_that_only_looks_like_a_moment_is_one(text: str) -> None:
    assert isinstance(understand(text, chat=MATCH)[-1], ScoreSaid)


@pytest.mark.parametrize(
    ("game", "may"),
    [((11, 9), True), ((15, 2), True), ((10, 8), True), ((12, 10), True), ((5, 5), False),
     ((10, 4), False), ((38, 1), False), ((3, 5), False), ((16, 14), True)],
)  # fmt: skip
def test_a_game_ends_at_a_target_or_by_two_beyond_one(game: tuple[int, int], may: bool) -> None:
    # By the rulebook's targets (11, 15, 21) and win by two; 7, 9 and 25 are common practice.
    assert may_end(*game) is may


def test_who_serves_in_the_next_game_says_nothing_of_this_one() -> None:
    assert not is_going_on("won the first 11 9 they serve")
    assert is_going_on("10 8 up but receiving")
