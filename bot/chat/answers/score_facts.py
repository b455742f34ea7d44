"""What a button settles of the score topics (change, breath, weather, format) and of the rules."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.asked import Asked
from bot.chat.format_said import SaidFormat
from bot.chat.payload import BadPayloadError, yes_or_no
from knowledge.advice import MatchFact
from knowledge.rulebook import rule_named
from knowledge.situation import Wind

LARGEST_COUNT = 30
"""No run of rallies and no time-outs beyond it are ours."""


def with_score_fact(asked: Asked, fact: MatchFact, value: str) -> Asked:
    """The question with that settled; BadPayloadError for a value we never offer."""
    match fact:
        case MatchFact.HAS_CHANGE:
            return replace(asked, has_change=yes_or_no(value))
        case MatchFact.TIRED:
            return replace(asked, tired=yes_or_no(value))
        case MatchFact.SUN:
            return replace(asked, sun=yes_or_no(value))
        case MatchFact.WIND if value in {*Wind}:
            return replace(asked, wind=Wind(value))
        case MatchFact.FORMAT:
            return replace(asked, format=_format(value))
        case MatchFact.TIMEOUTS_LEFT:
            return replace(asked, timeouts_left=_count(value))
        case MatchFact.LOST_IN_A_ROW:
            return replace(asked, lost_in_a_row=_count(value))
        case MatchFact.OFFICIATED:
            return replace(asked, officiated=yes_or_no(value))
        case MatchFact.RULE if rule_named(value) is not None:
            return replace(asked, rule=value)
    raise BadPayloadError(f"{fact} cannot be {value}")


def _count(value: str) -> int:
    if not (value.isascii() and value.isdigit()) or int(value) > LARGEST_COUNT:
        raise BadPayloadError(f"no count of ours: {value}")
    return int(value)


def _format(value: str) -> SaidFormat:
    try:
        return SaidFormat.from_code(value)
    except ValueError as error:
        raise BadPayloadError(str(error)) from None
