"""Plan B: what the plan becomes if they change what hurts them most, and the sign that they did.

1. Suppose each change they may make (shifts) and answer every part of the rally anew.
2. What it costs us is the plan's worth now less its worth then, kept as it is.
3. The likeliest change is the one with the largest cost times how likely it is: a pair changes what
   loses it rallies. That is a guess, and said to be one.
4. Plan B is the plan of then; switching is worth what it has over the plan kept.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from knowledge.advice import Advice, Confidence, Reason
from knowledge.dataclass import dataclass
from knowledge.planning.line import Line, Phase
from knowledge.planning.names import first_that_fits
from knowledge.planning.plan_lines import lines_of, most_targeted, phase_lines, plan_lines
from knowledge.planning.shifts import SUPPOSED, Shift, shifts
from knowledge.situation import OnCourt, Situation
from knowledge.sources import computed
from knowledge.vocabulary import Topic

LEAST_COST = 0.05
"""Rallies in 100 below which a change of theirs leaves the plan as it is. Our own guess."""

SUPPOSING = computed("plan if they change")

MOST_CHANGES = 3
"""Changed lines shown: more would be another plan to learn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """The plan if they make one change: worth now, then if kept, and then if we switch.

    All three are rallies in 100, over the parts of the rally that the plan now speaks of.
    """

    shift: Shift
    lines: tuple[Line, ...]
    now: float
    kept: float
    switched: float

    @property
    def cost(self) -> float:
        """What their change takes from the plan while we keep it."""
        return self.now - self.kept

    @property
    def gain(self) -> float:
        """What switching is worth once they have changed."""
        return self.switched - self.kept

    @property
    def appeal(self) -> float:
        """How much it is worth to them, by how likely it is."""
        return self.shift.weight * self.cost


def variants(
    situation: Situation, lines: Sequence[Line], *, target: OnCourt | None = None
) -> tuple[Variant, ...]:
    """The plan under every change of theirs that costs us something, the likeliest first.

    They help the `target`, which is the one whom the plan plays at most unless said.
    """
    found = _all(situation, lines, target or most_targeted(situation, lines))
    costly = [one for one in found if one.cost >= LEAST_COST]
    return tuple(sorted(costly, key=lambda one: -one.appeal))


def _all(
    situation: Situation, lines: Sequence[Line], target: OnCourt | None
) -> tuple[Variant, ...]:
    if target is None:
        return ()
    return tuple(_variant(shift, lines) for shift in shifts(situation, target))


def _variant(shift: Shift, lines: Sequence[Line]) -> Variant:
    found = phase_lines(shift.situation)
    then = {line.phase: line for line in found}
    aims = [line for line in lines if line.worth]
    return Variant(
        shift=shift,
        lines=lines_of(shift.situation, found),
        now=_sum(line.points * line.share for line in aims),
        kept=_sum(_kept(line, then, shift) * line.share for line in aims),
        switched=_sum(
            max(_best(line, then), _kept(line, then, shift)) * line.share for line in aims
        ),
    )


def _sum(parts: Iterable[float]) -> float:
    return math.fsum(parts) / 100


def _kept(line: Line, then: Mapping[Phase, Line], shift: Shift) -> float:
    """Points of the plan's own choice then; none where that part has no choice any more."""
    now = then.get(line.phase)
    return 0.0 if now is None else now.worth.get(shift.kept(line.option), 0.0)


def _best(line: Line, then: Mapping[Phase, Line]) -> float:
    now = then.get(line.phase)
    return 0.0 if now is None else float(now.points)


def changed_lines(variant: Variant, lines: Sequence[Line]) -> tuple[Line, ...]:
    """The lines of plan B that the plan does not have, most useful first."""
    known = {line.do for line in lines}
    return tuple(
        line for line in variant.lines if line.do not in known and line.phase is not Phase.RESPECT
    )


def kept_lines(variant: Variant, lines: Sequence[Line]) -> tuple[Line, ...]:
    """The lines that stand in both."""
    then = {line.do for line in variant.lines}
    return tuple(line for line in lines if line.do in then)


def sign_of(situation: Situation, lines: Sequence[Line]) -> str | None:
    """When to leave the plan, in a line; None where nothing of theirs would change it."""
    found = variants(situation, lines)
    if not found:
        return _shielded(situation, lines)
    first = found[0]
    new = changed_lines(first, lines)
    what = _short(new[0]) if new else f"less at {_target_name(situation, lines)}"
    return f"Plan B when {first.shift.sign}: {what}."


def _short(line: Line) -> str:
    do = line.do.partition(",")[0]
    return f"{do[0].lower()}{do[1:]}"


def _target_name(situation: Situation, lines: Sequence[Line]) -> str:
    target = most_targeted(situation, lines)
    return "" if target is None else target.name


def _shielded(situation: Situation, lines: Sequence[Line]) -> str | None:
    """The general rule: a shielded target is left for the other player."""
    target = most_targeted(situation, lines)
    others = _others(situation, target)
    if target is None or not others:
        return None
    return f"Plan B when they shield {target.name}: at {others[0].name}."


def _others(situation: Situation, target: OnCourt | None) -> list[OnCourt]:
    return [one for one in situation.theirs if target is None or one.player != target.player]


