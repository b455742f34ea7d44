"""What a question settles beside its topic: ball, wing, side, hand, score, format, weather."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from functools import cache
from re import Pattern
from typing import TypeVar

from bot.chat.announcements import said_format
from bot.chat.forms import any_of, branches
from bot.chat.question import Mention, SaidScore, Slots
from bot.chat.scores import said_score, said_serving
from bot.chat.words import Word
from knowledge.situation import Wind
from knowledge.vocabulary import BallKind, BallQuality, Hand, Side, Wing

Value = TypeVar("Value", bound=StrEnum)


def find_slots(
    said: Sequence[Word], mentions: Sequence[Mention], told: Sequence[Word] | None = None
) -> Slots:
    """Every slot of a message; what is not said stays None.

    `told` are the words with names as "we" and "they" (bot.chat.scores.cast), for the score.
    """
    line = " ".join(word.folded for word in said)
    score = said_score(told if told is not None else said)
    return Slots(
        mentions=tuple(mentions),
        score=None if score is None else score[0],
        serving=_serving(line, None if score is None else score[0]),
        hand=_first(Hand, "hand", line),
        wing=_only(Wing, "wing", line),
        ball=_first(BallQuality, "ball", line),
        ball_kind=_first(BallKind, "kind", line),
        side=_only(Side, "side", line),
        format=said_format(said),
        wind=_first(Wind, "wind", line),
        sun=_sun(line),
    )


def _serving(line: str, score: SaidScore | None) -> bool | None:
    if score is not None and score.we_serve is not None:
        return score.we_serve
    return said_serving(line)


def _sun(line: str) -> bool | None:
    said = [name for name, form in _readings("sun") if form.search(line)]
    return None if not said else "false" not in said


def _first(kind: type[Value], key: str, line: str) -> Value | None:
    """The first value said, in the order of the file."""
    found = next((name for name, form in _readings(key) if form.search(line)), None)
    return None if found is None else kind(found)


def _only(kind: type[Value], key: str, line: str) -> Value | None:
    """The one value said; None where two are ("forehand or backhand")."""
    found = [name for name, form in _readings(key) if form.search(line)]
    return kind(found[0]) if len(found) == 1 else None


@cache
def _readings(key: str) -> tuple[tuple[str, Pattern[str]], ...]:
    return tuple((name, any_of(f"{key}.{name}")) for name in branches(key))
