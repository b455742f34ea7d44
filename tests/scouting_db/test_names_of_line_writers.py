"""Names as twelve line writers type them: how many are told right, how many silently wrong.

Nine writers were read while the look-up was made; of the other three only the counts are known.
"""

from __future__ import annotations

import pytest
from line_writers import lines_of
from voices import judge_name

READ = {
    "abe": (80, 0),
    "bea": (72, 1),
    "coby": (73, 1),
    "dag": (76, 1),
    "fitz": (77, 1),
    "gus": (78, 1),
    "ike": (79, 0),
    "jude": (79, 1),
    "lou": (77, 2),
}
"""Right of 80 at least and silently wrong at most, as recorded."""

UNREAD = {"effie": (69, 1), "hana": (78, 0), "kit": (74, 1)}


RIGHT_SUPPOSING = 909
"""Of all 960, where whoever is supposed counts as told; 912 by the rules. They were asked
for what is hard, strangers with tempting names too, and nine of the twelve mended the rules."""


def counts(writer: str, *, supposing: bool = False) -> tuple[int, int]:
    """Names told right, and names for which one wrong player was named without asking.

    By the rules alone, or with whom they suppose.
    """
    right = wrong = 0
    for case in lines_of(writer, "names"):
        is_right, is_silent = judge_name(
            case["typed"], case["roster"], case["right"], supposing=supposing
        )
        right += is_right
        wrong += is_silent and not is_right
    return right, wrong


@pytest.mark.parametrize("writer", READ)
def test_writers_that_were_read(writer: str) -> None:
    right, wrong = counts(writer)
    assert right >= READ[writer][0]
    assert wrong <= READ[writer][1]


@pytest.mark.parametrize("writer", UNREAD)
def test_unread_writers_by_count_alone(writer: str) -> None:
    right, wrong = counts(writer)
    assert right >= UNREAD[writer][0]
    assert wrong <= UNREAD[writer][1]


def test_supposing_takes_few_strangers_for_somebody() -> None:
    told = [counts(writer, supposing=True) for writer in (*READ, *UNREAD)]
    assert sum(right for right, _ in told) >= RIGHT_SUPPOSING
    assert sum(wrong for _, wrong in told) <= sum(
        most for _, most in (*READ.values(), *UNREAD.values())
    )
