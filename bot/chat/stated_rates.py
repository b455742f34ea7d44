"""A message that states our chances of a rally: for this match, or as the book's usual ones."""

from __future__ import annotations

from bot.chat.asking import asks
from bot.chat.message import Message, opponents
from bot.chat.note_or_question import begins_as_note
from bot.chat.said import BookSaid, BookVerb, Question, SaidRates
from bot.chat.slots import find_slots
from bot.chat.topic_model import SURE_FROM
from bot.chat.topic_question import CERTAIN, likely_question
from bot.chat.view import ChatView
from knowledge.vocabulary import Topic

_WEIGH_RALLIES = frozenset(
    {Topic.RISK_AT_SCORE, Topic.TIMEOUT_NOW, Topic.CHOOSE_END_OR_SERVE, Topic.ADJUST}
)

NOT_SAID = "-"
"""Stands for the half of two rates that was not said."""


def stated_rates(message: Message, chat: ChatView) -> BookSaid | Question | None:
    """Rates said rather than asked with: for this match they ask what we win from here."""
    found = message.told.rates
    if found is None or chat.forwarded or begins_as_note(message.said):
        return None
    if not found.is_all and (_asks_beside(message) or len(opponents(message.mentions, chat)) == 1):
        return None
    if found.is_usual and found.rates.fault is None:
        return BookSaid(
            text=message.text, verb=BookVerb.BASE_RATES, words=rates_to_text(found.rates)
        )
    if not found.is_all:
        question = likely_question(message, chat)
        is_another = question is not None and question.confidence >= SURE_FROM
        if question is not None and (is_another or question.topic in _WEIGH_RALLIES):
            return question
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=Topic.WIN_CHANCE, confidence=CERTAIN, slots=slots)


def _asks_beside(message: Message) -> bool:
    """Whether the words beside the rates ask for something; "percent" alone asks nothing."""
    mark = "?" if "?" in message.text else ""
    return asks(mark, message.told.beside_rates)


def rates_to_text(rates: SaidRates) -> str:
    """`0.45 0.57`, with a dash for what was not said; `rates_from_text` reads it back."""
    return " ".join(
        NOT_SAID if one is None else repr(one) for one in (rates.serving, rates.receiving)
    )


def rates_from_text(text: str) -> tuple[float | None, float | None] | None:
    """The two rates of such a text; None for one that holds no rates."""
    parts = text.split()
    if len(parts) != 2:
        return None
    try:
        first, second = (None if part == NOT_SAID else float(part) for part in parts)
    except ValueError:
        return None
    known = [one for one in (first, second) if one is not None]
    return (first, second) if known and all(0 <= one <= 1 for one in known) else None
