"""A return that one of them crosses for is not sent to the middle again."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match, player

from knowledge.advice import Advice
from knowledge.situation import Asked
from knowledge.tactics import advise
from knowledge.tactics.return_crossed import DOWN_THE_LINE
from knowledge.vocabulary import PlayerId, Side, Topic

OKAFOR = player(3, "Okafor", Side.LEFT)
LINDQVIST = player(4, "Lindqvist", Side.RIGHT)


def _return(words: str, *, before: str = "") -> Advice:
    asked = Asked(words=words, before=before, about=(PlayerId(3),))
    return advise(replace(match(Topic.AIM_RETURN, OKAFOR, LINDQVIST), asked=asked))


@pytest.mark.parametrize(
    "words",
    [
        "i keep getting my return picked off by okafor crossing",
        "okafor crosses for every return",
        "okafor poaches my returns",
    ],
)
def test_who_crosses_for_it_is_gone_behind(words: str) -> None:
    assert _return(words).call == "Return deep behind Okafor, as they leave."
    line = _return(words, before="what about going down the line on him")
    assert line.call == "Yes: return deep behind Okafor, as they leave."


@pytest.mark.parametrize(
    "words",
    ["where do i return", "return cross court to okafor", "should we poach on their return"],
)
def test_any_other_return_keeps_its_page(words: str) -> None:
    advice = _return(words)
    assert "behind" not in advice.call
    assert DOWN_THE_LINE not in advice.reasons


def test_the_line_alone_is_answered_first() -> None:
    assert _return("should i return down the line at okafor").reasons[0] == DOWN_THE_LINE
