"""Trouble between partners gets words for the two, and leaves no note in the book they share.

What helps a pair: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def pair(demo: Talk) -> Talk:
    demo.say("we are petronella and bronagh")
    return demo


BRING_UP = "Ask off court"
TAKES = "Agree who has the middle"
SILENT = "Give it ten minutes"
BLAMES = "Breathe out; say: next one, together."


@pytest.mark.parametrize(
    ("text", "call"),
    [
        ("bronagh keeps poaching my ball", TAKES),
        ("my partner takes all my balls", TAKES),
        ("she is always going for my shots", TAKES),
        ("how do i tell her w/o a fight", BRING_UP),
        ("how do i tell bronagh nicely that she overhits", BRING_UP),
        ("how do i bring it up with my partner", BRING_UP),
        ("bronagh didnt say a word after. do i say something", BRING_UP),
        ("should i say something or leave it", BRING_UP),
        ("she went silent after we lost", SILENT),
        ("bronaghs sulking after that loss, what do i do", SILENT),
        ("she says its my fault", BLAMES),
        ("he blames me for everything", BLAMES),
        ("bronagh thinks we lost because of me", BLAMES),
        ("she snapped at me just now what do i say", BLAMES),
        ("bronagh is short with me", BLAMES),
        ("astrid is getting cross with me, i keep apologising and she says stop", BLAMES),
    ],
)
def test_it_is_answered_and_nothing_is_kept(pair: Talk, text: str, call: str) -> None:
    before = pair.stored()
    told = pair.say(text)
    assert told.startswith(call)
    assert "Say: " in told
    assert pair.stored() == before


@pytest.mark.parametrize(
    "text",
    [
        "Bronagh says she will not play with Petronella any more if she does not call the middle."
        " what do I do",
        "bronagh refuses to play with petronella. what now?",
        "bronagh does not want to play with petronella any more",
        "bronagh won't speak to petronella",
        "bronagh is angry at petronella, she never calls the middle. what do i say?",
        "bronagh and petronella are fighting. what do i do",
    ],
)
def test_a_quarrel_of_our_two_is_kept_of_neither(pair: Talk, text: str) -> None:
    before = pair.stored()
    assert pair.say(text).startswith("Hear each one alone")
    assert "new partner" not in [one.label for one in pair.buttons]
    assert pair.stored() == before


@pytest.mark.parametrize(
    "text",
    [
        "bronagh does not talk to petronella in the middle",
        "bronagh and petronella never call the middle",
        "okafor won't speak to lindqvist",
    ],
)
def test_how_they_talk_in_play_is_a_note(pair: Talk, text: str) -> None:
    assert pair.say(text).startswith("Noted")


def test_an_opponent_who_is_cross_is_no_trouble_of_ours(demo: Talk) -> None:
    assert demo.say("okafor is cross with me for hitting him").startswith("Noted")


def test_an_opponent_who_poaches_is_scouted(demo: Talk) -> None:
    assert demo.say("okafor keeps poaching my shots").startswith("Noted. Okafor: poaching")


def test_a_head_that_was_hit_comes_before_a_silence(pair: Talk) -> None:
    assert pair.say("she went quiet after she hit her head, we stopped").startswith("Stop now.")


def test_another_question_beside_it_is_the_one_asked(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    assert "Game: " in demo.say("ten seven down, is it as good as over? tom's gone quiet")


@pytest.mark.parametrize(
    ("text", "call"),
    [
        ("she keeps saying sorry after every miss", "Swap 'sorry' for 'next'"),
        ("bronagh keeps apologising", "Swap 'sorry' for 'next'"),
        ("she wants to stack and i dont", "Play straight"),
        ("bronagh wants to play left", "Play straight"),
    ],
)
def test_a_partners_sorry_or_wish_is_no_note_of_an_opponent(
    pair: Talk, text: str, call: str
) -> None:
    pair.say("where do i serve lindqvist")
    before = pair.stored()
    assert pair.say(text).startswith(call)
    assert pair.stored() == before


def test_what_an_opponent_wants_stays_a_note(pair: Talk) -> None:
    before = pair.stored()
    pair.say("lindqvist wants to stack")
    assert pair.stored() != before


def test_tears_while_a_game_is_on_get_a_time_out_and_a_line_to_say(demo: Talk) -> None:
    assert "five minutes" in demo.say("tom is in tears")
    demo.say("3-4-1 they serve")
    told = demo.say("tom is crying a little, what do i say").splitlines()
    assert told[0] == "Take a time-out: breathe out slowly, together."
    assert "Say: I'm with you" in told[1]
