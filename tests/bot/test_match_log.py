"""The score as a fold over the log: voids, spoken scores, several games."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from bot.chat.match_log import (
    GUESSED_SERVE,
    SERVES,
    fold,
    format_from_json,
    format_to_json,
    played,
    played_on_known_serve,
    read_log,
    sides_to_json,
    unvoided,
)
from knowledge.game import (
    Discipline,
    GameFormat,
    Lineup,
    RallyRotation,
    Scoring,
    match_faults,
    receiver,
    server,
)
from knowledge.vocabulary import PlayerId
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


MIRA, TOM, OKAFOR, LINDQVIST = (PlayerId(n) for n in range(1, 5))


def sides(n: int, starter: int, partner: int, *, ours: bool) -> EntryRow:
    detail = sides_to_json(PlayerId(starter), PlayerId(partner), ours=ours)
    return entry(n, EntryKind.SIDES, detail=detail)


def served(n: int, we_serve: bool = True) -> EntryRow:
    return entry(n, EntryKind.GAME, we_serve=we_serve)


def test_who_started_right_names_server_and_receiver() -> None:
    """4.B.6: at 1-0-2 Mira, who started, serves from the left to whoever is left of theirs."""
    log = [served(1), sides(2, MIRA, TOM, ours=True), *rallies("u", first=3)]
    game = fold(log, BEST_OF_THREE).game
    assert (server(game), receiver(game)) == (MIRA, None)
    told = fold([*log, sides(4, OKAFOR, LINDQVIST, ours=False)], BEST_OF_THREE).game
    assert (server(told), receiver(told)) == (MIRA, LINDQVIST)
    assert (told.ours, told.we_serve) == (1, True), "it may be said late: nothing else changes"


def test_who_started_right_is_taken_back_like_any_line() -> None:
    log = [served(1), sides(2, MIRA, TOM, ours=True), sides(3, TOM, MIRA, ours=True)]
    assert server(fold(log, BEST_OF_THREE).game) == TOM
    voided = [*log, entry(4, EntryKind.VOID, voids=3)]
    assert server(fold(voided, BEST_OF_THREE).game) == MIRA


def test_our_starter_stays_for_the_next_game_and_theirs_is_asked_anew() -> None:
    """A pair may start a game with the other partner; the first serve changes sides."""
    log = [
        served(1),
        sides(2, MIRA, TOM, ours=True),
        sides(3, OKAFOR, LINDQVIST, ours=False),
        *rallies("u" * 11, first=4),
    ]
    # They serve the second game first, and lose the rally: the serve is ours, Mira right.
    second = fold([*log, *rallies("u", first=15)], BEST_OF_THREE).game
    assert second.lineup == Lineup(our_starter=MIRA, our_partner=TOM)
    assert (str(second.call), second.we_serve, server(second)) == ("0-0-1", True, MIRA)
    between = fold([*log, sides(15, TOM, MIRA, ours=True)], BEST_OF_THREE)
    assert (between.games_ours, str(between.game.call)) == (1, "0-0-2")
    assert receiver(between.game) == TOM


def test_rallies_before_anybody_said_who_serves_are_no_evidence() -> None:
    log = [*rallies("ut"), entry(3, EntryKind.SCORE, ours=1, theirs=0, server=1, we_serve=False)]
    log += rallies("t", first=4)
    assert [one.won_by_us for one in played(log, BEST_OF_THREE)] == [True, False, False]
    known = played_on_known_serve(log, BEST_OF_THREE)
    assert [(str(one.before.call), one.before.we_serve) for one in known] == [("0-1-1", False)]
    assert played_on_known_serve([served(1), *rallies("ut", first=2)], BEST_OF_THREE) == played(
        [served(1), *rallies("ut", first=2)], BEST_OF_THREE
    )


def test_a_serve_that_follows_from_a_guess_is_a_guess() -> None:
    guessed = entry(
        2, EntryKind.SCORE, ours=0, theirs=1, server=1, we_serve=True, detail={GUESSED_SERVE: True}
    )
    assert played_on_known_serve([*rallies("t"), guessed, *rallies("u", 3)], ONE_GAME) == ()


def test_a_guess_of_the_first_serve_changes_sides_too_and_stays_a_guess() -> None:
    log = read_log(rallies("u" * 11 + "t"), BEST_OF_THREE)
    # Guessed ours in the first game, so theirs in the second: they score.
    assert str(log.match.game.call) == "1-0-2"
    assert not log.serve_known
    assert log.on_known_serve == ()


def test_a_score_said_first_does_not_tell_who_began_the_game() -> None:
    said = entry(1, EntryKind.SCORE, ours=10, theirs=3, server=1, we_serve=True)
    log = read_log([said, *rallies("u", first=2)], BEST_OF_THREE)
    assert log.match.we_serve_next_game is None
    assert len(log.on_known_serve) == 1
    assert not read_log([said, *rallies("ut", first=2)], BEST_OF_THREE).serve_known


def test_played_rallies_know_their_game_and_tags() -> None:
    log = [served(1), *rallies("u" * 11 + "t", first=2)]
    found = read_log(log, BEST_OF_THREE, tags={2: ("lob",)})
    assert [one.games for one in found.played] == [(0, 0)] * 11 + [(1, 0)]
    assert (found.played[0].tags, found.played[1].tags) == (("lob",), ())
    assert found.games == ((11, 0), (0, 1))
    assert (found.next_game_no, read_log(log[:-1], BEST_OF_THREE).next_game_no) == (2, 2)


@given(st.lists(st.sampled_from("ut"), max_size=60), st.booleans(), st.sampled_from([1, 3, 5]))
def test_each_played_rally_leads_to_the_state_before_the_next(
    letters: list[str], we_serve: bool, best_of: int
) -> None:
    format = GameFormat(target=3, best_of=best_of)
    log = [served(1, we_serve), *rallies("".join(letters), first=2)]
    found = read_log(log, format)
    for one, following in zip(found.played, found.played[1:], strict=False):
        if not one.next.is_over:
            assert one.next == following.before
        else:
            assert (following.before.ours, following.before.theirs) == (0, 0)
            # 5.B, from memory: the first serve of games changes sides.
            assert following.before.we_serve is not one.before.we_started
    if found.played:
        assert found.played[-1].next == found.match.game
    assert len(found.played) <= len(letters)


LINES = st.one_of(
    st.builds(lambda won: {"kind": EntryKind.RALLY, "won_by": won}, st.sampled_from(Winner)),
    st.builds(lambda one: {"kind": EntryKind.GAME, "we_serve": one}, st.booleans()),
    st.builds(lambda won: {"kind": EntryKind.TIMEOUT, "won_by": won}, st.sampled_from(Winner)),
    st.builds(
        lambda ours: {
            "kind": EntryKind.SIDES,
            "detail": sides_to_json(
                MIRA if ours else OKAFOR, TOM if ours else LINDQVIST, ours=ours
            ),
        },
        st.booleans(),
    ),
    st.builds(
        lambda player: {"kind": EntryKind.SIDES, "detail": {SERVES: player}},
        st.sampled_from([MIRA, TOM, OKAFOR, LINDQVIST]),
    ),
    st.builds(
        lambda ours, theirs, server, we_serve: {
            "kind": EntryKind.SCORE,
            "ours": ours,
            "theirs": theirs,
            "server": server,
            "we_serve": we_serve,
        },
        st.integers(0, 2),
        st.integers(0, 2),
        st.sampled_from([1, 2]),
        st.booleans(),
    ),
    st.builds(lambda back: {"kind": EntryKind.VOID, "back": back}, st.integers(1, 9)),
)


@given(
    st.lists(LINES, max_size=60),
    st.sampled_from([GameFormat(target=3), GameFormat(target=3, scoring=Scoring.RALLY)]),
)
def test_any_log_reads_and_ends_once(lines: list[dict[str, object]], format: GameFormat) -> None:
    """Whatever is taken back or put back, in whatever order: no error, no game past its end.

    Nor a state that the chances refuse: it would take every later answer with it.
    """
    log: list[EntryRow] = []
    for fields in lines:
        n = len(log) + 1
        more = dict(fields)
        back = more.pop("back", None)
        if isinstance(back, int):
            if back >= n:
                continue
            more["voids"] = n - back
        log.append(entry(n, **more))  # type: ignore[arg-type]
        found = read_log(log, format)
        assert max(found.match.games_ours, found.match.games_theirs) <= 2
        assert found.match.games_ours + found.match.games_theirs == len(found.finished)
        assert match_faults(found.match) == ()
        points = (found.match.game.ours, found.match.game.theirs)
        assert not _is_past_the_end(*points), points


def _is_past_the_end(ours: int, theirs: int) -> bool:
    """Of a game to 3, win by 2: a point more than was needed."""
    high, low = max(ours, theirs), min(ours, theirs)
    return high > 3 and high - low > 2


def test_undo_goes_back_across_the_end_of_a_game_and_of_the_match() -> None:
    format = GameFormat(target=3)
    log = [served(1), *rallies("uuu" + "ttt" + "uuuu", first=2)]
    over = read_log(log, format)
    for back in range(len(log) - 1):
        voids = [
            entry(len(log) + place, EntryKind.VOID, voids=len(log) - place + 1)
            for place in range(1, back + 1)
        ]
        now = read_log([*log, *voids], format)
        assert now.match == fold(log[: len(log) - back], format)
        assert match_faults(now.match) == ()
    assert over.match.we_won is True
    assert over.games == ((3, 0), (0, 3), (3, 0))


def test_what_follows_a_match_put_back_to_its_end_is_left_out() -> None:
    """The last rally is taken back, another played, and the first put back by its old button."""
    log = [served(1), *rallies("uuu", first=2), entry(5, EntryKind.VOID, voids=4)]
    log += [*rallies("tt", first=6), entry(8, EntryKind.VOID, voids=5)]
    match = fold(log, GameFormat(target=3, best_of=1))
    assert (match.we_won, match.game.ours, match.game.theirs) == (True, 3, 0)


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
