"""What rallies say of rates, as read: voids, the running game, and evidence by its name."""

from __future__ import annotations

import random

import pytest
from databases import new_team

from bot.chat.match_log import unvoided
from knowledge.evidence import RateTally
from knowledge.vocabulary import (
    Ending,
    EvidenceId,
    PlayerId,
    Rate,
    Seen,
    Stroke,
    Trait,
    Value,
)
from scouting_db.book import Book
from scouting_db.match_rates import tallies_of
from scouting_db.session import Store
from scouting_db.values import (
    EntryKind,
    EntryRow,
    MatchId,
    MatchState,
    NewObservation,
    RallyRow,
    RateRow,
    Winner,
)


def a_match(book: Book, state: MatchState) -> tuple[MatchId, PlayerId]:
    tom, mira = book.add_player("Tom"), book.add_player("Mira")
    okafor, hale = book.add_player("Okafor"), book.add_player("Hale")
    match = book.announce(
        our_pair=book.pair_of(tom, mira),
        their_pair=book.pair_of(okafor, hale),
        format={},
        state=state,
    )
    return match, tom


def play(book: Book, match: MatchId, who: PlayerId, made: str, *, game_no: int = 1) -> list[int]:
    """A logged rally for each letter, "y" where the return went in and "n" where it did not."""
    lines = []
    for letter in made:
        row = book.append(match, EntryKind.RALLY, won_by=Winner.US, game_no=game_no)
        assert isinstance(row, EntryRow)
        rate = RateRow(match=match, n=row.n, player=who, rate=Rate.RETURN_IN, made=letter == "y")
        book.count_rates(match, row.n, [] if letter == "-" else [rate])
        lines.append(row.n)
    return lines


def rate_tallies(
    book: Book, players: list[PlayerId], *, between_games: MatchId | None = None
) -> tuple[RateTally, ...]:
    return tallies_of(book.match_rates(), players, between_games=between_games)


def counted(tallies: tuple[RateTally, ...]) -> list[tuple[int, int, int, bool]]:
    return [(len(one.made), len(one.missed), one.logged, one.is_settled) for one in tallies]


