"""The words of one ball, loaded from data and checked at load time."""

from __future__ import annotations

import itertools
import re
import tomllib
from collections.abc import Collection, Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from knowledge.ball_facts import Depth, Footing, Spin
from knowledge.ball_places import SHARES, HeightName, PlaceName
from knowledge.regex import regex

_GROUP = regex(r"\(\?P<(\w+)>")
_PART = regex(r"(?<!\?P)<(\w+)>")

_YES_NO = ("yes", "no")
_NAMES: Mapping[str, Collection[str]] = {
    "theirs": [*Depth],
    "ours": [*Depth],
    "alone": ("partner_up", "all_up"),
    "place": [*PlaceName],
    "place_mark": ("line", "baseline", "net"),
    "place_side": ("behind", "inside"),
    "body": [one for one in SHARES if one is not HeightName.OVERHEAD],
    "height": ("named", "led", "above", "below", "net", "above_net", "below_net", "overhead"),
    "measured": ("ground", "above_net", "below_net", "cue", "no_height_after"),
    "bounced": (*_YES_NO, "undecided"),
    "footing": [*Footing],
    "spin": (*Spin, "not_its"),
    "sideline": (*_YES_NO, "lands"),
    "partner": _YES_NO,
    "wind": ("words", "forecast", "bare"),
    "unknown": ("length", "speed"),
    "veto": ("aims", "rules", "keeps", "places", "asks", "hits", "where_to_be"),
}
"""The tables of forms and the names that each must have: those, and no others."""


class BallFormsError(ValueError):
    """A table without a name it must have, or with one that nothing reads; or no expression."""


def group(found: re.Match[str], name: str) -> str:
    """What the group of that name found, whichever of the forms it stands in."""
    return next(
        one for key, one in found.groupdict().items() if one and key.rstrip("0123456789") == name
    )


@cache
def form(table: str, name: str) -> re.Pattern[str]:
    """Any of the forms of that name, as whole words; compiled when first looked for."""
    data = _data()
    return _joined(data[table][name], data["parts"])


def names_in(table: str) -> tuple[str, ...]:
    """The names of a table, in the file's order."""
    return tuple(_data()[table])


@cache
def part(name: str) -> str:
    """A part of the forms, written out."""
    return _written(f"<{name}>", _data()["parts"])


@cache
def units(kind: str) -> Mapping[str, float]:
    """SI units in one of each, by its name: of `length`, `step` or `speed`."""
    found: dict[str, float] = _data()["units"][kind]
    return found


@cache
def triggers(reader: str) -> frozenset[str]:
    """Words of which a line must have one for that reader to look at it."""
    return frozenset(_data()["triggers"][reader])


@cache
def mended_words() -> frozenset[str]:
    """Words that a slip of one letter may stand for."""
    return frozenset(_data()["mended"]["words"])


@cache
def guarded_words() -> frozenset[str]:
    """Words that are no slips of those."""
    return frozenset(_data()["mended"]["guard"])


@cache
def short_words() -> Mapping[str, str]:
    """Words of a ball typed short, with the words meant."""
    found: dict[str, str] = _data()["mended"]["short"]
    return found


@cache
def _data() -> Mapping[str, Any]:
    text = files("bot.chat.data").joinpath("ball_words.toml").read_text(encoding="utf-8")
    data = tomllib.loads(text)
    check_ball_words(data)
    return data


def check_ball_words(data: Mapping[str, Any]) -> None:
    """BallFormsError for data that could not be read as meant."""
    for table, names in _NAMES.items():
        if set(data[table]) != set(names):
            wrong = set(data[table]) ^ set(names)
            raise BallFormsError(f"ball_words.toml: {table} lacks or does not know {wrong}")
        empty = [name for name, forms in data[table].items() if not forms]
        if empty:
            raise BallFormsError(f"ball_words.toml: nothing under {table}: {empty}")


def _joined(forms: Collection[str], parts: Mapping[str, str]) -> re.Pattern[str]:
    """Any of the forms; a group's name that comes again ends in a number of its own."""
    count = itertools.count()
    written = "|".join(_written(one, parts) for one in forms)
    written = _GROUP.sub(lambda found: f"(?P<{found[1]}{next(count)}>", written)
    try:
        return re.compile(rf"(?<![\w@])(?:{written})(?!\w)")
    except re.error as error:
        raise BallFormsError(f"ball_words.toml: {error} in {list(forms)}") from error


def _written(text: str, parts: Mapping[str, str]) -> str:
    """The form with every part written out; a part may hold others."""
    written = _PART.sub(lambda found: parts.get(found[1], found[0]), text)
    return text if written == text else _written(written, parts)
