"""Who plays left, told right behind an answer that hangs on it: "colm left", "what if she plays
left", "and if we swap so i have the right".

The last question is put again with it. Nothing else may be said, so that no note is swallowed: a
side that somebody usually plays is the book's, and a clause of its own asks or tells on.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.message import Message, is_ours
from bot.chat.plays_left_said import our_place_said
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import folded_line, words_in
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_OF_SIDES = frozenset({Topic.COVER_MIDDLE, Topic.STACK_OR_NOT, Topic.WHERE_TO_STAND})
_PUTS_A_CASE = regex(r"\b(?:if|when|suppose|supposing|say)\b")
_AROUND: Final = words_in(
    "and or but so ok okay then well what about how if when suppose supposing say lets we us swap"
    " switch change sides side court half over i im me my partner she her he him shes hes is am are"
    " be on the at to in play plays playing stand stands standing take takes have has go goes left"
    " right always now today instead with player id ill will its it that way round yes no put both"
    " case stack stacking stacked were"
)
"""All that may stand beside our names."""


def side_answered(message: Message, chat: ChatView) -> Question | None:
    """The last question with who plays left; None where the message says anything else."""
    named = [one for one in message.mentions if not one.pronoun]
    if chat.last_topic not in _OF_SIDES or chat.forwarded:
        return None
    if not all(is_ours(one, chat.ours) for one in named) or not _says_nothing_else(message):
        return None
    supposes = "?" in message.text or _PUTS_A_CASE.search(folded_line(message.said)) is not None
    if message.note.claims and not supposes:
        return None  # "tom plays left" is a note, and the book's from then on
    place = our_place_said(message.said, message.told.ours, alone=True)
    if place is None:
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(
        text=message.text,
        topic=chat.last_topic,
        confidence=CERTAIN,
        slots=replace(slots, our_place=place, side=None),
        changes=True,
    )


def _says_nothing_else(message: Message) -> bool:
    named = [one.span for one in message.mentions if not one.pronoun]
    return all(
        word.folded in _AROUND
        for word in message.said
        if not any(start <= word.span[0] < stop for start, stop in named)
    )
