"""Evidence through a chat: what why leads back to; a changed book is never answered stale."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from databases import watched
from scouted_pair import scout
from talk import Talk

from bot.chat.profiles import CACHED_PROFILES, KeptProfiles, Stamp
from knowledge.evidence import Profile
from knowledge.vocabulary import EvidenceId, PlayerId, Rate, Seen, Trait, Value
from scouting_db.book import Book
from scouting_db.values import MatchId, Micros, NewObservation, NoteId, RateRow

DINK = "where do i dink okafor"
REPORT = "what do we know about okafor"
DAY = 86_400_000_000


def numbers(talk: Talk, text: str) -> dict[str, float]:
    talk.say(text)
    assert talk.heard is not None
    return dict(talk.heard.trace["advice"].numbers)


def weak_dink(book: Book, player: int, *, at: int | None = None) -> NoteId:
    claim = NewObservation(
        player=PlayerId(player),
        trait=Trait.BACKHAND_DINK,
        value=Value.WEAKNESS,
        weight=1.5,
        seen=Seen.LIVE,
    )
    return book.add_note("says so", [claim], at=None if at is None else Micros(at))


def test_why_quotes_the_notes_with_who_and_how_old(demo: Talk) -> None:
    demo.say("okafor: backhand dink sits up when rushed")
    demo.later(days=3)
    demo.say(DINK)
    why = demo.say("why?")
    assert "Behind it:" in why
    assert "Okafor: “backhand dink sits up when rushed”, You, 3 days ago" in why
    assert len([line for line in why.splitlines() if "“" in line]) <= 8


@pytest.mark.parametrize(
    ("note", "question", "quoted"),
    [
        ("okafor does not poach at all", DINK, "Okafor: “does not poach at all”, You, today"),
        ("lindqvist is no lefty", "where do i serve lindqvist", "“is no lefty”, You, today"),
        (
            "i dont think okafor has a good backhand",
            DINK,
            "Okafor: “i dont think okafor has a good backhand”, You, today",
        ),
    ],
)
def test_why_quotes_the_not_with_what_it_denies(
    demo: Talk, note: str, question: str, quoted: str
) -> None:
    demo.say(note)
    demo.say(question)
    assert quoted in demo.say("why?")


@pytest.mark.parametrize(
    ("note", "words"),
    [
        ("okafor isnt tired and he lobs a lot", ["isnt tired and he lobs a lot", "lobs a lot"]),
        ("not much today. okafor lobs a lot", ["lobs a lot"]),
        ("okafor never stacks, lobs a lot", ["never stacks", "lobs a lot"]),
    ],
)
def test_a_not_of_something_else_is_not_quoted(demo: Talk, note: str, words: list[str]) -> None:
    demo.say(note)
    number = demo.notes()[0].note
    names = [EvidenceId(f"note:{number}:{n}") for n in range(len(words) + 2)]
    with demo.book() as book:
        assert [one.words for one in book.told_notes(names)] == words


@pytest.mark.parametrize(
    ("waited", "added"),
    [
        ("kenji is righty, weak backhand dink, slow feet", "new opponent kenji mori"),
        ("mind you: kenji has slow feet, weak backhand dink", "new opponent kenji mori"),
    ],
)
def test_a_note_that_waited_for_a_new_name_is_quoted_as_it_was_typed(
    demo: Talk, waited: str, added: str
) -> None:
    demo.say(waited)
    demo.say(added)
    stored = demo.notes()[0]
    assert stored.text == waited
    names = [EvidenceId(f"note:{stored.note}:{n}") for n in range(1, 5)]
    with demo.book() as book:
        told = [one.words for one in book.told_notes(names)]
    assert "weak backhand dink" in told
    assert all(told)
    assert all(words in waited for words in told)


def test_why_tells_the_chance_that_the_best_is_best(demo: Talk) -> None:
    chance = numbers(demo, DINK)["p_best"]
    assert f"The chance that this call is the best: {100 * chance:.0f} in 100" in demo.say("why?")


def test_the_why_button_says_the_same_as_the_word(demo: Talk) -> None:
    demo.say(DINK)
    by_tap = demo.tap("why")
    demo.say(DINK)
    assert demo.say("why?") == by_tap


def test_a_general_answer_has_nothing_behind_it(demo: Talk) -> None:
    demo.say("where do i dink ziegler")
    demo.say("can i volley in the kitchen")
    assert "Behind it" not in demo.say("why?")


@pytest.mark.parametrize(
    ("nasty", "quoted"),
    [
        ("weak backhand dink <b>x</b> {name} %s", "weak backhand dink <b>x</b> {name} %s"),
        ("weak backhand\ndink ”“", "weak backhand"),
        ("weak backhand dink ”“ again", "weak backhand dink ”“ again"),
    ],
)
def test_user_words_are_quoted_as_they_are(demo: Talk, nasty: str, quoted: str) -> None:
    demo.say(f"okafor: {nasty}")
    demo.say(REPORT)
    why = demo.say("why?")
    assert f"Okafor: “{quoted}”, You, today" in why
    assert all(line.count("“") <= 2 for line in why.splitlines())


def test_a_changed_book_is_read_anew_between_two_questions(demo: Talk) -> None:
    """The caches are keyed by the book's version: a note, its removal, another chat's rally."""
    first = numbers(demo, DINK)
    assert numbers(demo, DINK) == first
    okafor = demo.player("Okafor")
    with demo.book() as book:
        note = weak_dink(book, okafor)
    changed = numbers(demo, DINK)
    assert changed != first
    with demo.book() as book:
        book.delete_note(note)
    assert numbers(demo, DINK) == first
    demo.later(days=200)
    assert numbers(demo, DINK) != first, "a day is part of the key: notes have aged"


def test_why_counts_the_rallies_of_a_match_that_stand(demo: Talk) -> None:
    demo.say("next: ruiz and hale, to 11")
    demo.say("we serve")
    for said in ("our rally", "their rally", "undo"):
        demo.say(said)
    demo.say("what are our chances")
    assert "· 1 rally vs Ana Ruiz/Hale, today" in demo.say("why?")
    demo.say("redo")
    demo.say("what are our chances")
    assert "· 2 rallies vs Ana Ruiz/Hale, today" in demo.say("why?")


def test_a_rally_logged_between_two_questions_moves_the_pairs_chances(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist, to 11")
    demo.say("we serve")
    before = numbers(demo, "what are our chances")["serving_rally_chance"]
    demo.say("our rally")
    after = numbers(demo, "what are our chances")["serving_rally_chance"]
    assert after > before
    demo.say("undo")
    again = numbers(demo, "what are our chances")["serving_rally_chance"]
    assert again == pytest.approx(before)


def test_a_rate_counted_between_two_questions_shows_in_the_report(demo: Talk) -> None:
    okafor = PlayerId(demo.player("Okafor"))
    demo.say(REPORT)
    with demo.book() as book:
        match = next(one.match for one in book.matches() if book.entries(one.match))
        lines = [row.n for row in book.entries(match) if row.kind == "rally"][:9]
        for n in lines:
            row = RateRow(match=match, n=n, player=okafor, rate=Rate.RETURN_DEEP, made=False)
            book.count_rates(match, n, [row])
        logged = sum(row.kind == "rally" for row in book.entries(match))
    report = demo.say(REPORT)
    assert f"returns short (book: 9 of {logged} rallies tagged" in report
    with demo.book() as book:
        book.void(MatchId(match), lines[0])
    assert f"(book: 8 of {logged - 1} rallies tagged" in demo.say(REPORT)


def test_why_tells_what_others_add_to_a_rate(demo: Talk) -> None:
    """Counted by hand: six of nine returns of another who plays right,
    right-handed, were deep, where half are usual."""
    okafor, hale = (PlayerId(demo.player(name)) for name in ("Okafor", "Hale"))
    with demo.book() as book:
        match = next(one.match for one in book.matches() if book.entries(one.match))
        lines = [row.n for row in book.entries(match) if row.kind == "rally"][:18]
        for place, n in enumerate(lines):
            who, made = (okafor, False) if place < 9 else (hale, place < 15)
            row = RateRow(match=match, n=n, player=who, rate=Rate.RETURN_DEEP, made=made)
            book.count_rates(match, n, [row])
    demo.say(REPORT)
    why = demo.say("why?")
    assert "Others like Okafor: 1 more returns deep of 9 than usual, counted 40%." in why
    demo.say("where do i dink okafor")
    assert "Others like" not in demo.say("why?"), "nothing that was said rests on a rate"


def test_a_note_dated_ahead_is_kept_counted_and_said(demo: Talk) -> None:
    okafor = demo.player("Okafor")
    with demo.book() as book:
        weak_dink(book, okafor, at=demo.now + 9 * DAY)
    assert "weak backhand dink (book: 5 notes, dated ahead)" in demo.say(REPORT)
    assert "“says so”, You, dated ahead" in demo.say("why?")


def test_contradicting_notes_are_both_told(demo: Talk) -> None:
    okafor = PlayerId(demo.player("Okafor"))
    for author, value in (
        ("Ann", Value.STRENGTH),
        ("Ben", Value.STRENGTH),
        ("Cem", Value.WEAKNESS),
    ):
        claim = NewObservation(
            player=okafor, trait=Trait.FOOT_SPEED, value=value, weight=1.0, seen=Seen.LIVE
        )
        with demo.of(author).book() as book:
            book.add_note(f"{author} saw it", [claim])
    demo.say(REPORT)
    assert "2 say quick feet, 1 says slow feet" in demo.say("why?")


def test_kept_profiles_are_bounded_and_never_stale() -> None:
    kept = KeptProfiles()
    reads: list[int] = []

    def read(players: Sequence[PlayerId]) -> dict[PlayerId, Profile]:
        reads.extend(players)
        return {one: Profile(player=one, name=str(len(reads))) for one in players}

    one, other = PlayerId(1), PlayerId(2)
    first = kept.get(1, Stamp(1, 1), [one], read)[one]
    assert kept.get(1, Stamp(1, 1), [one, other], read)[one] is first
    assert reads == [1, 2], "only who is missing is read"
    assert kept.get(2, Stamp(1, 1), [one], read)[one] is not first, "another book's player 1"
    for stamp in (Stamp(2, 1), Stamp(2, 2), Stamp(2, 2, MatchId(5))):
        before = len(reads)
        kept.get(1, stamp, [one], read)
        assert len(reads) == before + 1
    for number in range(CACHED_PROFILES + 10):
        kept.get(3, Stamp(1, 1), [PlayerId(number)], read)
    assert len(kept) == CACHED_PROFILES


OBSERVATIONS, RALLIES = 2_000, 5_000


def test_a_large_book_costs_a_warm_question_no_more_statements(demo: Talk) -> None:
    """design 7: at most 8; the counts of a small book and of a large one are the same."""
    scout(demo, ("Okafor", "Lindqvist"), observations=OBSERVATIONS, rallies=RALLIES)

    def statements(text: str) -> list[str]:
        with watched(demo.store) as seen:
            demo.say(text)
        return [one for one, _ in seen]

    for text in (DINK, REPORT, "what are our chances"):
        statements(text)
        warm = statements(text)
        assert not any("observation" in one or "rally_rate" in one for one in warm)
    assert numbers(demo, REPORT), "two thousand observations are told"


def test_evidence_names_are_those_of_the_book(demo: Talk) -> None:
    demo.say(DINK)
    demo.say("why?")
    assert demo.heard is not None
    evidence: tuple[EvidenceId, ...] = demo.heard.trace["advice"].evidence
    with demo.book() as book:
        assert len(book.told_notes(evidence)) == len(evidence) > 0
