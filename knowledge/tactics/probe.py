"""What to find out about these two first: the three unknowns worth most, and how to test each."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from knowledge.advice import CALL_LIMIT, Advice, Choice, Confidence, Reason
from knowledge.dataclass import dataclass
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
from knowledge.vocabulary import POINT, PlayerId, Topic, Trait

TESTED = 3
"""How many things one can look out for at once. Common practice, no source."""

WORTH_TESTING_PER_100 = 0.1
"""Below this, one rally in a thousand, an answer is not worth looking for. Our own guess."""

HAND = "hand"
"""A look that costs nothing and that turns every wing round: it always comes first."""

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
    trials = worthwhile(situation, moment)
    return _specific(situation, moment, trials) if trials else _all_known(situation)


def worthwhile(situation: Situation, moment: Moment) -> tuple[Trial, ...]:
    """The probes that can be made now: the one asked for, the hands, then the most useful."""
    asked = _asked_about(situation)
    known = {(one.player, one.trait): one for one in worth_knowing(situation)}
    wanted = _asked_for(situation)
    found = [
        _trial(one, asked, known, is_wanted=one.id in wanted)
        for one in probes()
        if one.look is not None or moment is Moment.PLAY
    ]
    useful = [
        trial
        for trial in found
        if trial.about
        and (trial.per_100 >= WORTH_TESTING_PER_100 or trial.probe.id in {*wanted, HAND})
    ]
    useful.sort(key=lambda one: (one.probe.id not in wanted, one.probe.id != HAND, -one.per_100))
    return tuple(useful[:TESTED])


def _asked_about(situation: Situation) -> tuple[OnCourt, ...]:
    named = tuple(one for one in situation.theirs if one.player in situation.asked.about)
    return named if len(named) == 1 else situation.theirs


def _asked_for(situation: Situation) -> frozenset[str]:
    """The probe that the question itself names, if any."""
    hits = asked_for().find(situation.asked.words)
    return frozenset(hit.id for hit in hits[:1])


def _trial(
    probe: Probe,
    asked: Sequence[OnCourt],
    known: Mapping[tuple[PlayerId, Trait], WorthKnowing],
    *,
    is_wanted: bool,
) -> Trial:
    """Of whom the probe would tell something new; of everybody asked about if it is asked for."""
    facts = tuple(
        known[one.player, trait]
        for one in asked
        for trait in probe.traits
        if (one.player, trait) in known
    )
    told = {fact.player for fact in facts}
    about = tuple(
        one
        for one in asked
        if is_wanted or one.player in told or (probe.id == HAND and one.hand is None)
    )
    return Trial(probe=probe, about=about, facts=facts)


def _specific(situation: Situation, moment: Moment, trials: Sequence[Trial]) -> Advice:
    total = sum(trial.per_100 for trial in trials)
    return Advice(
        topic=Topic.PROBE,
        call=_call([trial.probe for trial in trials], moment),
        reasons=tuple(
            Reason(text=_line(trial, moment), source=COMMON_PRACTICE) for trial in trials
        ),
        number=_worth(total),
        unless=_when(situation, moment),
        assumed=MEANWHILE if not any(one.profile.is_known for one in situation.theirs) else None,
        numbers={f"{trial.probe.id}_per_100": trial.per_100 for trial in trials}
        | {"all_per_100": total},
        choices=_choices(trials),
        more=_what_it_changes(trials),
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


def _line(trial: Trial, moment: Moment) -> str:
    look = trial.probe.look
    said = look if moment is Moment.LOOK and look is not None else trial.probe.ball
    names = [] if len(trial.about) > 1 else [trial.about[0].name, trial.about[0].name.split()[-1]]
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


def _choices(trials: Sequence[Trial]) -> tuple[Choice, ...]:
    """Both answers of the first probe, then one of each other."""
    first, *others = trials
    taps = [(first, tap) for tap in first.probe.taps] + [
        (each, each.probe.taps[0]) for each in others
    ]
    return tuple(_choice(trial, tap) for trial, tap in taps)


def _choice(trial: Trial, tap: AnswerTap) -> Choice:
    one = trial.about[0]
    return Choice(
        label=tap.label.format(name=one.name),
        topic=Topic.PROBE,
        fact=tap.trait.value,
        value=tap.value.value,
        about=one.player,
    )


_ANSWERS = {Trait.HAND: ("lefty", "righty"), Trait.SIDE_PLAYED: ("on the left", "on the right")}


def _what_it_changes(trials: Sequence[Trial]) -> tuple[str, ...]:
    """What either answer makes best, per fact of the first three."""
    lines = []
    for trial in trials:
        fact = max(trial.facts, key=lambda one: one.per_100, default=None)
        if fact is None:
            continue
        name = next(one.name for one in trial.about if one.player == fact.player)
        yes, no = _ANSWERS.get(fact.trait, ("yes or strong", "no or weak"))
        what = fact.trait.value.replace("_", " ")
        lines.append(f"{name}, {what}: {yes}: {fact.if_yes}; {no}: {fact.if_no}.")
    return (*lines, "Worth: what the answer adds, times how often it comes up.")


def _all_known(situation: Situation) -> Advice:
    who = pair_name(situation.theirs)
    return Advice(
        topic=Topic.PROBE,
        call=first_that_fits(
            (f"Play your plan: you know {who}.", "Play your plan: you know them.")
        ),
        reasons=(
            Reason(text="No answer would change a call", source=computed("value of knowing")),
        ),
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
        f"{seen} of {tries}: {of_hundred(more_often_than_not(seen, tries))} in 100 it's a habit"
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
