"""A score at which a game ends, told with whose it is while no match is on: "eleven one us"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.numbers import number
from bot.chat.results_brief import is_over
from bot.chat.results_doubted import is_going_on, may_end
from bot.chat.said import ResultSaid
from bot.chat.scores import said_score
from bot.chat.serve_told import side_serving, with_sides
from bot.chat.view import ChatView
from knowledge.regex import regex

TARGETS_TOLD = frozenset([11, 15, 21])
"""What games that are told without a word of their end are played to."""

_WHOSE = regex(r"(?:#|scoring|rally|lol|haha|ok|for|to|,| )* (?:us|we|ours|them|they|theirs)\b")


def ended_by_side(message: Message, chat: ChatView) -> ResultSaid | None:
    """The game, if the message is two numbers that end one and says whose, and no more."""
    if chat.match_on or message.asks or "?" in message.text:
        return None
    words = message.told.words
    line = with_sides(" ".join(word.folded for word in words))
    places = ("#" if number(word) is not None else word.folded for word in words)
    whose = _WHOSE.fullmatch(with_sides(" ".join(places)).replace("# #", "#"))
    found = said_score(message.told.of_score)
    score = None if found is None or whose is None else found[0]
    if score is None or score.server is not None or side_serving(line) is not None:
        return None
    ours, theirs = score.ours, score.theirs
    if ours is None or theirs is None or is_going_on(line):
        return None
    low, high = sorted((ours, theirs))
    if not (is_over(low, high) and may_end(low, high)):
        return None
    if high not in TARGETS_TOLD and high - low != 2:
        return None
    return ResultSaid(text=message.text, games=((ours, theirs),), won=ours > theirs)
