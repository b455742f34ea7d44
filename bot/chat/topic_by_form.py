"""Topics that a reader of its own settles: rules, time-outs, our crash, which of them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.own_crash import asks_our_crash
from bot.chat.timeouts_said import asks_what_to_say, tells_what_is_left
from bot.chat.which_of_them import which_of_them
from bot.chat.win_by_asked import asks_win_by
from knowledge.regex import regex
from knowledge.rulebook.told_apart import asks_of_feet_first, asks_of_medical
from knowledge.rulebook.touching import tells_their_court
from knowledge.tactics.hurt_opponent import asks_if_fair
from knowledge.tactics.our_poach import asks_of_our_poach, tells_of_their_poach
from knowledge.vocabulary import Topic

_HABIT_LIKELY = regex(
    r"(?:(?:so|ok|and) )*(?:(?:whats|what is|what are|any) )?(?:the )?"
    r"(?:(?:chances?|odds|likelihood)(?: (?:that|of|for|is))?|how likely(?: is(?: it)?)?(?: that)?"
    r"|how often(?: (?:do|does|will|would))?)"
    r" (?:they|he|she)(?: (?:will|would|is|are|to|going|even|always|ever|really))*"
    r" (?:poach|lob|crash|ernie|stack|speed|drive|bang|drop|slice|leave|attack|counter|switch)\w*"
    r"(?: (?:up|it|us|me|again|now|next|the|our|middle|thirds?|returns?|balls?|a|lot))*"
)

_PAIRS_WITH = regex(
    rf"(?:(?:so|ok|and) )*whom? (?:should|could|would|can|do|does) (?:{NAME}|i|we)"
    r" (?:play|pair|partner|team)(?: up)?(?: best)? with(?: (?:next|best|today|then|tomorrow))*"
)


_BREAK_IN_LETTERS = regex(
    r"\s*(?:(?:ok|so|call|take|need|want|a|our|should|do|can|we|i) )*t/?o(?: (?:now|here|yet))*"
    r"\s*\?+\s*"
)
"""`to?`, `call a to now?`: letters that mean nothing else where they are all that is asked."""


def topic_by_form(message: Message) -> Topic | None:
    """The topic of the first reader that knows the message."""
    found = next((topic for knows, topic in _READERS if knows(message)), None)
    return found or which_of_them(message.told.words)


def _asks_a_rule(message: Message) -> bool:
    readers = (tells_their_court, asks_of_medical, asks_of_feet_first)
    return any(reader(message.text) for reader in readers)


def _asks_for_a_break(message: Message) -> bool:
    return _BREAK_IN_LETTERS.fullmatch(message.text.lower()) is not None


def _asks_our_crash(message: Message) -> bool:
    return asks_our_crash(" ".join(word.folded for word in message.told.words))


def _asks_of_our_poach(message: Message) -> bool:
    """In the words as typed, as the page reads them; a name may be one of theirs who does it."""
    line = " ".join(word.folded for word in message.told.words)
    return asks_of_our_poach(message.text) and not tells_of_their_poach(line)


def _asks_if_they_do(message: Message) -> bool:
    """Whether it asks how likely a habit of theirs is: the book knows that, not the score."""
    return _HABIT_LIKELY.fullmatch(" ".join(word.folded for word in message.told.words)) is not None


def _asks_whom_to_pair(message: Message) -> bool:
    return _PAIRS_WITH.fullmatch(named_line(message.said, message.mentions)) is not None


def _asks_if_fair(message: Message) -> bool:
    return asks_if_fair(message.text)


_READERS: Final[tuple[tuple[Callable[[Message], bool], Topic], ...]] = (
    (_asks_a_rule, Topic.RULES_QUESTION),
    (_asks_for_a_break, Topic.TIMEOUT_NOW),
    (asks_what_to_say, Topic.ADJUST),
    (tells_what_is_left, Topic.TIMEOUT_NOW),
    (asks_win_by, Topic.RULES_QUESTION),
    (_asks_if_fair, Topic.WEATHER_OR_BODY),
    (_asks_our_crash, Topic.THIRD_SHOT),
    (_asks_of_our_poach, Topic.BEING_TARGETED),
    (_asks_if_they_do, Topic.OPPONENT_REPORT),
    (_asks_whom_to_pair, Topic.PAIR_UP),
)
