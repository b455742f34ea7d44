"""The opponent report: what we know of them, most useful first, and what we don't."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from knowledge.advice import Advice, Confidence, Reason
from knowledge.evidence import FactEstimate, TraitEstimate
from knowledge.planning.aged import aged, source_of
from knowledge.planning.hands import attacked_at
from knowledge.planning.in_words import in_words, only_words
from knowledge.planning.known import RANGE, Known, fact_said
from knowledge.planning.names import first_that_fits, pair_name
from knowledge.planning.phrases import trait_words
from knowledge.planning.probes import hand_choices, probes
from knowledge.planning.rate_lines import rate_lines, rate_numbers
from knowledge.planning.report_bars import Missing, bars_of
from knowledge.planning.report_side import one_side, side_asked
from knowledge.planning.trait_told import led_by, said_by_notes, trait_told
from knowledge.planning.worth import FACTS, HABITS, SKILLS, Worth
from knowledge.situation import OnCourt, Situation
from knowledge.sources import book
from knowledge.vocabulary import TRAITS, Tag, Topic, Trait, Value

MAX_KNOWN = 4
"""Lines of what we know; the fifth says what we don't."""

MOST_IN_FULL = 12
"""Lines under "why": the least useful of a long list would not be read."""

MAX_UNKNOWN = 2

OUR_SHOT_COUNTS = 0.5
"""How far our own shot that uses a trait moves its place: half up or down at full level."""


def advise(situation: Situation) -> Advice:
    """What we know of the player asked about, or of the pair."""
    people = _people(situation)
    known = sorted(
        (one for player in people for one in known_of(player, situation)),
        key=lambda one: -one.per_100,
    )
    is_of_one_trait = situation.asked.trait is not None
    side = None if is_of_one_trait else side_asked(situation.asked.words)
    words = in_words(people, situation)
    if known and side is not None:
        return one_side(people, known, side, words)
    if not known:
        return only_words(people, words) if words else _nothing_noted(people)
    call, lines = _call(known), tuple(_line(one) for one in known)
    if situation.asked.trait is not None:
        call, first = trait_told(people, situation.asked.trait, today=situation.today)
        counted = in_words(people, situation, situation.asked.trait.trait)
        if situation.asked.trait.is_open and len(counted) == len(people) == 1:
            # How often or how many was asked of one: the count itself, where a line holds it.
            call = first_that_fits((f"{counted[0].text}.", call))
        counted = tuple(one for one in counted if f"{one.text}." != call)
        lines = led_by((*first, *counted), lines)
    return Advice(
        topic=Topic.OPPONENT_REPORT,
        call=call,
        lines=lines[:MAX_KNOWN] + words[: max(0, MAX_KNOWN - len(known))] + _not_known(people),
        confidence=Confidence.LEAN,
        numbers=_numbers(known) | rate_numbers(people),
        choices=hand_choices(people, Topic.OPPONENT_REPORT),
        picture=bars_of(
            people, known, _most_missed(people), ours={one.player for one in situation.ours}
        ),
        more=(*(one.in_full for one in known[:MOST_IN_FULL]), *rate_lines(people)),
    )


def _numbers(known: Sequence[Known]) -> dict[str, float]:
    """What each is worth, and of those shown the level with the range that it lies in."""
    numbers = {f"{one.player.name}.{one.trait}_per_100": one.per_100 for one in known}
    for one in known[:MAX_KNOWN]:
        numbers |= _level(one)
    return numbers


def _people(situation: Situation) -> tuple[OnCourt, ...]:
    asked = [situation.find(player) for player in situation.asked.about]
    return tuple(one for one in asked if one is not None) or situation.theirs


def _line(one: Known) -> Reason:
    return Reason(text=f"{one.player.name}: {one.text}", source=one.source)


def _call(known: Sequence[Known]) -> str:
    """What to do with the most useful thing that says what to do."""
    uses = [one.use.format(name=one.player.name) for one in known if one.use]
    return first_that_fits((*(f"{use}." for use in uses), *_told(known[0])))


def _told(first: Known) -> tuple[str, str]:
    """The most useful thing noted, where nothing noted says what to do."""
    return f"Know of {first.player.name}: {first.text}.", f"Know {first.player.name} by this."


def _nothing_noted(people: Sequence[OnCourt]) -> Advice:
    who = pair_name(people)
    call = (f"Watch them first: no notes on {who}.", "Watch them first: no notes yet.")
    return Advice(
        topic=Topic.OPPONENT_REPORT,
        call=first_that_fits(call),
        lines=probes(people),
        choices=hand_choices(people, Topic.OPPONENT_REPORT),
    )


