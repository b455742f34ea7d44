"""The score as a fold over the log: voids, spoken scores, several games."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from bot.chat.match_log import fold, format_from_json, format_to_json, unvoided
from knowledge.game import Discipline, GameFormat, RallyRotation, Scoring
from scouting_db.values import EntryKind, EntryRow, Micros, Winner

ONE_GAME = GameFormat(best_of=1)
BEST_OF_THREE = GameFormat()


def entry(n: int, kind: EntryKind = EntryKind.RALLY, **fields: object) -> EntryRow:
    return EntryRow(n=n, game_no=1, kind=kind, at=Micros(n), **fields)  # type: ignore[arg-type]


def rallies(letters: str, first: int = 1) -> list[EntryRow]:
    return [
        entry(n, won_by=Winner.US if letter == "u" else Winner.THEM)
        for n, letter in enumerate(letters, start=first)
    ]


def test_rallies_move_the_score_by_the_rulebook() -> None:
    # From 0-0-2 (2025 edition, 4.B.6): we score twice, lose the serve, they score once.
    game = fold(rallies("uutt"), BEST_OF_THREE).game
    assert str(game.call) == "1-2-1"
    assert not game.we_serve


def test_a_void_takes_a_rally_out_and_a_void_of_a_void_puts_it_back() -> None:
    log = rallies("uu")
    voided = [*log, entry(3, EntryKind.VOID, voids=2)]
    assert fold(voided, BEST_OF_THREE).game.ours == 1
    restored = [*voided, entry(4, EntryKind.VOID, voids=3)]
    assert fold(restored, BEST_OF_THREE).game.ours == 2


@given(st.lists(st.sampled_from("ut"), min_size=1, max_size=20), st.data())
def test_undoing_the_last_entries_gives_the_earlier_score(
    letters: list[str], data: st.DataObject
) -> None:
    log = rallies("".join(letters))
    back = data.draw(st.integers(1, len(log)))
    voids = [
        entry(len(log) + place, EntryKind.VOID, voids=len(log) - place + 1)
        for place in range(1, back + 1)
    ]
    assert fold([*log, *voids], ONE_GAME) == fold(log[: len(log) - back], ONE_GAME)


def test_a_spoken_score_sets_what_it_says() -> None:
    said = entry(3, EntryKind.SCORE, ours=6, theirs=4, server=2, we_serve=True)
    game = fold([*rallies("ut"), said], BEST_OF_THREE).game
    assert (game.ours, game.theirs, game.server, game.we_serve) == (6, 4, 2, True)
    # 6-4-2 may be served by either partner: the call alone does not settle it.
    assert game.serving_court is None


def test_the_next_rally_after_a_won_game_opens_the_next_game() -> None:
    match = fold(rallies("u" * 11 + "t"), BEST_OF_THREE)
    assert (match.games_ours, match.games_theirs) == (1, 0)
    # We started game 1, so they start game 2, and win its first point.
    assert str(match.game.call) == "1-0-2"


def test_a_match_ends_once() -> None:
    match = fold(rallies("u" * 11), ONE_GAME)
    assert match.we_won is True


def test_timeouts_are_counted_per_game() -> None:
    # Two a game to 11 (2025 edition, 10.A).
    log = [*rallies("u"), entry(2, EntryKind.TIMEOUT, won_by=Winner.US)]
    assert fold(log, BEST_OF_THREE).timeouts_left == (1, 2)
    assert fold([*log, *rallies("u" * 11, first=3)], BEST_OF_THREE).timeouts_left == (2, 2)


def test_unvoided_keeps_order() -> None:
    log = [*rallies("utu"), entry(4, EntryKind.VOID, voids=1)]
    assert [one.n for one in unvoided(log)] == [2, 3]


def test_formats_round_trip() -> None:
    for format in (
        GameFormat(),
        GameFormat(target=15, best_of=1),
        GameFormat(target=21, scoring=Scoring.RALLY),
        GameFormat(discipline=Discipline.SINGLES, cap=15, win_by=1),
        GameFormat(
            target=21,
            scoring=Scoring.RALLY,
            freeze_on_serve=True,
            rally_rotation=RallyRotation.NEVER_SWAP,
        ),
    ):
        assert format_from_json(format_to_json(format)) == format
