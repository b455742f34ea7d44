"""What a question says of wind, heat and time: speeds, directions, degrees, minutes."""

from __future__ import annotations

import re
from typing import Final

from knowledge.cautions import fahrenheit
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import Wind
from knowledge.wind import Stroke, at_court

_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_ONES = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_SMALL: Final = {
    **{word: str(n) for n, word in enumerate(("ten", "eleven", "twelve"), 10)},
    "fifteen": "15", "a couple of": "2", "half an": "0.5",
    **{word: str(n) for n, word in enumerate(_ONES, 1)},
}  # fmt: skip
# One pattern for all: a hundred, one after the other, took a sixteenth of reading a message.
_NUMBER_WORDS = regex(
    rf"\b(?:({'|'.join(_TENS)})(?:[- ]({'|'.join(_ONES)}))?|({'|'.join(_SMALL)}))\b"
)

_MPH_PER_UNIT: Final = (
    (r"km ?/? ?h\b|kmh|kph|kmph|kilomet\w+|kms?\b", 0.621371),
    (r"m ?/ ?s\b|mps\b|met(?:er|re)s? (?:a|per) second", 2.236936),
    (r"knots?\b|kts?\b|kn\b", 1.150779),
    (r"mph|miles?\b|mi ?/ ?h", 1.0),
)
"""Exact by the definitions of the mile and the nautical mile."""

_NUMBER = r"(\d{1,3}(?:\.\d+)?)(?: ?(?:-|–|to) ?(\d{1,3}))?"

LIGHT_MPH: Final = 5.0
USUAL_MPH: Final = 10.0
GUSTY_MPH: Final = 15.0
STRONG_MPH: Final = 20.0
"""What unnumbered winds are taken for; near the names of the Beaufort scale (from memory)."""

_SAID_SPEEDS: Final = (
    (r"hurricane|howling|strong|nuts|crazy|gale|hard|wild|dreadful|insane|fierce", STRONG_MPH),
    (r"gust\w*|swirl\w*", GUSTY_MPH),
    (r"light|slight|gentle|little|bit of (?:a )?(?:wind|breeze)", LIGHT_MPH),
)

_GUSTS = regex(r"\b(?:gust\w*|swirl\w*|whoosh|off and on|comes and goes)\b")
_FORECAST = regex(r"\b(?:forecast\w*|app|reported|weather report|supposed to)\b")

_DIRECTIONS: Final = (
    (
        Wind.BEHIND_US,
        r"(?:at|on|behind) (?:our|my) backs?|behind (?:us|me)|tail ?wind|downwind|from behind|"
        r"with the wind(?! (?:in|into|at|against|across|from|coming|blowing|toward)\b)",
    ),
    (
        Wind.AGAINST_US,
        r"(?:in|into|at) (?:our|my) faces?|against (?:it|us|the wind)|head ?wind|upwind|"
        r"in(?:to)? the wind|(?:at|toward|towards) us\b|it in our faces?",
    ),
    (
        Wind.ACROSS,
        r"cross ?-?wind|side ?wind|sideways|across|from (?:the )?(?:left|right|side)|"
        r"(?:left to|to the) right|right to left|to the left|drifts (?:left|right)|from left side|"
        r"cross ?court",
    ),
)
_FROM_LEFT = regex(r"\b(?:from (?:the |our )?left|left to right|wind left)\b")
_FROM_RIGHT = regex(r"\b(?:from (?:the |our )?right|right to left|drifts left|wind right)\b")

