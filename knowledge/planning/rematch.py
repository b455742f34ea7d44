"""A rematch: what they will probably change, from what beat them; a guess, and marked as one.

Whoever lost changes what lost them rallies; whoever won has no reason to. Common practice, no
source. Which change it is comes from the plan of then, as it is weighed in plan_b.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from knowledge.dataclass import dataclass
from knowledge.given_plan import GivenLine, LastMeeting, Tried
from knowledge.planning.line import Line, Phase
from knowledge.planning.plan_b import Variant, variants
from knowledge.planning.shifts import Shift, shifts
from knowledge.situation import OnCourt, Situation

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

    @property
    def reason(self) -> str:
        """Why, for a page whose call says what to expect already."""
        return f"My guess: {self.because[0].lower()}{self.because[1:]}"


def expected(situation: Situation, lines: Sequence[Line]) -> Expected | None:
    """The guess; None without a last meeting whose end is known."""
    meeting = situation.last_meeting
    if meeting is None or meeting.won is None:
        return None
    if not meeting.won:
        return Expected(because="They won last time", change="expect the same again")
    best = what_won(meeting)
    if best is None:
        return Expected(because="You won last time", change="expect them to try something else")
    target = next((one for one in situation.theirs if one.name in best.do), None)
    found = variants(situation, lines, target=target)
    shift = found[0].shift if found else _usual_shift(situation, target)
    change = f"expect {_infinitive(shift.sign)}" if shift else "expect them to change that"
    because = _because(meeting, best)
    return Expected(because=because, change=change, variant=found[0] if found else None)


def _usual_shift(situation: Situation, target: OnCourt | None) -> Shift | None:
    """What costs them nothing to try, where nothing costs us much."""
    return next(shifts(situation, target), None) if target is not None else None


def _because(meeting: LastMeeting, best: GivenLine) -> str:
    """What won as counted; without a count only what the plan led with, which is less."""
    counted = next((one for one in _counted(meeting) if one.do == best.do), None)
    if counted is None:
        return f"You won leading with {doing(best.do)}"
    return f"You won {counted.won} of {counted.of} {doing(best.do)}"


def _counted(meeting: LastMeeting) -> tuple[Tried, ...]:
    return tuple(one for one in meeting.tried if one.of >= FEWEST_TRIED)


def what_won(meeting: LastMeeting) -> GivenLine | None:
    """The line of that plan that beat them: by the log where it counts enough, else by worth."""
    aims = [line for line in meeting.plan if line.phase in _AIMS]
    counted = {one.do: one for one in _counted(meeting)}
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


def _infinitive(sign: str) -> str:
    """ "Lindqvist to slide over": the sign as what to expect."""
    for finite, infinitive in _TO:
        sign = sign.replace(finite, infinitive, 1)
    return sign


_TO = (
    (" slides over", " to slide over"),
    (" crosses for", " to cross for"),
    (" takes most", " to take most"),
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
