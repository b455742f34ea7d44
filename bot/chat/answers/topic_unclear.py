"""What a message may be about, as buttons, where that is unclear."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.serve_asked import spoken_of_otherwise
from bot.chat.answers.write_down import write_down
from bot.chat.payload import Verb, tap
from bot.chat.render import offer_buttons, rows, with_buttons
from bot.chat.reply import Button, Reply
from bot.chat.said import Unclear
from bot.chat.wording import wording
from knowledge.vocabulary import Topic

FIRST_OFFERS = (Topic.COVER_MIDDLE, Topic.AIM_DINK, Topic.GAME_PLAN)
"""What is offered where a message gives no hint at all."""


def ask_topic(desk: Desk, unclear: Unclear) -> Reply:
    """Never "I don't understand" alone: two or three likely topics as buttons.

    Nothing is told then, so that "why?" is not about the answer before.
    """
    spoken_of_otherwise(desk)
    desk.context = replace(desk.context, told=None)
    if not any(character.isalnum() for character in unclear.text):
        return Reply(text=wording("unclear.noise"), buttons=rows([_example()]))
    offers = offer_buttons(unclear.offers or FIRST_OFFERS)
    is_number = not any(character.isalpha() for character in unclear.text)
    text = wording("score.form" if is_number else "unclear.ask")
    return with_buttons(Reply(text=text, buttons=rows(offers)), write_down(desk, unclear))


def _example() -> Button:
    return Button(
        label=wording("example.1"), payload=tap(Verb.EXAMPLE, 1), topic=Topic.COVER_MIDDLE
    )