_STROKES: Final = (
    (Stroke.HIGH_RETURN, r"(?:high|deep|floated|loopy) returns?"),
    (Stroke.RETURN, r"returns?\b|returning|receiving"),
    (Stroke.SERVE, r"serves?\b|serving"),
    (Stroke.DROP, r"drops?\b|dropping|thirds?\b|third (?:shot|ball)"),
    (Stroke.LOB, r"lobs?\b|lobbing|sky ?balls?"),
    (Stroke.DINK, r"dinks?\b|dinking|soft (?:shots?|balls?)"),
    (Stroke.DRIVE, r"drives?\b|driving"),
    (Stroke.OVERHEAD, r"overheads?|smash\w*|put ?aways?"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class WindSaid:
    """A wind as it was told; `mph` None where no number and no word sized it.

    `mph` is at ball height: a forecast's is lowered to it. `from_left` None: side not said.
    """

    way: Wind | None = None
    mph: float | None = None
    is_number: bool = False
    forecast_mph: float | None = None
    gusty: bool = False
    from_left: bool | None = None
    strokes: tuple[Stroke, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatSaid:
    """Air as it was told; `guessed_unit` where neither C nor F was said."""

    temperature_f: float | None = None
    humidity_percent: float | None = None
    feels_like_f: float | None = None
    celsius: bool = False
    guessed_unit: bool = False
    humid: bool = False
    dry: bool = False


def folded(words: str) -> str:
    """Lower case, apostrophes gone, number words as figures."""
    text = words.casefold().replace("'", "").replace("’", "").replace("º", "°")
    return " ".join(_NUMBER_WORDS.sub(_in_figures, text).split())


def _in_figures(found: re.Match[str]) -> str:
    tens, ones, small = found.groups()
    if tens is None:
        return _SMALL[small]
    return str(10 * _TENS.index(tens) + 20 + (int(_SMALL[ones]) if ones else 0))


def wind_said(words: str) -> WindSaid:
    """What the words tell of the wind."""
    text = folded(words)
    said, is_number = _speed(text)
    is_forecast = is_number and said is not None and _FORECAST.search(text) is not None
    return WindSaid(
        way=next((way for way, form in _DIRECTIONS if re.search(rf"\b(?:{form})", text)), None),
        mph=at_court(said) if is_forecast and said is not None else said,
        is_number=is_number,
        forecast_mph=said if is_forecast else None,
        gusty=_GUSTS.search(text) is not None,
        from_left=_side(text),
        strokes=tuple(one for one, form in _STROKES if re.search(rf"\b(?:{form})", text)),
    )


_OTHER_END = regex(
    r"\bother (?:end|side)\b|\b(?:change|switch|swap)\w* (?:ends|sides)\b"
    r"|\b(?:if|when|once|after) we (?:have |ve |do )*(?:change|switch|swap)(?:s|ed|d)?"
    r"(?: (?:over|round|around|then|now|later|too))*$"
)
""" "And if we switch": of a wind nothing else is switched than the end."""

_TURNED: Final = {Wind.BEHIND_US: Wind.AGAINST_US, Wind.AGAINST_US: Wind.BEHIND_US}


def wind_told(words: str, *, before: str = "") -> WindSaid:
    """What the words tell of the wind, and what they leave unsaid the questions before, by line."""
    first, *rest = [*before.splitlines(), words]
    said = wind_said(first)
    for line in rest:
        said = _gone_on(said, wind_said(line), line)
    return said


def _gone_on(before: WindSaid, now: WindSaid, words: str) -> WindSaid:
    turned = before.way is not None and _OTHER_END.search(folded(words)) is not None
    way = _TURNED.get(before.way, before.way) if turned and before.way else before.way
    sized = before if now.mph is None and not now.gusty else now
    return WindSaid(
        way=now.way or way,
        mph=sized.mph,
        is_number=sized.is_number,
        forecast_mph=sized.forecast_mph,
        gusty=sized.gusty,
        from_left=now.from_left if now.way or turned else before.from_left,
        strokes=now.strokes or before.strokes,
    )


def _side(text: str) -> bool | None:
    if _FROM_LEFT.search(text):
        return True
    return False if _FROM_RIGHT.search(text) else None


def _speed(text: str) -> tuple[float | None, bool]:
    """A wind's speed in mph and whether a number said it; of a range the middle."""
    for unit, mph in _MPH_PER_UNIT:
        found = re.search(rf"{_NUMBER} ?(?:{unit})", text)
        if found:
            ends = [float(end) for end in found.groups() if end]
            return mph * sum(ends) / len(ends), True
    bare = re.search(
        r"\b(?:gusts?|winds?|gusting|blowing) (?:of |at |is |about |to )*(\d{1,3})\b", text
    )
    if bare:
        return float(bare[1]), True
    return next(
        (mph for form, mph in _SAID_SPEEDS if re.search(rf"\b(?:{form})\b", text)), None
    ), False


_HUMIDITY = regex(
    r"(\d{1,3}) ?(?:%|percent|pct|rh\b)|(?:humidity|rh)(?: is| of| at|:)? ?(\d{1,3})(?! ?[°cf])"
)
_FEELS = regex(
    r"(?:feels?(?: like)?|real ?feel|heat index)(?: is| of| at|:)? ?(\d{2,3}) ?°? ?([cf]\b)?"
)
_DEGREES = regex(r"(?<![\d-])(\d{1,3}) ?(?:°|degrees?|deg\b)? ?(c|f|celsius|fahrenheit)\b")
_BARE = regex(
    r"(?<![\d-])(\d{1,3}) ?(?:°|degrees?\b|deg\b|out\b|outside|in the shade|"
    r"and (?:humid|dry|sunny)|feels|today)|temp\w*(?: is| of| at|:)? ?(\d{2,3})"
)
_COLD = regex(r"\b(?:cold|morning|freez\w+|frost|chilly|rock|stone|dew|winter)\b")

CELSIUS_UP_TO: Final = 46
"""A bare figure up to this is Celsius (unless cold is spoken of), above it Fahrenheit."""


def heat_said(words: str) -> HeatSaid:
    """What the words tell of the air."""
    text = folded(words)
    feels = _FEELS.search(text)
    rest = text if feels is None else text.replace(feels[0], " feels ")
    degrees, celsius, guessed = _temperature(rest)
    humidity = _HUMIDITY.search(text)
    percent = None if humidity is None else float(humidity[1] or humidity[2])
    felt = None if feels is None else float(feels[1])
    felt_celsius = feels is not None and (feels[2] == "c" or (felt or 0) <= CELSIUS_UP_TO)
    return HeatSaid(
        temperature_f=fahrenheit(degrees) if celsius and degrees is not None else degrees,
        humidity_percent=percent if percent is not None and percent <= 100 else None,
        feels_like_f=fahrenheit(felt) if felt_celsius and felt is not None else felt,
        celsius=celsius or felt_celsius,
        guessed_unit=guessed,
        humid=re.search(r"\b(?:humid|muggy|sticky|sauna)", text) is not None,
        dry=re.search(r"\b(?:dry|desert)\b", text) is not None,
    )


def _temperature(text: str) -> tuple[float | None, bool, bool]:
    """Degrees as said, whether they are Celsius, and whether that is our guess."""
    found = _DEGREES.search(text)
    if found:
        return float(found[1]), found[2].startswith("c"), False
    bare = _BARE.search(text)
    if bare is None:
        return None, False, False
    degrees = float(bare[1] or bare[2])
    is_cold_fahrenheit = degrees > 25 and _COLD.search(text) is not None
    return degrees, degrees <= CELSIUS_UP_TO and not is_cold_fahrenheit, True


_MINUTES = regex(r"(\d{1,3}) ?(?:minutes?|mins?|min|m)\b")
_HOURS = regex(r"(\d(?:\.\d)?) ?(?:hours?|hrs?|hr|h)\b")
_HALF_HOUR = regex(r"\bhalf (?:an )?hour\b")
_AN_HOUR = regex(r"\ban hour\b")


def minutes_said(words: str) -> float | None:
    """How long until the next match, if the words say a time."""
    text = folded(words)
    if found := _MINUTES.search(text):
        return float(found[1])
    if _HALF_HOUR.search(text):
        return 30.0
    if found := _HOURS.search(text):
        return 60 * float(found[1])
    return 60.0 if _AN_HOUR.search(text) else None
