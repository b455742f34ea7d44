"""He or she by a first name. Frequencies: US Census Bureau 1990; the other names from memory."""

from __future__ import annotations

import pytest

from scouting_db.called_names import call_of_name


@pytest.mark.parametrize(
    ("name", "call"),
    [
        ("Glenda Pruitt", "she"),
        ("Walt", "he"),
        ("ROSALIND", "she"),
        ("Joost van der Meer", "he"),
        ("Margaux", "she"),
        ("María Ruiz", "she"),
    ],
)
def test_a_name_of_one_kind_is_called_so(name: str, call: str) -> None:
    assert call_of_name(name) == call


@pytest.mark.parametrize("name", ["Pat Olsen", "Andrea", "Kim", "Okafor", "Lewis", "Zorblatt", ""])
def test_of_a_name_of_both_or_none_nothing_is_said(name: str) -> None:
    assert call_of_name(name) is None
