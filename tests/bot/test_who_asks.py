"""Who is told to ask is not who the question is about. Our own wordings."""

from __future__ import annotations

from voices import EVENING

from bot.chat.said import Question
from bot.chat.understand import understand

ABOUT = {
    "ruiz asks who takes the middle with a lefty against us": [],
    "ruiz wants to know where we should dink": [],
    "ruiz asks where we dink hale": ["hale"],
    "tom asks where he should stand": ["tom", "he"],
    "where do i dink ruiz": ["ruiz"],
}


def test_who_asks_is_not_played_against() -> None:
    said = {text: understand(text, chat=EVENING)[0] for text in ABOUT}
    found = {
        text: [each.typed for each in one.slots.mentions]
        for text, one in said.items()
        if isinstance(one, Question)
    }
    assert found == ABOUT
