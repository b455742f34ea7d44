"""Whose a rally was, said first, and what happened in it right behind, as people talk."""

from __future__ import annotations

import pytest
from talk import Talk
from told_rallies import rally_of

from bot.chat.rally_opening import opened_by
from bot.chat.words import words


@pytest.fixture
def serving(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve 3-3-1")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "lost that one i popped it up",
        "we lost that one i popped it up",
        "ugh lost that one my drop was short",
        "lost it i netted the return",
        "lost the rally we left it for each other",
        "dropped that one my lob was short",
        "i popped it up lost that one",
        "lost okafor went at my body",
        "lost it i dumped the third",
        "lost, i dumped the third",
        "lost i dumped the third",
        "lost again damn okafor went down my line",
        "we lost they banged one at me",
        "lost",
    ],
)
def test_a_lost_rally_is_lost(serving: Talk, said: str) -> None:
    assert serving.say(said).startswith("3-3-2.")


@pytest.mark.parametrize(
    "said",
    [
        "won that one they popped it up",
        "won it he netted",
        "won the point they left it",
        "won i got okafor at his feet",
        "won lindqvist popped up my dink",
        "just won they netted it",
        "won",
        "we won that one i put it away",
        "that one us",
        "point for us",
        "one more us",
    ],
)
def test_a_won_rally_is_won(serving: Talk, said: str) -> None:
    assert serving.say(said).startswith("4-3-1.")


@pytest.mark.parametrize(
    "said",
    [
        "lost game one",
        "lost 9-11",
        "lost two in a row",
        "lost they hit everything hard",
        "lost they always drive at me",
        "lost they drive at me",
        "lost how do i hit it",
        "won what now",
        "lost should i hit it at okafor",
        "lost where do i hit it",
        "lost i think they are better",
        "lost our serve",
        "won the toss",
    ],
)
def test_a_bare_lost_opens_nothing_where_no_deed_follows(said: str) -> None:
    assert opened_by(words(said)) == 0


@pytest.mark.parametrize(
    "said",
    ["lost they hit everything at me", "won the toss", "lost what now",
     "won what do we change", "lost they drive at me should i lob"],
)  # fmt: skip
def test_a_question_behind_a_bare_lost_still_asks(serving: Talk, said: str) -> None:
    rows = serving.stored()["entry"]
    assert serving.say(said)
    assert serving.stored()["entry"] == rows


@pytest.mark.parametrize(
    "said",
    ["lost that one", "we lost it again", "lost that one to a lob", "ours now", "they lost it too"],
)
def test_nothing_more_is_told_behind(said: str) -> None:
    assert opened_by(words(said)) == 0


@pytest.mark.parametrize(
    ("said", "is_ours"),
    [
        ("another one okafor long again", True),
        ("one more lindqvist third into the net", True),
        ("point okafor popped it up", True),
        ("another one tom long again", False),
        ("point them long rally", False),
        ("another one okafor", False),
        ("pt, tom poached lindqvist's third", True),
        ("point, okafor poached my third", False),
    ],
)
def test_whoever_is_named_behind_a_point_has_it_unless_they_missed(
    said: str, is_ours: bool
) -> None:
    rally = rally_of(said)
    assert rally is not None
    assert rally.won_by_us is is_ours


@pytest.mark.parametrize("said", ["point, okafor poaches", "match point, okafor poached"])
def test_what_holds_behind_a_point_is_no_rally(said: str) -> None:
    assert rally_of(said) is None


@pytest.mark.parametrize("said", ["lost it again", "we lost that one again", "lost another one"])
def test_again_is_a_rally_more(serving: Talk, said: str) -> None:
    serving.say("lost it")
    assert "3-3-1. They serve" in serving.say(said)


def test_who_serves_by_the_log_is_told_to_whom_tells_of_a_return(serving: Talk) -> None:
    """No return of ours is kept from a rally that we served; the log may be wrong as well."""
    told = serving.say("lost it mira missed the return").splitlines()
    assert told[1:] == [
        "Noted: Mira's error.",
        "By my log you served it. If not, tell me the score.",
    ]
    assert "By my log" not in serving.say("won it okafor netted the return")
