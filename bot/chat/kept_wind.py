"""The wind told earlier today: it blows for the next question too, until another is told.

Its direction holds within a game, since ends change; its speed holds for as long as the match does.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from bot.chat.asked import Asked
from bot.chat.wind_goes_on import tells_ends_changed
from bot.chat.wind_pointed_at import shot_into_it
from bot.chat.words import words
from knowledge.ball_facts import NOTHING_SAID
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import Wind
from knowledge.tactics.weather_said import wind_said
from knowledge.vocabulary import Topic
from knowledge.wind import MPH_MPS, NOBODY_PLAYS_MPH

_SUPPOSED: Final = regex(
    r"\b(?:if|when(?:ever)?|unless|suppos\w+|should (?:it|there)|might|forecast|tomorrow|later"
    r"|yesterday|last (?:week|time|year|match|game))\b",
    re.IGNORECASE,
)
"""Words of a wind that does not blow now."""

_TELLS_NOTHING: Final = frozenset({Topic.RULES_QUESTION, Topic.SMALLTALK_OR_UNKNOWN})
"""Topics whose questions name a wind that need not blow: "the wind took it, let or not?"."""

_ASKS_OF_NONE: Final = _TELLS_NOTHING | {Topic.WEATHER_OR_BODY}
"""Topics whose questions are of their own wind or of none; the weather's lean on the one before."""

_TURNED: Final = {Wind.BEHIND_US: Wind.AGAINST_US, Wind.AGAINST_US: Wind.BEHIND_US}
"""Where it comes from once the ends were changed."""

_IN_WORDS: Final = {
    Wind.BEHIND_US: "wind behind us",
    Wind.AGAINST_US: "wind in our face",
    Wind.ACROSS: "wind across",
    Wind.SOME: "windy",
    Wind.NONE: "no wind",
}

_ALONG: Final = frozenset({Wind.BEHIND_US, Wind.AGAINST_US, Wind.ACROSS})

Game = tuple[int, ...]
"""Match and number of the game: a direction holds while these stay."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptWind:
    """What was told, and in which game; the speed is None where only a direction was."""

    wind: Wind
    speed_mps: float | None = None
    game: Game = ()

    def to_json(self) -> list[Any]:
        return [self.wind.value, self.speed_mps, list(self.game)]

    @classmethod
    def from_json(cls, stored: Sequence[Any]) -> KeptWind:
        wind, speed_mps, game = stored
        return cls(wind=Wind(wind), speed_mps=speed_mps, game=tuple(game))


def told_wind(asked: Asked, before: KeptWind | None, game: Game) -> KeptWind | None:
    """What is kept after a question that tells a wind; else what was kept before it."""
    if before is not None and asked.topic is Topic.WEATHER_OR_BODY and _tells_ends(asked.text):
        return replace(before, wind=_TURNED.get(before.wind, before.wind), game=game)
    if asked.wind is None or asked.topic in _TELLS_NOTHING or _SUPPOSED.search(asked.text):
        return before
    wind, speed = _way(asked, asked.wind), _speed_mps(asked)
    if wind is Wind.SOME and speed is None and before is not None:
        return before
    return KeptWind(wind=wind, speed_mps=speed, game=game)


def with_kept_wind(asked: Asked, kept: KeptWind | None, game: Game) -> Asked:
    """The question with the wind told earlier beneath its own words; where ends were changed since,
    with the way from which it blows now."""
    if kept is not None and asked.topic is Topic.WEATHER_OR_BODY and _tells_ends(asked.text):
        turned = _TURNED.get(kept.wind, kept.wind)
        return replace(asked, text=f"{asked.text}, {_IN_WORDS[turned]}", wind=turned)
    if kept is None or asked.topic in _ASKS_OF_NONE:
        return asked
    wind = asked.wind
    if wind is None and shot_into_it(asked.text):
        wind = Wind.AGAINST_US
    if wind is None:
        wind = kept.wind if kept.game == game or kept.wind not in _ALONG else Wind.SOME
    facts = asked.facts or NOTHING_SAID
    is_same = asked.wind in (None, Wind.SOME, kept.wind)
    if facts.wind_mps is None and kept.speed_mps is not None and is_same:
        facts = replace(facts, wind_mps=kept.speed_mps)
    return replace(asked, wind=wind, facts=None if facts == NOTHING_SAID else facts)


def wind_from_json(stored: Mapping[str, Any]) -> KeptWind | None:
    kept = stored.get("wind")
    return None if kept is None else KeptWind.from_json(kept)


def _tells_ends(text: str) -> bool:
    return tells_ends_changed(" ".join(word.folded for word in words(text)))


def _way(asked: Asked, wind: Wind) -> Wind:
    """Of the weather more may be said: "windy today, 15 mph in my face"."""
    if asked.topic is not Topic.WEATHER_OR_BODY or wind is not Wind.SOME:
        return wind
    return wind_said(asked.text).way or wind


def _speed_mps(asked: Asked) -> float | None:
    """As the ball's facts have it, else as a question of the weather says it."""
    if asked.facts is not None and asked.facts.wind_mps is not None:
        return asked.facts.wind_mps
    mph = wind_said(asked.text).mph if asked.topic is Topic.WEATHER_OR_BODY else None
    return None if mph is None or mph >= NOBODY_PLAYS_MPH else mph * MPH_MPS
