"""Whether somebody who hurts plays on, asked or told: of a body, whatever its words lie near."""

from __future__ import annotations

from bot.chat.message import Message, opponents
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView, names_of_ours
from bot.chat.words import words
from knowledge.complaints import complains_of_us
from knowledge.emergencies import without_denied
from knowledge.struck import is_struck_badly
from knowledge.tactics.beside_complaint import asks_for_substitute, asks_to_cover
from knowledge.tactics.braces import asks_for_brace
from knowledge.tactics.hurt_opponent import goes_at_injury
from knowledge.tactics.knocked import hurts_from_a_knock
from knowledge.tactics.plays_on import (
    asks_of_leaving,
    asks_to_play_on,
    goes_on,
    goes_on_hurt,
    says_little,
)
from knowledge.tactics.undrunk import tells_thirst, tells_undrunk
from knowledge.tactics.weather_entries import tells_of_a_body
from knowledge.vocabulary import Topic


def plays_on_asked(message: Message, chat: ChatView) -> Question | None:
    """ "Can she play on", "she says she is fine", "i fell on my wrist": the question of a body that
    it is; so is whether to go at an opponent who hurts.
    """
    if not (
        _is_of_hurt(message, chat)
        or _asks_to_play_on(message, chat)
        or _asks_for_substitute(message, chat)
        or _asks_to_cover(message, chat)
        or _asks_for_brace(message, chat)
        or _denies_alarm(message, chat)
        or _tells_undrunk(message, chat)
        or (asks_of_leaving(message.text) and not opponents(message.mentions, chat))
    ):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.WEATHER_OR_BODY
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)


def _asks_for_substitute(message: Message, chat: ChatView) -> bool:
    return not opponents(message.mentions, chat) and asks_for_substitute(message.text)


def _asks_to_cover(message: Message, chat: ChatView) -> bool:
    """ "How do we cover the court", right after one of us is told of as hurt."""
    is_after = chat.hurt and chat.last_topic is Topic.WEATHER_OR_BODY
    return is_after and message.asks and asks_to_cover(message.text)


def _asks_for_brace(message: Message, chat: ChatView) -> bool:
    """ "Can she wear a knee brace": of one of us; what an opponent wears is told or a rule."""
    return not opponents(message.mentions, chat) and asks_for_brace(message.text)


def _denies_alarm(message: Message, chat: ChatView) -> bool:
    """ "no im not dizzy, just tired": nothing else is asked or told than of a body."""
    rest = without_denied(message.text)
    if rest is None or opponents(message.mentions, chat):
        return False
    if goes_on(rest) if message.asks else tells_of_a_body(rest):
        return True
    names = frozenset(word.folded for one in message.mentions for word in words(one.typed))
    return says_little(rest, names=names)


def _tells_undrunk(message: Message, chat: ChatView) -> bool:
    """ "We havent drunk anything", "im just thirsty": told of us; what is asked with it has its
    own answer, and a score told with it counts."""
    if message.asks or opponents(message.mentions, chat):
        return False
    return tells_undrunk(message.text) or (
        tells_thirst(message.text) and not any(sign.isdigit() for sign in message.text)
    )


def _is_of_hurt(message: Message, chat: ChatView) -> bool:
    """Whether the message itself tells who hurts, and what is asked of that."""
    text, theirs = message.text, opponents(message.mentions, chat)
    if "?" in text.rstrip(" ?!."):
        return False  # what else is asked has its own answer
    if is_struck_badly(text) and goes_on(text):
        return True  # whoever hit them is named as well
    if theirs:
        return message.asks and goes_at_injury(text, ours=names_of_ours(chat))
    if hurts_from_a_knock(text):
        return complains_of_us(text, names=())
    return goes_on_hurt(text)


def _asks_to_play_on(message: Message, chat: ChatView) -> bool:
    if chat.last_topic is Topic.WEATHER_OR_BODY and not chat.hurt:
        return False  # whether the storm lets one play on
    named = [one for one in message.mentions if not one.pronoun]
    names = frozenset(word.folded for one in named for word in words(one.typed))
    return asks_to_play_on(message.text, names=names, is_hurt=chat.hurt)
