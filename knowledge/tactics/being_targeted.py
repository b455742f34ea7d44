"""They play everything at one of us, or freeze one out: a job for each partner, and plan B."""

from __future__ import annotations

from types import MappingProxyType

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.dataclass import dataclass
from knowledge.engine import Ranking, rank
from knowledge.general_rule import LINE_LIMIT
from knowledge.planning.names import first_that_fits
from knowledge.planning.weighing import said_of
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import our_crossing, our_poach
from knowledge.tactics.target_effects import cover_of
from knowledge.tactics.targeted_effects import (
    COVER,
    FEET,
    HOLD,
    MIDDLE,
    POACH,
    STACK,
    STAY,
    Reply,
    help_decision,
    plan_b_decision,
    replies,
    reply_decision,
)
from knowledge.tactics.targeted_said import HitWith, Targeted, targeted_said
from knowledge.vocabulary import Topic

READY = "They have one plan: your reply is ready."
NARROW = "To miss one of you they aim narrow: it goes wide."
BREAKS = "Poach once in the first four points."
LOBBED = "Half a step back takes the lob away."
COLD = "Frozen feet go cold: bounce, paddle up."
GO_HOME = "They hit behind: go home for a few balls."
CALM = 'Say it calmly: "I have the middle". No blame.'
TURN = "Turn and run: never backpedal, you fall."
LOB_JOB = "call it, half a step back"
LOB_JOB_IN_FULL = "call it early, cover the other half"
TAKEN_AS_YOU = "Taken as: they play at you."
TAKEN_AS_PARTNER = "Taken as: they play at your partner."


@dataclass(frozen=True, slots=True, kw_only=True)
class Jobs:
    """The three choices as ranked."""

    said: Targeted
    reply: Reply
    back: Ranking
    helping: Ranking
    plan_b: Ranking
    squeezer: str

    @property
    def does(self) -> str:
        """What the helper does."""
        return self.helping.best.option.id


def advise(situation: Situation) -> Advice:
    """A line for the targeted one and one for the partner, in one call.

    How often we poach, where nobody is played at, is a page of its own.
    """
    words = situation.asked.words
    if our_crossing.who_crosses(words) is not None:
        return our_crossing.advise()
    is_of_a_talk = bool(situation.asked.before)  # who is played at was told before
    if our_poach.asks_of_our_poach(words) or (
        our_poach.asks_whether_to_poach_more(words) and not is_of_a_talk
    ):
        return our_poach.advise(situation)
    jobs = _jobs(situation)
    said = jobs.said
    return Advice(
        topic=Topic.BEING_TARGETED,
        call=_call(jobs),
        reasons=_reasons(jobs),
        number=_number(jobs),
        unless=_plan_b(situation, jobs),
        assumed=_assumed(situation, said),
        caution=TURN if said.hit_with is HitWith.LOBS else None,
        confidence=_confidence(jobs),
        numbers=_numbers(jobs),
        choices=(
            Choice(label="worse", topic=Topic.ADJUST),
            Choice(label="stack?", topic=Topic.STACK_OR_NOT),
            Choice(label="reset", topic=Topic.RESET_HEAD),
        ),
        more=_more(jobs),
    )


def _jobs(situation: Situation) -> Jobs:
    said = targeted_said(situation)
    back = rank(reply_decision(said), situation)
    reply = next(one for one in replies(said) if one.id == back.best.option.id)
    return Jobs(
        said=said,
        reply=reply,
        back=back,
        helping=rank(help_decision(situation, said), situation),
        plan_b=rank(plan_b_decision(situation), situation),
        squeezer=_squeezer(situation),
    )


def _squeezer(situation: Situation) -> str:
    """Whichever of them is noted to come over; else nobody by name."""
    most = max(situation.theirs, key=cover_of, default=None)
    return most.name if most is not None and cover_of(most) > 0 else "the squeezer"


def _call(jobs: Jobs) -> str:
    said = jobs.said
    targeted, helper = said.name, said.helper_name
    if said.frozen:
        return first_that_fits(
            (
                f"{helper}: step in, take the middle. {targeted}: dink cross.",
                f"{helper}: take the middle. {targeted}: go cross.",
                "Step in, take the middle; the other dinks cross.",
            )
        )
    back = jobs.reply.call.format(squeezer=jobs.squeezer)
    is_lobbed = said.hit_with is HitWith.LOBS
    job = LOB_JOB if is_lobbed else jobs.helping.best.option.label
    if is_lobbed or not (said.asks_poach or (said.asks_helper and said.asks_squeeze)):
        return _both_jobs(targeted, back, helper, job)
    if said.asks_poach:
        first = POACHES[jobs.does]
        named = f"{helper}: {first[0].lower()}{first[1:]}"
        return first_that_fits((named, first)) if said.asks_helper else first
    squeezes = f"{SQUEEZES[jobs.does]}.".format(helper=helper)
    return first_that_fits((f"{squeezes} {targeted}: {back}.", squeezes, POACHES[jobs.does]))


