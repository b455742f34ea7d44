"""What a question settles beside its topic: ball, wing, side, hand, score, format, weather."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TypeVar

from bot.chat.announcements import said_format
from bot.chat.names import find_mentions
from bot.chat.question import SaidScore, Slots
from bot.chat.scores import said_score, said_serving
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.situation import Wind
from knowledge.vocabulary import BallKind, BallQuality, Hand, Side, Wing

Value = TypeVar("Value")

_BACKHAND = r"(?:backhands?|bh|bhs|back hand|backhnd|bckhand|2hbh)"
_FOREHAND = r"(?:forehands?|fh|fhs|fore hand|four hand|forhand|fhand)"

_WING = ((_BACKHAND, Wing.BACKHAND), (_FOREHAND, Wing.FOREHAND))
_HAND = (
    (r"(?:lefty|leftie|lefties|left ?handed|left ?hander|southpaw|lefthanded)", Hand.LEFT),
    (r"(?:righty|rightie|right ?handed|right ?hander)", Hand.RIGHT),
)
_BALL = (
    (
        r"(?:stretched|stretching|pulled wide|pulled (?:me|him|her|us) (?:off|out|wide)|off balance|lunging"
        r"|below (?:my|the|our) knees?|at my (?:feet|shoelaces|ankles)|on the run|reaching|jammed|scrambling"
        r"|out of position|low ball|really low|too low|shoe ?tops?|late on it)",
        BallQuality.STRETCHED,
    ),
    (
        r"(?:easy|floater|floaters|sitter|sitters|sits up|sat up|popup|pop up|popped up|high one|high ball"
        r"|fat one|meatball|dead ball|comfortable|in balance|balanced|juicy|hangs?|hung)",
        BallQuality.EASY,
    ),
    (r"(?:neutral|normal ball|ordinary|regular ball)", BallQuality.NEUTRAL),
)
_KIND = (
    (r"(?:lob|lobs|lobbed|lobbing|lobby)", BallKind.LOB),
    (
        r"(?:speed ?ups?|speeds? (?:it )?up|sped up|speeding up|hands battle|firefight|fast one|fast ball"
        r"|attack(?:s|ed)? (?:me|us|at)|flicks?|flicked|counter)",
        BallKind.SPEED_UP,
    ),
    (
        r"(?:drives?|driven|driving|bangs?|banging|banger|bangers|hard one|rips?|ripped|blast|blasts|hammer)",
        BallKind.DRIVE,
    ),
    (
        r"(?:floating|floats?|floaty|floater|floaters|high one|pop ?ups?|popped up)",
        BallKind.FLOATING,
    ),
    (r"(?:dink|dinks|dinked|dinking|soft one|soft ones|soft ball|slow one|drinks)", BallKind.DINK),
)
_SIDE = (
    (
        r"(?:left side|odd side|odd court|ad side|ad court|on the left|from the left|play(?:s|ing)? left|left court)",
        Side.LEFT,
    ),
    (
        r"(?:right side|even side|even court|deuce side|deuce court|on the right|from the right"
        r"|play(?:s|ing)? right|right court)",
        Side.RIGHT,
    ),
)
_WIND = (
    (
        r"(?:wind (?:is )?(?:at|behind|on) (?:our|my) backs?|wind behind|with the wind|tailwind|downwind)",
        Wind.BEHIND_US,
    ),
    (
        r"(?:into the wind|wind in (?:our|my) faces?|against the wind|headwind|upwind|wind (?:is )?in our face)",
        Wind.AGAINST_US,
    ),
    (r"(?:cross ?wind|side ?wind|wind across|sideways wind|wind (?:from|left|right))", Wind.ACROSS),
    (r"(?:windy|wind|gusts?|gusty|breeze|breezy|blowing)", Wind.SOME),
)
_SUN = (
    (r"(?:no sun|cloudy|overcast|indoors?|sun is (?:gone|down)|shade|shady)", False),
    (r"(?:sun|sunny|glare|blinding|sunlight)", True),
)


def find_slots(text: str, said: Sequence[Word], view: ChatView) -> Slots:
    """Every slot of a message; what is not said stays None."""
    line = " ".join(word.folded for word in said)
    score = said_score(said)
    return Slots(
        mentions=find_mentions(said, view),
        score=None if score is None else score[0],
        serving=_serving(line, None if score is None else score[0]),
        hand=_first(_HAND, line),
        wing=_only(_WING, line),
        ball=_first(_BALL, line),
        ball_kind=_first(_KIND, line),
        side=_only(_SIDE, line),
        format=said_format(said),
        wind=_first(_WIND, line),
        sun=_first(_SUN, line),
    )


def _serving(line: str, score: SaidScore | None) -> bool | None:
    if score is not None and score.we_serve is not None:
        return score.we_serve
    return said_serving(line)


def _first(readings: Sequence[tuple[str, Value]], line: str) -> Value | None:
    return next((value for words, value in readings if re.search(rf"\b{words}\b", line)), None)


def _only(readings: Sequence[tuple[str, Value]], line: str) -> Value | None:
    """The one value said; None where two are ("forehand or backhand")."""
    found = [value for words, value in readings if re.search(rf"\b{words}\b", line)]
    return found[0] if len(found) == 1 else None