def known_of(player: OnCourt, situation: Situation) -> Iterator[Known]:
    """Everything noted of the player that is worth something, in no order."""
    for (trait, habit), estimate in player.profile.skills.items():
        worth = (HABITS if habit else SKILLS).get(trait)
        if worth is not None and estimate.evidence:
            yield _skill(player, trait, worth, estimate, situation)
    if player.profile.facts:
        yield _facts(player, situation)


def _skill(
    player: OnCourt, trait: Trait, worth: Worth, estimate: TraitEstimate, situation: Situation
) -> Known:
    up = estimate.level > 0 or (estimate.level == 0 and estimate.says_yes >= estimate.says_no)
    at_it = None if up else attacked_at(player, trait, situation)
    use = at_it or _use(worth, up=up)
    return Known(
        player=player,
        trait=trait,
        text=_under(estimate.only_when, said_by_notes(trait, estimate, habit=worth.habit, up=up)),
        per_100=abs(estimate.level) * worth.per_100 * _our_part(worth, situation, threat=up),
        source=source_of(estimate, situation.today),
        use="" if _is_ours(player, situation) or estimate.is_open else use,
        estimate=estimate,
        said=_under(
            estimate.only_when,
            trait_words(trait, habit=worth.habit, up=up, denied=estimate.only_denied),
        ),
        up=up,
        habit=worth.habit,
    )


def _level(known: Known) -> dict[str, float]:
    """The level and its range, by name."""
    if known.estimate is None:
        return {}
    low, high = known.estimate.interval(RANGE)
    name = f"{known.player.name}.{known.trait}"
    return {
        f"{name}_level": known.estimate.level,
        f"{name}_level_low": low,
        f"{name}_level_high": high,
    }


def _use(worth: Worth, *, up: bool) -> str:
    return worth.mind if up else worth.use


def _is_ours(player: OnCourt, situation: Situation) -> bool:
    """Our own players are nobody's target."""
    return any(one.player == player.player for one in situation.ours)


def _under(condition: Tag | None, words: str) -> str:
    """The words with the condition that all of it was seen under."""
    return words if condition is None else f"{words} {condition}"


def _our_part(worth: Worth, situation: Situation, *, threat: bool) -> float:
    """More where our own shot uses the weakness well, or meets the strength badly."""
    if worth.ours is None or not situation.ours:
        return 1.0
    levels = [one.profile.skill(worth.ours).level for one in situation.ours]
    mean = sum(levels) / len(levels)
    return 1.0 + OUR_SHOT_COUNTS * (-mean if threat else mean)


def _facts(player: OnCourt, situation: Situation) -> Known:
    """Hand, side, grip and such in one line; worth as much as the most telling of them."""
    facts = player.profile.facts
    order = sorted(facts, key=lambda trait: -_fact_per_100(trait, facts[trait]))[:MAX_FACTS]
    evidence = tuple(each for trait in order for each in facts[trait].evidence)
    return Known(
        player=player,
        trait=order[0],
        text=", ".join(fact_said(trait, facts[trait]) for trait in order),
        per_100=_fact_per_100(order[0], facts[order[0]]),
        source=aged(
            book(notes=len(evidence), evidence=evidence),
            max(facts[trait].newest_day for trait in order),
            situation.today,
        ),
        use="",
    )


def _fact_per_100(trait: Trait, fact: FactEstimate) -> float:
    usual = fact.value in (Value.RIGHT, Value.NO) and trait is not Trait.SIDE_PLAYED
    return FACTS[trait].per_100 * fact.chance * (USUAL_FACT if usual else 1.0)


MAX_FACTS = 3
"""Facts of one player that fit a line."""

USUAL_FACT = 0.1
"""A right-hander with one hand on the backhand is what we take anybody for."""


def _not_known(people: Sequence[OnCourt]) -> tuple[Reason, ...]:
    missing = _most_missed(people)[:MAX_UNKNOWN]
    named = [f"{player.name}'s {TRAITS[trait].label}" for player, trait in missing]
    if not named:
        return ()
    text = first_that_fits((f"Not known: {', '.join(named)}", f"Not known: {named[0]}"))
    return (Reason(text=text, source=book(notes=0)),)


def _most_missed(people: Sequence[OnCourt]) -> tuple[Missing, ...]:
    """Whose traits are not known, the most useful one first."""
    missing = sorted(_missing(people), key=lambda each: -each[0])
    return tuple((player, trait) for _, player, trait in missing)


def _missing(people: Sequence[OnCourt]) -> Iterator[tuple[float, OnCourt, Trait]]:
    tables: tuple[tuple[Mapping[Trait, Worth], bool], ...] = ((SKILLS, False), (HABITS, True))
    for player in people:
        for table, habit in tables:
            for trait, worth in table.items():
                if (trait, habit) not in player.profile.skills:
                    yield worth.per_100, player, trait
        for trait, worth in FACTS.items():
            if trait not in player.profile.facts:
                yield worth.per_100, player, trait
