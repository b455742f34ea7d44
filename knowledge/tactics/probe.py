"""What to find out about these two first: the three unknowns worth most, and how to test each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from knowledge.advice import CALL_LIMIT, Advice, Choice, Confidence, Reason
from knowledge.general_rule import LINE_LIMIT
from knowledge.odds_words import in_hundred, of_hundred
from knowledge.planning.names import first_that_fits, pair_name
from knowledge.planning.probes import MEANWHILE, hand_choices
from knowledge.planning.worth_knowing import WorthKnowing, worth_knowing
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE, computed
from knowledge.tactics.probe_data import AnswerTap, Probe, asked_for, probes
from knowledge.tactics.probe_moment import (
    Moment,
    asks_how_sure,
    is_cheap_now,
    moment_of,
    more_often_than_not,
)
from knowledge.vocabulary import POINT, Topic, Trait

TESTED = 3
"""How many things one can look out for at once. Common practice, no source."""

WORTH_TESTING_PER_100 = 0.02
"""Below this many rallies of 100 an answer is not worth looking for. Our own guess."""

GENERAL = ("hand", "feet", "counter")
"""What changes the most calls against anybody: hands, feet, quick hands. Common practice."""

SEEN_OF = ((2, 2), (3, 4), (3, 3))
"""What one sees in a few tries: so often of so many."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """A probe worth making: of whom it tells, and what it is worth in rallies of 100."""

    probe: Probe
    about: tuple[OnCourt, ...]
    facts: tuple[WorthKnowing, ...]

    @property
    def per_100(self) -> float:
        return sum(fact.per_100 for fact in self.facts)


def advise(situation: Situation) -> Advice:
    """Three things to test, by what knowing them is worth, with the ball and the moment."""
    if asks_how_sure(situation):
        return _how_sure()
    moment = moment_of(situation)
    if not any(one.name for one in situation.theirs):
        return _general(situation, moment)
    tests = worthwhile(situation, moment)
    return _specific(situation, moment, tests) if tests else _all_known(situation)


def worthwhile(situation: Situation, moment: Moment) -> tuple[Trial, ...]:
    """The probes that can be made now, the most useful first; a hand is a free look, so before."""
    facts = [
        fact for fact in worth_knowing(situation) if fact.player in {*_asked_about(situation)}
    ]
    wanted = _asked_for(situation)
    found = [
        test
        for probe in probes()
        if (test := _test(probe, facts, situation)) is not None
        and (probe.look is not None or moment is Moment.PLAY)
    ]
    found.sort(key=lambda test: (test.probe.id not in wanted, test.probe.id != "hand", -test.per_100))
    return tuple(
        test
        for test in found
        if test.per_100 >= WORTH_TESTING_PER_100 or test.probe.id in {*wanted, "hand"}
    )[:TESTED]


def _asked_about(situation: Situation) -> tuple[int, ...]:
    named = [one.player for one in situation.theirs if one.player in situation.asked.about]
    everybody = [one.player for one in situation.theirs]
    return tuple(named if len(named) == 1 else everybody)


def _asked_for(situation: Situation) -> frozenset[str]:
    """The probes that the question itself names; the general words for all of them name none."""
    hits = asked_for().find(situation.asked.words)
    return frozenset(hit.id for hit in hits[:1])


def _test(probe: Probe, facts: Sequence[WorthKnowing], situation: Situation) -> Trial | None:
    told = tuple(fact for fact in facts if fact.trait in probe.traits)
    about = tuple(
        one for one in situation.theirs if any(fact.player == one.player for fact in told)
    )
    return Trial(probe=probe, about=about, facts=told) if told else None


def _specific(situation: Situation, moment: Moment, tests: Sequence[Trial]) -> Advice:
    total = sum(test.per_100 for test in tests)
    return Advice(
        topic=Topic.PROBE,
        call=_call([test.probe for test in tests], moment),
        reasons=tuple(Reason(text=_line(test, moment), source=COMMON_PRACTICE) for test in tests),
        number=_worth(total),
        unless=_when(situation, moment),
        assumed=MEANWHILE if not any(one.profile.notes for one in situation.theirs) else None,
        numbers={f"{test.probe.id}_per_100": test.per_100 for test in tests}
        | {"all_per_100": total},
        choices=_choices(tests),
        more=_what_it_changes(tests),
    )


def _call(chosen: Sequence[Probe], moment: Moment) -> str:
    """ "Look for hands, third drops and counters."."""
    verb = "Look at" if moment is Moment.LOOK else "Test"
    nouns = [probe.noun for probe in chosen]
    listed = [
        f"{', '.join(nouns[: n - 1])} and {nouns[n - 1]}" if n > 1 else nouns[0]
        for n in range(len(nouns), 0, -1)
    ]
    return first_that_fits((f"{verb} {each} first." for each in listed), limit=CALL_LIMIT)


def _line(test: Trial, moment: Moment) -> str:
    look = test.probe.look
    said = look if moment is Moment.LOOK and look is not None else test.probe.ball
    names = [] if len(test.about) > 1 else [test.about[0].name, test.about[0].name.split()[-1]]
    candidates = [*(f"{name}'s" if _owns(said) else name for name in names), "each"]
    return first_that_fits((said.format(each=who) for who in candidates), limit=LINE_LIMIT)


_OWNED = ("{each} backhand", "{each} forehand", "{each} hip", "{each} body")


def _owns(said: str) -> bool:
    """Whether the line speaks of a part or a shot of theirs: "Okafor's backhand"."""
    return any(part in said for part in _OWNED)


def _worth(total: float) -> str:
    return f"Knowing them: up to {in_hundred(total * POINT)} rallies more (maths)."


def _when(situation: Situation, moment: Moment) -> str:
    cheap = is_cheap_now(situation)
    if moment is Moment.LOOK:
        return "Looking is free. In a game: the first four points."
    if cheap is None:
        return "One try each in the first four points: cheap."
    return "Cheap to test now." if cheap else "Too heavy a rally: test it in a lighter one."


def _choices(tests: Sequence[Trial]) -> tuple[Choice, ...]:
    """Both answers of the first probe, then one of each other."""
    first, *others = tests
    taps = [(first, tap) for tap in first.probe.taps] + [(each, each.probe.taps[0]) for each in others]
    return tuple(_choice(test, tap) for test, tap in taps)


def _choice(test: Trial, tap: AnswerTap) -> Choice:
    one = test.about[0]
    return Choice(
        label=tap.label.format(name=one.name),
        topic=Topic.PROBE,
        fact=tap.trait.value,
        value=tap.value.value,
        about=one.player,
    )


_ANSWERS = {Trait.HAND: ("lefty", "righty"), Trait.SIDE_PLAYED: ("on the left", "on the right")}


def _what_it_changes(tests: Sequence[Trial]) -> tuple[str, ...]:
    """What either answer makes best, per fact of the first three."""
    lines = []
    for test in tests:
        fact = max(test.facts, key=lambda one: one.per_100)
        name = next(one.name for one in test.about if one.player == fact.player)
        yes, no = _ANSWERS.get(fact.trait, ("yes or strong", "no or weak"))
        what = fact.trait.value.replace("_", " ")
        lines.append(f"{name}, {what}: {yes}: {fact.if_yes}; {no}: {fact.if_no}.")
    return (*lines, "Worth: what the answer adds, times how often it comes up.")


def _all_known(situation: Situation) -> Advice:
    who = pair_name(situation.theirs)
    return Advice(
        topic=Topic.PROBE,
        call=first_that_fits((f"Play your plan: you know {who}.", "Play your plan: you know them.")),
        reasons=(Reason(text="No answer would change a call", source=computed("value of knowing")),),
        unless="See something new? Tell me: I note it.",
        confidence=Confidence.LEAN,
        choices=(Choice(label="game plan", topic=Topic.GAME_PLAN),),
    )


def _general(situation: Situation, moment: Moment) -> Advice:
    wanted = _asked_for(situation)
    order = [*wanted, *(id for id in GENERAL if id not in wanted)][:TESTED]
    chosen = [probe for id in order for probe in probes() if probe.id == id]
    lines = [
        probe.look if moment is Moment.LOOK and probe.look is not None else probe.ball
        for probe in chosen
    ]
    return Advice(
        topic=Topic.PROBE,
        call=_call(chosen, moment),
        reasons=tuple(
            Reason(text=line.format(each="each"), source=COMMON_PRACTICE) for line in lines
        ),
        number=_when(situation, moment),
        unless=MEANWHILE,
        assumed="No pair named: name them and I pick from your book.",
        choices=hand_choices(situation.theirs, Topic.PROBE),
    )


def _how_sure() -> Advice:
    """How often a thing must be seen, computed."""
    said = [
        f"{seen} of {tries} tries: {of_hundred(more_often_than_not(seen, tries))} in 100 it's a habit"
        for seen, tries in SEEN_OF
    ]
    source = computed("beta belief, any habit as likely as another")
    return Advice(
        topic=Topic.PROBE,
        call="Act on two of two; trust three of three.",
        reasons=tuple(Reason(text=text, source=source) for text in said),
        unless="One ball proves nothing: try it again.",
        confidence=Confidence.CLEAR,
        numbers={f"{seen}_of_{tries}": more_often_than_not(seen, tries) for seen, tries in SEEN_OF},
    )
