"""A rally or a side-out of the running match told at length: "hale into the net, ours"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.message import Message
from bot.chat.numbers import number_of
from bot.chat.on_court import is_of_one_side
from bot.chat.question import RallySaid, SaidScore, ScoreSaid
from bot.chat.rally_told import is_owned, is_side_out, serving_after, won_by_us
from bot.chat.score_groups import level_at, score_group
from bot.chat.scores import stray_words
from bot.chat.serve_told import with_sides
from bot.chat.slip_words import CORRECTS
from bot.chat.view import ChatView
from bot.chat.words import Word

LONGEST_TOLD = 16
"""Words of a rally told with what happened in it; what is longer is a story, and a note."""

STRAY_WORDS_OF_PLAY = 6
_MARKS = frozenset(",;.!:\n–—")
_OTHERWISE = word_set("not_of_one_rally")


def told_rally(message: Message, chat: ChatView) -> RallySaid | ScoreSaid | None:
    """The rally or side-out, if the message tells of one and of nothing that holds at all times."""
    said = message.told.words
    if message.asks or not 0 < len(said) <= LONGEST_TOLD or score_group(said) or level_at(said):
        return None
    clauses = _clauses(said)
    line = " ".join(clauses)
    if any(_is_out_of_place(word) for word in line.split()):
        return None
    named = tuple(one for one in message.mentions if not one.pronoun)
    if not all(is_of_one_side(one, chat) for one in named):
        return None
    if is_side_out(line):
        we_serve = serving_after(line)
        score = None if we_serve is None else SaidScore(we_serve=we_serve)
        return ScoreSaid(text=message.text, side_out=True, score=score)
    won = won_by_us(clauses)
    if won is None or (not is_owned(clauses) and stray_words(said) > STRAY_WORDS_OF_PLAY):
        return None
    corrects = CORRECTS.match(line) is not None
    return RallySaid(text=message.text, won_by_us=won, mentions=named, corrects=corrects)


def _is_out_of_place(word: str) -> bool:
    """A word of what holds at all times, or a number of anything but this one rally."""
    return word in _OTHERWISE or (number_of(word) not in (None, 1, 2)) or word == "two"


def _clauses(said: Sequence[Word]) -> tuple[str, ...]:
    """The lines between the message's marks."""
    lines: list[list[str]] = [[]]
    for word in said:
        if set(word.gap) & _MARKS and lines[-1]:
            lines.append([])
        lines[-1].append(word.folded)
    return tuple(with_sides(" ".join(line)) for line in lines)