def advise(situation: Situation, *, change: str | None = None) -> Advice:
    """Plan B on a page: the sign, the lines that change, what stays, and their other changes.

    `change` names the one that is asked about (shifts): then the page is about that one.
    """
    lines = plan_lines(situation)
    found = variants(situation, lines)
    first = _asked(situation, lines, change) if change else next(iter(found), None)
    new = changed_lines(first, lines) if first is not None else ()
    if first is None or not new or (change and first.gain < LEAST_COST):
        return _stays(situation, lines, found, asked=first if change else None)
    guess = "" if change else ", my guess"
    sign = Reason(text=f"Sign: {first.shift.sign}{guess}", source=SUPPOSING)
    stay = [_short(line) for line in kept_lines(first, lines) if line.phase is not Phase.RESPECT]
    others = () if change else _other_changes(found, lines)
    most = MOST_CHANGES - len(others)
    return Advice(
        topic=Topic.GAME_PLAN,
        call=_call(new[0]),
        lines=(sign, *(_reason(line) for line in new[:most]), *others, *_keep(stay)),
        number=f"Switching then is worth about {first.gain:.1f} rallies in 100.",
        confidence=Confidence.GENERAL_RULE,
        numbers=numbers_of(found),
        more=tuple(_in_words(one) for one in found),
    )


def _asked(situation: Situation, lines: Sequence[Line], change: str) -> Variant | None:
    """The change that is asked about; None where it cannot be supposed of them."""
    found = _all(situation, lines, most_targeted(situation, lines))
    return next((one for one in found if one.shift.id == change), None)


MOST_OTHERS = 2


def _other_changes(found: Sequence[Variant], lines: Sequence[Line]) -> tuple[Reason, ...]:
    """What to do about their further changes, those with an answer of their own first."""
    said = {_answer(found[0], lines)}
    own, same = [], []
    for one in found[1:]:
        answer = _answer(one, lines)
        if answer in said:
            same.append(f"Same if {one.shift.sign}")
        else:
            said.add(answer)
            own.append(f"If {one.shift.sign}: {answer or 'keep the plan'}")
    told = [*own, *same][:MOST_OTHERS]
    return tuple(Reason(text=text, source=SUPPOSING) for text in told)


def _answer(one: Variant, lines: Sequence[Line]) -> str:
    """What changes first then; nothing where it is not worth changing."""
    new = changed_lines(one, lines)
    return _short(new[0]) if new and one.gain >= LEAST_COST else ""


def _call(line: Line) -> str:
    do = line.do
    return first_that_fits((f"{do} once they change.", f"{do}.", f"{do.partition(',')[0]}."))


def _keep(stay: Sequence[str]) -> tuple[Reason, ...]:
    if not stay:
        return ()
    text = first_that_fits((f"Still: {'; '.join(stay)}", f"Still: {stay[0]}"), limit=LINE_LIMIT)
    return (Reason(text=text, source=SUPPOSING),)


LINE_LIMIT = 70
"""Characters of a line of a list: two lines of a phone."""


def _reason(line: Line) -> Reason:
    """The line with its notes; what is only supposed is no ground of its own."""
    if any(one.startswith(SUPPOSED) for one in line.evidence):
        return Reason(text=line.do, source=SUPPOSING)
    return line.reason()


def _stays(
    situation: Situation,
    lines: Sequence[Line],
    found: Sequence[Variant],
    *,
    asked: Variant | None = None,
) -> Advice:
    """No change that we can think of, or not the one asked about, makes another plan better."""
    target = _target_name(situation, lines)
    who = f"{target} is" if target else "they are"
    calls: tuple[str, ...] = (f"Keep the plan, even if {who} covered.", "Keep the plan.")
    reasons = [Reason(text="No likely change of theirs makes another aim better", source=SUPPOSING)]
    if asked is not None:
        calls = (f"Keep the plan if {asked.shift.sign}.", "Keep the plan, even then.")
        reasons = [_why_kept(asked), *(_then(line) for line in _aims(asked)[:MOST_THEN])]
    return Advice(
        topic=Topic.GAME_PLAN,
        call=first_that_fits(calls),
        reasons=tuple(reasons),
        unless=sign_of(situation, lines) if asked else _shielded(situation, lines),
        numbers=numbers_of(found),
        more=tuple(_in_words(one) for one in found),
    )


MOST_THEN = 2


def _why_kept(asked: Variant) -> Reason:
    if asked.cost < LEAST_COST:
        return Reason(text="That takes nothing from it", source=SUPPOSING)
    text = f"It costs you {asked.cost:.1f} rallies in 100, but no other aim is better"
    return Reason(text=text, source=SUPPOSING)


def _aims(one: Variant) -> tuple[Line, ...]:
    return tuple(line for line in one.lines if line.phase is not Phase.RESPECT)


def _then(line: Line) -> Reason:
    """The line as it is after the change: the same aim may lie at the other foot."""
    return Reason(text=f"Then: {_short(line)}", source=_reason(line).source)


def numbers_of(found: Sequence[Variant]) -> Mapping[str, float]:
    """Rallies in 100 of each variant: the plan now, kept then, switched then."""
    numbers: dict[str, float] = {}
    for one in found:
        numbers |= {
            f"if_{one.shift.id}_now_per_100": one.now,
            f"if_{one.shift.id}_kept_per_100": one.kept,
            f"if_{one.shift.id}_switched_per_100": one.switched,
        }
    return MappingProxyType(numbers)


def _in_words(one: Variant) -> str:
    lost, back = f"{one.cost:.1f}", f"{max(0.0, one.gain):.1f}"
    return f"If {one.shift.sign}: costs {lost} rallies in 100, switching brings back {back}"
