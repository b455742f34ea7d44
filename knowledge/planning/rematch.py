"""A rematch: what they will probably change, from what beat them; a guess, and marked as one.

Whoever lost changes what lost them rallies; whoever won has no reason to. Common practice, no
source. Which change it is comes from the plan of then, as it is weighed in plan_b.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from knowledge.given_plan import GivenLine, LastMeeting, Tried
from knowledge.planning.line import Line, Phase
from knowledge.planning.plan_b import Variant, variants
from knowledge.situation import Situation

FEWEST_TRIED = 6
"""Fewer logged rallies of a line say nothing of whether it won. Our own guess."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Expected:
    """What they will probably do: `because` is the reason, `change` what to expect.

    `variant` is the plan if they do; None where they have no reason to change.
    """

    because: str
    change: str
    variant: Variant | None = None

    @property
    def text(self) -> str:
        return f"{self.because}: {self.change} (a guess)"


def expected(situation: Situation, lines: Sequence[Line]) -> Expected | None:
    """The guess; None without a last meeting whose end is known."""
    meeting = situation.last_meeting
    if meeting is None or meeting.won is None:
        return None
    if not meeting.won:
        return Expected(because="They won last time", change="expect the same again")
    best = what_won(meeting)
    found = variants(situation, lines)
    if best is None or not found:
        return Expected(because="You won last time", change="expect them to try something else")
    return Expected(
        because=f"You won {doing(best.do)}",
        change=f"expect {_sign(found[0])}",
        variant=found[0],
    )


def what_won(meeting: LastMeeting) -> GivenLine | None:
    """The line of that plan that beat them: by the log where it counts enough, else by worth."""
    aims = [line for line in meeting.plan if line.phase in _AIMS]
    counted = {one.do: one for one in meeting.tried if one.of >= FEWEST_TRIED}
    logged = [line for line in aims if line.do in counted]
    if logged:
        return max(logged, key=lambda line: _won_over(counted[line.do]))
    return max(aims, key=lambda line: line.per_100, default=None)


_AIMS = frozenset(
    {Phase.RETURN.value, Phase.THIRD.value, Phase.DINK.value, Phase.HANDS.value, Phase.LOB.value}
)


def _won_over(tried: Tried) -> float:
    """Rallies won beyond half of those played."""
    return tried.won - tried.of / 2


_GERUNDS = {
    "Dink": "dinking",
    "Return": "returning",
    "Drop": "dropping",
    "Drive": "driving",
    "Speed": "speeding",
    "Lob": "lobbing",
    "Serve": "serving",
    "Soft": "going soft",
}


def doing(do: str) -> str:
    """ "dinking Okafor's backhand" of "Dink Okafor's backhand, across"; whose it is stays out."""
    call = do.partition(",")[0]
    head, colon, rest = call.partition(": ")
    said = (rest if colon else head)[:1].upper() + (rest if colon else head)[1:]
    verb, _, what = said.partition(" ")
    return f"{_GERUNDS[verb]} {what}" if verb in _GERUNDS else f"with {said}"


def _sign(variant: Variant) -> str:
    """ "Lindqvist to slide over": the sign as what to expect."""
    sign = variant.shift.sign
    for finite, infinitive in _TO:
        sign = sign.replace(finite, infinitive, 1)
    return sign


_TO = (
    (" slides over", " to slide over"),
    (" crosses for", " to cross for"),
    (" moves to", " to move to"),
    (" land deep", " to land deep"),
)


def day_name(day: int, *, today: int) -> str:
    """ "Saturday" within the week, else "Sat 14 Jun"; "earlier today" on the day itself."""
    then = date.fromordinal(day)
    if today - day <= 0:
        return "earlier today"
    if today - day <= DAYS_BY_NAME:
        return f"{then:%A}"
    return f"{then:%a} {then.day} {then:%b}"


DAYS_BY_NAME = 6
"""Days back that a weekday names without doubt."""


def result_words(meeting: LastMeeting) -> str | None:
    """ "you won 11-8 11-6"; None where nobody told."""
    if meeting.won is None:
        return None
    return f"you {'won' if meeting.won else 'lost'} {meeting.games}".strip()
