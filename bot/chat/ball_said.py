"""What a message says of one ball: height, place, how it comes, and where everybody stands.

Each reader takes its words off the line, so that the next reads nothing into them: first where
the pairs stand, then our own place, then speeds, heights, and the rest.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final

from bot.chat.ball_forms import form, group, triggers, units
from bot.chat.ball_line import OF_US, BallLine, ball_line
from bot.chat.common_words import is_common
from bot.chat.depths_said import find_depths
from bot.chat.heights_said import find_height
from bot.chat.places_said import find_place, off_court, too_wide
from bot.chat.said import Mention
from bot.chat.speeds_said import find_speeds
from bot.chat.words import Word
from knowledge.ball_facts import NOTHING_SAID, BallFacts, Depth, Footing, Spin
from knowledge.court import KITCHEN_DEPTH_M
from knowledge.dataclass import dataclass

UNKNOWN_LENGTH: Final = "I don't know the unit {unit}: say ft, in, cm or m."
UNKNOWN_SPEED: Final = "I don't know the unit {unit}: say mph, km/h or m/s."

BACK_FROM_LINE_M: Final = 1.0
"""Whoever meets the ball so far behind the line is back while the partner is at it; our guess."""


Reading = dict[str, Any]
"""Fields of BallFacts that a reader settles, and its `faults`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundBall:
    """The facts said, and the places in the message of the words that say them."""

    facts: BallFacts = NOTHING_SAID
    places: frozenset[int] = frozenset()


NO_BALL: Final = FoundBall()


def find_ball(
    said: Sequence[Word],
    mentions: Sequence[Mention] = (),
    ours: Sequence[Mention] = (),
    *,
    after: str = "",
) -> FoundBall:
    """What is said of the ball; what cannot be is left out, and the fault tells it kindly.

    `after` is what follows the last word in the text.
    """
    line = ball_line(said, mentions, ours, after)
    readers = [one for one in _READERS if line.has_any(triggers(one))]
    if not readers or form("veto", "rules").search(line.text):
        return NO_BALL
    facts = _facts(line, readers)
    return (
        NO_BALL if facts == NOTHING_SAID else FoundBall(facts=facts, places=frozenset(line.places))
    )


def _facts(line: BallLine, readers: Sequence[str]) -> BallFacts:
    """The facts that these readers find, in the order that leaves each what is its own."""
    found: dict[str, Any] = {}
    faults: list[str] = []
    for reader in readers:
        one = _READERS[reader](line)
        faults += one.pop("faults", ())
        found |= one
    partner_up = found.pop("partner_up", False)
    if partner_up and found.get("ours") is None:
        found["ours"] = _beside_partner(found.get("from_net_m"), found.get("footing"))
    return BallFacts(**found, fault="\n".join(dict.fromkeys(faults)) or None)


def _depths(line: BallLine) -> Reading:
    faults = off_court(line)
    found = find_depths(line)
    return {
        "theirs": found.theirs,
        "ours": found.ours,
        "partner_up": found.partner_up,
        "faults": faults,
    }


def _place(line: BallLine) -> Reading:
    found = find_place(line)
    return {"from_net_m": found.from_net_m, "faults": found.faults}


def _speeds(line: BallLine) -> Reading:
    found = find_speeds(line)
    return {"pace_mps": found.pace_mps, "wind_mps": found.wind_mps, "faults": found.faults}


def _height(line: BallLine) -> Reading:
    found = find_height(line)
    return {"height_m": found.height_m, "faults": found.faults}


def _beside_partner(from_net_m: float | None, footing: Footing | None) -> Depth | None:
    """Our pair's depth where the partner is at the line: from our own place, if it is told."""
    if from_net_m is not None:
        is_back = from_net_m > KITCHEN_DEPTH_M + BACK_FROM_LINE_M
        return Depth.ONE_BACK if is_back else Depth.AT_LINE
    return Depth.ONE_BACK if footing is Footing.BACKWARD else None


def _yes_or_no(line: BallLine, table: str) -> bool | None:
    if line.take(form(table, "no")):
        return False
    return True if line.take(form(table, "yes")) else None


def _bounced(line: BallLine) -> bool | None:
    """Whether it bounced first; nothing where that is what is asked, or both are said."""
    if form("bounced", "undecided").search(line.text):
        return None
    yes, no = line.take(form("bounced", "yes")), line.take(form("bounced", "no"))
    return None if (yes is None) is (no is None) else yes is not None


def _footing(line: BallLine) -> Footing | None:
    """How whoever of us meets it moves: said of us, or opening its clause."""
    for footing in _FOOTINGS:
        for found in form("footing", footing).finditer(line.text):
            words = line.before(found).split()
            if line.is_theirs(found) or re.search(
                form("veto", "where_to_be").pattern + "$", f"{line.before(found)} {found[0]}"
            ):
                continue
            is_ours = not OF_US.isdisjoint([*words, *found[0].split()])
            if is_ours or len(words) <= OPENING_WORDS:
                line.cover(found)
                return footing
    return None


OPENING_WORDS: Final = 2
"""So many words may stand before a footing that nobody is named of ("just off balance")."""

_FOOTINGS: Final = (Footing.BACKWARD, Footing.FORWARD, Footing.SIDEWAYS, Footing.STILL)
"""In the order in which they are looked for."""


def _spin(line: BallLine) -> Spin | None:
    """The spin it has; none where two are said, or where it is ours to choose."""
    found = [one for one in Spin if _takes_its(line, form("spin", one))]
    return found[0] if len(found) == 1 else None


def _takes_its(line: BallLine, form_: re.Pattern[str]) -> bool:
    not_its = form("spin", "not_its").pattern + "$"
    for found in form_.finditer(line.text):
        if re.search(not_its, line.before(found)) is None:
            line.cover(found)
            return True
    return False


def _past_sideline(line: BallLine) -> bool | None:
    """Whether we meet it wide of the court; where it lands out nothing is said of that."""
    if line.take(form("sideline", "no")):
        return False
    lands = form("sideline", "lands").pattern + "$"
    found = form("sideline", "yes").search(line.text)
    if found is None or re.search(lands, line.before(found)):
        return None
    line.cover(found)
    return True


def _unknown_units(line: BallLine) -> list[str]:
    faults = []
    for kind, says in (("length", UNKNOWN_LENGTH), ("speed", UNKNOWN_SPEED)):
        found = form("unknown", kind).search(line.text)
        if found is None:
            continue
        unit = group(found, "unit")
        known = {*units("length"), *units("step"), *units("speed")}
        if unit not in known and not is_common(unit):
            line.cover(found)
            faults.append(says.format(unit=f'"{unit}"'))
    return faults


_READERS: Final[Mapping[str, Callable[[BallLine], Reading]]] = {
    "unknown": lambda line: {"faults": _unknown_units(line)},
    "partner": lambda line: {"partner_set": _yes_or_no(line, "partner")},
    "depths": _depths,
    "places": _place,
    "speeds": _speeds,
    "bounced": lambda line: {"bounced": _bounced(line)},
    "heights": _height,
    "footing": lambda line: {"footing": _footing(line)},
    "spin": lambda line: {"spin": _spin(line)},
    "sideline": lambda line: {"faults": too_wide(line), "past_sideline": _past_sideline(line)},
}
"""What is looked for, in this order, each if its triggers are in the line."""
