"""Where the book's clocks are: "we're in Denver", "timezone Europe/Berlin"."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from zoneinfo import available_timezones

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from bot.chat.common_words import is_common
from bot.chat.message import Message
from bot.chat.said import Certainty, ZoneSaid
from bot.chat.schedule_words import schedule_line
from knowledge.regex import regex

_NAMED = regex(
    r"^(?:set |change |use |put |make |please |ok |my |our |the |to )*time ?zone"
    r"(?: is| to| as| of| should be| would be|s)*(?: (.+))?$|^(?:set |use )*(.+) time ?zone$"
    r"|^(?:were|we are|im|i am|its|use|set|we play|here its)(?: on| in| to)? "
    r"((?:\w+ ){1,2})time$"
)
_IN = regex(
    r"^(?:hi |hey |ok |so |btw |fyi |actually |today |this weekend |tournament is |event is )*"
    r"(?:were|we are|im|i am|we play|were playing|we are playing|playing|the tournament is"
    r"|tournament is|event is|its)(?: now| here| all| down| over)? in (.+?)"
    r"(?: now| today| this weekend| tomorrow| for the weekend)?$"
)
_ASKS = regex(r"^(?:what|which|whats)(?: is)?(?: the| our| my| your)? time ?zone\b")
_IANA = regex(r"\b[A-Z][A-Za-z]+/[A-Za-z_]+(?:/[A-Za-z_]+)?\b")

MOST_WORDS = 3
"""Words of a place; a longer rest tells something else."""

_SHORTEST_MENDED = 5
_NEAR = 3
_MOST_SLIPS = 2


def zone_said(message: Message) -> ZoneSaid | None:
    """The zone, asked for or told; None where the message is about anything else.

    "We're in trouble" tells no zone: a place that nobody knows counts only where it is written
    as a name or a time zone is named in so many words.
    """
    line = schedule_line(message.said)
    if _ASKS.search(line):
        return ZoneSaid(text=message.text)
    told = _IANA.search(message.text)
    if told and zone_of(told[0]):
        return ZoneSaid(text=message.text, zone=zone_of(told[0]), place=told[0])
    named = _NAMED.match(line)
    if named:
        return _of_place(message.text, next((one for one in named.groups() if one), "").strip())
    found = _IN.match(line)
    if found is None or len(found[1].split()) > MOST_WORDS or "?" in message.text:
        return None
    place = found[1]
    if zone_of(place) is None and not _is_written_as_name(message, place):
        return None
    return _of_place(message.text, place)


def _of_place(text: str, place: str) -> ZoneSaid:
    zone = zone_of(place)
    return ZoneSaid(text=text, zone=zone, place=place, near=() if zone else _near(place))


def _is_written_as_name(message: Message, place: str) -> bool:
    words = message.said[-len(place.split()) :]
    sure = [one for one in message.mentions if one.certainty is Certainty.SURE]
    named = {at for one in sure for at in range(*one.span)}
    return all(
        word.is_capitalised and not is_common(word.folded) and word.span[0] not in named
        for word in words
    )


def zone_of(said: str) -> str | None:
    """The zone of the tz database that a place or a name of a zone stands for."""
    key = _key(said)
    known = _places()
    if key in known:
        return known[key]
    bare = re.sub(r"^the | (?:standard |daylight |summer )?time$", "", key)
    if bare in known:
        return known[bare]
    if len(bare) < _SHORTEST_MENDED or is_common(bare):
        return None
    slips = 1 if len(bare) < 2 * _SHORTEST_MENDED else _MOST_SLIPS
    near = {
        known[one]
        for one, _, _ in process.extract(
            bare, list(known), scorer=DamerauLevenshtein.distance, score_cutoff=slips, limit=_NEAR
        )
        if one[0] == bare[0]
    }
    return near.pop() if len(near) == 1 else None


def _near(place: str) -> tuple[str, ...]:
    """Zones whose names are like what was typed, to choose from."""
    found = process.extract(
        _key(place), list(_places()), scorer=DamerauLevenshtein.normalized_similarity, limit=_NEAR
    )
    return tuple(dict.fromkeys(_places()[name] for name, likeness, _ in found if likeness > 0.6))


def _key(said: str) -> str:
    return " ".join(re.sub(r"[_/\s.,]+", " ", said.lower()).split())


@cache
def _places() -> Mapping[str, str]:
    """Everything that may be said, each with its zone; a city's own zone before a country's."""
    text = files("bot.chat.data").joinpath("zones.toml").read_text(encoding="utf-8")
    zones = sorted(one for one in available_timezones() if "/" in one and not _is_old(one))
    places = {_key(zone.rsplit("/", 1)[1]): zone for zone in zones}
    places |= {_key(zone): zone for zone in zones}
    said: Mapping[str, list[str]] = tomllib.loads(text)["said"]
    return places | {place: zone for zone, names in said.items() for place in names}


def _is_old(zone: str) -> bool:
    """Names that the database keeps for old programs only."""
    return zone.startswith(("US/", "Etc/", "posix/", "right/", "SystemV/", "Canada/", "Mexico/",
                            "Brazil/", "Chile/"))  # fmt: skip
