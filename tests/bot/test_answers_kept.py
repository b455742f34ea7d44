"""What is kept of readings, advice and replies never differs from what is worked out afresh."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from typing import Any
from unittest.mock import patch

import pytest
from book_edits import edit_at_random
from evidence_afresh import replies_to
from scouted_pair import scout
from talk import Talk, demo_talk

from bot.chat import book_views, turn
from bot.chat.answers import advised, in_words, plan_book
from bot.chat.recent import Recent
from bot.chat.reply import Reply
from scouting_db.directory import Directory

SEEDS, EDITS_A_SEED, ASKED_AFTER = 2, 12, 3

QUESTIONS = (
    "where do i dink okafor",
    "who covers the middle",
    "should we speed up or reset",
    "what are our chances",
    "how big is this rally",
    "game plan",
    "what do we know about okafor and lindqvist",
    "where do i stand",
    "and on his backhand?",
    "should we stack",
    "new partner today",
    "what should we change",
    "may he touch the net",
)
"""Of the book, of the running match, of the question before, and of neither."""


@pytest.fixture
def noted(demo: Talk) -> Talk:
    scout(demo, ("Okafor", "Lindqvist"), observations=40, rallies=200)
    demo.say("next: okafor and lindqvist")
    return demo


def assert_as_afresh(talk: Talk, text: str, *why: object) -> tuple[Reply, ...]:
    kept = replies_to(talk, text, afresh=False)
    assert kept == replies_to(talk, text, afresh=True), (text, *why)
    return kept


@pytest.mark.parametrize("seed", range(SEEDS))
def test_after_any_change_an_answer_is_that_given_afresh(noted: Talk, seed: int) -> None:
    """Second method: the same turn by a process that knows nothing yet."""
    rng = random.Random(seed)
    for text in QUESTIONS:
        assert_as_afresh(noted, text)
    for step in range(EDITS_A_SEED):
        edited = edit_at_random(noted, rng)
        for text in rng.sample(QUESTIONS, ASKED_AFTER):
            assert_as_afresh(noted, text, step, edited)


@pytest.mark.parametrize(
    ("said", "text"),
    [
        ("okafor is a lefty", "what do we know about okafor"),
        ("our rally", "what are our chances"),
        ("4-2-1", "what are our chances"),
        ("we agreed tom takes the middle", "who covers the middle"),
        ("/add Chidi Hale", "what do we know about hale"),
        ("okafor is a lefty", "where do i dink okafor"),
        ("next: ruiz and hale", "where do i dink him"),
    ],
)
def test_a_change_shows_in_the_same_question_and_undo_takes_it_back(
    noted: Talk, said: str, text: str
) -> None:
    noted.say("we serve")
    before = assert_as_afresh(noted, text)
    noted.say(said)
    after = assert_as_afresh(noted, text)
    assert after != before, said
    noted.say("undo")
    assert_as_afresh(noted, text)


def test_the_card_of_a_pair_shows_what_was_agreed_since(demo: Talk) -> None:
    text = "new partner today"
    before = assert_as_afresh(demo, text)
    demo.say("we agreed tom takes the middle")
    (after,) = assert_as_afresh(demo, text)
    assert "tom takes the middle" in after.text
    demo.say("undo")
    assert assert_as_afresh(demo, text) == before


def test_what_another_chat_writes_to_the_book_shows(noted: Talk) -> None:
    text = "what do we know about okafor"
    before = assert_as_afresh(noted, text)
    tom = noted.of("Tom", chat="tom's own")
    tom.say("hello")
    book, chat = noted.chat_row().book, tom.chat_row().chat
    with noted.store.writing() as connection:
        Directory(connection).use_book(chat, book)
    tom.join()
    tom.say("okafor is a lefty")
    assert assert_as_afresh(noted, text) != before
    assert replies_to(tom, text, afresh=False) == replies_to(tom, text, afresh=True)


def test_another_topic_before_is_another_reading(noted: Talk) -> None:
    asked = "and with the wind against us?"
    noted.say("where do i serve")
    serve = assert_as_afresh(noted, asked)
    noted.say("should i lob")
    assert assert_as_afresh(noted, asked) != serve


def test_two_stores_keep_apart(noted: Talk) -> None:
    other = demo_talk()
    for text in QUESTIONS[:4]:
        noted.say(text)
        assert_as_afresh(other, text)
    other.store.close()


def test_a_draw_from_a_mix_is_drawn_anew(noted: Talk) -> None:
    """The advice is kept, and the number that it draws with is not."""
    noted.say("where do i serve")
    noted.tap("exact mix")
    payload = noted.button("pick one for me").payload
    picked = set()
    for number in (0.0, 0.5, 0.999):
        noted.uniform = lambda number=number: number  # type: ignore[misc]
        picked.add(noted.press(payload))
    assert len(picked) > 1


@contextmanager
def counted() -> Iterator[Counter[str]]:
    """How often texts are read, situations weighed and advice put into words."""
    done: Counter[str] = Counter()
    with ExitStack() as stack:
        for owner, name in ((turn, "understand"), (advised, "advise"), (in_words, "render")):
            stack.enter_context(patch.object(owner, name, _counting(owner, name, done)))
        yield done


def _counting(owner: Any, name: str, done: Counter[str]) -> Callable[..., Any]:
    real = getattr(owner, name)

    def once(*args: Any, **more: Any) -> Any:
        done[name] += 1
        return real(*args, **more)

    return once


def test_the_same_question_is_worked_out_once(noted: Talk) -> None:
    noted.say("where do i dink okafor")
    noted.say("where do i dink okafor")
    with counted() as done:
        noted.say("where do i dink okafor")
        assert not done
        noted.say("okafor pops up backhand dinks")
        noted.say("where do i dink okafor")
    assert done["advise"] == done["render"] == 1, "the note counts"


def test_the_lines_of_a_plan_are_weighed_once_to_be_kept(noted: Talk) -> None:
    for _ in range(2):
        noted.say("game plan")
    done: Counter[str] = Counter()
    with patch.object(plan_book, "plan_lines", _counting(plan_book, "plan_lines", done)):
        noted.say("game plan")
        assert not done
        noted.say("okafor pops up backhand dinks")
        noted.say("game plan")
    assert done["plan_lines"] == 1, "the note counts"


def test_what_is_read_of_a_book_is_bounded() -> None:
    views = book_views.BookViews()
    read: list[int] = []

    def reading(number: int) -> int:
        read.append(number)
        return number

    for number in (*range(book_views.KEPT_READ + 1), 0, book_views.KEPT_READ):
        assert views.recall(1, 5, number, lambda number=number: reading(number)) == number  # type: ignore[misc]
    assert read == [*range(book_views.KEPT_READ + 1), 0], "the one read longest ago leaves"
    assert views.recall(1, 6, 0, lambda: 7) == 7, "its part was written since"
    assert views.recall(2, 6, 0, lambda: 8) == 8, "another book"


def test_what_is_kept_is_bounded() -> None:
    recent = Recent(3)
    found: list[int] = []

    def find(number: int) -> int:
        found.append(number)
        return 2 * number

    for number in (1, 2, 3, 1, 4, 1, 2):
        assert recent.recall(number, (number,), lambda number=number: find(number)) == 2 * number  # type: ignore[misc]
    assert len(recent) == 3
    assert found == [1, 2, 3, 4, 2], "the one used longest ago leaves"
    assert recent.recall(2, ("else",), lambda: 7) == 7, "other inputs are another finding"


def test_every_kind_of_finding_is_bounded(demo: Talk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(book_views, "KEPT_TEXTS", 2)
    monkeypatch.setattr(book_views, "KEPT_ADVICE", 2)
    views = book_views.BookViews()
    monkeypatch.setattr(turn, "views_of", lambda _: views)
    for text in QUESTIONS:
        demo.say(text)
    assert len(views.readings) == len(views.advice) == len(views.replies) == 2
