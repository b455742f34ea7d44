"""A rally told with the score after it: "they got it, 0-2 now, tom netted the return"."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.message import Message
from bot.chat.note_or_question import begins_as_note
from bot.chat.numbers import groups
from bot.chat.said import RallyDetails, ScoreSaid
from bot.chat.settled_forms import rally_told, settled
from bot.chat.several_questions import part_of
from bot.chat.view import ChatView

_MARKS = frozenset(",;.!:\n()–—")

FEWEST_BESIDE = 3
"""Words beside the score that tell whose the rally was and what happened in it."""


def rally_beside_score(message: Message, chat: ChatView) -> ScoreSaid | None:
    """The score with the rally that led to it; None where the words hold not both.

    The score stands in a clause of its own behind the first, and what is left says in so many
    words whose the rally was: a note beside a score says nothing of that, and whoever asks tells
    nothing.
    """
    if not chat.match_on or chat.forwarded or message.asks or begins_as_note(message.said):
        return None
    numbers = groups(message.said)
    if len(numbers) != 1:
        return None
    said, (start, stop) = message.said, (numbers[0].start, numbers[0].stop)
    while start > 0 and not set(said[start].gap) & _MARKS:
        start -= 1
    while stop < len(said) and not set(said[stop].gap) & _MARKS:
        stop += 1
    if not start or len(said) - (stop - start) < FEWEST_BESIDE:
        return None
    called = part_of(message, start, stop, chat)
    score = settled(called.text, called, chat)
    if not isinstance(score, ScoreSaid) or score.score is None or score.score.call is None:
        return None
    end = said[stop].span[0] if stop < len(said) else len(message.text)
    rally = rally_told(
        f"{message.text[: said[start].span[0]]}{message.text[end:]}".rstrip(" ,;"), chat
    )
    if rally is None or not rally.says_whose or rally.details == RallyDetails():
        return None
    rally = replace(rally, text=message.text)
    return replace(score, text=message.text, rally_ours=rally.won_by_us, rally=rally)
