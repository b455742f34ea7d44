"""A fact told two ways: said with the second note, and the older one dropped by a tap."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture(autouse=True)
def ziegler(demo: Talk) -> None:
    """Somebody of whom the book says nothing yet."""
    demo.say("hello")
    with demo.book() as book:
        book.add_player("Uwe Ziegler")


def test_a_second_hand_is_said_with_which_counts(demo: Talk) -> None:
    """Of one writer the last word of a day counts, and the contradiction is shown."""
    demo.say("ziegler is righty")
    reply = demo.say("ziegler is a lefty")
    assert "The book also says right-handed." in reply
    assert "For now left-handed counts." in reply
    assert "drop “ziegler is righty”" in [one.label for one in demo.buttons]


def test_the_older_note_is_dropped_and_comes_back_with_undo(demo: Talk) -> None:
    demo.say("ziegler is righty")
    demo.say("ziegler is a lefty")
    demo.tap("drop “ziegler is righty”")
    assert demo.claims("Ziegler") == {("hand", "left", False)}
    demo.say("undo")
    assert demo.claims("Ziegler") == {("hand", "left", False), ("hand", "right", False)}


def test_two_who_differ_leave_it_open(demo: Talk) -> None:
    demo.say("ziegler is righty")
    ben = demo.of("Ben")
    ben.join()
    reply = ben.say("ziegler is a lefty")
    assert "The book also says right-handed." in reply
    assert "Neither counts" in reply


def test_a_note_that_says_more_is_not_dropped_by_a_tap(demo: Talk) -> None:
    demo.say("ziegler is righty, slow feet")
    assert "The book also says right-handed." in demo.say("ziegler is a lefty")
    assert not [one for one in demo.buttons if one.label.startswith("drop")]


def test_what_fits_is_no_clash(demo: Talk) -> None:
    demo.say("ziegler is a lefty")
    assert "also says" not in demo.say("ziegler is a lefty")
    assert "also says" not in demo.say("ziegler is not a righty")
    assert "also says" not in demo.say("ziegler: slow feet")


@pytest.mark.parametrize(
    ("note", "values"),
    [
        ("okafor is on the left now", ("plays left", "plays right")),
        ("okafor is a lefty", ("lefty", "right-handed")),
    ],
)
def test_where_neither_counts_a_report_tells_neither(
    demo: Talk, note: str, values: tuple[str, str]
) -> None:
    assert "Neither counts till one more note says." in demo.say(note)
    reply = demo.say("report on okafor")
    assert "notes disagree on " in reply
    assert not any(value in reply for value in values)
