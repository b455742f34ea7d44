"""What is asked of a plan beyond a plan."""

from __future__ import annotations

from enum import StrEnum

from bot.chat.said.mention import Mention
from knowledge.dataclass import dataclass


class PlanAsk(StrEnum):
    """What of a plan is wanted: as given before, its second half, what is new, or a message."""

    AGAIN = "again"
    PLAN_B = "b"
    SINCE = "since"
    SHARE = "share"
    STUDENT = "student"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSaid:
    """Something about a plan beyond asking for one; `mentions` are whom it is against, or for.

    `earlier`: the plan of the last meeting is meant. `change`: the change of theirs that plan B is
    for, as planning.shifts names it; empty for whichever is likeliest. `of_no_plan`: what is to be
    sent on is an answer of another kind.
    """

    text: str
    what: PlanAsk
    mentions: tuple[Mention, ...] = ()
    earlier: bool = False
    change: str = ""
    of_no_plan: bool = False
