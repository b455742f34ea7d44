"""The second door: players, pairs, matches, plans and undo, on both databases."""

from __future__ import annotations

from dataclasses import replace

import pytest
from databases import NOON, new_team
from sqlalchemy.exc import IntegrityError

from knowledge.given_plan import GivenLine
from knowledge.vocabulary import (
    AgreementKey,
    BallQuality,
    Ending,
    EvidenceId,
    PlayerId,
    Rate,
    Stroke,
    Topic,
    Wing,
)
from scouting_db import tables
from scouting_db.book import Book
from scouting_db.book.scope import NUMBERS_PER_VERSION
from scouting_db.session import Store
from scouting_db.values import (
    AlreadyCounted,
    BookId,
    ChoiceRow,
    EntryKind,
    EntryRow,
    MatchId,
    MatchState,
    Micros,
    PairId,
    PlayerRow,
    RallyRow,
    RateRow,
    Winner,
)

FORMAT = {"target": 11, "win_by": 2}
DAY = 86_400_000_000


def test_the_first_write_of_a_turn_takes_one_version(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        before = book.version()
        okafor = book.add_player("Okafor")
        lindqvist = book.add_player("Lindqvist")
        book.pair_of(okafor, lindqvist)
        assert (before, book.version()) == (0, 1)
    with store.writing() as connection:
        hale = team.book(connection).add_player("Hale")
    assert okafor < lindqvist < hale


def test_a_turn_that_only_reads_leaves_the_version(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        assert (book.players(), book.matches(), book.version()) == ((), (), 0)


def test_a_turn_with_many_rows_never_numbers_two_alike(store: Store) -> None:
    team = new_team(store, "Mira")
    count = 2 * NUMBERS_PER_VERSION + 3
    with store.writing() as connection:
        book = team.book(connection)
        made = [book.add_player(f"Player {n}") for n in range(count)]
        assert len({*made}) == count
        assert book.version() == 3
    with store.writing() as connection:
        assert team.book(connection).add_player("one more") > max(made)


def test_a_book_that_is_not_there(store: Store) -> None:
    with store.writing() as connection:
        nowhere = Book(connection, BookId(99), person=None, now=Micros(NOON))
        with pytest.raises(LookupError, match="no book 99"):
            nowhere.add_player("Okafor")


def test_a_player_goes_by_every_name_given(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        okafor = book.add_player("Okafor")
        tom = book.add_player("Tom", ours=True)
        for words in ("Big O", "the wall", "big o"):
            book.add_alias(okafor, words)
        book.remove_alias(okafor, "The Wall")
        book.rename(okafor, "Ada Okafor")
        book.set_ours(tom, ours=False)
        rows = book.players()
    assert rows == (
        PlayerRow(player=okafor, name="Ada Okafor", ours=False, aliases=("big o",)),
        PlayerRow(player=tom, name="Tom", ours=False),
    )


def test_two_players_may_share_an_alias(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        for name in ("Ana Ruiz", "Anna Ruis"):
            book.add_alias(book.add_player(name), "Ana")
        assert [row.aliases for row in book.players()] == [("Ana",), ("Ana",)]


def test_a_removed_player_comes_back(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        okafor = book.add_player("Okafor")
        book.remove_player(okafor)
        gone = book.players()
        kept = book.player(okafor)
        book.restore_player(okafor)
        assert (gone, kept is not None, len(book.players())) == ((), True, 1)


def test_a_pair_is_one_in_any_order(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        a, b = book.add_player("Okafor"), book.add_player("Lindqvist")
        pair = book.pair_of(b, a)
        assert book.pair_of(a, b) == pair
        assert [each.players for each in book.pairs()] == [(a, b)]
        with pytest.raises(ValueError, match="twice"):
            book.pair_of(a, a)


def test_the_newest_agreement_counts_and_can_be_withdrawn(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        pair = book.pair_of(book.add_player("Mira"), book.add_player("Tom"))
        book.agree(pair, AgreementKey.MIDDLE, "forehand", "forehand takes it")
        book.agree(pair, AgreementKey.LOBS, "tom", "Tom takes lobs")
    with store.writing() as connection:
        book = team.book(connection, now=NOON + DAY)
        book.agree(pair, AgreementKey.MIDDLE, "tom", "Tom takes the middle")
        later = [(row.key, row.value) for row in book.agreements_of(pair)]
        book.withdraw(pair, AgreementKey.MIDDLE)
        before = [(row.key, row.value) for row in book.agreements_of(pair)]
    assert later == [(AgreementKey.LOBS, "tom"), (AgreementKey.MIDDLE, "tom")]
    assert set(before) == {(AgreementKey.LOBS, "tom"), (AgreementKey.MIDDLE, "forehand")}


def announced(book: Book) -> tuple[MatchId, PairId]:
    theirs = book.pair_of(book.add_player("Okafor"), book.add_player("Lindqvist"))
    return book.announce(our_pair=None, their_pair=theirs, format=FORMAT, court="7"), theirs


def test_a_match_reads_as_it_was_announced_and_replaced(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        event = book.add_event("Lantern Bay Open", starts_at=Micros(NOON))
        match, theirs = announced(book)
        row = book.match(match)
        assert row is not None
        assert (row.court, row.format, row.state) == ("7", FORMAT, MatchState.ANNOUNCED)
        assert row.their_pair == book.pair(theirs)
        book.replace_match(replace(row, court="9", event=event, their_pair=None))
        changed = book.match(match)
        assert changed == replace(row, court="9", event=event, their_pair=None)
        book.replace_match(row)
        assert book.matches_against(theirs) == (row,)
        assert [each.name for each in book.events()] == ["Lantern Bay Open"]


def test_the_running_match_of_a_pair_is_the_one_open(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        ours = book.pair_of(book.add_player("Mira", ours=True), book.add_player("Tom", ours=True))
        _, theirs = announced(book)
        first = book.announce(our_pair=ours, their_pair=theirs, format=FORMAT)
        second = book.announce(our_pair=ours, their_pair=theirs, format=FORMAT)
        current = [book.open_match(ours)]
        for match, state in [
            (first, MatchState.RUNNING),
            (first, MatchState.OVER),
            (second, MatchState.OVER),
        ]:
            book.set_state(match, state)
            current.append(book.open_match(ours))
    assert [None if each is None else each.match for each in current] == [
        second,
        first,
        second,
        None,
    ]


def test_a_pair_goes_again_only_while_nothing_is_theirs(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        free = book.pair_of(book.add_player("Hale"), book.add_player("Ruiz"))
        _, theirs = announced(book)
        assert (book.unmake_pair(free), book.unmake_pair(theirs)) == (True, False)
        assert [row.pair for row in book.pairs()] == [theirs]


def test_an_announcement_can_be_taken_back_until_something_is_logged(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        first, theirs = announced(book)
        book.remove_match(first)
        assert book.matches() == ()
        second = book.announce(our_pair=None, their_pair=theirs, format=FORMAT)
        book.append(second, EntryKind.RALLY, won_by=Winner.US)
        with pytest.raises(ValueError, match="has a log"):
            book.remove_match(second)


def test_two_taps_of_one_button_are_one_rally(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        match, _ = announced(team.book(connection))
    answers = []
    for _tap in range(2):
        with store.writing() as connection:
            book = team.book(connection)
            answers.append(book.append(match, EntryKind.RALLY, expected=1, won_by=Winner.US))
    with store.reading() as connection:
        assert len(team.book(connection).entries(match)) == 1
    assert isinstance(answers[0], EntryRow)
    assert answers[1] == AlreadyCounted(expected=1, last=1)


def test_the_log_reads_back_as_it_was_written(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        match, _ = announced(book)
        written = (
            book.append(match, EntryKind.GAME, we_serve=True, detail={"lineup": [1, 2, 3, 4]}),
            book.append(match, EntryKind.RALLY, won_by=Winner.THEM, game_no=1),
            book.append(
                match, EntryKind.SCORE, ours=6, theirs=4, server=2, we_serve=False, game_no=2
            ),
            book.void(match, 2),
        )
        assert book.entries(match) == written
    assert [row.n for row in written if isinstance(row, EntryRow)] == [1, 2, 3, 4]
    assert written[3].voids == 2


def test_only_a_line_of_the_log_can_be_voided(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        match, _ = announced(book)
        with pytest.raises(LookupError, match="no entry 3"):
            book.void(match, 3)


def test_logged_matches_are_those_of_our_pair_with_a_line_newest_first(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        first, theirs = announced(book)
        ours = book.pair_of(book.add_player("Mira"), book.add_player("Tom"))
        others = book.pair_of(book.add_player("Ruiz"), book.add_player("Hale"))
        meetings = [
            book.announce(our_pair=us, their_pair=them, format=FORMAT)
            for us, them in ((ours, theirs), (ours, others), (None, theirs), (ours, theirs))
        ]
        for match in (first, *meetings):
            book.append(match, EntryKind.RALLY, won_by=Winner.US)
        book.append(meetings[3], EntryKind.RALLY, won_by=Winner.THEM)
        book.announce(our_pair=ours, their_pair=theirs, format=FORMAT)
        logged = book.logged_matches(ours)
        assert [one.match for one in logged] == [meetings[3], meetings[1], meetings[0]]
        assert [one.lines for one in logged] == [2, 1, 1]
        assert [one.their_pair.pair for one in logged] == [theirs, others, theirs]
        newest = book.logged_matches(ours, limit=2)
        assert [one.match for one in newest] == [meetings[3]], "the empty match counts as one"
        logs = book.logs([meetings[0], meetings[3]])
        assert [log.match for log in logs] == [meetings[0], meetings[3]]
        assert logs[1].entries == book.entries(meetings[3])
        assert logs[0].format == FORMAT
        assert book.logs([]) == ()


def test_rallies_and_choices_are_kept_and_replaced(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        match, theirs = announced(book)
        pair = book.pair(theirs)
        assert pair is not None
        okafor = pair.players[0]
        book.append(match, EntryKind.RALLY, won_by=Winner.US)
        book.tell_rally(RallyRow(match=match, n=1, ending=Ending.WINNER, words="into the net"))
        told = RallyRow(
            match=match,
            n=1,
            ending=Ending.UNFORCED_ERROR,
            by_player=okafor,
            stroke=Stroke.DINK,
            wing=Wing.BACKHAND,
            words="flew out",
        )
        book.tell_rally(told)
        chosen = ChoiceRow(
            match=match,
            n=1,
            topic=Topic.AIM_DINK,
            option="backhand",
            ball=BallQuality.NEUTRAL,
            against=okafor,
            tagged_before=False,
        )
        book.choose(replace(chosen, option="forehand"))
        book.choose(chosen)
        assert book.rallies(match) == (told,)
        assert book.choices_in(match) == (chosen,)


def test_what_a_rally_says_of_rates_is_kept_and_replaced(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        match, theirs = announced(book)
        pair = book.pair(theirs)
        assert pair is not None
        served, returned = (
            RateRow(match=match, n=1, player=player, rate=rate, made=True)
            for player, rate in zip(pair.players, (Rate.SERVE_IN, Rate.RETURN_IN), strict=True)
        )
        book.append(match, EntryKind.RALLY, won_by=Winner.US)
        book.count_rates(match, 1, [served, returned])
        assert book.rates(match) == (served, returned)
        book.count_rates(match, 1, [replace(served, made=False)])
        assert book.rates(match) == (replace(served, made=False),)
        book.count_rates(match, 1, [])
        assert book.rates(match) == ()


DINK = GivenLine(
    do="Dink Okafor's backhand",
    because="weak backhand dink",
    cue="Dink Okafor's backhand. Stay patient.",
    phase="dink",
    source="book: 2 notes",
    evidence=(EvidenceId("note:1:1"), EvidenceId("note:2:1")),
    per_100=0.5,
    we_serve=False,
    who=PlayerId(1),
    option="3:middle",
)
LOB = GivenLine(do="Lob Lindqvist")


def test_the_latest_plan_against_a_pair_is_recalled(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        _, theirs = announced(book)
        for lines in ([LOB], [DINK, LOB]):
            book.store_plan(our_pair=None, their_pair=theirs, variant="full", lines=lines)
        book.store_plan(our_pair=None, their_pair=theirs, variant="windy", lines=[LOB])
        full, newest = book.latest_plan(theirs, variant="full"), book.latest_plan(theirs)
        assert full is not None
        assert newest is not None
        assert (full.lines, newest.lines) == ((DINK, LOB), (LOB,))
        assert book.latest_plan(None) is None
        assert book.latest_plan(theirs, before=Micros(full.made_at - 1)) is None
        assert book.latest_plan(theirs, variant="full", before=full.made_at) == full


def test_a_plan_of_plain_lines_is_still_read(store: Store) -> None:
    """The first versions stored the text of each line and nothing else."""
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        _, theirs = announced(book)
        book.store_plan(our_pair=None, their_pair=theirs, variant="A", lines=[LOB])
        old = ["Dink Okafor's backhand: weak backhand dink", "Lob Lindqvist"]
        connection.execute(tables.plan.update().values(lines=old))
        found = book.latest_plan(theirs)
        assert found is not None
        assert [line.text for line in found.lines] == old
        assert found.lines[0].because == "weak backhand dink"


def test_preferences_are_set_and_set_again(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        for key, value in [("units", "feet"), ("units", "metres"), ("level", "4.0")]:
            book.prefer(key, value)
        assert book.preferences() == {"units": "metres", "level": "4.0"}


def test_undo_goes_back_and_redo_forward(store: Store) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = team.book(connection)
        made = [
            book.record_change(verb, targets={"n": 1}, before={}, chat=team.chat)
            for verb in ("one", "two", "three")
        ]
        book.mark_undone(made[2])
        book.mark_undone(made[1])
        last, undone = book.last_change(team.chat), book.last_undone(team.chat)
        assert last is not None
        assert undone is not None
        assert (last.verb, undone.verb) == ("one", "two")
        book.mark_redone(made[1])
        again = book.last_undone(team.chat)
        assert again is not None
        assert again.verb == "three"
        book.record_change("four", targets={}, before={}, chat=team.chat)
        assert book.last_undone(team.chat) is None


def test_the_database_refuses_a_pair_with_a_player_of_another_book(store: Store) -> None:
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        for name in ("Okafor", "Hale"):
            mira.book(connection).add_player(name)
        ours = tom.book(connection).add_player("Brandt")
    # Numbers start alike in every book, so take one that only the other book has.
    with store.reading() as connection:
        theirs = max(row.player for row in mira.book(connection).players())
        assert theirs not in {row.player for row in tom.book(connection).players()}
    with store.writing() as connection, pytest.raises(IntegrityError):
        tom.book(connection).pair_of(ours, PlayerId(theirs))
