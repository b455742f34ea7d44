"""What is asked of the book and the day, each read by a form of its own."""

from __future__ import annotations

from bot.chat.comparing_said import comparison_asked
from bot.chat.day_asked import day_asked
from bot.chat.day_questions import day_question
from bot.chat.how_sure_asked import how_sure_asked
from bot.chat.message import Message
from bot.chat.notes_asked import notes_asked
from bot.chat.our_pair_asked import our_pair_asked
from bot.chat.said import Understood
from bot.chat.view import ChatView


def asked_of_book(message: Message, chat: ChatView) -> Understood | None:
    """What such a message asks; None for any other."""
    return (
        day_asked(message)
        or our_pair_asked(message)
        or day_question(message, chat)
        or notes_asked(message, chat)
        or comparison_asked(message, chat)
        or how_sure_asked(message, chat)
    )
