"""Whose eyes the sun is in: what it does to a lob of ours, and to one of theirs."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import MIRA, TOM, match, player

from knowledge.situation import Asked
from knowledge.tactics import advise
from knowledge.tactics.lob_theirs import IN_THE_SUN
from knowledge.tactics.lob_words import INTO_THE_SUN
from knowledge.tactics.sun_said import SunSide, sun_of_our_lob, sun_side
from knowledge.vocabulary import Side, Topic

PAIR = (player(3, "Okafor", Side.LEFT), player(4, "Lindqvist", Side.RIGHT))


@pytest.mark.parametrize(
    ("words", "told", "of_our_lob"),
    [
        ("should we lob, sun is behind them", SunSide.US, SunSide.US),
        ("suns behind her", SunSide.US, SunSide.US),
        ("the sun is at their backs", SunSide.US, SunSide.US),
        ("lob with the sun behind us", SunSide.THEM, SunSide.THEM),
        ("sun in their eyes", SunSide.THEM, SunSide.THEM),
        ("we wanna lob into the sun", SunSide.US, SunSide.THEM),
        ("lob on the sun side", None, SunSide.THEM),
        ("lob into the sun with it in our eyes", SunSide.US, SunSide.US),
        ("it is sunny", None, None),
    ],
)
def test_which_side_looks_into_it(
    words: str, told: SunSide | None, of_our_lob: SunSide | None
) -> None:
    assert sun_side(words) is told
    assert sun_of_our_lob(Asked(words=words, sun=True)) is of_our_lob


def test_what_is_told_later_goes_first() -> None:
    asked = Asked(words="lob with the sun in our eyes", before="and behind us", sun=True)
    assert sun_of_our_lob(asked) is SunSide.THEM


def _advice(words: str) -> tuple[str, list[str]]:
    asked = Asked(words=words, sun=True)
    advice = advise(replace(match(Topic.LOB, *PAIR), ours=(MIRA, TOM), asked=asked))
    return advice.call, [reason.text for reason in advice.reasons]


def test_a_lob_without_notes_is_told_what_the_sun_does() -> None:
    call, reasons = _advice("should we lob, sun behind us")
    assert (call, reasons[0]) == (INTO_THE_SUN, "They look up into the sun")
    call, reasons = _advice("should we lob, sun behind them")
    assert call != INTO_THE_SUN
    assert "it helps their lob" in reasons[0]


def test_their_lob_in_our_sun_is_left_to_bounce() -> None:
    assert _advice("they lob us, sun behind them")[1][0] == IN_THE_SUN.text
    assert IN_THE_SUN.text not in _advice("they lob us, sun behind us")[1]