POACHES = MappingProxyType(
    {
        POACH: "Poach once in the first four, then show it.",
        COVER: "Step in and show it; poach once in four.",
        HOLD: "Stay home a few balls: they hit behind you.",
    }
)
"""What the helper hears who asks whether to poach."""

SQUEEZES = MappingProxyType(
    {
        POACH: "Yes: {helper} steps in, poaches once",
        COVER: "Yes: {helper} steps in, shows it",
        HOLD: "No: {helper} stays home, they hit behind",
    }
)
"""Whether the helper steps in, asked about by name."""


def _both_jobs(targeted: str, back: str, helper: str, job: str) -> str:
    return first_that_fits(
        (
            f"{targeted}: {back}. {helper}: {job}.",
            f"{targeted}: {back}. {helper}: {job.partition(',')[0]}.",
            f"Play {back}; the other one: {job.partition(',')[0]}.",
        )
    )


def _reasons(jobs: Jobs) -> tuple[Reason, ...]:
    said = jobs.said
    if said.frozen:
        return (
            _line(f"{said.helper_name}: poach the second ball, not the first"),
            _line(f"{said.name}: cross, so it comes through the middle"),
        )
    job = LOB_JOB_IN_FULL if said.hit_with is HitWith.LOBS else _JOB[jobs.does]
    return (_back_line(jobs), _line(f"{said.helper_name}: {job}"))


_JOB = MappingProxyType(
    {
        HOLD: "home; they hit behind you",
        COVER: "cover the middle, give the line",
        POACH: "take the middle, poach one early",
    }
)


def _line(text: str) -> Reason:
    """The line; where a long name leaves no room for it, without the name, never cut short."""
    bare = text.partition(": ")[2] or text
    shorter = (text, f"{bare[0].upper()}{bare[1:]}")
    return Reason(text=first_that_fits(shorter, limit=LINE_LIMIT), source=COMMON_PRACTICE)


def _back_line(jobs: Jobs) -> Reason:
    """The ball to play back: with the note that it is theirs, where there is one."""
    full = jobs.reply.full.format(squeezer=jobs.squeezer)
    if jobs.reply == MIDDLE and FEET in replies(jobs.said):
        full = f"if {jobs.squeezer} comes over, soft at the feet"
    part = next((one for one in jobs.back.best.parts if one.evidence and one.points > 0), None)
    if part is None or part.effect.scale is None:
        return _line(f"{jobs.said.name}: {full}")
    estimate = part.effect.scale.estimate
    own = said_of(part.effect)
    text = first_that_fits(
        (f"{jobs.said.name}, {own}: {full}", f"{jobs.said.name}: {own}, use it", own),
        limit=LINE_LIMIT,
    )
    return Reason(text=text, source=estimate.source)


def _number(jobs: Jobs) -> str:
    if jobs.said.frozen:
        return COLD
    if jobs.said.hit_with is HitWith.LOBS:
        return LOBBED
    return GO_HOME if jobs.does == HOLD else BREAKS


def _plan_b(situation: Situation, jobs: Jobs) -> str:
    """What to do once the first plan does not hold, with its condition."""
    best = jobs.plan_b.best.option.id
    if best == STACK:
        return "Four more lost? Stack: forehands in the middle."
    if best == STAY:
        return "Four more lost? Time-out; stay on your sides."
    if len(situation.ours) < 2 or any(one.hand is None for one in situation.ours):
        return "Four more lost? Swap sides; lefty+righty: stack."
    return "Four more lost? Swap sides for two points."


def _assumed(situation: Situation, said: Targeted) -> str | None:
    """Where neither a name nor the asker says who it is."""
    if said.targeted is not None or not situation.ours:
        return None
    return TAKEN_AS_YOU if said.is_me else TAKEN_AS_PARTNER


def _confidence(jobs: Jobs) -> Confidence:
    """A general rule, unless notes on us stand behind a job."""
    rankings = (jobs.back, jobs.helping)
    noted = any(part.evidence for ranking in rankings for part in ranking.best.parts)
    return Confidence.LEAN if noted else Confidence.GENERAL_RULE


def _numbers(jobs: Jobs) -> MappingProxyType[str, float]:
    numbers: dict[str, float] = {}
    for name, ranking in (("back", jobs.back), ("help", jobs.helping), ("plan_b", jobs.plan_b)):
        numbers[f"{name}_points"] = float(ranking.best.points)
        numbers[f"{name}_over_next"] = float(ranking.gain())
        numbers[f"{name}_p_best"] = ranking.best.p_best
    numbers["share"] = jobs.back.share
    numbers["per_100"] = (jobs.back.gain() + jobs.helping.gain()) * jobs.back.share / 100
    return MappingProxyType(numbers)


def _more(jobs: Jobs) -> tuple[str, ...]:
    said = jobs.said
    return (
        NARROW if said.frozen else READY,
        f"{said.name}: give the line, not the middle.",
        f"{said.name}: after each ball be set for the next, it is yours.",
        f"{said.helper_name}: step in before they hit, so that they see it.",
        "Poaching everything opens two lanes: they want that.",
        "Sign it works: they look at the helper before they hit.",
        CALM,
    )
