"""How many SQL statements a turn takes: counted, since a clock also measures the load."""

from __future__ import annotations

import pytest
from databases import watched
from scouted_pair import scout
from talk import UPDATES, Talk, demo_talk

from bot.post import Arrival, Incoming, IncomingKind, accept, run_batch
from scouting_db.directory import Directory

STATEMENTS_OF_A_TURN = 5
"""Of a warm text turn, inbox to outbox: the open rows, who writes where, the reply's number, the
reply, the row's end. The design's section 7 allows 8."""

REMEMBERED = 1
"""A question that the chat did not just hear is remembered."""


def statements_of(talk: Talk, text: str) -> list[str]:
    """Those of the turn alone, from the inbox to the outbox."""
    incoming = Incoming(
        kind=IncomingKind.TEXT,
        chat=talk.chat,
        user_id=talk.user,
        user_name=talk.name,
        at=talk.now,
        text=text,
    )
    with talk.store.writing() as connection:
        account = Directory(connection).account("console", "console")
        arrival = Arrival(update_id=next(UPDATES), incoming=incoming)
        accept(connection, account, [arrival], now=talk.now)
    with watched(talk.store) as seen, talk.store.writing() as connection:
        run_batch(connection, account, talk._turn, now=talk.now)
    return [one for one, _ in seen]


@pytest.mark.parametrize(
    "text",
    ["who covers the middle", "where do I dink okafor", "what are our chances", "cue", "plan"],
)
def test_a_warm_question_takes_few_statements(demo: Talk, text: str) -> None:
    for said in ("next: okafor and lindqvist", text, text):
        demo.say(said)
    seen = statements_of(demo, text)
    assert len(seen) <= STATEMENTS_OF_A_TURN, "\n".join(seen)


def test_a_warm_question_after_another_takes_one_more(demo: Talk) -> None:
    asked = ["who covers the middle", "where do I dink okafor", "what are our chances"]
    for text in (*asked, *asked):
        demo.say(text)
    for text in asked:
        seen = statements_of(demo, text)
        assert len(seen) <= STATEMENTS_OF_A_TURN + REMEMBERED, "\n".join(seen)


AFTER_A_NOTE = 8
"""The design's section 7: also the first question after a note, in words that were not asked just
now. It reads again what the changed notes say, in one statement, and nothing else."""


@pytest.mark.parametrize(
    "text",
    [
        "who covers the middle",
        "where do I dink okafor",
        "what are our chances",
        "cue",
        "plan",
        "what do we know about okafor and lindqvist",
        "is it too hot to play",
    ],
)
def test_the_first_question_after_a_note_takes_few_statements(demo: Talk, text: str) -> None:
    for said in ("next: okafor and lindqvist", "we serve", text, text):
        demo.say(said)
    demo.say("okafor pops up backhand dinks")
    seen = statements_of(demo, text)
    assert len(seen) <= AFTER_A_NOTE, "\n".join(seen)


AFTER_A_CHANGE = {"our rally": 10, "3-2-1": 9, "next: ruiz and hale": 12}
"""These change more: the log and its rates, two statements; with a match's first rally the match;
with another pair of theirs the roster and the pairs, two."""


@pytest.mark.parametrize("change", AFTER_A_CHANGE)
def test_the_first_question_after_a_change_takes_some_more(demo: Talk, change: str) -> None:
    text = "where do I dink okafor"
    for said in ("next: okafor and lindqvist", "we serve", text, text, change):
        demo.say(said)
    seen = statements_of(demo, text)
    assert len(seen) <= AFTER_A_CHANGE[change], "\n".join(seen)


OF_A_WRITE = {"okafor is slow coming forward": 12, "our rally": 22, "3-2-1": 12}
"""A turn that writes reads again only what it wrote of: of a rally its log and what was told of it,
once before and once after its words are kept."""


@pytest.mark.parametrize("text", OF_A_WRITE)
def test_a_turn_that_writes_reads_nothing_twice(demo: Talk, text: str) -> None:
    for said in ("next: okafor and lindqvist", "we serve", "our rally", "our rally"):
        demo.say(said)
    seen = statements_of(demo, text)
    assert len(seen) <= OF_A_WRITE[text], "\n".join(seen)


GROWN_TEXTS = (
    "who covers the middle",
    "where do I dink okafor",
    "what are our chances",
    "what do we know about okafor and lindqvist",
    "who should we target",
    "game plan",
    "cue",
    "okafor is slow coming forward",
    "our rally",
    "undo",
)


def statements_by_text(*, notes: int, players: int, matches: int) -> dict[str, tuple[int, int]]:
    """For each text the statements of a turn, warm, and as the first after a note was written."""
    talk = demo_talk()
    scout(talk, ("Okafor", "Lindqvist"), observations=4 * notes, rallies=100 * matches)
    with talk.book() as book:
        for n in range(players):
            book.add_player(f"Quorra Zelt{'abcdefghij'[n % 10]}{'klmnopqrst'[n // 10]}")
    for said in ("next: okafor and lindqvist", "we serve"):
        talk.say(said)
    found = {}
    for text in GROWN_TEXTS:
        talk.say(text)
        talk.say("okafor pops up backhand dinks")
        after = len(statements_of(talk, text))
        found[text] = (len(statements_of(talk, text)), after)
    talk.store.close()
    return found


def test_no_statement_is_run_per_note_per_player_or_per_match() -> None:
    few = statements_by_text(notes=1, players=1, matches=1)
    assert statements_by_text(notes=50, players=50, matches=20) == few
