"""What a message says of one ball: height, place, how it comes, and where everybody stands.

Each reader takes its words off the line, so that the next reads nothing into them: first where
the pairs stand, then our own place, then speeds, heights, and the rest.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from bot.chat.ball_forms import form, group, units
from bot.chat.ball_line import BallLine, ball_line
from bot.chat.common_words import is_common
from bot.chat.depths_said import FoundDepths, find_depths
from bot.chat.heights_said import find_height
from bot.chat.places_said import find_place
from bot.chat.question import Mention
from bot.chat.speeds_said import find_speeds
from bot.chat.words import Word
from knowledge.ball_facts import NOTHING_SAID, BallFacts, Depth, Footing, Spin
from knowledge.court import KITCHEN_DEPTH_M

UNKNOWN_LENGTH: Final = "I don't know the unit {unit}: say ft, in, cm or m."
UNKNOWN_SPEED: Final = "I don't know the unit {unit}: say mph, km/h or m/s."

BACK_FROM_LINE_M: Final = 1.0
"""Whoever meets the ball so far behind the line is back while the partner is at it; our guess."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundBall:
    """The facts said, and the places in the message of the words that say them."""

    facts: BallFacts = NOTHING_SAID
    places: frozenset[int] = frozenset()


def find_ball(
    said: Sequence[Word],
    mentions: Sequence[Mention] = (),
    ours: Sequence[Mention] = (),
    *,
    after: str = "",
) -> FoundBall:
    """What is said of the ball; what cannot be is left out, and the fault tells it kindly."""
    line = ball_line(said, mentions, ours, after)
    if form("veto", "rules").search(line.text):
        return FoundBall()
    facts = _facts(line)
    return FoundBall(facts=facts, places=frozenset(line.places))


def _facts(line: BallLine) -> BallFacts:
    unknown = _unknown_units(line)
    partner_set = _yes_or_no(line, "partner")
    depths = find_depths(line)
    place = find_place(line)
    speeds = find_speeds(line)
    height = find_height(line)
    footing = _footing(line)
    faults = [one for one in (*unknown, height.fault, place.fault, *speeds.faults) if one]
    return BallFacts(
        height_m=height.height_m,
        from_net_m=place.from_net_m,
        bounced=_bounced(line),
        footing=footing,
        theirs=depths.theirs,
        ours=_ours(depths, place.from_net_m, footing),
        pace_mps=speeds.pace_mps,
        wind_mps=speeds.wind_mps,
        spin=_spin(line),
        past_sideline=_past_sideline(line),
        partner_set=partner_set,
        fault="\n".join(faults) or None,
    )


def _ours(depths: FoundDepths, from_net_m: float | None, footing: Footing | None) -> Depth | None:
    """Our pair's depth, from the partner's place beside our own where only those are told."""
    if depths.ours is not None or not depths.partner_up:
        return depths.ours
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
    return next((one for one in _FOOTINGS if line.take(form("footing", one))), None)


_FOOTINGS: Final = (Footing.BACKWARD, Footing.FORWARD, Footing.SIDEWAYS, Footing.STILL)


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
