"""The report as a sheet of bars: what helps us, what hurts us, and what nobody knows yet."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence

from knowledge.evidence import NOTHING_KNOWN, TraitEstimate
from knowledge.planning.known import DISAGREE, RANGE, Known, how_sure
from knowledge.planning.names import pair_name
from knowledge.situation import OnCourt
from knowledge.sources import counted
from knowledge.trait_bars import BarGroup, SheetFact, TraitBar, TraitBars
from knowledge.vocabulary import TRAITS, PlayerId, Trait

MOST_BARS = 10
"""Lines of a sheet in all: what is known needs two lines of a phone's picture each."""

MOST_OF_A_GROUP = 4
"""Of what helps and of what hurts, before the rest fills up with the more useful ones."""

MOST_KNOWN = 7
MOST_UNKNOWN = 4

FACTS_CHARACTERS = 40
"""Of the line of one player's hand and side."""

ONE_WEAKNESS = frozenset({Trait.FOOTWORK_KITCHEN_FAULTS})
"""Habits that are a weakness where they are frequent: every other one costs us something."""

RANGE_WORDS = f"bar: where it lies, {round(10 * RANGE)} times in 10"

OPEN = "open"
"""Notes that contradict each other so much that nothing rests on them."""

Missing = tuple[OnCourt, Trait]


def bars_of(
    people: Sequence[OnCourt],
    known: Sequence[Known],
    missing: Iterable[Missing],
    *,
    ours: Collection[PlayerId],
) -> TraitBars | None:
    """The sheet of what is known of these, most useful first in either group.

    None where there is no trait to rank: hands and sides alone are a line, not a picture.
    """
    rated = [one for one in known if one.estimate is not None]
    if not rated:
        return None
    several = len(people) > 1
    told = [_bar(one, one.estimate, several, ours) for one in rated if one.estimate is not None]
    shown = list(_shown(told))
    open_ends = min(MOST_UNKNOWN, MOST_BARS - len(shown))
    unknown = [_unknown(one, several) for one in [*missing][:open_ends]]
    facts = tuple(_facts(known, several))
    who = pair_name(people)
    bars = (*shown, *unknown)
    return TraitBars(
        title=f"What we know of {who}",
        alt=_alt(who, facts, bars, left_out=len(told) - len(shown)),
        facts=facts,
        bars=bars,
        range_words=RANGE_WORDS,
    )


def _bar(
    one: Known, estimate: TraitEstimate, several: bool, ours: Collection[PlayerId]
) -> TraitBar:
    """The trait from our side: their weakness helps, and so does a strength of our own."""
    sign = 1 if helps_when_up(one, ours) else -1
    low, high = sorted(sign * end for end in estimate.interval(RANGE))
    level = sign * estimate.level
    return TraitBar(
        words=one.said,
        who=one.player.name if several else "",
        group=BarGroup.HELPS if sign * (1 if one.up else -1) > 0 else BarGroup.HURTS,
        level=level,
        low=min(low, level),
        high=max(high, level),
        counts=tuple(_counts(estimate)),
        sure=OPEN if estimate.is_open else how_sure(estimate),
        contradicted=estimate.disagreeing > 0,
        settles=not estimate.is_open,
    )


def helps_when_up(one: Known, ours: Collection[PlayerId]) -> bool:
    """Whether more of it helps us: a strength of ours, a weakness of theirs."""
    is_ours = one.player.player in ours
    is_weakness = one.habit and one.trait in ONE_WEAKNESS
    return is_ours is not is_weakness


def _counts(estimate: TraitEstimate) -> Iterator[str]:
    """What stands behind it, the fullest form first."""
    rallies = counted(estimate.rallies, "rally", "rallies") if estimate.rallies else ""
    if estimate.disagreeing:
        notes = f"{estimate.agreeing} for, {estimate.disagreeing} against"
    else:
        notes = counted(estimate.notes, "note", "notes") if estimate.notes else ""
    if notes and rallies:
        yield f"{notes}, {rallies}"
        yield f"{estimate.notes} + {rallies}"
    yield notes or rallies


def _shown(told: Sequence[TraitBar]) -> Iterator[TraitBar]:
    """The most useful of either group, group by group; a short one leaves the other its room."""
    kept: list[TraitBar] = []
    for group in (BarGroup.HELPS, BarGroup.HURTS):
        kept += [one for one in told if one.group is group][:MOST_OF_A_GROUP]
    rest = [one for one in told if one not in kept]
    kept = [*_by_use(kept, told)[:MOST_KNOWN], *rest[: max(0, MOST_KNOWN - len(kept))]]
    for group in (BarGroup.HELPS, BarGroup.HURTS):
        yield from (one for one in told if one in kept and one.group is group)


def _by_use(bars: Iterable[TraitBar], told: Sequence[TraitBar]) -> list[TraitBar]:
    """The bars in the order of the report."""
    return sorted(bars, key=told.index)


def _unknown(missing: Missing, several: bool) -> TraitBar:
    player, trait = missing
    low, high = NOTHING_KNOWN.interval(RANGE)
    return TraitBar(
        words=TRAITS[trait].label,
        who=player.name if several else "",
        group=BarGroup.UNKNOWN,
        level=0.0,
        low=low,
        high=high,
        settles=False,
    )


def _facts(known: Iterable[Known], several: bool) -> Iterator[SheetFact]:
    """A line per player: as many of the facts, the most telling first, as fit."""
    for one in known:
        if one.estimate is not None:
            continue
        facts = one.text.split(", ")
        lines = [
            f"{one.player.name}: {', '.join(facts[:count])}"
            if several
            else ", ".join(facts[:count])
            for count in range(len(facts), 0, -1)
        ]
        words = next((line for line in lines if len(line) <= FACTS_CHARACTERS), lines[-1])
        yield SheetFact(words=words, contradicted=DISAGREE in one.text)


def _alt(who: str, facts: Sequence[SheetFact], bars: Sequence[TraitBar], *, left_out: int) -> str:
    """The whole sheet in words."""
    groups = {
        BarGroup.HELPS: "Helps us, best first",
        BarGroup.HURTS: "Hurts us, worst first",
        BarGroup.UNKNOWN: "Not known",
    }
    parts = [f"{who}.", *(f"{fact.words}." for fact in facts)]
    for group, heading in groups.items():
        said = [_in_words(one) for one in bars if one.group is group]
        parts += [f"{heading}: {'; '.join(said)}."] if said else []
    parts += [f"And {left_out} more."] if left_out else []
    return " ".join(parts)


def _in_words(bar: TraitBar) -> str:
    if bar.group is BarGroup.UNKNOWN:
        return bar.in_full
    return f"{bar.in_full} ({bar.counts[0]}, {bar.sure})"
