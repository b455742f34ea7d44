"""What changed of a player: only new notes and rallies move anything, and each is traced."""

from __future__ import annotations

import pytest
from noted_players import TODAY, note

from knowledge.evidence import Observation, Profile, RateTally, profile
from knowledge.planning.since import MOVED_LEVEL, moved, moved_of_all
from knowledge.vocabulary import EvidenceId, PlayerId, Rate

OKAFOR = PlayerId(3)


def _notes(*claims: str) -> list[Observation]:
    return [note(OKAFOR, claim) for claim in claims]


def _profile(notes: list[Observation], *tallies: RateTally, today: int = TODAY) -> Profile:
    return profile(OKAFOR, "Okafor", notes, today=today, tallies=tallies)


def _tally(made: int, missed: int, *, start: int = 0) -> RateTally:
    ids = [EvidenceId(f"rally:{start + 1}:{n}") for n in range(made + missed)]
    return RateTally(
        player=OKAFOR,
        rate=Rate.RETURN_DEEP,
        day=TODAY,
        made=tuple(ids[:made]),
        missed=tuple(ids[made:]),
    )


def test_nothing_new_is_no_news() -> None:
    before = _notes("backhand_dink weakness", "hand right")
    assert moved(_profile(before), _profile(before)) == ()


def test_age_alone_is_no_news() -> None:
    before = _notes("backhand_dink weakness")
    assert moved(_profile(before), _profile(before, today=TODAY + 200)) == ()


@pytest.mark.parametrize(
    ("before", "after", "text"),
    [
        ((), ("lob often",), "Okafor: new, lobs a lot"),
        ((), ("hand left",), "Okafor: new, lefty"),
        (
            ("backhand_dink weakness",),
            ("backhand_dink strength by a", "backhand_dink strength by b"),
            "Okafor: strong backhand dink, was weak backhand dink",
        ),
        (
            ("backhand_dink weakness by a", "backhand_dink weakness by b"),
            ("backhand_dink strength by c", "backhand_dink strength by d"),
            "Okafor: weak backhand dink, in doubt now",
        ),
        (
            ("third_shot_drop weakness",),
            ("third_shot_drop weakness by a", "third_shot_drop weakness by b"),
            "Okafor: weak third shot, surer now",
        ),
    ],
)
def test_what_new_notes_say(before: tuple[str, ...], after: tuple[str, ...], text: str) -> None:
    first, fresh = _notes(*before), _notes(*after)
    (found,) = moved(_profile(first), _profile([*first, *fresh]))
    assert found.text == text
    assert set(found.source.evidence) == {one.evidence for one in fresh}


def test_a_note_taken_back_is_told_too() -> None:
    both = _notes("lob often by a", "lob often by b", "lob often by c")
    found = moved(_profile(both), _profile(both[:1]))
    assert [one.text for one in found] == ["Okafor: lobs a lot, less sure now"]


def test_a_level_that_hardly_moved_is_no_news() -> None:
    many = _notes(*(f"lob often by w{n}" for n in range(12)))
    one_more = [*many, *_notes("lob often by another")]
    step = _profile(one_more).skills[next(iter(_profile(many).skills))].level
    assert abs(step - next(iter(_profile(many).skills.values())).level) < MOVED_LEVEL
    assert moved(_profile(many), _profile(one_more)) == ()


def test_a_rate_that_moved_says_what_was_counted_in_between() -> None:
    first, fresh = _tally(3, 6), _tally(10, 0, start=1)
    found = moved(_profile([], first), _profile([], first, fresh))
    said = [one for one in found if "deep" in one.text and " of " in one.text]
    assert [one.text for one in said] == ["Okafor: returns deep 10 of 10, before 3 of 9"]
    assert set(said[0].source.evidence) == set(fresh.made)


def test_a_rate_of_nothing_new_did_not_move() -> None:
    first = _tally(3, 6)
    assert moved(_profile([], first), _profile([], first)) == ()


def test_the_most_telling_comes_first() -> None:
    """By the step times what the trait is worth at full level."""
    fresh = _notes("lob often by a", "third_shot_drop weakness by a", "around_post often by a")
    found = moved_of_all([(_profile([]), _profile(fresh))])
    assert [one.per_100 for one in found] == sorted((one.per_100 for one in found), reverse=True)
    assert len(found) == 3
