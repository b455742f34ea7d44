"""A list of people, each with a line of notes: nobody's words go to the one above.

Wordings: our own, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

_LIST = (
    "petra: bh weak, lefty\n"
    "joost: hates lobs\n"
    "saskia - lefty. poaches. lob weak\n"
    "wim; slow knees; drops land short"
)


def test_everybody_who_heads_a_line_may_be_added(fresh: Talk) -> None:
    fresh.say("im coaching ilka and noor")
    fresh.say(_LIST)
    fresh.tap("add petra and joost and saskia and wim")
    assert fresh.claims("Joost") == {("lob_defense", "weakness", False)}
    assert ("hand", "left", False) in fresh.claims("Saskia")
    assert ("hand", "left", False) in fresh.claims("Petra")


@pytest.mark.parametrize("mark", [" - ", " | ", "; ", " = ", " – ", " -> "])
def test_any_mark_parts_a_name_from_what_is_told(fresh: Talk, mark: str) -> None:
    fresh.say("im coaching ilka and noor")
    fresh.say("ilka keeps popping up")
    assert "joost" in fresh.say(f"joost{mark}right hander, bangs everything")
    fresh.tap("add joost")
    assert ("hand", "right", False) in fresh.claims("Joost")
    assert not any(trait == "hand" for trait, _, _ in fresh.claims("Ilka"))


@pytest.mark.parametrize(
    "text", ["thx - lefty", "hmm - weak backhand", "serv - weak", "lol; slow", "serve - weak"]
)
def test_a_word_before_such_a_mark_is_nobody(fresh: Talk, text: str) -> None:
    fresh.say("im coaching ilka and noor")
    fresh.say(text)
    assert not any(button.label.startswith("add ") for button in fresh.buttons)
