"""Who runs for their lob: the race of both of us, and how that is said by name."""

from __future__ import annotations

from typing import Final

from knowledge.advice import Reason
from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Effect, EffectId, Mechanism, Option, OptionId, Points
from knowledge.engine import Ranking, rank
from knowledge.evidence import TraitEstimate
from knowledge.general_rule import LINE_LIMIT
from knowledge.normal import logit
from knowledge.planning.names import first_that_fits
from knowledge.planning.phrases import skill_words
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics.conditions import other_of
from knowledge.tactics.lob_race import RACE, Run, crossing_run, own_run
from knowledge.vocabulary import LOGIT_PER_POINT, RallyChance, Side, Trait, Wing

CROSS, OWN = OptionId("partner crosses"), OptionId("turn and run yourself")

RUN_SD: Final = 3.0
"""Doubt of the race's points: places and starts differ. Common practice."""

FROM_THE_BACK: Final = RallyChance(0.40)
"""Our chance in the rally, running after their lob. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lobbed:
    """A lob over one of us: whoever stands under it, the partner, and who should run."""

    under: OnCourt | None
    partner: OnCourt | None
    ranking: Ranking
    own: Run
    crossing: Run

    @property
    def partner_runs(self) -> bool:
        return self.ranking.best.option.id == CROSS


def who_runs(situation: Situation, under: OnCourt | None) -> Lobbed:
    """The race of both to a lob over one of us, as far as we know their feet."""
    partner = None if under is None else other_of(under, situation.ours)
    own, crossing = own_run(under), crossing_run(partner)
    effects = tuple(_race(option, run) for option, run in ((OWN, own), (CROSS, crossing)))
    options = (Option(id=CROSS, label="partner crosses"), Option(id=OWN, label="turn and run"))
    decision = Decision(
        options=options,
        effects=effects,
        neutral=FROM_THE_BACK,
        share=sizes.LOB_SHARE,
    )
    return Lobbed(
        under=under,
        partner=partner,
        ranking=rank(decision, situation),
        own=own,
        crossing=crossing,
    )


def _race(option: OptionId, run: Run) -> Effect:
    points = (logit(run.worth) - logit(FROM_THE_BACK)) / LOGIT_PER_POINT
    return Effect(
        id=EffectId(f"race:{option}"),
        on=frozenset({option}),
        points=Points(mean=points, sd=RUN_SD),
        mechanism=Mechanism.TIME,
        because=f"{run.spare_s:.1f} s to spare",
        source=RACE,
    )


def under_it(situation: Situation) -> tuple[OnCourt | None, ...]:
    """Over whom of ours it may go: who is named, or "my head", else either of us."""
    ours = situation.ours
    named = tuple(one for one in ours if one.player in situation.asked.about)
    if named:
        return named
    if " my head" in f" {situation.asked.words.casefold()}":
        mine = tuple(one for one in ours if one.player == situation.asker)
        if mine:
            return mine
    return ours or (None,)


BOTH = 2
CROSSES = "Let partner cross and run for it; you switch sides."
OTHER_CROSSES = "Whoever isn't under it crosses and runs; switch sides."
OWN_RUN = "Turn and run for your own; partner goes back too."
EACH_OWN = "Each turns and runs for their own; the other goes back."


def speaks_to(situation: Situation, runs: tuple[Lobbed, ...]) -> bool:
    """Whether "you" is the one under the lob: not for whoever is not known to be one of ours,
    as a coach, nor where another one of ours is named."""
    under = [one.under for one in runs if one.under is not None]
    if not under or len(situation.ours) != BOTH:
        return True
    return situation.asker is not None and any(one.player == situation.asker for one in under)


def runner_call(runs: tuple[Lobbed, ...], *, to_you: bool = True) -> str:
    """Who runs, by name for one lob, or where the two differ."""
    general = CROSSES if to_you else OTHER_CROSSES
    if len(runs) == 1 and runs[0].under is not None and runs[0].partner is not None:
        under, partner = runs[0].under.name, runs[0].partner.name
        if runs[0].partner_runs:
            return first_that_fits(
                (
                    f"Let {partner} cross and run for it; {under} switches.",
                    f"Let {partner} cross and run; you switch sides.",
                    general,
                )
            )
        return first_that_fits(
            (
                f"Let {under} turn and run for it; {partner} goes back too.",
                f"Let {under} turn and run for it.",
                "Turn and run for it; partner goes back with you.",
            )
        )
    runners = {who.name for one in runs if (who := _runner(one)) is not None}
    if len(runs) == 2 and len(runners) == 1:
        return first_that_fits(
            (f"Let {runners.pop()} run for the lobs, over either of you.", general)
        )
    if runs and not any(one.partner_runs for one in runs):
        return OWN_RUN if to_you else EACH_OWN
    return general


def _runner(one: Lobbed) -> OnCourt | None:
    return one.partner if one.partner_runs else one.under


def over_you(runs: tuple[Lobbed, ...], *, to_you: bool = True) -> str:
    """What happens under their lob, by name where "you" is nobody there."""
    if not to_you:
        return _over_them(runs)
    if all(one.partner_runs for one in runs):
        return "Over you: partner crosses behind, you switch"
    if len(runs) == 1 or not any(one.partner_runs for one in runs):
        return "Over you: turn and run, partner goes back too"
    runner = next((who for one in runs if (who := _runner(one)) is not None), None)
    return f"Over either: {runner.name} runs" if runner else "Over you: partner crosses behind"


def _over_them(runs: tuple[Lobbed, ...]) -> str:
    first = runs[0]
    if len(runs) == 1 and first.under is not None and first.partner is not None:
        under, partner = first.under.name, first.partner.name
        crosses = f"Over {under}: {partner} crosses behind, then switch"
        own = f"Over {under}: turn and run, {partner} goes back too"
        said = (crosses, OVER_CROSSES) if first.partner_runs else (own, OVER_OWN)
        return first_that_fits(said, limit=LINE_LIMIT)
    runners = {who.name for one in runs if (who := _runner(one)) is not None}
    if len(runners) == 1:
        return first_that_fits((f"Over either: {runners.pop()} runs",), limit=LINE_LIMIT)
    return OVER_CROSSES if all(one.partner_runs for one in runs) else OVER_OWN


OVER_CROSSES = "Over one: the other crosses behind, then switch"
OVER_OWN = "Over one: turn and run, the other goes back too"


def noted_feet(situation: Situation, first: Lobbed) -> Reason | None:
    """The foot speed that notes settle, of whoever of us it speaks for or against."""
    noted: list[tuple[OnCourt, TraitEstimate]] = [
        (one, one.profile.skill(Trait.FOOT_SPEED))
        for one in situation.ours
        if one.profile.skill(Trait.FOOT_SPEED).evidence
        and not one.profile.skill(Trait.FOOT_SPEED).is_open
    ]
    if not noted or first.under is None:
        return None
    one, estimate = max(noted, key=lambda each: abs(each[1].level))
    said = skill_words(Trait.FOOT_SPEED, strong=estimate.level > 0)
    return Reason(text=f"{one.name}: {said}", source=estimate.source)


def forehand_overhead(ours: tuple[OnCourt, ...]) -> OnCourt | None:
    """Whose overhead a lob in the middle is: the one forehand there, or the left of two alike."""
    forehands = [one for one in ours if one.middle_wing() is Wing.FOREHAND]
    if len(forehands) == 1:
        return forehands[0]
    return next((one for one in forehands if one.side is Side.LEFT), None)
