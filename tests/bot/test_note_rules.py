"""What the rules of notes read by themselves, before the model of many writers weighs it."""

from __future__ import annotations

import pytest
from voices import EVENING, PEOPLE

from bot.chat.message import read_message


def read(text: str) -> set[str]:
    return {
        f"{PEOPLE[claim.player - 1].removesuffix(' (Bones)').split()[-1]}: "
        f"{claim.trait} {claim.value}{' denied' if claim.denied else ''}"
        for claim in read_message(text, EVENING).note.claims
    }


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("Ruiz return 9 of 10", {"Ruiz: return strength"}),
        ("Ruiz missed six of eight returns", {"Ruiz: return weakness"}),
        ("Ruiz serve 2/7 today", {"Ruiz: serve weakness"}),
        ("Ruiz serve 85% in", {"Ruiz: serve strength"}),
        ("Ruiz double faulted at 9-10", set()),
        ("Ruiz to serve 0-5-1", set()),
        ("Hale poaches 4 out of 5", {"Hale: poaching often"}),
    ],
)
def test_counts_judge_a_skill_but_not_a_habit(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("Hale stacks, Ruiz doesn't", {"Hale: stacks often", "Ruiz: stacks rarely"}),
        ("Hale chokes, Ruiz never", {"Hale: nerves weakness", "Ruiz: nerves strength"}),
        (
            "Hale is slow, Ruiz isn't",
            {"Hale: foot_speed weakness", "Ruiz: foot_speed weakness denied"},
        ),
        ("Hale ernie? never", {"Hale: ernie rarely"}),
    ],
)
def test_a_short_answer_or_contrast_denies_what_was_just_said(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("Ruiz is quick to her left", {"Ruiz: moves_left strength"}),
        ("Ruiz left good, right slow", {"Ruiz: moves_left strength", "Ruiz: moves_right weakness"}),
        ("Ruiz moves well both ways", {"Ruiz: moves_left strength", "Ruiz: moves_right strength"}),
        ("Ruiz was quick last season", set()),
    ],
)
def test_where_somebody_moves_is_finer_than_how_fast(text: str, claims: set[str]) -> None:
    assert read(text) == claims


def test_a_hard_hit_wing_is_a_drive_and_a_soft_drop_is_good() -> None:
    assert read("Ruiz hammers her forehand") == {"Ruiz: forehand_drive strength"}
    assert read("Ruiz drops are soft") == {"Ruiz: third_shot_drop strength"}
    assert read("Ruiz serve is soft") == {"Ruiz: serve weakness"}


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("Lindqvist, two hands on backhand? No. One.", {"Lindqvist: two_handed_backhand no"}),
        ("hale patient? no. fit? no", {"Hale: patience weakness", "Hale: fitness weakness"}),
        ("lindqvist lefty? no", set()),
        ("okafor tired? can't tell", set()),
        ("gina tall? no, short", {"Castellano: height short"}),
        ("brandt doesnt do 2 hands on the backhand", {"Brandt: two_handed_backhand no"}),
    ],
)
def test_what_a_note_asks_is_told_by_its_answer(text: str, claims: set[str]) -> None:
    """Common practice, no source: the wordings are those of practice writers."""
    assert read(text) == claims


def test_what_was_denied_is_not_claimed_in_the_next_breath() -> None:
    assert read("ruiz backhand volley is NOT weak, i tested it, got cooked") == {
        "Ruiz: backhand_volley weakness denied"
    }


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("Ruiz bh weak under pace", {"Ruiz: counter_backhand weakness"}),
        ("Ruiz fh bad vs hard balls", {"Ruiz: counter_forehand weakness"}),
        ("Ruiz bh good under pace", {"Ruiz: counter_backhand strength"}),
        ("Ruiz bh weak", {"Ruiz: backhand_dink weakness"}),
        ("Ruiz bh dink weak under pace", {"Ruiz: backhand_dink weakness"}),
        ("Ruiz bh volley weak under pace", {"Ruiz: backhand_volley weakness"}),
    ],
)
def test_a_wing_that_is_weak_under_pace_is_no_dink(text: str, claims: set[str]) -> None:
    assert {one for one in read(text) if "pace" not in one} == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("Ruiz's backhand is not so bad as I said", {"Ruiz: backhand_dink weakness denied"}),
        ("Ruiz is not so slow as we thought", {"Ruiz: foot_speed weakness denied"}),
        ("Ruiz's hands are not so bad as I said", {"Ruiz: counter weakness denied"}),
        ("Ruiz's serve isn't so weak", {"Ruiz: serve weakness denied"}),
        ("Ruiz's backhand isn't so great", {"Ruiz: backhand_dink weakness"}),
        ("Ruiz is not slow, so dont lob her", {"Ruiz: foot_speed weakness denied"}),
    ],
)
def test_not_so_bad_is_denied_in_one_breath(text: str, claims: set[str]) -> None:
    assert read(text) == claims


@pytest.mark.parametrize(
    ("text", "claims"),
    [
        ("Ruiz misses the low fh volley", {"Ruiz: forehand_volley weakness"}),
        ("Ruiz never misses the low bh volley", {"Ruiz: backhand_volley strength"}),
        ("Ruiz misses, great fh volley", {"Ruiz: forehand_volley strength"}),
    ],
)
def test_what_the_missed_ball_was_praises_nobody(text: str, claims: set[str]) -> None:
    assert read(text) == claims