def test_voided_rallies_do_not_count_and_come_back_with_redo(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        match, tom = a_match(book, MatchState.OVER)
        lines = play(book, match, tom, "yyn-")
        assert counted(rate_tallies(book, [tom])) == [(2, 1, 4, True)]
        (tally,) = rate_tallies(book, [tom])
        assert tally.made == tuple(f"rally:{match}:{n}" for n in lines[:2])
        void = book.void(match, lines[1])
        assert counted(rate_tallies(book, [tom])) == [(1, 1, 3, True)]
        book.void(match, void.n)
        assert counted(rate_tallies(book, [tom])) == [(2, 1, 4, True)]


def test_the_running_game_stands_apart_until_it_is_over(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        match, tom = a_match(book, MatchState.RUNNING)
        play(book, match, tom, "yyy")
        play(book, match, tom, "nn-", game_no=2)
        assert counted(rate_tallies(book, [tom])) == [(3, 0, 3, True), (0, 2, 3, False)]
        between = rate_tallies(book, [tom], between_games=match)
        assert counted(between) == [(3, 2, 6, True)]
        book.set_state(match, MatchState.OVER)
        assert counted(rate_tallies(book, [tom])) == [(3, 2, 6, True)]


def test_nobody_else_and_no_other_match_gets_into_a_tally(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        first, tom = a_match(book, MatchState.OVER)
        second, other = a_match(book, MatchState.OVER)
        play(book, first, tom, "y")
        play(book, second, tom, "n")
        play(book, second, other, "nn")
        assert counted(rate_tallies(book, [tom])) == [(1, 0, 1, True), (0, 1, 3, True)]
        assert rate_tallies(book, []) == ()
        everybody = rate_tallies(book, [tom, other])
        ids = [each for one in everybody for each in (*one.made, *one.missed)]
        assert len(set(ids)) == len(ids) == 4


def test_evidence_is_found_by_its_name(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        match, tom = a_match(book, MatchState.OVER)
        (line,) = play(book, match, tom, "n")
        book.tell_rally(
            RallyRow(
                match=match,
                n=line,
                ending=Ending.UNFORCED_ERROR,
                by_player=tom,
                stroke=Stroke.RETURN,
                words="tom dumped it",
            )
        )
        lefty = NewObservation(
            player=tom,
            trait=Trait.HAND,
            value=Value.LEFT,
            weight=1.0,
            seen=Seen.HEARSAY,
            span=(7, 12),
        )
        number = book.add_note("Tom is lefty i think, tall", [lefty])
        names = [
            EvidenceId(name)
            for name in (f"rally:{match}:{line}", f"note:{number}:1", f"match:{match}", "rally:9:9")
        ]
        (note,) = book.told_notes(names)
        assert (note.words, note.author, note.heard) == ("lefty i think", "Mira", True)
        assert note.player == tom
        (rally,) = book.told_rallies(names)
        assert (rally.words, rally.stroke, rally.by_player) == ("tom dumped it", "return", tom)
        assert rally.clock == "15:06"
        (whole,) = book.told_matches(names)
        assert whole.rallies == 1
        book.void(match, *play(book, match, tom, "n"))
        (whole,) = book.told_matches(names)
        assert whole.rallies == 1, "what was taken back stands behind nothing"
        assert book.told_notes([]) == ()


def test_everybody_is_counted_once_their_match_is_over(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        first, tom = a_match(book, MatchState.OVER)
        lines = play(book, first, tom, "yyn-")
        running, other = a_match(book, MatchState.RUNNING)
        play(book, running, other, "n")
        assert everybody(book) == {(tom, 2, 1)}
        book.set_state(running, MatchState.OVER)
        assert everybody(book) == {(tom, 2, 1), (other, 0, 1)}
        void = book.void(first, lines[0])
        assert everybody(book) == {(tom, 1, 1), (other, 0, 1)}
        book.void(first, void.n)
        assert everybody(book) == {(tom, 2, 1), (other, 0, 1)}


def everybody(book: Book) -> set[tuple[PlayerId, int, int]]:
    return {
        (one.player, one.made, one.missed) for each in book.match_rates() for one in each.counts
    }


@pytest.mark.parametrize("seed", range(12))
def test_what_is_taken_out_is_what_the_match_log_leaves_out(store: Store, seed: int) -> None:
    """Second method: `match_log.unvoided`, over rallies undone, redone and corrected at random."""
    team, rng = new_team(store, "Mira"), random.Random(seed)
    with store.writing() as connection:
        book = team.book(connection)
        match, tom = a_match(book, MatchState.OVER)
        changes: list[tuple[int, ...]] = [(line,) for line in play(book, match, tom, "yyy")]
        undone: set[int] = set()
        for _ in range(10):
            place = rng.randrange(len(changes))
            if place in undone:
                for line in changes[place]:
                    voids = [one.n for one in book.entries(match) if one.voids == line]
                    book.void(match, voids[-1])
                undone.remove(place)
            elif rng.random() < 0.4:
                void = book.void(match, changes[place][0])
                changes.append((*play(book, match, tom, "n"), void.n))
            else:
                for line in changes[place]:
                    book.void(match, line)
                undone.add(place)
        left = [one.n for one in unvoided(book.entries(match)) if one.kind is EntryKind.RALLY]
        tallies = rate_tallies(book, [tom])
        names = {each for one in tallies for each in (*one.made, *one.missed)}
        assert names == {f"rally:{match}:{n}" for n in left}
        assert [one.logged for one in tallies] == [len(left)] * bool(left)
        assert sum(
            one.made + one.missed for each in book.match_rates() for one in each.counts
        ) == len(left)
